/** Links with a price on every owned lead: what each costs the cheapest way. */
import type { PlanProblem } from './problem.ts';

/** A row of costs, by device or by set of devices; Infinity where there is no way. */
export type Row = Float64Array;

/** The least cost of each link, `costs[source][target]`, and the number of the way that has it, -1 for none. */
export interface PricedLinks {
  readonly costs: readonly Row[];
  readonly picks: readonly Int32Array[];
}

/** Price every link: what its leads cost, and a price for each owned one, by kind. */
export function priceLinks({ ways }: PlanProblem, prices: ArrayLike<number>): PricedLinks {
  const costs = ways.map((row) => new Float64Array(row.length).fill(Infinity));
  const picks = ways.map((row) => new Int32Array(row.length).fill(-1));
  ways.forEach((row, from) =>
    row.forEach((choices, to) =>
      choices.forEach(({ cost, uses }, at) => {
        let sum = cost;
        for (const kind of uses) sum += prices[kind] ?? 0;
        if (sum >= costs[from]![to]!) return;
        costs[from]![to] = sum;
        picks[from]![to] = at;
      }),
    ),
  );
  return { costs, picks };
}
