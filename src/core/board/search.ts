/** The search for the cheapest layout: exact where tables over sets are small enough, else annealing with a bound beside it. */
import { annealFrame } from './anneal.ts';
import { assignLeads } from './assign.ts';
import { boundFrame, framesOf } from './bound.ts';
import type { BoundOptions, Frame, FrameBound } from './bound.ts';
import { seededChance } from './chance.ts';
import { searchExact } from './exact.ts';
import type { Progress, SearchResult } from './exact.ts';
import { edgesOf, hubPrices } from './problem.ts';
import type { PlanProblem } from './problem.ts';

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

const STEPS = 60_000;
const ROUNDS = 600;
/** Annealing steps for a first look at each frame. */
const FIRST_STEPS = 6_000;
/** Frames that are annealed in earnest. */
const MOST_FRAMES = 3;

/** Neighbours that a walk remembers in the quick bound, and in the second look. */
const SHORT_MEMORY = 2;
const LONG_MEMORY = 6;
/** Frames that get a second look, and the share of the cost within which a bound needs none. */
const MOST_SECOND_LOOKS = 6;
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
  let best: Pick<SearchResult, 'layout' | 'chosen' | 'cost'> = {
    layout: undefined,
    chosen: [],
    cost: Infinity,
  };
  let done = 0;
  const lookedAt = new Set<Frame>();
  function* anneal(frame: Frame, many: number): Generator<Progress, number> {
    const run = annealFrame(problem, frame, chance, many);
    for (;;) {
      const turn = run.next();
      if (turn.done !== true) {
        yield { done: ++done, cost: Math.min(best.cost, turn.value), bound: -Infinity };
        continue;
      }
      const { layout, cost } = turn.value;
      if (cost === Infinity) return Infinity;
      const leads = assignLeads(
        edgesOf(problem, layout).map(({ choices }) => choices),
        problem.owned,
      );
      const real = leads ? leads.cost + hubPrices(problem, layout) : Infinity;
      if (leads && real < best.cost) best = { layout, chosen: leads.chosen, cost: real };
      return real;
    }
  }
  const frames: { frame: Frame; cost: number }[] = [];
  for (const frame of framesOf(problem)) frames.push({ frame, cost: yield* anneal(frame, FIRST_STEPS) });
  frames.sort((a, b) => a.cost - b.cost);
  for (const { frame } of frames.slice(0, MOST_FRAMES)) yield* anneal(frame, steps);
  // A quick bound for each frame first; then the lowest one is looked at again and again with a longer memory.
  let bounds: FrameBound[] = [];
  function* push(frame: Frame, options: BoundOptions, others: number): Generator<Progress, FrameBound> {
    const run = boundFrame(problem, frame, best.cost, options);
    for (;;) {
      const turn = run.next();
      if (turn.done === true) return turn.value;
      yield {
        done: ++done,
        cost: best.cost,
        bound: Math.min(others, Math.max(turn.value, options.from?.bound ?? -Infinity)),
      };
    }
  }
  for (const { frame } of frames)
    bounds.push(yield* push(frame, { rounds, memory: SHORT_MEMORY }, -Infinity));
  for (let turn = 0; turn < MOST_SECOND_LOOKS && best.cost < Infinity; turn++) {
    const [lowest, ...rest] = [...bounds].sort((a, b) => a.bound - b.bound);
    if (!lowest || lowest.bound >= best.cost * (1 - CLOSE_ENOUGH) || lookedAt.has(lowest.frame)) break;
    lookedAt.add(lowest.frame);
    const others = Math.min(Infinity, ...rest.map((one) => one.bound));
    const again = yield* push(
      lowest.frame,
      { rounds: rounds / 3, memory: LONG_MEMORY, from: lowest },
      others,
    );
    bounds = [...rest, again.bound > lowest.bound ? again : lowest];
  }
  let bound = Math.min(Infinity, ...bounds.map((one) => one.bound));
  bound = Math.min(bound, best.cost);
  return { ...best, bound, proven: best.cost < Infinity && bound >= best.cost - 1e-5, looked: done };
}
