/** What manuals say, from plain to muddled: words of our own in the manner of manuals (invented), each with what can be told from it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readManual } from '../../../src/core/answer/manual.ts';
import type { ManualState } from '../../../src/core/answer/manual-reading.ts';
import type { Direction, Style } from '../../../src/core/wiring/index.ts';

interface Phrase {
  readonly language: 'en' | 'fr' | 'de' | 'es';
  readonly direction: Direction;
  readonly words: string;
  readonly state: ManualState;
  readonly type?: Style;
  readonly could?: readonly Style[];
}

const PHRASES = JSON.parse(
  readFileSync(new URL('../../../content/reference/manual-words.json', import.meta.url), 'utf8'),
) as readonly Phrase[];

describe('The words of manuals', () => {
  test('are at least sixty, in four languages', () => {
    expect(PHRASES.length).toBeGreaterThanOrEqual(60);
    expect(new Set(PHRASES.map(({ language }) => language))).toEqual(new Set(['en', 'fr', 'de', 'es']));
  });

  test.each(PHRASES)('$language, $direction: $words', ({ words, direction, state, type, could }) => {
    const reading = readManual(words, direction);
    expect(reading.state).toBe(state);
    expect(reading.type).toBe(type);
    if (could) expect(new Set(reading.could)).toEqual(new Set(could));
    if (state === 'said') expect(reading.could).toEqual([type]);
    expect(reading.questions.length > 0).toBe(state !== 'said');
    expect(reading.reason).not.toBe('');
  });

  test('mean the same in capitals, with other dashes and with more space', () => {
    for (const { words, direction, state, type } of PHRASES) {
      const other = readManual(
        `  ${words.toUpperCase().replaceAll(' - ', ' – ').replaceAll(' ', '  ')} `,
        direction,
      );
      expect([words, other.state, other.type]).toEqual([words, state, type]);
    }
  });

  test('are sure of a beginning only where it says what the whole says', () => {
    const whole = PHRASES.filter(({ state, type }) => state === 'said' && type !== 'both-ways');
    let sure = 0;
    for (const { words, direction, type } of whole)
      for (let end = 0; end < words.length; end++) {
        const part = readManual(words.slice(0, end), direction);
        if (part.state !== 'said') continue;
        sure++;
        expect([words.slice(0, end), part.type]).toEqual([words.slice(0, end), type]);
      }
    expect(sure).toBeGreaterThan(100);
  });
});
