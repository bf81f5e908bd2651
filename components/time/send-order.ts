/** An order to send bytes through a link, and how it is carried out: the same on the page and off its thread. */
import { journeySteps, runThrough } from '../../src/core/signal/index.ts';
import type { Journey, PackedSending, Sent } from '../../src/core/signal/index.ts';
import { checkLink } from '../../src/core/verdict/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';

/** What to send through what. */
export interface SendOrder {
  readonly link: Link;
  readonly bytes: readonly number[];
  readonly journey: Journey;
}

/** The corner of the parts that starves the input most; undefined where a journey does not ask for it, since it takes a whole verdict. */
type Worst = Parameters<typeof journeySteps>[1];

/** What comes back from a worker. */
export interface SentAway {
  readonly packed: PackedSending;
  readonly worst: Worst;
}

/** The worst corner of the link of an order, where its journey is at its worst. */
export function worstOf({ link, journey }: SendOrder): Worst {
  return journey.atWorst ? checkLink(link).inputs[0]?.worstCorner : undefined;
}

/** Send as ordered; `tell` hears how many links of the chain are done. */
export function send(
  order: SendOrder,
  tell?: (links: number) => void,
): { readonly sent: Sent; readonly worst: Worst } {
  const worst = worstOf(order);
  const steps = journeySteps(order.link, worst, order.bytes, order.journey);
  return { sent: runThrough(steps, tell), worst };
}
