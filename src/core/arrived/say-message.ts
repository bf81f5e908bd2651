/** Messages that were heard, in words. */
import { explainBytes, hexOf } from '../signal/index.ts';

/** A message in one line: its bytes in hex, and what each says. */
export function sayMessage(bytes: readonly number[]): string {
  const words = explainBytes(bytes).map((one) => one.words);
  return `${bytes.map(hexOf).join(' ')}: ${words.join('; ')}`;
}
