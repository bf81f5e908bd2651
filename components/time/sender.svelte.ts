/** A sending: at once where that is quick and somebody waits for it, else in the background while the page is painted. */
import { untrack } from 'svelte';
import { journeyLink, sendOnJourney, unpackSending } from '../../src/core/signal/index.ts';
import type { PackedSending, Sent } from '../../src/core/signal/index.ts';
import { Background } from '../parts/background.svelte.ts';
import { startWorker } from '../parts/start-worker.ts';
import sendWorker from './send-worker.ts?worker&url';
import type { SendOrder } from './send-worker.ts';

/**
 * Bytes times links that are sent at once: in a chain of plain links some 20 ms, and through the hardest of 400 links drawn by
 * chance, whose every edge is solved step by step, still less than a fifth of a second.
 */
const MOST_AT_ONCE = 64;

/** Sends again whenever the order changes; made while a component starts. Nothing of an older order is ever shown for a newer one. */
export class Sender {
  readonly #order: () => SendOrder;
  readonly #worker: Background<SendOrder, PackedSending, number>;
  #asked: SendOrder | undefined;
  #found = $state.raw<{ readonly order: SendOrder; readonly sent: Sent }>();

  /** What came of the present order; undefined as long as that is not known. */
  readonly sent: Sent | undefined;

  /** `calm`: whether nobody has done anything yet, so that even what is quick leaves the page's thread alone. */
  constructor(order: () => SendOrder, calm: () => boolean = () => false) {
    this.#order = order;
    this.#worker = new Background(
      () => startWorker(sendWorker),
      (packed) => {
        if (!this.#asked) return;
        const { link, worst, journey } = this.#asked;
        const time = journeyLink(link, worst, journey);
        this.#found = { order: this.#asked, sent: { time, sending: unpackSending(time, packed) } };
      },
    );
    this.sent = $derived.by(() => {
      const now = order();
      if (this.#found?.order === now) return this.#found.sent;
      const { link, worst, bytes, journey } = now;
      const quick = bytes.length * journey.hops <= MOST_AT_ONCE;
      return quick && !calm() ? sendOnJourney(link, worst, bytes, journey) : undefined;
    });
    $effect(() => {
      if (!this.sent) this.start();
      else if (untrack(() => this.#worker.busy)) this.#worker.cancel();
    });
  }

  /** Links of the chain that are done; undefined while nothing is sent in the background. */
  get progress(): number | undefined {
    return this.#worker.busy ? (this.#worker.progress ?? 0) : undefined;
  }

  /** Why a sending in the background ended without an answer, in words; empty where it did not. */
  get problem(): string {
    return this.#worker.problem;
  }

  /** Send as it is ordered now; what was ordered before no longer counts. */
  start = (): void => {
    this.#worker.cancel();
    this.#asked = this.#order();
    this.#worker.ask(this.#asked);
  };

  stop = (): void => {
    this.#worker.cancel();
  };
}
