/**
 * A good layout for a board too large for tables over sets: annealing on chains. Moves: a run of devices elsewhere, two
 * devices changed, the ends of two chains changed. What cannot be made costs a large sum, so that the way there stays open.
 */
import { assignLeads } from './assign.ts';
import { SAME_COST } from './exact.ts';
import { headsOf } from './frames.ts';
import type { Frame, Head } from './frames.ts';
import { priceLinks } from './price-links.ts';
import { chainFits, linksOf, waysOf } from './problem.ts';
import type { Found, Layout, PlanProblem } from './problem.ts';

/** Steps between two reports. */
const STEPS_AT_ONCE = 2000;

/** Warmth at the first step, as a share of what a link costs, and how far it has fallen at the last (our choice). */
const HOT = 0.6;
const COOLING = 1e-3;

type Chain = readonly number[];
type Chains = readonly Chain[];

/**
 * Anneal within one frame. Owned leads have the prices of the bound, so that links can be weighed one by one; each layout that
 * is the best so far gets its leads given out exactly. Yields the least cost so far from time to time.
 */
export function* annealFrame(
  problem: PlanProblem,
  frame: Frame,
  prices: Float64Array,
  chance: () => number,
  steps: number,
): Generator<number, Found | undefined> {
  const heads = headsOf(problem, frame);
  const { weigh, big, typical } = weights(problem, heads, prices);
  const pick = (most: number): number => Math.floor(chance() * most);
  const emptied = (chain: Chain): number => (chain.length === 0 ? 1 : 0);
  const wish = (free: number): number => big * Math.max(0, problem.spareOutlets - free);
  const chains = dealt(problem.count, heads.length, problem.spareOutlets);
  const costs = chains.map(weigh);
  let free = chains.reduce((sum, chain) => sum + emptied(chain), 0);
  let cost = costs.reduce((sum, one) => sum + one, 0);
  let coldest = cost;
  let best: Found | undefined;
  const tryOut = (): void => {
    if (cost >= big) return;
    const layout = layoutOf(frame, heads, chains);
    const leads = assignLeads(waysOf(problem, linksOf(problem, layout)), problem.owned);
    if (leads && leads.cost < (best?.cost ?? Infinity)) best = { layout, ...leads };
  };
  for (let step = 0; step < steps; step++) {
    const moved = move(chains, pick);
    const weighed = moved.map(([at, chain]) => weigh(chain, at));
    const freed = moved.reduce((sum, [at, chain]) => sum + emptied(chain) - emptied(chains[at]!), free);
    const missing = wish(freed) - wish(free);
    const change = moved.reduce((sum, [at], place) => sum + weighed[place]! - costs[at]!, missing);
    if (change <= 0 || chance() < Math.exp(-change / (HOT * typical * COOLING ** (step / steps)))) {
      moved.forEach(([at, chain], place) => ([chains[at], costs[at]] = [chain, weighed[place]!]));
      [free, cost] = [freed, cost + change];
      // While it is still hot most layouts are soon bettered; only those of the cool half are worth their leads.
      if (cost < coldest - SAME_COST) {
        coldest = cost;
        if (step > steps / 2) tryOut();
      }
    }
    if (step % STEPS_AT_ONCE === STEPS_AT_ONCE - 1) yield best?.cost ?? Infinity;
  }
  if (!best) tryOut();
  return best;
}

/** What a chain costs at each head, with a sum above every layout that can be made for what cannot. */
function weights(
  problem: PlanProblem,
  heads: readonly Head[],
  prices: Float64Array,
): {
  readonly weigh: (chain: Chain, head: number) => number;
  readonly big: number;
  readonly typical: number;
} {
  const { costs } = priceLinks(problem, prices);
  const known = problem.ways.flat(2).map(({ cost }) => cost);
  const big = 4 * (problem.count + 1) * known.reduce((most, cost) => Math.max(most, cost), 1);
  const typical = Math.max(1, known.reduce((all, cost) => all + cost, 0) / known.length);
  const capped = costs.map((row) => row.map((cost) => Math.min(cost, big)));
  const weigh = (chain: Chain, at: number): number => {
    if (chain.length === 0) return 0;
    const { source, hub } = heads[at]!;
    let [cost, shifts, row] = [0, 0, capped[source]!];
    for (const device of chain) {
      cost += row[device]!;
      shifts += problem.shift[device]!;
      row = capped[device]!;
    }
    return chainFits(problem, chain.length, shifts, problem.hubs[hub])
      ? cost
      : cost + big * (1 + chain.length);
  };
  return { weigh, big, typical };
}

/** The devices dealt out in turn, as many heads left free as are wished for. */
function dealt(count: number, heads: number, spares: number): Chain[] {
  const usable = Math.max(1, heads - spares);
  const devices = Array.from({ length: count }, (_, at) => at);
  return Array.from({ length: heads }, (_, head) =>
    head < usable ? devices.filter((device) => device % usable === head) : [],
  );
}

function layoutOf(frame: Frame, heads: readonly Head[], chains: Chains): Layout {
  return frame.map((hub, output) => ({
    hub,
    chains: chains.filter((chain, at) => heads[at]!.output === output && (hub >= 0 || chain.length > 0)),
  }));
}

/** New chains at one or two heads, with the number of the head; none where the move drawn cannot be made. */
function move(chains: Chains, pick: (most: number) => number): readonly (readonly [number, Chain])[] {
  const [a, b] = [pick(chains.length), pick(chains.length)];
  const [from, to] = [chains[a]!, chains[b]!];
  const kind = pick(4);
  if (from.length === 0 || (a === b && kind > 1) || (kind === 2 && to.length === 0)) return [];
  if (kind === 3) {
    const [i, j] = [pick(from.length + 1), pick(to.length + 1)];
    return [
      [a, [...from.slice(0, i), ...to.slice(j)]],
      [b, [...to.slice(0, j), ...from.slice(i)]],
    ];
  }
  if (kind === 2) {
    const [i, j] = [pick(from.length), pick(to.length)];
    return [
      [a, from.with(i, to[j]!)],
      [b, to.with(j, from[i]!)],
    ];
  }
  // A run of one to three devices to another place, now and then turned round.
  const at = pick(from.length);
  const run = from.slice(at, at + 1 + pick(3));
  if (pick(3) === 0) run.reverse();
  const rest = [...from.slice(0, at), ...from.slice(at + run.length)];
  const target = a === b ? rest : to;
  const place = pick(target.length + 1);
  const grown: Chain = [...target.slice(0, place), ...run, ...target.slice(place)];
  return a === b
    ? [[a, grown]]
    : [
        [a, rest],
        [b, grown],
      ];
}
