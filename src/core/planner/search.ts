/** The search for the cheapest layout: exact where tables over sets are small enough, else annealing with a bound beside it. */
import { annealFrame } from './anneal.ts';
import type { Annealed } from './anneal.ts';
import { boundFrame, framesOf } from './bound.ts';
import type { BoundOptions, Frame, FrameBound } from './bound.ts';
import { seededChance } from './chance.ts';
import { SAME_COST, searchExact } from './exact.ts';
import type { Progress, SearchResult } from './exact.ts';
import type { PlanProblem } from '../board/index.ts';

/** Devices up to which a plan is searched exactly. */
export const MOST_EXACT = 12;

/** How to search; every number has a usual value. */
export interface SearchOptions {
  readonly seed?: number;
  /** Annealing steps for each of the best ways to put hubs on the outputs. */
  readonly steps?: number;
  /** Rounds of pushing the bound up, for each way to put hubs on the outputs. */
  readonly rounds?: number;
  /** Branches of the exact search before it gives up on the proof. */
  readonly branches?: number;
}

const STEPS = 100_000;
const ROUNDS = 400;
/** Frames that are annealed in earnest. */
const MOST_FRAMES = 4;

/** Neighbours that a walk remembers in the first bound, and in each later look at a frame. */
const SHORT_MEMORY = 2;
const MEMORIES = [2, 4, 6] as const;
/** Later looks in all, and the share of the cost within which a bound needs none. */
const MOST_LOOKS = 24;
const CLOSE_ENOUGH = 0.005;

/** Search, yielding now and then: a worker runs it piece by piece, reports, and stops it by not going on. */
export function* search(
  problem: PlanProblem,
  options: SearchOptions = {},
): Generator<Progress, SearchResult> {
  if (problem.count <= MOST_EXACT) return yield* searchExact(problem, options.branches);
  return yield* searchLarge(problem, options);
}

function* searchLarge(problem: PlanProblem, options: SearchOptions): Generator<Progress, SearchResult> {
  const { seed = 1, steps = STEPS, rounds = ROUNDS } = options;
  const chance = seededChance(seed);
  let best: Annealed = { layout: [], chosen: [], cost: Infinity };
  let done = 0;
  let bounds: FrameBound[] = [];

  /** Push one frame's bound up; `others` is the lowest bound of all other frames. */
  function* push(frame: Frame, how: BoundOptions, others: number): Generator<Progress, FrameBound> {
    const run = boundFrame(problem, frame, best.cost, how);
    for (let turn = run.next(); ; turn = run.next()) {
      if (turn.done === true) return turn.value;
      const bound = Math.min(others, Math.max(turn.value, how.from?.bound ?? -Infinity));
      yield { done: ++done, cost: best.cost, bound };
    }
  }
  function* anneal({ frame, prices }: FrameBound, many: number): Generator<Progress, void> {
    const run = annealFrame(problem, frame, prices, chance, many);
    let turn = run.next();
    for (; turn.done !== true; turn = run.next())
      yield { done: ++done, cost: Math.min(best.cost, turn.value), bound: -Infinity };
    if (turn.value.cost < best.cost) best = turn.value;
  }
  // Prices first, roughly; then a cost for each frame; then bounds that have a cost to aim at, and the best frames once more.
  const rough: FrameBound[] = [];
  for (const frame of framesOf(problem)) {
    const one = yield* push(frame, { rounds: rounds / 4, memory: SHORT_MEMORY }, -Infinity);
    yield* anneal(one, steps / 4);
    rough.push(one);
  }
  for (const one of rough) {
    const aimed = yield* push(one.frame, { rounds, memory: SHORT_MEMORY }, -Infinity);
    bounds.push(aimed.bound > one.bound ? aimed : one);
  }
  bounds.sort((a, b) => a.bound - b.bound);
  for (const one of bounds.slice(0, MOST_FRAMES)) if (one.bound < best.cost) yield* anneal(one, steps);
  // The frame with the lowest bound is looked at again, now that a cost is known, and with a longer memory each time.
  const looks = new Map<Frame, number>();
  for (let look = 0; look < MOST_LOOKS && best.cost < Infinity; look++) {
    const [lowest, ...rest] = [...bounds].sort((a, b) => a.bound - b.bound);
    if (!lowest || lowest.bound >= best.cost * (1 - CLOSE_ENOUGH)) break;
    const times = looks.get(lowest.frame) ?? 0;
    const memory = MEMORIES[times];
    if (memory === undefined) break;
    looks.set(lowest.frame, times + 1);
    const others = Math.min(Infinity, ...rest.map((one) => one.bound));
    const higher = yield* push(lowest.frame, { rounds: rounds / 2, memory, from: lowest }, others);
    bounds = [...rest, higher.bound > lowest.bound ? higher : lowest];
  }
  const bound = Math.min(best.cost, ...bounds.map((one) => one.bound));
  const found = best.cost < Infinity;
  return {
    layout: found ? best.layout : undefined,
    chosen: best.chosen,
    cost: best.cost,
    bound,
    proven: found && bound >= best.cost - SAME_COST,
    looked: done,
  };
}
