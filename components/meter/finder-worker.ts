/** Ranks the jacks off the main thread: the first predictions for a connector take longer than a page may stand still. */
import { answerFinder } from '../../src/core/readings/index.ts';
import type { Evidence, FinderAnswer, TakenReading } from '../../src/core/readings/index.ts';
import { answerOrders } from '../parts/orders.ts';

/** What the page asks: what is known, and the readings taken. */
export interface FinderOrder {
  readonly evidence: Evidence;
  readonly taken: readonly TakenReading[];
}

answerOrders<FinderOrder, FinderAnswer>(({ evidence, taken }) => answerFinder(evidence, taken));
