/**
 * The cheapest layout when every owned lead has a price and there are enough of each: chains over sets of devices, sets
 * over outlets, outlets and chains over outputs. Exact; time grows as 3 to the number of devices.
 */
import { choicesAt, edgeKey } from './rules.ts';
import type { Rules } from './rules.ts';
import type { Choice, Edge, Layout, OutputUse, PlanProblem } from '../board/index.ts';
import { edgesOf } from '../board/index.ts';

/** A layout, the choice at each of its links, and its priced cost with hubs. */
export interface SetSolution {
  readonly layout: Layout;
  readonly chosen: readonly number[];
  readonly cost: number;
}

/** Most devices for tables over sets. */
export const MOST_IN_SETS = 14;

type Row = Float64Array;

/** Costs of feeding a set of devices from some place, by the number of outlets left free (the last entry: that many or more). */
interface Shared {
  readonly costs: readonly Row[];
  readonly chainsOf: (free: number, set: number) => readonly (readonly number[])[];
}

/** Solve with prices for owned leads, under rules. Undefined when no layout is possible. */
export function solveSets(
  problem: PlanProblem,
  prices: readonly number[],
  rules: Rules,
): SetSolution | undefined {
  const { count } = problem;
  if (count > MOST_IN_SETS)
    throw new Error(`plan: at most ${MOST_IN_SETS} devices for an exact table, got ${count}`);
  const full = 1 << count;
  const forcedInto = new Map<number, string>();
  const forcedFeed = new Map<number, string>();
  for (const key of rules.forced.keys()) {
    if (key.startsWith('f')) forcedFeed.set(Number(key.slice(1).split('>')[0]), key);
    else forcedInto.set(Number(key.split('>')[1]), key);
  }
  const pick = (edge: Edge): number => pickChoice(choicesAt(problem, edge), edgeKey(edge), prices, rules);
  const costOf = (edge: Edge): number => {
    const key = edgeKey(edge);
    if (edge.kind === 'feed') {
      const forced = forcedFeed.get(edge.output);
      if (forced !== undefined && forced !== key) return Infinity;
    } else {
      const forced = forcedInto.get(edge.to);
      if (forced !== undefined && forced !== key) return Infinity;
    }
    const choices = choicesAt(problem, edge);
    const choice = choices[pick(edge)];
    return choice ? priced(choice, prices) : Infinity;
  };
  const next: number[] = [];
  for (let from = 0; from < count; from++)
    for (let to = 0; to < count; to++) next.push(from === to ? Infinity : costOf({ kind: 'next', from, to }));
  const sizes = new Uint8Array(full);
  const shifts = new Float64Array(full);
  for (let set = 1; set < full; set++) {
    const low = 31 - Math.clz32(set & -set);
    sizes[set] = sizes[set & (set - 1)]! + 1;
    shifts[set] = shifts[set & (set - 1)]! + (problem.shift[low] ?? 0);
  }
  const longest = Math.min(count, problem.mostHops);
  const paths = chainTable(count, next, sizes, longest);

  /** Cost of one chain over a set behind a place that feeds each device at `start`; no device costs nothing. */
  const chainCosts = (start: Row, before: number, shift: number): Row => {
    const costs = new Float64Array(full).fill(Infinity);
    costs[0] = 0;
    for (let set = 1; set < full; set++) {
      if (sizes[set]! + before > problem.mostHops || shifts[set]! + shift > problem.budget + 1e-12) continue;
      let best = Infinity;
      for (let first = 0; first < count; first++) {
        const cost = start[first]! + paths[set * count + first]!;
        if (cost < best) best = cost;
      }
      costs[set] = best;
    }
    return costs;
  };
  const chainOf = (start: Row, set: number): readonly number[] => {
    const chain: number[] = [];
    let from = -1;
    for (let left = set; left > 0;) {
      let best = -1;
      let least = Infinity;
      for (let at = 0; at < count; at++) {
        const step = from < 0 ? start[at]! : next[from * count + at]!;
        const cost = step + paths[left * count + at]!;
        if (cost < least) {
          least = cost;
          best = at;
        }
      }
      chain.push(best);
      left &= ~(1 << best);
      from = best;
    }
    return chain;
  };
  const spares = problem.spareOutlets;
  const rowOf = (edge: (to: number) => Edge): Row =>
    Float64Array.from({ length: count }, (_, to) => costOf(edge(to)));

  const hubs = problem.hubs.map((hub, number): Shared | undefined => {
    if (problem.topology === 'chain') return undefined;
    const starts = hub.outlets.map((_, outlet) =>
      rowOf((to) => ({ kind: 'outlet', hub: number, outlet, to, output: 0 })),
    );
    return shareOut(full, spares, starts, (start) => chainCosts(start, 1, hub.shift), chainOf);
  });
  return shareOutputs();

  function shareOutputs(): SetSolution | undefined {
    const limited = problem.hubs.map(({ limit }) => limit === 1);
    const bits = limited.map((one, at) => (one ? 1 << limited.slice(0, at).filter(Boolean).length : 0));
    const masks = 1 << limited.filter(Boolean).length;
    const blocks = masks * 2 * (spares + 1);
    const block = (mask: number, hubUsed: number, free: number): number =>
      (mask * 2 + hubUsed) * (spares + 1) + free;
    let now: Row[] = Array.from({ length: blocks }, () => new Float64Array(full).fill(Infinity));
    now[block(0, 0, 0)]![0] = 0;
    const steps: { from: Int32Array; set: Int32Array; option: Int32Array; free: Int32Array }[][] = [];
    problem.outputs.forEach((_, output) => {
      const start = rowOf((to) => ({ kind: 'start', output, to }));
      const direct = forcedFeed.has(output) ? undefined : chainCosts(start, 0, 0);
      const after: Row[] = now.map(() => new Float64Array(full).fill(Infinity));
      const step = now.map(() => ({
        from: new Int32Array(full).fill(-1),
        set: new Int32Array(full),
        option: new Int32Array(full).fill(-1),
        free: new Int32Array(full),
      }));
      const lay = (
        from: number,
        to: number,
        base: number,
        costs: Row,
        option: number,
        free: number,
        setsFrom: number,
        setsTo: number,
      ): void => {
        const before = now[from]!;
        const target = after[to]!;
        const marks = step[to]!;
        for (let covered = 0; covered < full; covered++) {
          const sum = before[covered]! + base;
          if (sum === Infinity) continue;
          const rest = full - 1 - covered;
          for (let set = rest; ; set = (set - 1) & rest) {
            if (set >= setsFrom && set <= setsTo) {
              const cost = sum + costs[set]!;
              const all = covered | set;
              if (cost < target[all]!) {
                target[all] = cost;
                marks.from[all] = from;
                marks.set[all] = set;
                marks.option[all] = option;
                marks.free[all] = free;
              }
            }
            if (set === 0) break;
          }
        }
      };
      for (let mask = 0; mask < masks; mask++)
        for (let hubUsed = 0; hubUsed < 2; hubUsed++)
          for (let free = 0; free <= spares; free++) {
            const from = block(mask, hubUsed, free);
            if (!now[from]!.some((one) => one < Infinity)) continue;
            if (direct) {
              lay(from, block(mask, hubUsed, free), 0, direct, -1, 0, 1, full);
              lay(from, block(mask, hubUsed, Math.min(spares, free + 1)), 0, direct, -1, 0, 0, 0);
            }
            hubs.forEach((hub, number) => {
              const bit = bits[number] ?? 0;
              if (!hub || (mask & bit) !== 0) return;
              const base = (problem.hubs[number]?.price ?? 0) + costOf({ kind: 'feed', output, hub: number });
              if (base === Infinity) return;
              hub.costs.forEach((costs, open) =>
                lay(
                  from,
                  block(mask | bit, 1, Math.min(spares, free + open)),
                  base,
                  costs,
                  number,
                  open,
                  0,
                  full,
                ),
              );
            });
          }
      now = after;
      steps.push(step);
    });
    let end = -1;
    for (let mask = 0; mask < masks; mask++)
      for (let hubUsed = 0; hubUsed < 2; hubUsed++) {
        if (problem.topology === 'hub' && hubUsed === 0) continue;
        const at = block(mask, hubUsed, spares);
        if (now[at]![full - 1]! < Infinity && (end < 0 || now[at]![full - 1]! < now[end]![full - 1]!))
          end = at;
      }
    if (end < 0) return undefined;
    const cost = now[end]![full - 1]!;
    const layout: OutputUse[] = [];
    let set = full - 1;
    for (let output = problem.outputs.length - 1; output >= 0; output--) {
      const marks = steps[output]![end]!;
      const part = marks.set[set]!;
      const hub = marks.option[set]!;
      const start = rowOf((to) => ({ kind: 'start', output, to }));
      layout.unshift({
        hub,
        chains:
          hub < 0 ? (part === 0 ? [] : [chainOf(start, part)]) : hubs[hub]!.chainsOf(marks.free[set]!, part),
      });
      end = marks.from[set]!;
      set &= ~part;
    }
    return { layout, cost, chosen: edgesOf(problem, layout).map(({ edge }) => pick(edge)) };
  }
}

