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

/**
 * Where a comparison is given up: below `floor`; and, where `perByte` is given, as soon as it is `behind` below what so many bytes of a
 * log cost at that each. Natural logarithms.
 */
export interface Patience {
  readonly floor: number;
  readonly perByte: number;
  readonly behind: number;
}

/** Patience with what claims to know everything: no longer than usual bytes at random explain a log better by `behind`. */
export const patienceOf = (floor: number, behind: number): Patience => ({
  floor,
  perByte: -Math.log(USUAL_BYTES),
  behind,
});

/** Patience that ends at the floor alone. */
export const patientTo = (floor: number): Patience => ({ floor, perByte: 0, behind: Infinity });

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

/** Rows of chances, made once and used for every comparison: a search makes thousands. */
let rows: readonly Float64Array[] = [];

/** Four rows of at least a width, all of them full of the impossible up to it. */
function emptyRows(width: number): readonly Float64Array[] {
  if ((rows[0]?.length ?? 0) < width) rows = Array.from({ length: 4 }, () => new Float64Array(2 * width));
  for (const row of rows) row.fill(-Infinity, 0, width);
  return rows;
}

/** Where a comparison ends: the best chance of each count of bytes seen, of those that end with a byte seen and with one lost. */
interface Ended {
  readonly seenLast: Float64Array;
  readonly lostLast: Float64Array;
}

/** Lay `count` bytes foretold beside those seen; undefined where patience ends. What it gives holds until the next call. */
function layBeside(count: number, seen: readonly Code[], odds: Odds, patience: Patience): Ended | undefined {
  const { floor, perByte, behind } = patience;
  const { pair, lost, extra, lostAgain } = odds;
  const width = seen.length + 1;
  const band = BAND + Math.abs(count - seen.length);
  const seenAgain = lostAgain === undefined ? 0 : Math.log1p(-Math.exp(lostAgain));
  // Of each row the best ways that end with a byte lost, and the best of all from which the next byte may be seen.
  let [before, row, goneBefore, gone] = emptyRows(width) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  before[0] = 0;
  for (let at = 1; at < width && at <= band; at += 1) before[at] = before[at - 1]! + extra(seen[at - 1]!, 0);
  for (let one = 1; one <= count; one += 1) {
    const from = Math.max(0, one - band);
    const to = Math.min(seen.length, one + band);
    // Only what the next row can look at has to be empty.
    if (from > 0) row[from - 1] = gone[from - 1] = -Infinity;
    const first = lost(one - 1);
    let alive = false;
    for (let at = from; at <= to; at += 1) {
      const lose = Math.max(before[at]! + first, goneBefore[at]! + (lostAgain ?? first));
      gone[at] = lose;
      let best = lose + seenAgain;
      if (at > 0) {
        const code = seen[at - 1]!;
        const paired = before[at - 1]!;
        if (paired >= floor) best = Math.max(best, paired + pair(one - 1, code));
        best = Math.max(best, row[at - 1]! + extra(code, one));
      }
      row[at] = best;
      alive ||= Math.max(best, lose) >= Math.max(floor, perByte * at - behind);
    }
    if (!alive) return undefined;
    [before, row] = [row, before];
    [goneBefore, gone] = [gone, goneBefore];
  }
  return { seenLast: before, lostLast: goneBefore };
}

/**
 * The chance, as its natural logarithm, of the best way to lay `count` bytes foretold beside those seen; -Infinity where patience
 * ends on the way. Work grows with the length of the lists, not with its square.
 */
export function likeness(
  count: number,
  seen: readonly Code[],
  odds: Odds,
  patience: Patience = patientTo(-Infinity),
): number {
  const ended = layBeside(count, seen, odds, patience);
  return ended ? Math.max(ended.seenLast[seen.length]!, ended.lostLast[seen.length]!) : -Infinity;
}

/** Whether the first `count` bytes of a list may lead to those seen before patience ends. */
export function mayLead(count: number, seen: readonly Code[], odds: Odds, patience: Patience): boolean {
  return layBeside(count, seen.slice(0, count + BAND), odds, patience) !== undefined;
}
