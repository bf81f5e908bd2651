/**
 * The cheapest layout when every owned lead has a price and there are enough of each: chains over sets of devices, sets
 * over outlets, outlets and chains over outputs. Exact; time grows as 3 to the number of devices.
 */
import { chainTable } from './chains.ts';
import type { ChainTable } from './chains.ts';
import { priceLinks } from './price-links.ts';
import type { PricedLinks } from './price-links.ts';
import { linksOf, waysOf } from './problem.ts';
import type { Found, OutputUse, PlanProblem } from './problem.ts';
import { share } from './share.ts';
import type { Option, Shared } from './share.ts';

type Chain = readonly number[];

/** Solve with prices for owned leads, which are in the cost too. Undefined when no layout is possible. */
export function solveSets(problem: PlanProblem, prices: readonly number[]): Found | undefined {
  const links = priceLinks(problem, prices);
  const table = chainTable(problem, links.costs);
  const limited = problem.hubs.flatMap(({ limit }, hub) => (limit === 1 ? [hub] : []));
  const states = stateNumbers(problem.spareOutlets);
  const hubs =
    problem.topology === 'chain' ? [] : problem.hubs.map((_, hub) => shareHub(problem, links, table, hub));
  const places = problem.outputs.map((source): Option<OutputUse>[] => {
    const row = links.costs[source]!;
    return [
      { into: (state) => states.after(state, 0, 1), take: () => ({ hub: -1, chains: [] }) },
      {
        costs: table.costs(row, undefined),
        into: (state) => state,
        take: (set) => ({ hub: -1, chains: [table.order(row, set)] }),
      },
      ...hubs.flatMap((shared, hub) => {
        const feed = row[problem.count + hub]!;
        const bit = 2 << limited.indexOf(hub);
        return shared.costs.map((costs, free): Option<OutputUse> => ({
          costs: costs.map((cost) => cost + feed),
          into: (state) => states.after(state, limited.includes(hub) ? bit | 1 : 1, free),
          take: (set) => ({ hub, chains: shared.takes(free, set) }),
        }));
      }),
    ];
  });
  const shared = share(problem.count, states.count(limited.length), places, true);
  const whole = (1 << problem.count) - 1;
  let [cost, end] = [Infinity, -1];
  shared.costs.forEach((costs, state) => {
    if (states.accepts(state, problem.topology === 'hub') && costs[whole]! < cost)
      [cost, end] = [costs[whole]!, state];
  });
  if (end < 0) return undefined;
  const layout = shared.takes(end, whole);
  const edges = linksOf(problem, layout);
  const chosen = waysOf(problem, edges).map(
    (choices, at) => choices[links.picks[edges[at]!.from]![edges[at]!.to]!]!,
  );
  return { layout, chosen, cost };
}

/** Share sets out over the outlets of a hub, a chain each or none; the state counts outlets left free, up to those wished for. */
function shareHub(problem: PlanProblem, links: PricedLinks, table: ChainTable, hub: number): Shared<Chain> {
  const { outlets } = problem.hubs[hub]!;
  const spares = problem.spareOutlets;
  const places = outlets.map((source): Option<Chain>[] => {
    const row = links.costs[source]!;
    return [
      { into: (free) => Math.min(spares, free + 1), take: () => [] },
      {
        costs: table.costs(row, problem.hubs[hub]),
        into: (free) => free,
        take: (set) => table.order(row, set),
      },
    ];
  });
  return share(problem.count, spares + 1, places);
}

/** States over the outputs: bits for 'a hub is used' and for each hub of which there is one, times the outlets left free. */
function stateNumbers(spares: number): {
  readonly count: (limited: number) => number;
  readonly after: (state: number, bits: number, free: number) => number;
  readonly accepts: (state: number, hubAsked: boolean) => boolean;
} {
  const each = spares + 1;
  return {
    count: (limited) => (2 << limited) * each,
    after: (state, bits, free) => {
      const used = Math.floor(state / each);
      if ((used & bits & ~1) !== 0) return -1;
      return (used | bits) * each + Math.min(spares, (state % each) + free);
    },
    accepts: (state, hubAsked) =>
      state % each === spares && (!hubAsked || Math.floor(state / each) % 2 === 1),
  };
}
