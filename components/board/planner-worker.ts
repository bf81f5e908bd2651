/** 'Plan it for me' off the main thread: takes a plan, sends how far it is, then the answer. */
import { planBoard } from '../../src/core/planner/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import type { PlanAnswer, PlanProgress } from '../../src/core/planner/index.ts';
import { answerOrder } from '../parts/ask-worker.ts';

/** The board to plan. */
export interface PlanOrder {
  readonly plan: Plan;
}

/** What the worker sends. */
export type PlannerAnswer =
  | { readonly kind: 'progress'; readonly progress: PlanProgress }
  | { readonly kind: 'planned'; readonly answer: PlanAnswer };

/** Least time between two reports, milliseconds: often enough for a bar to move, seldom enough to leave the page alone. */
const REPORT_MILLISECONDS = 60;

answerOrder<PlanOrder, PlannerAnswer>(({ plan }, answer) => {
  const planning = planBoard(plan);
  let told = -Infinity;
  let stage = '';
  let turn = planning.next();
  while (turn.done !== true) {
    const now = performance.now();
    if (turn.value.stage !== stage || now - told > REPORT_MILLISECONDS) {
      answer({ kind: 'progress', progress: turn.value });
      told = now;
      stage = turn.value.stage;
    }
    turn = planning.next();
  }
  answer({ kind: 'planned', answer: turn.value });
});