function priced({ cost, uses }: Choice, prices: readonly number[]): number {
  let sum = cost;
  for (const kind of uses) sum += prices[kind] ?? 0;
  return sum;
}

function pickChoice(
  choices: readonly Choice[],
  key: string,
  prices: readonly number[],
  rules: Rules,
): number {
  const forced = rules.forced.get(key);
  if (forced !== undefined) return forced;
  let best = -1;
  let least = Infinity;
  choices.forEach((choice, at) => {
    if (rules.banned.size > 0 && choice.uses.some((kind) => rules.banned.has(`${key} ${kind}`))) return;
    const cost = priced(choice, prices);
    if (cost < least) {
      least = cost;
      best = at;
    }
  });
  return best;
}

/** Cheapest way along a set of devices that begins at each of them. */
function chainTable(count: number, next: readonly number[], sizes: Uint8Array, longest: number): Row {
  const full = 1 << count;
  const paths = new Float64Array(full * count).fill(Infinity);
  for (let set = 1; set < full; set++) {
    const size = sizes[set]!;
    if (size > longest) continue;
    for (let first = 0; first < count; first++) {
      if ((set & (1 << first)) === 0) continue;
      if (size === 1) {
        paths[set * count + first] = 0;
        continue;
      }
      const rest = set & ~(1 << first);
      let best = Infinity;
      for (let then = 0; then < count; then++) {
        const cost = next[first * count + then]! + paths[rest * count + then]!;
        if (cost < best) best = cost;
      }
      paths[set * count + first] = best;
    }
  }
  return paths;
}

