/** Asking the worker: one order, progress on the way, an answer at the end; stopping it ends the work at once. */
import type { Answer, Order } from './builds-worker.ts';

/** Start an order. `hear` gets every answer; calling what comes back cancels. */
export function askWorker(order: Order, hear: (answer: Answer) => void): () => void {
  const worker = new Worker(new URL('./builds-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
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
