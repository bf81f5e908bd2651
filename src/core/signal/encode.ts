import { checkMessage } from './check-message.ts';
import {
  CHANNEL_MODES,
  END_OF_EXCLUSIVE,
  FIRST_MODE_CONTROLLER,
  MESSAGE_SHAPES,
  MOST_SEVEN_BITS,
  REAL_TIME_BYTES,
  isWide,
  numberIn,
} from './messages.ts';
import type { Message } from './messages.ts';

/** How to write messages; `runningStatus` leaves out a status byte that repeats the one before it (off by default). */
interface EncodeOptions {
  readonly runningStatus?: boolean;
}

/** First byte that is real-time; such a byte leaves running status alone. */
const FIRST_REAL_TIME = 0xf8;
/** First byte that is a system message; such a message ends running status. */
const FIRST_SYSTEM = 0xf0;

function wholeBytes(message: Message): readonly number[] {
  if (message.kind === 'real-time') return [REAL_TIME_BYTES[message.signal]];
  const { status, fields } = MESSAGE_SHAPES[message.kind];
  if (message.kind === 'exclusive') return [status, ...message.data, END_OF_EXCLUSIVE];
  const mode =
    message.kind === 'channel mode' ? [FIRST_MODE_CONTROLLER + CHANNEL_MODES.indexOf(message.mode)] : [];
  const data = fields.flatMap((field) => {
    const value = numberIn(message, field);
    return isWide(field) ? [value & MOST_SEVEN_BITS, value >> 7] : [value];
  });
  return [status | ('channel' in message ? message.channel : 0), ...mode, ...data];
}

/**
 * The bytes of a list of messages, each 0 to 255, in the order they leave. With running status a channel message drops
 * its status byte when it equals the last one sent; system common and exclusive end that, real-time does not.
 * Throws RangeError with the words of `checkMessage` for a message that cannot be sent: check first.
 * Source: MIDI 1.0 Detailed Specification 4.2.1, running status in the data format section and appendix A-2.
 */
export function encode(messages: readonly Message[], options: EncodeOptions = {}): readonly number[] {
  const bytes: number[] = [];
  let running = -1;
  for (const message of messages) {
    const [bad] = checkMessage(message);
    if (bad) throw new RangeError(bad.words);
    const whole = wholeBytes(message);
    const status = whole[0] ?? 0;
    const omit = options.runningStatus === true && status === running;
    for (const byte of omit ? whole.slice(1) : whole) bytes.push(byte);
    if (status < FIRST_SYSTEM) running = status;
    else if (status < FIRST_REAL_TIME) running = -1;
  }
  return bytes;
}