/** Share sets of devices out over outlets, a chain each or none. */
function shareOut(
  full: number,
  spares: number,
  starts: readonly Row[],
  chainCosts: (start: Row) => Row,
  chainOf: (start: Row, set: number) => readonly number[],
): Shared {
  const alike = starts.map((start, at) => starts.slice(0, at).every((one) => same(one, start)));
  let now: Row[] = Array.from({ length: spares + 1 }, () => new Float64Array(full).fill(Infinity));
  now[0]![0] = 0;
  const steps: { set: Int32Array; from: Int32Array }[][] = [];
  let costs: Row = new Float64Array(full);
  starts.forEach((start, outlet) => {
    if (outlet === 0 || !same(start, starts[outlet - 1]!)) costs = chainCosts(start);
    const after = now.map(() => new Float64Array(full).fill(Infinity));
    const step = now.map(() => ({ set: new Int32Array(full), from: new Int32Array(full).fill(-1) }));
    now.forEach((before, free) => {
      const open = Math.min(spares, free + 1);
      for (let set = 0; set < full; set++) {
        if (before[set]! < after[open]![set]!) {
          after[open]![set] = before[set]!;
          step[open]!.set[set] = 0;
          step[open]!.from[set] = free;
        }
      }
      const target = after[free]!;
      const marks = step[free]!;
      for (let set = 1; set < full; set++) {
        // Outlets that are all alike may take their chains in any order: let the newest one hold the first device.
        const must = alike[outlet] === true ? set & -set : 0;
        let best = target[set]!;
        for (let part = set; part > 0; part = (part - 1) & set) {
          if ((part & must) !== must) continue;
          const cost = before[set ^ part]! + costs[part]!;
          if (cost < best) {
            best = cost;
            marks.set[set] = part;
            marks.from[set] = free;
          }
        }
        target[set] = best;
      }
    });
    now = after;
    steps.push(step);
  });
  return {
    costs: now,
    chainsOf: (free, whole) => {
      const chains: (readonly number[])[] = starts.map(() => []);
      let [open, set] = [free, whole];
      for (let outlet = starts.length - 1; outlet >= 0; outlet--) {
        const marks = steps[outlet]![open]!;
        const part = marks.set[set]!;
        if (part > 0) chains[outlet] = chainOf(starts[outlet]!, part);
        open = marks.from[set]!;
        set ^= part;
      }
      return chains;
    },
  };
}

function same(a: Row, b: Row): boolean {
  return a.every((one, at) => one === b[at]);
}
