import { layFrames } from './frames.ts';
import type { SenderClock, SentFrames } from './frames.ts';
import type { Follower } from './opto-output.ts';
import { receive } from './receiver.ts';
import type { ReceiverOptions } from './receiver.ts';
import type { Waveform } from './waveform.ts';

/** A device that reads whole bytes and sends them again: edges come out fresh, at the price of a byte of delay. */
export type SoftwareThru = Follower & {
  readonly kind: 'software thru';
  /** Time it needs between the end of a byte and the start of its copy, seconds, 0 or more. */
  readonly latencySeconds: number;
  readonly receiver?: ReceiverOptions;
  readonly sender?: SenderClock;
};

/**
 * The bytes read from the line at the serial input, sent again in order. A copy leaves when the byte's stop bit has
 * ended by the receiver's clock, after the latency, and not before the copy ahead of it is out; so each device adds at
 * least a whole byte. Bytes with framing errors, breaks and glitches are not passed on.
 * Throws RangeError for a negative latency or an impossible clock.
 */
export function resend(line: Waveform, thru: SoftwareThru): SentFrames {
  const { latencySeconds, receiver = {}, sender = {} } = thru;
  if (!(latencySeconds >= 0) || !Number.isFinite(latencySeconds)) {
    throw new RangeError(`software thru: latency must be 0 s or more, got ${latencySeconds} s`);
  }
  const { heard, frameSeconds } = receive(line, receiver);
  const { bitSeconds } = layFrames([], sender);
  const starts: { value: number; startSeconds: number }[] = [];
  let freeSeconds = -Infinity;
  for (const event of heard) {
    if (event.kind !== 'byte') continue;
    const startSeconds = Math.max(event.startSeconds + frameSeconds + latencySeconds, freeSeconds);
    freeSeconds = startSeconds + 10 * bitSeconds;
    starts.push({ value: event.value, startSeconds });
  }
  return layFrames(starts, sender);
}
