import { checkMessage } from './check-message.ts';
import { CHANNEL_MODES, FIRST_MODE_CONTROLLER, REAL_TIME_BYTES } from './messages.ts';
import type { Message } from './messages.ts';

/** How to write messages; `runningStatus` leaves out a status byte that repeats the one before it (off by default). */
export interface EncodeOptions {
  readonly runningStatus?: boolean;
}

/** First byte that is real-time; such a byte leaves running status alone. */
const FIRST_REAL_TIME = 0xf8;
/** First byte that is a system message; such a message ends running status. */
const FIRST_SYSTEM = 0xf0;

const lowSeven = (value: number): number => value & 0x7f;
const highSeven = (value: number): number => value >> 7;

function wholeBytes(message: Message): readonly number[] {
  switch (message.kind) {
    case 'note off':
      return [0x80 | message.channel, message.note, message.velocity];
    case 'note on':
      return [0x90 | message.channel, message.note, message.velocity];
    case 'key pressure':
      return [0xa0 | message.channel, message.note, message.pressure];
    case 'control change':
      return [0xb0 | message.channel, message.controller, message.value];
    case 'channel mode':
      return [
        0xb0 | message.channel,
        FIRST_MODE_CONTROLLER + CHANNEL_MODES.indexOf(message.mode),
        message.value,
      ];
    case 'program change':
      return [0xc0 | message.channel, message.program];
    case 'channel pressure':
      return [0xd0 | message.channel, message.pressure];
    case 'pitch bend':
      return [0xe0 | message.channel, lowSeven(message.bend), highSeven(message.bend)];
    case 'quarter frame':
      return [0xf1, message.value];
    case 'song position':
      return [0xf2, lowSeven(message.sixteenths), highSeven(message.sixteenths)];
    case 'song select':
      return [0xf3, message.song];
    case 'tune request':
      return [0xf6];
    case 'exclusive':
      return [0xf0, ...message.data, 0xf7];
    case 'real-time':
      return [REAL_TIME_BYTES[message.signal]];
  }
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
