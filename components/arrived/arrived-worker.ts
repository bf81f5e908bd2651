/** Finds the cause of a log off the main thread, and tells how far it is. */
import { answerArrived } from '../../src/core/arrived/index.ts';
import type { Answer, Question } from '../../src/core/arrived/index.ts';
import { answerOrders } from '../parts/orders.ts';

answerOrders<Question, Answer, number>((question, tell) => {
  const run = answerArrived(question);
  let turn = run.next();
  while (turn.done !== true) {
    tell(turn.value);
    turn = run.next();
  }
  return turn.value;
});
