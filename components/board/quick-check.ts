/** The check of a board as far as it is done at once. */
import { checkSteps } from '../../src/core/board/index.ts';
import type { BoardCheck } from '../../src/core/board/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import type { LinkMemory } from '../../src/core/verdict/index.ts';

/** How long a check may keep the page waiting before it goes on in the background, milliseconds: a press still feels answered. */
const QUICK_MILLISECONDS = 100;

/** The check of a plan, or undefined where it is not done in time; what was solved by then is remembered. */
export function quickCheck(plan: Plan, memory: LinkMemory): BoardCheck | undefined {
  const checking = checkSteps(plan, memory);
  const until = performance.now() + QUICK_MILLISECONDS;
  let turn = checking.next();
  while (turn.done !== true) {
    if (performance.now() > until) return undefined;
    turn = checking.next();
  }
  return turn.value;
}
