/**
 * A good layout for a board too large for tables over sets: annealing on chains. Moves: one device elsewhere, two devices
 * changed, a run of devices elsewhere, the ends of two chains changed. What cannot be made costs a large sum, so that the
 * way there stays open.
 */
import { assignLeads } from './assign.ts';
import { chainFits, edgesOf } from '../board/index.ts';
import type { Choice, Layout, PlanProblem } from '../board/index.ts';
import type { Frame } from './bound.ts';

/** The best layout that annealing has found, the choice at each of its links, and its cost; Infinity when it found none. */
export interface Annealed {
  readonly layout: Layout;
  readonly chosen: readonly number[];
  readonly cost: number;
}

/** Steps between two reports. */
const STEPS_AT_ONCE = 2000;

interface Slot {
  readonly output: number;
  readonly hub: number;
  readonly outlet: number;
}

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
): Generator<number, Annealed> {
  const { count } = problem;
  const slots: Slot[] = frame.flatMap((hub, output) =>
    hub < 0
      ? [{ output, hub, outlet: 0 }]
      : (problem.hubs[hub]?.outlets ?? []).map((_, outlet) => ({ output, hub, outlet })),
  );
  const usable = Math.max(1, slots.length - problem.spareOutlets);
  const big = bigCost(problem);
  const choicesAt = (slot: Slot, from: number, to: number): readonly Choice[] => {
    if (from >= 0) return problem.next[from]?.[to] ?? [];
    return slot.hub < 0
      ? (problem.outputs[slot.output]?.start[to] ?? [])
      : (problem.hubs[slot.hub]?.outlets[slot.outlet]?.[to] ?? []);
  };
  const leastAt = (slot: Slot, from: number, to: number): number => {
    let least = big;
    for (const { cost, uses } of choicesAt(slot, from, to)) {
      const sum = uses.reduce((all, kind) => all + (prices[kind] ?? 0), cost);
      if (sum < least) least = sum;
    }
    return least;
  };
  const starts = slots.map((slot) => Float64Array.from({ length: count }, (_, to) => leastAt(slot, -1, to)));
  const nextLeast = new Float64Array(count * count);
  for (let from = 0; from < count; from++)
    for (let to = 0; to < count; to++) nextLeast[from * count + to] = leastAt(slots[0] as Slot, from, to);

  const fixed = frame.reduce((sum, hub) => sum + (hub < 0 ? 0 : (problem.hubs[hub]?.price ?? 0)), 0);
  const chainPlain = (chain: readonly number[], slot: number): number => {
    if (chain.length === 0) return 0;
    const { hub } = slots[slot] as Slot;
    let cost = starts[slot]![chain[0]!]!;
    for (let at = 1; at < chain.length; at++) cost += nextLeast[chain[at - 1]! * count + chain[at]!]!;
    return chainFits(problem, chain, hub) ? cost : cost + big * (1 + chain.length);
  };
  const layoutOf = (all: readonly (readonly number[])[]): Layout =>
    frame.map((hub, output) => {
      const own = all.filter((_, slot) => slots[slot]?.output === output).map((chain) => [...chain]);
      return { hub, chains: hub < 0 ? own.filter((chain) => chain.length > 0) : own };
    });
  const costOf = (chains: readonly (readonly number[])[], plain: Float64Array): number => {
    let free = 0;
    for (const chain of chains) if (chain.length === 0) free++;
    const wish = free < slots.length - usable ? big * (slots.length - usable - free) : 0;
    let cost = fixed + wish;
    for (const one of plain) cost += one;
    return cost;
  };

  let chains: (readonly number[])[] = slots.map(() => []);
  const whole = Math.min(slots.length, usable);
  Array.from({ length: count }, (_, at) => at).forEach((device, at) => {
    chains[at % whole] = [...chains[at % whole]!, device];
  });
  let plain = Float64Array.from(chains, (chain, slot) => chainPlain(chain, slot));
  let cost = costOf(chains, plain);
  let coldest = cost;
  let best: Annealed = { layout: layoutOf(chains), chosen: [], cost: Infinity };
  const tryOut = (): void => {
    const layout = layoutOf(chains);
    const leads = assignLeads(
      edgesOf(problem, layout).map(({ choices }) => choices),
      problem.owned,
    );
    if (leads && cost < big && leads.cost + fixed < best.cost)
      best = { layout, chosen: leads.chosen, cost: leads.cost + fixed };
  };
  const pick = (most: number): number => Math.floor(chance() * most);
  const hot = Math.max(1, typicalCost(problem)) * 0.6;
  for (let step = 0; step < steps; step++) {
    const warmth = hot * 1e-3 ** (step / steps);
    const moved = move(chains, pick, slots.length);
    if (!moved) continue;
    const tried = [...chains];
    const triedPlain = plain.slice();
    for (const [slot, chain] of moved) {
      tried[slot] = chain;
      triedPlain[slot] = chainPlain(chain, slot);
    }
    const now = costOf(tried, triedPlain);
    if (now <= cost || chance() < Math.exp((cost - now) / warmth)) {
      chains = tried;
      plain = triedPlain;
      cost = now;
      if (cost < coldest - 1e-9) {
        coldest = cost;
        // While it is still hot most layouts are soon bettered; only those of the cool half are worth their leads.
        if (step > steps / 2) tryOut();
      }
    }
    if (step % STEPS_AT_ONCE === STEPS_AT_ONCE - 1) yield best.cost;
  }
  if (best.cost === Infinity) tryOut();
  return best;
}

