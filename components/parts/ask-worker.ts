/** Asking a worker once: one order, progress on the way, an answer at the end; stopping it ends the work at once. */

/** What any worker may send before or instead of its answer: 'progress' goes on, everything else ends the work. */
export interface Problem {
  readonly kind: 'problem';
  readonly text: string;
}

/** Give a fresh worker its order. `hear` gets every answer; calling what comes back cancels. */
export function askWorker<Order, Answer extends { readonly kind: string }>(
  worker: Worker,
  order: Order,
  hear: (answer: Answer | Problem) => void,
): () => void {
  worker.addEventListener('message', ({ data }: MessageEvent<Answer | Problem>) => {
    hear(data);
    if (data.kind !== 'progress') worker.terminate();
  });
  worker.addEventListener('error', ({ message }) => {
    hear({ kind: 'problem', text: message === '' ? 'the work in the background could not start' : message });
    worker.terminate();
  });
  worker.postMessage(order);
  return () => worker.terminate();
}

/** The other side: answer the order, and say in words what went wrong. */
export function answerOrder<Order, Answer extends { readonly kind: string }>(
  work: (order: Order, answer: (what: Answer) => void) => void,
): void {
  addEventListener('message', ({ data }: MessageEvent<Order>) => {
    try {
      work(data, (what) => postMessage(what));
    } catch (error) {
      const text = error instanceof Error ? error.message : String(error);
      postMessage({ kind: 'problem', text } satisfies Problem);
    }
  });
}
