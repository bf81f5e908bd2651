/** Marks what was handed in off the main thread: two hundred results take some seconds on an old laptop. */
import { handedInOf, markResults } from '../../src/core/class/index.ts';
import type { Marked, Taken } from '../../src/core/class/index.ts';
import { answerOrders } from '../parts/orders.ts';

answerOrders<readonly Taken[], Marked>((all) => markResults(all.map(handedInOf)));
