/** Draws builds of a link off the main thread, and says how far it is. */
import { drawBuilds } from '../../src/core/verdict/index.ts';
import type { DrawProgress, ToleranceResult } from '../../src/core/verdict/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';
import { answerOrders } from '../parts/orders.ts';
import { runThrough } from '../../src/core/signal/index.ts';

/** A link, and where chance begins. */
export interface BuildsOrder {
  readonly link: Link;
  readonly seed: number;
}

answerOrders<BuildsOrder, ToleranceResult, DrawProgress>(({ link, seed }, tell) =>
  runThrough(drawBuilds(link, { seed }), tell),
);
