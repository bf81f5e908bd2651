/** Holds what a lesson's text says to what the core gives. */
import { isDeepStrictEqual } from 'node:util';
import type { Claims } from '../../src/core/learn/index.ts';

/** The pairs of a claim that do not hold, in words: none when the claim is true. */
export function brokenPairs(pairs: ReturnType<Claims[string]>): readonly string[] {
  return pairs.flatMap(([given, needed], at) =>
    holds(given, needed)
      ? []
      : [`pair ${at + 1}: the text needs ${JSON.stringify(needed)}, the core gives ${JSON.stringify(given)}`],
  );
}

function holds(given: unknown, needed: unknown): boolean {
  if (typeof needed !== 'object' || needed === null || !('above' in needed) || !('below' in needed))
    return isDeepStrictEqual(given, needed);
  return typeof given === 'number' && given > Number(needed.above) && given < Number(needed.below);
}