/** A sum above every layout that can be made. */
function bigCost(problem: PlanProblem): number {
  let most = 1;
  const look = (rows: readonly (readonly Choice[])[]): void => {
    for (const choices of rows) for (const { cost } of choices) most = Math.max(most, cost);
  };
  problem.next.forEach(look);
  problem.outputs.forEach(({ start, feed }) => {
    look(start);
    look(feed);
  });
  problem.hubs.forEach(({ outlets, price }) => {
    outlets.forEach(look);
    most = Math.max(most, price);
  });
  return most * (problem.count + 1) * 4;
}

function typicalCost(problem: PlanProblem): number {
  const costs = problem.next.flat().flatMap((choices) => choices.map(({ cost }) => cost));
  return costs.length === 0 ? 1 : costs.reduce((sum, one) => sum + one, 0) / costs.length;
}

/** New chains at one or two slots, or undefined where the move drawn cannot be made. */
function move(
  chains: readonly (readonly number[])[],
  pick: (most: number) => number,
  slots: number,
): readonly (readonly [number, number[]])[] | undefined {
  const a = pick(slots);
  const from = chains[a] as readonly number[];
  if (from.length === 0) return undefined;
  const b = pick(slots);
  const to = chains[b] as readonly number[];
  switch (pick(4)) {
    case 0:
    case 1: {
      // A run of one to three devices to another place, now and then turned round.
      const at = pick(from.length);
      const run = from.slice(at, at + 1 + pick(3));
      if (pick(3) === 0) run.reverse();
      const rest = [...from.slice(0, at), ...from.slice(at + run.length)];
      if (a === b) {
        const place = pick(rest.length + 1);
        return [[a, [...rest.slice(0, place), ...run, ...rest.slice(place)]]];
      }
      const place = pick(to.length + 1);
      return [
        [a, rest],
        [b, [...to.slice(0, place), ...run, ...to.slice(place)]],
      ];
    }
    case 2: {
      if (to.length === 0) return undefined;
      const [i, j] = [pick(from.length), pick(to.length)];
      const first = [...from];
      if (a === b) {
        [first[i], first[j]] = [first[j]!, first[i]!];
        return [[a, first]];
      }
      const second = [...to];
      [first[i], second[j]] = [second[j]!, first[i]!];
      return [
        [a, first],
        [b, second],
      ];
    }
    default: {
      if (a === b) return undefined;
      const [i, j] = [pick(from.length + 1), pick(to.length + 1)];
      return [
        [a, [...from.slice(0, i), ...to.slice(j)]],
        [b, [...to.slice(0, j), ...from.slice(i)]],
      ];
    }
  }
}
