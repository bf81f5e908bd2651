/** The bit budget: how far edges may shift before a receiver reads a bit wrong. */
import { STANDARD_CLOCK_ERROR, bitSecondsOf } from './frames.ts';
import type { SenderClock } from './frames.ts';
import { OVERSAMPLING, VOTE_SAMPLES, tickSecondsOf } from './receiver.ts';
import type { ReceiverOptions } from './receiver.ts';

/** The clocks of both ends. */
export interface Clocks {
  readonly sender?: SenderClock;
  readonly receiver?: ReceiverOptions;
}

/**
 * The receiver that a bound of length is counted on: it looks once, close to the middle of each bit. One that takes the majority of
 * three votes around there bears noise better, not longer chains. That the bound rests on such a receiver is our reading.
 */
export const ONE_LOOK = { voteSamples: [VOTE_SAMPLES[0] as number] } as const satisfies ReceiverOptions;

/** Both clocks at the standard's bound, the worse way round for late edges: the sender slow, so that its stop bit comes late, the receiver fast. */
export const WORST_CLOCKS = {
  sender: { clockError: -STANDARD_CLOCK_ERROR },
  receiver: { ...ONE_LOOK, clockError: STANDARD_CLOCK_ERROR },
} as const satisfies Clocks;

/** The same, the worse way round for early ones. */
export const WORST_CLOCKS_EARLY = {
  sender: { clockError: STANDARD_CLOCK_ERROR },
  receiver: { ...ONE_LOOK, clockError: -STANDARD_CLOCK_ERROR },
} as const satisfies Clocks;

/** The bits of a frame whose beginning may be a late edge, first and last: bit 1 is the lowest data bit, 9 the stop bit. */
const LATE_BITS = [1, 9] as const;
/** The bits whose end may be an early edge, first and last: the start bit and the highest data bit. */
const EARLY_BITS = [0, 8] as const;

/** How far the end of a 0 may come late, and how far early, against its beginning, seconds. */
interface EdgeBudget {
  readonly lateSeconds: number;
  readonly earlySeconds: number;
}

/**
 * What a receiver bears of shifted edges; 0 or less where the clocks alone use it up. A 0 that ends late hides the beginning of the
 * bit after it, up to the vote that decides it; one that ends early uncovers its own last vote. The start edge itself is known to one
 * sample only. What is left changes evenly from bit to bit, so that the first or the last of a frame decides. Worked out from how the
 * receiver samples (KL27 reference manual rev 5, ch. 38); the simulation is held against it. It holds while the clocks stay within
 * what a frame bears without any shift (see `widestClockError`).
 */
export function edgeBudget({ sender = {}, receiver = {} }: Clocks = {}): EdgeBudget {
  const { oversampling = OVERSAMPLING, voteSamples = VOTE_SAMPLES } = receiver;
  const deciding = voteSamples[(voteSamples.length - 1) / 2] ?? NaN;
  const [tick, bit] = [tickSecondsOf(receiver), bitSecondsOf(sender)];
  return {
    lateSeconds: Math.min(
      ...LATE_BITS.map((number) => (number * oversampling + deciding - 1) * tick - number * bit),
    ),
    earlySeconds: Math.min(
      ...EARLY_BITS.map((number) => (number + 1) * bit - (number * oversampling + deciding) * tick),
    ),
  };
}

/** What is left at the bounds of the standard: 8.1 us late (7.9 us by the usual arithmetic of 9.5 bits), 10.4 us early. */
export const STANDARD_EDGE_BUDGET: EdgeBudget = {
  lateSeconds: edgeBudget(WORST_CLOCKS).lateSeconds,
  earlySeconds: edgeBudget(WORST_CLOCKS_EARLY).earlySeconds,
};

/** The share of a budget that a shift uses up, from 0; more than 1 is too much. `shiftSeconds` above 0 is late. */
export function shareOfBudget(shiftSeconds: number, budget: EdgeBudget = STANDARD_EDGE_BUDGET): number {
  return shiftSeconds > 0 ? shiftSeconds / budget.lateSeconds : -shiftSeconds / budget.earlySeconds;
}
