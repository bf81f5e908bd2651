/**
 * A bound below every layout of one frame, for boards too large for tables over sets. Every device gets a reward for being
 * fed, every kind of owned lead a price (Lagrangian multipliers), and each place takes the walk of most gain, which may come
 * to a device twice where it has forgotten it. The sum is below every real layout; the multipliers are moved to push it up.
 * It buys two things: a plan of 24 devices comes with a bound within 1 % (`npm run speed`), and its prices for owned leads
 * are those without which annealing ends 2 to 9 % dearer.
 */
import type { Frame } from './frames.ts';
import { headsOf } from './frames.ts';
import { priceLinks } from './price-links.ts';
import type { PlanProblem } from './problem.ts';
import { walkTable } from './walks.ts';

/** Bound on the layouts of one frame; `multipliers` are the rewards of the devices, then the prices of owned leads, at that bound. */
export interface FrameBound {
  readonly frame: Frame;
  readonly bound: number;
  readonly multipliers: Float64Array;
}

/** Rounds of moving the multipliers: between two reports, in all with a cost to aim at, and without one. */
const ROUNDS_AT_ONCE = 25;
const AIMED_ROUNDS = 150;
const FIRST_ROUNDS = 100;

/** Rounds without gain before the step is cut by this factor, and the scale at which it is over. */
const STALE_ROUNDS = 15;
const CUT = 1.5;
const LEAST_SCALE = 1e-3;

/** A bound this close to the cost that is aimed at has reached it. */
const REACHED = 1e-5;

/**
 * Push the bound of one frame up, from earlier multipliers where there are some. Yields the bound so far from time to time;
 * ends when it stands still or reaches `target`, the cost of a layout that is known.
 */
export function* boundFrame(
  problem: PlanProblem,
  frame: Frame,
  target: number,
  from?: FrameBound,
): Generator<number, FrameBound> {
  const { count } = problem;
  const y = from?.multipliers.slice() ?? firstMultipliers(problem, frame);
  const relax = relaxation(problem, frame);
  let best: FrameBound = { frame, bound: -Infinity, multipliers: y.slice() };
  let [scale, stale] = [1, 0];
  const most = target < Infinity ? AIMED_ROUNDS : FIRST_ROUNDS;
  for (let round = 1; round <= most && scale >= LEAST_SCALE; round++) {
    const { value, slope } = relax(y);
    if (value === Infinity) return { ...best, bound: Infinity };
    stale = value > best.bound + 1e-4 * Math.abs(best.bound) ? 0 : stale + 1;
    if (value > best.bound) best = { frame, bound: value, multipliers: y.slice() };
    if (stale > STALE_ROUNDS) [scale, stale] = [scale / CUT, 0];
    const moves = (at: number): boolean => at < count || slope[at]! > 0 || y[at]! > 0;
    const length = slope.reduce((sum, one, at) => (moves(at) ? sum + one * one : sum), 0);
    if (best.bound >= target - REACHED || length === 0) break;
    const goal = target < Infinity ? target : value * 1.1 + 1;
    const step = (scale * Math.max(goal - value, 1e-6)) / length;
    for (let at = 0; at < y.length; at++) {
      y[at]! += step * slope[at]!;
      if (at >= count) y[at] = Math.max(0, y[at]!);
    }
    if (round % ROUNDS_AT_ONCE === 0) yield best.bound;
  }
  return best;
}

/** Rewards that are not far off: the cheapest way into each device. Infinity where there is none. */
function firstMultipliers(problem: PlanProblem, frame: Frame): Float64Array {
  const { costs } = priceLinks(problem, []);
  const sources = [
    ...costs.slice(0, problem.count),
    ...headsOf(problem, frame).map(({ source }) => costs[source]!),
  ];
  return Float64Array.from({ length: problem.count + problem.owned.length }, (_, at) =>
    at < problem.count ? Math.min(...sources.map((row) => row[at]!)) : 0,
  );
}

/** What the frame costs at the least with these multipliers, and which way they should go. */
function relaxation(
  problem: PlanProblem,
  frame: Frame,
): (y: Float64Array) => { readonly value: number; readonly slope: Float64Array } {
  const { count, owned, ways } = problem;
  const heads = headsOf(problem, frame);
  const near = priceLinks(problem, []).costs;
  const walks = walkTable(count, near, Math.max(0, ...heads.map(({ longest }) => longest)));
  const usable = Math.max(0, heads.length - problem.spareOutlets);
  return (y) => {
    const { costs, picks } = priceLinks(problem, y.subarray(count));
    const slope = Float64Array.from([...Array<number>(count).fill(1), ...owned.map((pieces) => -pieces)]);
    let value = y.reduce((sum, one, at) => sum + one * slope[at]!, 0);
    const take = (source: number, target: number): void => {
      for (const kind of ways[source]![target]![picks[source]![target]!]?.uses ?? []) slope[count + kind]!++;
    };
    frame.forEach((hub, output) => {
      if (hub < 0) return;
      const source = problem.outputs[output]!;
      value += costs[source]![count + hub]!;
      take(source, count + hub);
    });
    if (!(value < Infinity)) return { value: Infinity, slope };
    walks.fill(costs, y);
    const known = new Map<string, ReturnType<typeof walks.best>>();
    const gains = heads.map(({ source, longest }) => {
      const key = `${longest} ${costs[source]!.join()}`;
      const walk = known.get(key) ?? walks.best(costs[source]!, longest);
      known.set(key, walk);
      return { source, ...walk };
    });
    // Free outlets are a wish: those of least gain stay free.
    for (const walk of gains.sort((a, b) => a.value - b.value).slice(0, usable)) {
      if (walk.value >= 0) break;
      value += walk.value;
      walk.devices.forEach((device, at) => {
        slope[device]!--;
        take(walk.devices[at - 1] ?? walk.source, device);
      });
    }
    return { value, slope };
  };
}
