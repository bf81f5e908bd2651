/** Bytes sent off the main thread: takes a link and a journey, sends how many links of the chain are done, then the sending. */
import { journeySteps, packSending, runThrough } from '../../src/core/signal/index.ts';
import type { Journey, PackedSending } from '../../src/core/signal/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';
import { answerOrders } from '../parts/orders.ts';

/** What to send through what; `worst` is the corner of the parts that starves the input most. */
export interface SendOrder {
  readonly link: Link;
  readonly worst: Parameters<typeof journeySteps>[1];
  readonly bytes: readonly number[];
  readonly journey: Journey;
}

answerOrders<SendOrder, PackedSending, number>(({ link, worst, bytes, journey }, tell) =>
  packSending(runThrough(journeySteps(link, worst, bytes, journey), tell).sending),
);
