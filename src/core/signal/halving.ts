/** Halving between what still works and what no longer does. */

/** The last value found that works, the first found that does not, and what gives way there. */
interface Halved<Why> {
  readonly good: number;
  readonly bad: number;
  readonly why: Why;
}

/**
 * Halve so many times between a value that works and one that does not, for the reason given; whole numbers stay whole.
 * `attempt` tells what gives way at a value, or null.
 */
export function halve<Why>(
  [works, fails]: readonly [works: number, fails: number],
  whyFails: Why,
  attempt: (value: number) => Why | null,
  times: number,
  middleOf = (a: number, b: number): number => (a + b) / 2,
): Halved<Why> {
  let [good, bad, why] = [works, fails, whyFails];
  for (let step = 0; step < times; step++) {
    const middle = middleOf(good, bad);
    if (middle === good) break;
    const failure = attempt(middle);
    if (failure === null) good = middle;
    else [bad, why] = [middle, failure];
  }
  return { good, bad, why };
}
