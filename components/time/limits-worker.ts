/** Searches off the main thread how far a link goes. */
import { limitRows, linkLimits } from '../../src/core/signal/index.ts';
import type { LimitRow } from '../../src/core/signal/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';
import { answerOrders } from '../parts/orders.ts';

/** A link, and whether a 6N138 in it has its base resistor. */
export interface LimitsOrder {
  readonly link: Link;
  readonly baseResistor: boolean;
}

answerOrders<LimitsOrder, readonly LimitRow[]>(({ link, baseResistor }) =>
  limitRows(linkLimits(link, baseResistor)),
);
