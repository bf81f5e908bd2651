/** How well a list of bytes that was foretold explains the list that was seen. */
import type { Code } from './log.ts';

/** Natural logarithms of chances. `pair`: byte `at` of the list foretold is seen as a code; `lost`: it is not seen; `extra`: a code nobody sent. */
export interface Odds {
  readonly pair: (at: number, code: Code) => number;
  readonly lost: (at: number) => number;
  readonly extra: (code: Code, after: number) => number;
}

/** Codes that a byte seen can have, for a chance that is spread over all of them. */
const CODES = 256;

/** Chances of the four things that can become of a byte, as shares; what is spread over all codes is so for each. */
export interface Shares {
  readonly changed: number;
  readonly lost: number;
  readonly extra: number;
}

/** A simulation that knows everything but in which part of a sample a start bit falls: one byte in a hundred may differ (our choice). */
export const SURE: Shares = { changed: 0.008, lost: 0.004, extra: 0.004 };

/** The odds of a list of codes that is foretold, with a few mistakes allowed. */
export function oddsOf(foretold: readonly Code[], { changed, lost, extra }: Shares): Odds {
  const same = Math.log(1 - changed - lost - extra);
  const other = Math.log(changed / CODES);
  const none = Math.log(lost);
  const more = Math.log(extra / CODES);
  return {
    pair: (at, code) => (foretold[at] === code ? same : other),
    lost: () => none,
    extra: () => more,
  };
}

/** Bytes by which two lists may run apart while they are laid side by side, above the difference of their lengths. */
const BAND = 24;

/**
 * The chance, as its natural logarithm, of the best way to lay `count` bytes foretold beside those seen. Work grows with the length
 * of the lists, not with its square.
 */
export function likeness(count: number, seen: readonly Code[], { pair, lost, extra }: Odds): number {
  const width = seen.length + 1;
  const band = BAND + Math.abs(count - seen.length);
  let before = new Float64Array(width).fill(-Infinity);
  let row = new Float64Array(width).fill(-Infinity);
  before[0] = 0;
  for (let at = 1; at < width && at <= band; at += 1) before[at] = before[at - 1]! + extra(seen[at - 1]!, 0);
  for (let one = 1; one <= count; one += 1) {
    const from = Math.max(0, one - band);
    const to = Math.min(seen.length, one + band);
    row.fill(-Infinity);
    const gone = lost(one - 1);
    for (let at = from; at <= to; at += 1) {
      let best = before[at]! + gone;
      if (at > 0) {
        const code = seen[at - 1]!;
        best = Math.max(best, before[at - 1]! + pair(one - 1, code), row[at - 1]! + extra(code, one));
      }
      row[at] = best;
    }
    [before, row] = [row, before];
  }
  return before[seen.length]!;
}
