/** Answers the fault bench off the main thread: solving a board with every fault in it takes longer than a page may stand still. */
import { answerOrders } from '../parts/orders.ts';
import { answerFaults } from '../../src/core/faults/index.ts';
import type { FaultAnswer, FaultOrder } from '../../src/core/faults/index.ts';

answerOrders<FaultOrder, FaultAnswer>(answerFaults);
