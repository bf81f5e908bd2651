/** Work off the main thread, the page's side, as state that a component reads: only the newest order counts. */
import type { Numbered, Reply } from './orders.ts';

const NO_START = 'the work in the background could not start';

/** One worker, started with its first order at the latest and ended with the component; made while a component starts. */
export class Background<Order, Answer, Progress = never> {
  answer = $state.raw<Answer>();
  progress = $state.raw<Progress>();
  problem = $state('');
  /** Whether an order is being worked on. */
  busy = $state(false);
  readonly #make: () => Worker;
  readonly #heard: ((answer: Answer) => void) | undefined;
  #worker: Worker | undefined;
  #newest = 0;

  /** `heard` is called after each answer that counts. */
  constructor(make: () => Worker, heard?: (answer: Answer) => void) {
    this.#make = make;
    this.#heard = heard;
    $effect(() => () => this.cancel());
  }

  /** Whether the answer is still to come: nothing was asked yet, or an order is being worked on. */
  get waiting(): boolean {
    return this.busy || (this.answer === undefined && this.problem === '');
  }

  /** Start the worker, so that an order that is likely to come finds it awake. */
  wake(): Worker {
    this.#worker ??= this.#start();
    return this.#worker;
  }

  /** Give an order; what was asked before no longer counts. */
  ask(order: Order): void {
    this.#newest += 1;
    this.wake().postMessage({ number: this.#newest, order } satisfies Numbered<Order>);
    this.progress = undefined;
    this.problem = '';
    this.busy = true;
  }

  /** End the work at once; the next order starts afresh. */
  cancel(): void {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.progress = undefined;
    this.busy = false;
  }

  #start(): Worker {
    const worker = this.#make();
    worker.addEventListener('message', ({ data }: MessageEvent<Reply<Answer, Progress>>) => {
      if (data.number !== this.#newest) return;
      if ('progress' in data) this.progress = data.progress;
      else if ('problem' in data) this.#fail(data.problem);
      else {
        this.busy = false;
        this.answer = data.answer;
        this.#heard?.(data.answer);
      }
    });
    worker.addEventListener('error', ({ message }) => this.#fail(message === '' ? NO_START : message));
    return worker;
  }

  #fail(problem: string): void {
    this.cancel();
    this.problem = problem;
  }
}
