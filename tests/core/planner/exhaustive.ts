/** Every layout of a small problem, one by one: the measure of the exact search, written without looking at how it works. */
import { assignLeads } from '../../../src/core/planner/assign.ts';
import type { Choice } from '../../../src/core/board/offers.ts';
import type { PlanProblem } from '../../../src/core/planner/problem.ts';
import type { Random } from '../../support/random.ts';

/** An output, or an outlet of the hub on one, with the chain of devices on it, which changes as they are put there. */
interface Slot {
  readonly hub: number;
  readonly source: number;
  readonly chain: number[];
  /** The slots before it that are alike in every way: the same hub, or none, and the same choices. */
  readonly alike: readonly Slot[];
}

/** All ways to put one hub, or none, on each output. */
function* frames(problem: PlanProblem, used: readonly number[] = []): Generator<readonly number[]> {
  if (used.length === problem.outputs.length) {
    if (problem.topology !== 'hub' || used.some((hub) => hub >= 0)) yield used;
    return;
  }
  for (const hub of [-1, ...problem.hubs.keys()]) {
    const times = used.filter((one) => one === hub).length;
    if (hub >= 0 && (times >= (problem.hubs[hub]?.limit ?? 0) || problem.topology === 'chain')) continue;
    yield* frames(problem, [...used, hub]);
  }
}

/** The empty slots of a frame. */
function slotsOf({ hubs, outputs, ways }: PlanProblem, frame: readonly number[]): readonly Slot[] {
  const slots: Slot[] = [];
  const words = (source: number): string => JSON.stringify(ways[source]);
  frame.forEach((hub, output) => {
    for (const source of hubs[hub]?.outlets ?? outputs.slice(output, output + 1)) {
      const alike = slots.filter((other) => other.hub === hub && words(other.source) === words(source));
      slots.push({ hub, source, chain: [], alike });
    }
  });
  return slots;
}

/**
 * All ways to hang the devices on the slots: each device in turn at every free place, so every order of every chain comes up.
 * Of slots that are alike and empty only the first is filled: which of them a chain hangs on makes no difference.
 */
function eachLayout(slots: readonly Slot[], count: number, visit: () => void, device = 0): void {
  if (device === count) return visit();
  for (const { chain, alike } of slots) {
    if (chain.length === 0 && alike.some((other) => other.chain.length === 0)) continue;
    for (let at = 0; at <= chain.length; at++) {
      chain.splice(at, 0, device);
      eachLayout(slots, count, visit, device + 1);
      chain.splice(at, 1);
    }
  }
}

/** Whether no chain is too long or uses up the bits of its bytes, and enough outputs and outlets stay free. */
function isAllowed(problem: PlanProblem, slots: readonly Slot[]): boolean {
  const free = slots.filter(({ chain }) => chain.length === 0).length;
  const fits = slots.every(({ hub, chain }) => {
    const shift = chain.reduce(
      (sum, device) => sum + (problem.shift[device] ?? 0),
      problem.hubs[hub]?.shift ?? 0,
    );
    const hops = chain.length + (hub < 0 ? 0 : 1);
    return chain.length === 0 || (hops <= problem.mostHops && shift <= problem.budget + 1e-12);
  });
  return fits && free >= problem.spareOutlets;
}

/** The least cost over every layout, or Infinity. Costs and limits are counted here anew, link by link. */
export function cheapestOfAll(problem: PlanProblem): number {
  const floors = problem.ways.map((row) =>
    row.map((choices) => Math.min(...choices.map(({ cost }) => cost))),
  );
  const floorOf = (source: number, target: number): number => floors[source]?.[target] ?? Infinity;
  let best = Infinity;
  for (const frame of frames(problem)) {
    const feeds = frame.flatMap((hub, output) =>
      hub < 0 ? [] : [[problem.outputs[output] ?? -1, problem.count + hub] as const],
    );
    const fed = feeds.reduce((sum, [source, hub]) => sum + floorOf(source, hub), 0);
    const slots = slotsOf(problem, frame);
    eachLayout(slots, problem.count, () => {
      // A floor that needs no assignment, and no end where a link has no choice: most layouts end here.
      let floor = fed;
      for (const { source, chain } of slots)
        for (let at = 0; at < chain.length; at++)
          floor += floorOf(at > 0 ? (chain[at - 1] ?? -1) : source, chain[at] ?? -1);
      if (floor >= best || !isAllowed(problem, slots)) return;
      const links = slots.flatMap(({ source, chain }) =>
        chain.map((device, at) => [at > 0 ? (chain[at - 1] ?? -1) : source, device] as const),
      );
      const choices = [...feeds, ...links].map(([from, to]) => problem.ways[from]?.[to] ?? []);
      best = Math.min(best, assignLeads(choices, problem.owned)?.cost ?? Infinity);
    });
  }
  return best;
}

/** A problem from a seed: prices in whole units, some links impossible, owned leads that several links could take. */
export function randomProblem(random: Random, count: number): PlanProblem {
  const kinds = random.integer(0, 3);
  const choices = (possible: number): readonly Choice[] => {
    if (!random.chance(possible)) return [];
    const cost = random.integer(2, 20);
    const own = Array.from({ length: kinds }, (_, kind) => kind).filter(() => random.chance(0.4));
    const owned = own.map((kind): Choice => ({
      cost: random.chance(0.7) ? 0 : random.integer(0, cost - 1),
      uses: [kind],
    }));
    const series: readonly Choice[] =
      own.length > 1 && random.chance(0.3) ? [{ cost: 0, uses: [own[0] ?? 0, own[1] ?? 0] }] : [];
    return [{ cost, uses: [] }, ...owned, ...series];
  };
  const row = (possible: number): (readonly Choice[])[] =>
    Array.from({ length: count }, () => choices(possible));
  const outputs = random.integer(1, 2);
  const hubs = Array.from({ length: random.integer(0, outputs === 2 && count > 4 ? 1 : 2) }, () => {
    const outlet = row(0.9);
    const alike = random.chance(0.6);
    return {
      price: random.integer(0, 25),
      limit: random.chance(0.5) ? 1 : Infinity,
      rows: Array.from({ length: random.integer(1, 3) }, () => (alike ? outlet : row(0.9))),
    };
  });
  const feed = (price: number): readonly Choice[] =>
    choices(0.9).map((one) => ({ ...one, cost: one.cost + price }));
  const none = hubs.map(() => []);
  let source = count + outputs;
  return {
    count,
    ways: [
      ...Array.from({ length: count }, (_, from) => [
        ...row(0.9).map((one, to) => (to === from ? [] : one)),
        ...none,
      ]),
      ...Array.from({ length: outputs }, () => [...row(0.9), ...hubs.map(({ price }) => feed(price))]),
      ...hubs.flatMap(({ rows }) => rows.map((one) => [...one, ...none])),
    ],
    outputs: Array.from({ length: outputs }, (_, output) => count + output),
    hubs: hubs.map(({ limit, rows }) => ({ limit, shift: 1, outlets: rows.map(() => source++) })),
    owned: Array.from({ length: kinds }, () => random.integer(1, 2)),
    shift: Array.from({ length: count }, () => random.integer(1, 3)),
    budget: random.integer(6, 16),
    mostHops: random.integer(3, 7),
    spareOutlets: random.chance(0.2) ? 1 : 0,
    topology: random.pick(['any', 'any', 'chain', 'hub']),
  };
}
