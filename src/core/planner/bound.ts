/**
 * A bound below every layout, for boards too large for tables over sets. For each way to put hubs on the outputs: every device
 * gets a reward for being fed (a Lagrangian multiplier), every kind of owned lead a price, and each outlet takes the walk of
 * most gain, which may come to a device twice where it has forgotten it. The sum is below every real layout; the
 * multipliers are moved to push it up.
 */
import type { Choice, PlanProblem } from '../board/index.ts';
import { walkTable } from './walks.ts';

/** One way to use the outputs: -1 for a chain of its own or nothing, else the number of a hub. */
export type Frame = readonly number[];

/** Bound on the layouts of one frame, and its multipliers. */
export interface FrameBound {
  readonly frame: Frame;
  readonly bound: number;
  /** Multipliers at the best bound: a reward for each device, a price for each kind of owned lead. */
  readonly rewards: Float64Array;
  readonly prices: Float64Array;
}

/** How to bound: rounds, how many neighbours a walk remembers (1 remembers nothing but itself), and where to start. */
export interface BoundOptions {
  readonly rounds: number;
  readonly memory: number;
  readonly from?: FrameBound;
}

/** Every frame that the topology and the limits allow. */
export function framesOf(problem: PlanProblem): readonly Frame[] {
  let frames: Frame[] = [[]];
  const hubs = problem.topology === 'chain' ? [] : problem.hubs.map((_, hub) => hub);
  for (let output = 0; output < problem.outputs.length; output++) {
    frames = frames.flatMap((frame) =>
      [-1, ...hubs]
        .filter(
          (hub) => hub < 0 || frame.filter((one) => one === hub).length < (problem.hubs[hub]?.limit ?? 0),
        )
        .map((hub) => [...frame, hub]),
    );
  }
  const alike = problem.outputs.map(
    (output, at) => at > 0 && JSON.stringify(output) === JSON.stringify(problem.outputs[at - 1]),
  );
  // Outputs that are alike may change places: one order of them is enough.
  frames = frames.filter((frame) => frame.every((hub, at) => !alike[at] || hub >= (frame[at - 1] ?? hub)));
  // A frame with too few places for the chains there must be holds no layout at all.
  const places = (frame: Frame): number =>
    frame.reduce((sum, hub) => sum + (hub < 0 ? 1 : (problem.hubs[hub]?.outlets.length ?? 0)), 0);
  const chains = fewestChains(problem);
  frames = frames.filter((frame) => places(frame) - problem.spareOutlets >= chains);
  return problem.topology === 'hub' ? frames.filter((frame) => frame.some((hub) => hub >= 0)) : frames;
}

/** Length of the longest chain that the hops and the shift of edges allow. */
function longestChain(problem: PlanProblem, hub: number): number {
  const sorted = [...problem.shift].sort((a, b) => a - b);
  let left = problem.budget + 1e-12 - (hub < 0 ? 0 : (problem.hubs[hub]?.shift ?? 0));
  let length = 0;
  for (const shift of sorted) {
    left -= shift;
    if (left < 0) break;
    length++;
  }
  return Math.max(0, Math.min(length, problem.mostHops - (hub < 0 ? 0 : 1), problem.count));
}

/**
 * The fewest chains into which the devices can be laid, circles allowed: every device that no other follows ends one. A
 * matching of devices to the devices that follow them leaves that many over.
 */
export function fewestChains(problem: PlanProblem): number {
  const { count, next } = problem;
  const before = new Int32Array(count).fill(-1);
  const follow = (from: number, seen: Uint8Array): boolean => {
    for (let to = 0; to < count; to++) {
      if (seen[to] === 1 || (next[from]?.[to] ?? []).length === 0) continue;
      seen[to] = 1;
      if (before[to]! < 0 || follow(before[to]!, seen)) {
        before[to] = from;
        return true;
      }
    }
    return false;
  };
  let followed = 0;
  for (let from = 0; from < count; from++) if (follow(from, new Uint8Array(count))) followed++;
  return count - followed;
}

/** Choices made flat, so that they can be priced again and again. */
interface FlatChoices {
  readonly costs: Float64Array;
  readonly uses: readonly (readonly number[])[];
  readonly starts: Int32Array;
}

function flatten(rows: readonly (readonly Choice[])[]): FlatChoices {
  const starts = new Int32Array(rows.length + 1);
  const all: Choice[] = [];
  rows.forEach((choices, at) => {
    all.push(...choices);
    starts[at + 1] = all.length;
  });
  return { costs: Float64Array.from(all.map(({ cost }) => cost)), uses: all.map(({ uses }) => uses), starts };
}

function priceInto(flat: FlatChoices, prices: Float64Array, into: Float64Array, picked: Int32Array): void {
  for (let row = 0; row + 1 < flat.starts.length; row++) {
    let best = Infinity;
    let choice = -1;
    for (let at = flat.starts[row]!; at < flat.starts[row + 1]!; at++) {
      let cost = flat.costs[at]!;
      for (const kind of flat.uses[at]!) cost += prices[kind]!;
      if (cost < best) {
        best = cost;
        choice = at;
      }
    }
    into[row] = best;
    picked[row] = choice;
  }
}

/** Rounds of moving the multipliers between two reports. */
const ROUNDS_AT_ONCE = 50;

/**
 * Push the bound of one frame up. Yields the bound so far from time to time; ends when `rounds` are done or the bound
 * reaches `target`, the cost of a layout that is known.
 */
