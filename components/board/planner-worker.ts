/** 'Plan it for me' off the main thread: takes a plan, sends how far it is, then the answer. */
import { planBoard } from '../../src/core/planner/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import type { PlanAnswer, PlanProgress } from '../../src/core/planner/index.ts';
import { answerOrders } from '../parts/orders.ts';
import { runThrough } from '../../src/core/signal/index.ts';

/** The board to plan. */
export interface PlanOrder {
  readonly plan: Plan;
}

/** Least time between two reports, milliseconds: often enough for a bar to move, seldom enough to leave the page alone. */
const REPORT_MILLISECONDS = 60;

answerOrders<PlanOrder, PlanAnswer, PlanProgress>(({ plan }, tell) => {
  let told = -Infinity;
  let stage = '';
  return runThrough(planBoard(plan), (progress) => {
    const now = performance.now();
    if (progress.stage === stage && now - told <= REPORT_MILLISECONDS) return;
    tell(progress);
    told = now;
    ({ stage } = progress);
  });
});
