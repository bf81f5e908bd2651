/** The search for the cheapest layout: exact where tables over sets are small enough, else annealing with a bound beside it. */
import { seededChance } from '../verdict/index.ts';
import { annealFrame } from './anneal.ts';
import { boundFrame } from './bound.ts';
import type { FrameBound } from './bound.ts';
import { SAME_COST, searchExact } from './exact.ts';
import { framesOf } from './frames.ts';
import type { Found, PlanProblem, Progress, SearchResult } from './problem.ts';

/** Devices up to which a plan is searched exactly. */
export const MOST_EXACT = 12;

/** Annealing steps for each frame: to rank them, and in earnest for the best of them. */
const FIRST_STEPS = 20_000;
const STEPS = 80_000;
const MOST_FRAMES = 4;

/** Looks at the lowest bound, and the share of the cost within which it needs none. */
const MOST_LOOKS = 8;
const CLOSE_ENOUGH = 0.995;

/** Search, yielding now and then: a worker runs it piece by piece, reports, and stops it by not going on. */
export function* search(problem: PlanProblem): Generator<Progress, SearchResult> {
  return yield* problem.count <= MOST_EXACT ? searchExact(problem) : searchLarge(problem);
}

/** Prices first, and a cost for each frame; then bounds that have a cost to aim at, and the best frames once more. */
function* searchLarge(problem: PlanProblem): Generator<Progress, SearchResult> {
  // One seed for all: the same board, the same plan.
  const chance = seededChance(1);
  let best: Found | undefined;
  let done = 0;
  const cost = (): number => best?.cost ?? Infinity;
  function* report<End>(run: Generator<number, End>): Generator<Progress, End> {
    for (let turn = run.next(); ; turn = run.next()) {
      if (turn.done === true) return turn.value;
      yield { done: ++done, cost: cost(), bound: -Infinity };
    }
  }
  function* anneal({ frame, bound, multipliers }: FrameBound, steps: number): Generator<Progress, void> {
    if (bound >= cost()) return;
    const prices = multipliers.subarray(problem.count);
    const found = yield* report(annealFrame(problem, frame, prices, chance, steps));
    if (found && found.cost < cost()) best = found;
  }
  const bounds: FrameBound[] = [];
  for (const frame of framesOf(problem)) {
    const bound = yield* report(boundFrame(problem, frame, Infinity));
    yield* anneal(bound, FIRST_STEPS);
    bounds.push(bound);
  }
  /** Push the lowest bound up, and whichever is then the lowest, now that there is a cost to aim at. */
  function* lift(): Generator<Progress, void> {
    for (let look = 0; look < MOST_LOOKS; look++) {
      const [lowest] = bounds.sort((a, b) => a.bound - b.bound);
      if (!lowest || lowest.bound >= cost() * CLOSE_ENOUGH) return;
      const aimed = yield* report(boundFrame(problem, lowest.frame, cost(), lowest));
      if (aimed.bound <= lowest.bound) return;
      bounds[0] = aimed;
    }
  }
  yield* lift();
  for (const one of bounds.slice(0, MOST_FRAMES)) yield* anneal(one, STEPS);
  yield* lift();
  const bound = Math.min(cost(), ...bounds.map((one) => one.bound));
  return { found: best, bound, proven: best !== undefined && bound >= cost() - SAME_COST };
}
