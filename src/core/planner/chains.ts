/** The cheapest chain over each set of devices, by dynamic programming (Held and Karp, 1962). A set is a number, one bit a device. */
import type { Row } from './price-links.ts';
import { chainFits } from './problem.ts';
import type { PlanHub, PlanProblem } from './problem.ts';

/** Cheapest chains behind any place, which is told by what it costs to feed each device from there. */
export interface ChainTable {
  /** Cost of one chain over each set, Infinity for none and for what may not hang behind this hub or straight on an output. */
  readonly costs: (start: Row, hub: PlanHub | undefined) => Row;
  /** The devices of a set in the order of that chain. */
  readonly order: (start: Row, set: number) => readonly number[];
}

/** Fill the table; `next` are the costs from device to device. */
export function chainTable(problem: PlanProblem, next: readonly Row[]): ChainTable {
  const { count } = problem;
  const full = 1 << count;
  const lengths = new Uint8Array(full);
  const shifts = new Float64Array(full);
  /** `behind[set * count + first]`: the cheapest way along a set that begins at one of its devices. */
  const behind = new Float64Array(full * count).fill(Infinity);
  const least = (row: Row, set: number): number => {
    let best = Infinity;
    for (let at = 0; at < count; at++) {
      const cost = row[at]! + behind[set * count + at]!;
      if (cost < best) best = cost;
    }
    return best;
  };
  for (let set = 1; set < full; set++) {
    const last = set & (set - 1);
    lengths[set] = lengths[last]! + 1;
    shifts[set] = shifts[last]! + problem.shift[31 - Math.clz32(set ^ last)]!;
    if (!chainFits(problem, lengths[set]!, shifts[set]!, undefined)) continue;
    for (let first = 0; first < count; first++) {
      if ((set & (1 << first)) === 0) continue;
      const rest = set & ~(1 << first);
      behind[set * count + first] = rest === 0 ? 0 : least(next[first]!, rest);
    }
  }
  return {
    costs: (start, hub) => {
      const costs = new Float64Array(full).fill(Infinity);
      for (let set = 1; set < full; set++)
        if (chainFits(problem, lengths[set]!, shifts[set]!, hub)) costs[set] = least(start, set);
      return costs;
    },
    order: (start, set) => {
      const chain: number[] = [];
      let [row, left] = [start, set];
      while (left > 0) {
        const sum = least(row, left);
        const first = row.findIndex((cost, at) => cost + behind[left * count + at]! === sum);
        chain.push(first);
        left &= ~(1 << first);
        row = next[first]!;
      }
      return chain;
    },
  };
}
