/** Answers the fault bench off the main thread: solving a board with every fault in it takes longer than a page may stand still. */
import { answerEach } from '../parts/latest.ts';
import { answerFaults } from './orders.ts';
import type { FaultAnswer, FaultOrder } from './orders.ts';

answerEach<FaultOrder, FaultAnswer>(answerFaults);
