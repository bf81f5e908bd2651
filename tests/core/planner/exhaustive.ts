/** Every layout of a small problem, one by one: the measure of the exact search, written without looking at how it works. */
import { assignLeads } from '../../../src/core/planner/assign.ts';
import type { Choice } from '../../../src/core/board/offers.ts';
import type { Layout, OutputUse, PlanProblem } from '../../../src/core/planner/problem.ts';
import type { Random } from '../../support/random.ts';

/** All ways to hang the devices on the outputs: each device in turn at every free place, so every order of every chain comes up. */
function* layouts(problem: PlanProblem): Generator<Layout> {
  const options: readonly number[] = [-1, ...problem.hubs.map((_, hub) => hub)];
  function* frames(output: number, used: readonly number[]): Generator<readonly number[]> {
    if (output === problem.outputs.length) {
      yield used;
      return;
    }
    for (const hub of options) {
      const times = used.filter((one) => one === hub).length;
      if (hub >= 0 && times >= (problem.hubs[hub]?.limit ?? 0)) continue;
      if (hub >= 0 && problem.topology === 'chain') continue;
      yield* frames(output + 1, [...used, hub]);
    }
  }
  for (const frame of frames(0, [])) {
    if (problem.topology === 'hub' && frame.every((hub) => hub < 0)) continue;
    const slots = frame.flatMap((hub, output) =>
      hub < 0 ? [{ output, hub }] : (problem.hubs[hub]?.outlets ?? []).map(() => ({ output, hub })),
    );
    const chains: number[][] = slots.map(() => []);
    function* place(device: number): Generator<Layout> {
      if (device === problem.count) {
        yield frame.map((hub, output): OutputUse => {
          const own = chains.filter((_, at) => slots[at]?.output === output);
          return {
            hub,
            chains: hub < 0 ? own.filter((chain) => chain.length > 0) : own.map((chain) => [...chain]),
          };
        });
        return;
      }
      for (const chain of chains) {
        for (let at = 0; at <= chain.length; at++) {
          chain.splice(at, 0, device);
          yield* place(device + 1);
          chain.splice(at, 1);
        }
      }
    }
    yield* place(0);
  }
}

/** The least cost over every layout, or Infinity. Costs and limits are counted here anew, link by link. */
export function cheapestOfAll(problem: PlanProblem): number {
  let best = Infinity;
  for (const layout of layouts(problem)) {
    let free = 0;
    let fits = true;
    const links: (readonly Choice[])[] = [];
    const add = (source: number, target: number): void =>
      void links.push(problem.ways[source]?.[target] ?? []);
    layout.forEach(({ hub, chains }, output) => {
      const offer = problem.hubs[hub];
      const source = problem.outputs[output] ?? -1;
      if (offer) {
        add(source, problem.count + hub);
        free += chains.filter((chain) => chain.length === 0).length;
      } else if (chains.length === 0) free++;
      chains.forEach((chain, outlet) => {
        let shift = offer?.shift ?? 0;
        chain.forEach((device, at) => {
          shift += problem.shift[device] ?? 0;
          add(at > 0 ? (chain[at - 1] ?? -1) : offer ? (offer.outlets[outlet] ?? -1) : source, device);
        });
        if (
          chain.length > 0 &&
          (chain.length + (offer ? 1 : 0) > problem.mostHops || shift > problem.budget + 1e-12)
        )
          fits = false;
      });
    });
    if (!fits || free < problem.spareOutlets || links.some((choices) => choices.length === 0)) continue;
    // A floor that needs no assignment: most layouts end here.
    const floor = links.reduce((sum, choices) => sum + Math.min(...choices.map(({ cost }) => cost)), 0);
    if (floor >= best) continue;
    const leads = assignLeads(links, problem.owned);
    if (leads) best = Math.min(best, leads.cost);
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
