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

/** Both clocks at the standard's bound, the worse way round: the sender slow, so that its stop bit comes late, the receiver fast. */
export const WORST_CLOCKS = {
  sender: { clockError: -STANDARD_CLOCK_ERROR },
  receiver: { clockError: STANDARD_CLOCK_ERROR },
} as const satisfies Clocks;

/** The bits of a frame whose beginning may be a late edge, first and last: bit 1 is the lowest data bit, 9 the stop bit. */
const LATE_BITS = [1, 9] as const;

/**
 * Shift of the late edge against the early one that a receiver bears, seconds; 0 or less where the clocks alone use it up.
 * An edge may come as late as the vote that decides the bit: the middle one of an odd count. What is left changes evenly
 * from bit to bit, so that the first or the last of a frame decides. Worked out from how the receiver samples (KL27
 * reference manual rev 5, ch. 38); the simulation is held against it. With the usual receiver and equal clocks 16 us.
 * It holds while the clocks stay within what a frame bears without any shift (see `widestClockError`).
 */
export function edgeBudgetSeconds({ sender = {}, receiver = {} }: Clocks = {}): number {
  const { oversampling = OVERSAMPLING, voteSamples = VOTE_SAMPLES } = receiver;
  const deciding = voteSamples[(voteSamples.length - 1) / 2] ?? NaN;
  const left = LATE_BITS.map(
    (bit) => (bit * oversampling + deciding - 1) * tickSecondsOf(receiver) - bit * bitSecondsOf(sender),
  );
  return Math.min(...left);
}
