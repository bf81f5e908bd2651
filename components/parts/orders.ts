/** Work off the main thread, the worker's side: every order has a number, which stands on all that is said about it. */
import { sayError } from './say-error.ts';

/** What goes to a worker. */
export interface Numbered<Order> {
  readonly number: number;
  readonly order: Order;
}
/** What comes back: how far it is, the answer, or what went wrong in words. */
export type Reply<Answer, Progress> = { readonly number: number } & (
  | { readonly progress: Progress }
  | { readonly answer: Answer }
  | { readonly problem: string }
);

/** Answer the newest order that has come in, as no other counts on the page; `tell` says how far the work is. */
export function answerOrders<Order, Answer, Progress = never>(
  work: (order: Order, tell: (progress: Progress) => void) => Answer,
): void {
  let newest = 0;
  const answer = ({ number, order }: Numbered<Order>): void => {
    if (number !== newest) return;
    const reply = (what: Reply<Answer, Progress>): void => postMessage(what);
    try {
      reply({ number, answer: work(order, (progress) => reply({ number, progress })) });
    } catch (error) {
      reply({ number, problem: sayError(error) });
    }
  };
  addEventListener('message', ({ data }: MessageEvent<Numbered<Order>>) => {
    newest = data.number;
    // Orders that came while one was worked on are all heard before the first of them is taken up.
    setTimeout(answer, 0, data);
  });
}
