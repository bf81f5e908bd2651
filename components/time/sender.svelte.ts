/** A sending: at once where that is quick, else in the background while the page is painted. */
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
  readonly #order: () => SendOrder | undefined;
  readonly #worker: Background<SendOrder, PackedSending, number>;
  #asked: SendOrder | undefined;
  #found = $state.raw<{ readonly order: SendOrder; readonly sent: Sent }>();

  readonly #atOnce = $derived.by(() => {
    const order = this.#order();
    if (!order) return undefined;
    const { link, worst, bytes, journey } = order;
    return bytes.length * journey.hops > MOST_AT_ONCE
      ? undefined
      : sendOnJourney(link, worst, bytes, journey);
  });
  /** What came of the present order; undefined as long as that is not known. */
  readonly sent = $derived.by(() => {
    const order = this.#order();
    return this.#atOnce ?? (this.#found && this.#found.order === order ? this.#found.sent : undefined);
  });

  /** `order`: undefined as long as nothing is to be sent. */
  constructor(order: () => SendOrder | undefined) {
    this.#order = order;
    this.#worker = new Background(
      () => startWorker(sendWorker),
      (packed) => {
        if (!this.#asked) return;
        const time = journeyLink(this.#asked.link, this.#asked.worst, this.#asked.journey);
        this.#found = { order: this.#asked, sent: { time, sending: unpackSending(time, packed) } };
      },
    );
    $effect(() => {
      if (this.#atOnce) this.#worker.cancel();
      else this.start();
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
    if (this.#asked) this.#worker.ask(this.#asked);
  };

  stop = (): void => {
    this.#worker.cancel();
  };
}
