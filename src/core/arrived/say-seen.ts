/** Bytes seen, in writing. */
import { hexOf } from '../signal/index.ts';
import type { SeenByte } from './log.ts';

/** Bytes as a list: 'F3* FE 00', a star where the monitor marked one; 'nothing' where there is none. */
export function saySeen(seen: readonly SeenByte[]): string {
  return seen.map(({ value, bad }) => `${hexOf(value)}${bad ? '*' : ''}`).join(' ') || 'nothing';
}
