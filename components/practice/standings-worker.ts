/** Works out where every kind of task stands off the main thread: every attempt may have to be solved again. */
import { standings } from '../../src/core/learn/index.ts';
import type { LearnRecord, Standing } from '../../src/core/learn/index.ts';
import { answerOrders } from '../parts/orders.ts';

answerOrders<LearnRecord, readonly Standing[]>(standings);
