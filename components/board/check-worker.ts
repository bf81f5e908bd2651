/** The check of a board off the main thread: takes a plan, sends how many outputs are solved, then what was found. */
import { checkSteps } from '../../src/core/board/index.ts';
import type { BoardCheck, CheckProgress } from '../../src/core/board/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { answerOrders } from '../parts/orders.ts';
import { runThrough } from '../../src/core/signal/index.ts';

/** The board to check. */
export interface CheckOrder {
  readonly plan: Plan;
}

/** Links solved once are not solved again while this worker lives. */
const memory = new Map();

answerOrders<CheckOrder, BoardCheck, CheckProgress>(({ plan }, tell) =>
  runThrough(checkSteps(plan, memory), tell),
);
