/** Bytes sent off the main thread: tells how many links of the chain are done, then answers with the sending. */
import { packSending } from '../../src/core/signal/index.ts';
import { answerOrders } from '../parts/orders.ts';
import { send } from './send-order.ts';
import type { SendOrder, SentAway } from './send-order.ts';

answerOrders<SendOrder, SentAway, number>((order, tell) => {
  const { sent, worst } = send(order, tell);
  return { packed: packSending(sent.sending), worst };
});
