/** Asking a worker where only the newest question counts: answers to older ones are dropped. */

/** What goes to the worker, and what comes back: the answer, or what went wrong. */
export interface Numbered<Order> {
  readonly number: number;
  readonly order: Order;
}
export type Reply<Answer> =
  | { readonly number: number; readonly answer: Answer }
  | { readonly number: number; readonly problem: string };

/** A worker that is asked again and again. */
export interface Asker<Order> {
  readonly ask: (order: Order) => void;
  readonly stop: () => void;
}

/** Keep one worker; `hear` gets the answer to the newest question, `fail` what went wrong with it. */
export function askLatest<Order, Answer>(
  worker: Worker,
  hear: (answer: Answer) => void,
  fail: (problem: string) => void,
): Asker<Order> {
  let newest = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<Reply<Answer>>) => {
    if (data.number !== newest) return;
    if ('problem' in data) fail(data.problem);
    else hear(data.answer);
  });
  worker.addEventListener('error', ({ message }) =>
    fail(message === '' ? 'the work in the background could not start' : message),
  );
  return {
    ask: (order) => {
      newest += 1;
      worker.postMessage({ number: newest, order } satisfies Numbered<Order>);
    },
    stop: () => worker.terminate(),
  };
}

/** The other side: answer every question that comes in. */
export function answerEach<Order, Answer>(work: (order: Order) => Answer): void {
  addEventListener('message', ({ data: { number, order } }: MessageEvent<Numbered<Order>>) => {
    try {
      postMessage({ number, answer: work(order) } satisfies Reply<Answer>);
    } catch (error) {
      const problem = error instanceof Error ? error.message : String(error);
      postMessage({ number, problem } satisfies Reply<Answer>);
    }
  });
}
