/** How well a list of bytes that was foretold explains the list that was seen. */
import type { Code } from './log.ts';

/**
 * Natural logarithms of chances. `pair`: byte `at` of the list foretold is seen as a code; `lost`: it is not seen; `extra`: a code
 * nobody sent; `lostAgain`: a byte right after one that was lost is lost as well, where that is another matter: to be seen again then has
 * the chance that it leaves.
 */
export interface Odds {
  readonly pair: (at: number, code: Code) => number;
  readonly lost: (at: number) => number;
  readonly extra: (code: Code, after: number) => number;
  readonly lostAgain?: number;
}

/** Codes that a byte seen can have, for a chance that is spread over all of them. */
const CODES = 256;

/** A byte of a log that nothing foretells is one of about so many that are usual (our choice). */
export const USUAL_BYTES = 200;

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
const BAND = 16;

/**
 * The chance, as its natural logarithm, of the best way to lay `count` bytes foretold beside those seen; -Infinity where it falls
 * below `floor` on the way. Work grows with the length of the lists, not with its square.
 */
export function likeness(count: number, seen: readonly Code[], odds: Odds, floor = -Infinity): number {
  const { pair, lost, extra, lostAgain } = odds;
  const width = seen.length + 1;
  const band = BAND + Math.abs(count - seen.length);
  const seenAgain = lostAgain === undefined ? 0 : Math.log1p(-Math.exp(lostAgain));
  // Of each row the best ways that end with a byte lost, and the best of all from which the next byte may be seen.
  let [before, row] = [new Float64Array(width).fill(-Infinity), new Float64Array(width).fill(-Infinity)];
  let [goneBefore, gone] = [row.slice(), row.slice()];
  before[0] = 0;
  for (let at = 1; at < width && at <= band; at += 1) before[at] = before[at - 1]! + extra(seen[at - 1]!, 0);
  for (let one = 1; one <= count; one += 1) {
    const from = Math.max(0, one - band);
    const to = Math.min(seen.length, one + band);
    row.fill(-Infinity);
    gone.fill(-Infinity);
    const first = lost(one - 1);
    let most = -Infinity;
    for (let at = from; at <= to; at += 1) {
      const lose = Math.max(before[at]! + first, goneBefore[at]! + (lostAgain ?? first));
      gone[at] = lose;
      let best = lose + seenAgain;
      if (at > 0) {
        const code = seen[at - 1]!;
        best = Math.max(best, before[at - 1]! + pair(one - 1, code), row[at - 1]! + extra(code, one));
      }
      row[at] = best;
      most = Math.max(most, best, lose);
    }
    if (most < floor) return -Infinity;
    [before, row] = [row, before];
    [goneBefore, gone] = [gone, goneBefore];
  }
  return Math.max(before[seen.length]!, goneBefore[seen.length]!);
}
