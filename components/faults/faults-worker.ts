/** Answers the fault bench off the main thread: solving a board with every fault in it takes longer than a page may stand still. */
import { answerOrders } from '../parts/orders.ts';
import { answerFaults } from './orders.ts';
import type { FaultAnswer, FaultOrder } from './orders.ts';

answerOrders<FaultOrder, FaultAnswer>(answerFaults);
