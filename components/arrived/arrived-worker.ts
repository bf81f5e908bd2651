/** Finds the cause of a log off the main thread, and tells how far it is. */
import { answerArrived } from '../../src/core/arrived/index.ts';
import type { Answer, Question } from '../../src/core/arrived/index.ts';
import { answerOrders } from '../parts/orders.ts';
import { runThrough } from '../../src/core/signal/index.ts';

answerOrders<Question, Answer, number>((question, tell) => runThrough(answerArrived(question), tell));
