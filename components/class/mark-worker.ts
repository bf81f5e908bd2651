/** Marks what was handed in off the main thread: two hundred results take some seconds on an old laptop. */
import { markResults } from '../../src/core/class/index.ts';
import type { HandedIn, Marked } from '../../src/core/class/index.ts';
import { answerOrders } from '../parts/orders.ts';

answerOrders<readonly HandedIn[], Marked>(markResults);
