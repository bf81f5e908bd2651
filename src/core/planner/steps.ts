/** The steps of planning that take time, each reporting how far it is. */
import type { Plan } from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { boardProblem } from './board-problem.ts';
import type { BoardProblem } from './board-problem.ts';
import type { PlanProblem, SearchResult } from './problem.ts';
import { search } from './search.ts';

/** Where the planning stands, for a progress bar. `share` runs from 0 to 1 within a stage. */
export interface PlanProgress {
  readonly stage: 'solving the links' | 'searching' | 'the other kind' | 'asking why';
  readonly share: number;
  readonly cost: number;
  readonly bound: number;
}

/** Searches after which the bar stands at a half (our choice: their number is not known beforehand). */
const HALFWAY = 50;

/** The planning problem of a plan, or why there is none. */
export function* problemOf(
  plan: Plan,
  memory: LinkMemory,
  stage: PlanProgress['stage'],
): Generator<PlanProgress, BoardProblem | string> {
  const making = boardProblem(plan, memory);
  for (let turn = making.next(); ; turn = making.next()) {
    if (turn.done === true) return turn.value;
    yield { stage, share: turn.value, cost: Infinity, bound: -Infinity };
  }
}

/** The cheapest layout of a problem. */
export function* searched(
  problem: PlanProblem,
  stage: PlanProgress['stage'],
): Generator<PlanProgress, SearchResult> {
  const run = search(problem);
  for (let turn = run.next(); ; turn = run.next()) {
    if (turn.done === true) return turn.value;
    const { cost, bound, done } = turn.value;
    yield { stage, share: 1 - 1 / (1 + done / HALFWAY), cost, bound };
  }
}
