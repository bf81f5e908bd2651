/** What a measurement is: a number with its goal, and how to take the middle of many. */

/** One measured number; `atLeast` or `atMost` is its goal, none means that it is printed to be seen. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly atLeast?: number;
  readonly atMost?: number;
  /** What stands beside it to read it by. */
  readonly beside?: string;
}

/** Whether a figure reaches its goal; true where it has none. */
export function reaches({ value, atLeast, atMost }: Figure): boolean {
  return (atLeast === undefined || value >= atLeast) && (atMost === undefined || value <= atMost);
}

/** The value below which a share of all values lies; `share` 0.5 is the median. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** Median time of one call in microseconds: `rounds` rounds of `calls` calls each, after one round to warm up. */
export function medianMicroseconds(work: () => void, calls: number, rounds: number): number {
  const times: number[] = [];
  for (let round = 0; round <= rounds; round++) {
    const start = performance.now();
    for (let call = 0; call < calls; call++) work();
    if (round > 0) times.push(((performance.now() - start) * 1e3) / calls);
  }
  return quantile(times, 0.5);
}
