/** Links of an invented author for the tests of this floor. */
import type { AuthoredJack, AuthoredLink } from '../../../src/core/learn/index.ts';
import type { Part } from '../../../src/core/wiring/index.ts';

const DIN: AuthoredJack = { connector: 'din5', style: 'din' };

/** A 5 V output, a straight DIN lead of 1 m, and an input with the part. */
export const dinLink = (part: Part = '6N138', more: Partial<AuthoredJack> = {}): AuthoredLink => ({
  output: DIN,
  input: { ...DIN, part, ...more },
  leads: [{ ends: ['din5', 'din5'], wires: ['4-4', '5-5', '2-2'] }],
  outcome: 'flows',
});

/** The same words with plain spaces, as a test writes them. */
export const spaced = (words: string): string => words.replaceAll('\u00a0', ' ');
