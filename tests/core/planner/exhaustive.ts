/** Every layout of a small problem, one by one: the measure of the exact search, written without looking at how it works. */
import { assignLeads } from '../../../src/core/planner/assign.ts';
import type { Choice } from '../../../src/core/board/offers.ts';
import type { PlanProblem } from '../../../src/core/planner/problem.ts';
import type { Random } from '../../support/random.ts';

/** A chain of devices on one outlet of a hub, or, where `hub` is -1, on an output itself; it changes as devices are put on it. */
interface Slot {
  readonly output: number;
  readonly hub: number;
  readonly outlet: number;
  readonly chain: number[];
  /** The slots before it that are alike in every way: another outlet of the same hub with the same choices. */
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

/**
 * All ways to hang the devices on the slots: each device in turn at every free place, so every order of every chain comes up.
 * Of slots that are alike and empty only the first is filled: which of them a chain hangs on makes no difference.
 */
function* layouts(slots: readonly Slot[], count: number, device = 0): Generator<undefined> {
  if (device === count) return yield undefined;
  for (const { chain, alike } of slots) {
    if (chain.length === 0 && alike.some((other) => other.chain.length === 0)) continue;
    for (let at = 0; at <= chain.length; at++) {
      chain.splice(at, 0, device);
      yield* layouts(slots, count, device + 1);
      chain.splice(at, 1);
    }
  }
}

/** The empty slots of a frame: one for each outlet of a hub, and one for each output without a hub. */
function slotsOf({ hubs, ways }: PlanProblem, frame: readonly number[]): readonly Slot[] {
  return frame.flatMap((hub, output) => {
    const slots: Slot[] = [];
    const outlets = hubs[hub]?.outlets ?? [-1];
    const words = outlets.map((source) => JSON.stringify(ways[source]));
    outlets.forEach((_, outlet) => {
      const alike = slots.filter((other) => words[other.outlet] === words[outlet]);
      slots.push({ output, hub, outlet, chain: [], alike });
    });
    return slots;
  });
}

/** The links of a layout, as the numbers of their sources and targets by turns. */
function linksOf(problem: PlanProblem, frame: readonly number[], slots: readonly Slot[]): readonly number[] {
  const links: number[] = [];
  frame.forEach((hub, output) => {
    if (hub >= 0) links.push(problem.outputs[output] ?? -1, problem.count + hub);
  });
  for (const { output, hub, outlet, chain } of slots)
    chain.forEach((device, at) => {
      const head = hub < 0 ? problem.outputs[output] : problem.hubs[hub]?.outlets[outlet];
      links.push((at > 0 ? chain[at - 1] : head) ?? -1, device);
    });
  return links;
}

/** Whether no chain is too long or uses up the bits of its bytes, and enough outputs and outlets stay free. */
function isAllowed(problem: PlanProblem, slots: readonly Slot[]): boolean {
  let free = 0;
  for (const { hub, chain } of slots) {
    if (chain.length === 0) free++;
    else if (chain.length + (hub < 0 ? 0 : 1) > problem.mostHops) return false;
    let shift = chain.length === 0 ? 0 : (problem.hubs[hub]?.shift ?? 0);
    for (const device of chain) shift += problem.shift[device] ?? 0;
    if (shift > problem.budget + 1e-12) return false;
  }
  return free >= problem.spareOutlets;
}

/** The least cost over every layout, or Infinity. Costs and limits are counted here anew, link by link. */
export function cheapestOfAll(problem: PlanProblem): number {
  const none: readonly Choice[] = [];
  const floors = problem.ways.map((row) =>
    row.map((choices) => Math.min(...choices.map(({ cost }) => cost))),
  );
  let best = Infinity;
  for (const frame of frames(problem)) {
    const slots = slotsOf(problem, frame);
    for (const _ of layouts(slots, problem.count)) {
      const links = linksOf(problem, frame, slots);
      // A floor that needs no assignment, and no end where a link has no choice: most layouts end here.
      let floor = 0;
      for (let at = 0; at < links.length; at += 2)
        floor += floors[links[at] as number]?.[links[at + 1] as number] ?? Infinity;
      if (floor >= best || !isAllowed(problem, slots)) continue;
      const choices: (readonly Choice[])[] = [];
      for (let at = 0; at < links.length; at += 2)
        choices.push(problem.ways[links[at] as number]?.[links[at + 1] as number] ?? none);
      best = Math.min(best, assignLeads(choices, problem.owned)?.cost ?? Infinity);
    }
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
