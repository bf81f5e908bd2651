/**
 * A length for an amount, along a bar. The general scales of d3 do this too, at ten kilobytes a page that needs no more
 * than one straight line.
 */

/** Pixels for an amount from 0 to `most`, between `from` and `to`; amounts beyond either end stop there. @throws when `most` is not above 0. */
export function along(most: number, from: number, to: number): (amount: number) => number {
  if (!(most > 0)) throw new RangeError(`bar: the greatest amount must be more than 0, got ${most}`);
  return (amount) => from + (to - from) * Math.min(1, Math.max(0, amount / most));
}