export function* boundFrame(
  problem: PlanProblem,
  frame: Frame,
  target: number,
  { rounds, memory, from }: BoundOptions,
): Generator<number, FrameBound> {
  const { count } = problem;
  const nextFlat = flatten(problem.next.flat());
  const heads = frame.flatMap((hub, output) =>
    hub < 0
      ? [{ hub, rows: problem.outputs[output]?.start ?? [] }]
      : (problem.hubs[hub]?.outlets ?? []).map((rows) => ({ hub, rows })),
  );
  const flats = heads.map(({ rows }) => flatten(rows));
  const lengths = heads.map(({ hub }) => longestChain(problem, hub));
  const feeds = flatten(
    frame.map((hub, output) => (hub < 0 ? [] : (problem.outputs[output]?.feed[hub] ?? []))),
  );
  const deepest = Math.max(0, ...lengths);
  const fixed = frame.reduce((sum, hub) => sum + (hub < 0 ? 0 : (problem.hubs[hub]?.price ?? 0)), 0);

  const rewards = from ? from.rewards.slice() : new Float64Array(count);
  const prices = from ? from.prices.slice() : new Float64Array(problem.owned.length);
  let best = { rewards: rewards.slice(), prices: prices.slice() };
  const next = new Float64Array(count * count);
  const nextPick = new Int32Array(count * count);
  const feedCosts = new Float64Array(frame.length);
  const feedPick = new Int32Array(frame.length);
  const starts = flats.map(() => new Float64Array(count));
  const startPicks = flats.map(() => new Int32Array(count));
  let bound = -Infinity;
  let scale = 1;
  let stale = 0;
  // A start from which the rewards are not far off: the cheapest way into each device.
  priceInto(nextFlat, prices, next, nextPick);
  flats.forEach((flat, at) => priceInto(flat, prices, starts[at]!, startPicks[at]!));
  for (let device = 0; device < count; device++) {
    let least = Infinity;
    for (let before = 0; before < count; before++) least = Math.min(least, next[before * count + device]!);
    for (const start of starts) least = Math.min(least, start[device]!);
    if (least === Infinity) return { frame, bound: Infinity, ...best };
    if (!from) rewards[device] = least;
  }
  const walks = walkTable(count, next, deepest, memory);
  for (let round = 0; round < rounds; round++) {
    priceInto(nextFlat, prices, next, nextPick);
    flats.forEach((flat, at) => priceInto(flat, prices, starts[at]!, startPicks[at]!));
    priceInto(feeds, prices, feedCosts, feedPick);
    const visits = new Float64Array(count).fill(-1);
    const used = Float64Array.from(problem.owned, (one) => -one);
    const take = (flat: FlatChoices, choice: number): void => {
      for (const kind of flat.uses[choice] ?? []) used[kind]!++;
    };
    let value = fixed;
    for (let kind = 0; kind < prices.length; kind++) value -= prices[kind]! * (problem.owned[kind] ?? 0);
    for (let device = 0; device < count; device++) value += rewards[device]!;
    let impossible = false;
    frame.forEach((hub, output) => {
      if (hub < 0) return;
      if (feedPick[output]! < 0) impossible = true;
      value += feedCosts[output]!;
      take(feeds, feedPick[output]!);
    });
    if (impossible) return { frame, bound: Infinity, ...best };
    walks.fill(next, rewards);
    const known = new Map<string, ReturnType<typeof walks.best>>();
    const gains = heads.map((_, at) => {
      const key = `${lengths[at]} ${starts[at]!.join()}`;
      const walk = known.get(key) ?? walks.best(starts[at]!, lengths[at]!);
      known.set(key, walk);
      return walk;
    });
    // Free outlets are a wish: those of least gain stay free.
    const order = gains.map((_, at) => at).sort((a, b) => gains[a]!.value - gains[b]!.value);
    order.slice(0, Math.max(0, heads.length - problem.spareOutlets)).forEach((at) => {
      const walk = gains[at]!;
      if (walk.value >= 0) return;
      value += walk.value;
      walk.devices.forEach((device, place) => {
        visits[device]!++;
        if (place === 0) take(flats[at]!, startPicks[at]![device]!);
        else take(nextFlat, nextPick[walk.devices[place - 1]! * count + device]!);
      });
    });
    if (value > bound + 1e-9) {
      if (value > bound + 1e-4 * Math.abs(bound)) stale = 0;
      bound = value;
      best = { rewards: rewards.slice(), prices: prices.slice() };
    } else stale++;
    if (bound >= target - 1e-5) break;
    if (stale > 15) {
      scale /= 1.5;
      stale = 0;
      if (scale < 1e-3) break;
    }
    let length = 0;
    for (let device = 0; device < count; device++) length += visits[device]! ** 2;
    for (let kind = 0; kind < prices.length; kind++)
      if (used[kind]! > 0 || prices[kind]! > 0) length += used[kind]! ** 2;
    if (length === 0) break;
    const goal = target < Infinity ? target : value * 1.1 + 1;
    const step = (scale * Math.max(goal - value, 1e-6)) / length;
    for (let device = 0; device < count; device++) rewards[device]! -= step * visits[device]!;
    for (let kind = 0; kind < prices.length; kind++)
      prices[kind] = Math.max(0, prices[kind]! + step * used[kind]!);
    if (round % ROUNDS_AT_ONCE === ROUNDS_AT_ONCE - 1) yield bound;
  }
  return { frame, bound, ...best };
}
