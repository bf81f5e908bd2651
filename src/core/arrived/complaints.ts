/** What people say of what arrived, in their own words, and whether a simulation shows it. */
import { decode } from '../signal/index.ts';
import type { Message } from '../signal/index.ts';
import type { Cause } from './causes.ts';

/** What a reader can say without seeing a byte. */
export const COMPLAINTS = [
  'nothing arrives',
  'notes stick',
  'chords lose notes',
  'wrong notes',
  'everything is channel 16',
  'the channel is one off',
  'the wrong preset comes',
  'senseless messages',
  'messages that nobody sent',
  'the clock does not arrive',
  'slow works, fast does not',
  'it works with one sender only',
] as const;
/** One of them. */
export type Complaint = (typeof COMPLAINTS)[number];

/** Causes that another sender may take away, by its current, its clock, its pauses or what it leaves out (common practice, no source). */
const BY_SENDER: readonly Cause[] = [
  'slow to release',
  'slow to turn on',
  'clock off',
  'wrong speed',
  'weak',
  'running status',
  'real-time inside',
  'full buffer',
];

const CLOCK = 'clock';
const LAST_CHANNEL = 15;
/** Bytes at the beginning that stand for playing slowly. */
const SLOW_BYTES = 6;

interface Heard {
  readonly messages: readonly Message[];
  /** Events that are no whole message. */
  readonly broken: number;
}

function hear(bytes: readonly number[]): Heard {
  const events = decode(bytes);
  const messages = events.flatMap((event) => (event.kind === 'message' ? [event.message] : []));
  return { messages, broken: events.length - messages.length };
}

const notesOn = ({ messages }: Heard): readonly number[] =>
  messages.flatMap((one) => (one.kind === 'note on' && one.velocity > 0 ? [one.note] : []));
const programs = ({ messages }: Heard): readonly number[] =>
  messages.flatMap((one) => (one.kind === 'program change' ? [one.program] : []));
const channels = ({ messages }: Heard): readonly number[] =>
  messages.flatMap((one) => ('channel' in one ? [one.channel] : []));
const ticks = ({ messages }: Heard): number =>
  messages.filter((one) => one.kind === 'real-time' && one.signal === CLOCK).length;

/** Notes that sound at the end. */
function sounding({ messages }: Heard): number {
  const on = new Set<number>();
  for (const one of messages) {
    if (one.kind === 'note on' && one.velocity > 0) on.add(one.note);
    else if (one.kind === 'note on' || one.kind === 'note off') on.delete(one.note);
  }
  return on.size;
}

const mean = (numbers: readonly number[]): number =>
  numbers.reduce((sum, one) => sum + one, 0) / numbers.length;

/** Whether a complaint fits what a cause made of a phrase: the bytes sent, and the good bytes read. */
export function complains(
  complaint: Complaint,
  cause: Cause,
  sentBytes: readonly number[],
  readBytes: readonly number[],
): boolean {
  const [sent, read] = [hear(sentBytes), hear(readBytes)];
  switch (complaint) {
    case 'nothing arrives':
      return read.messages.length === 0;
    case 'notes stick':
      return sounding(read) > sounding(sent);
    case 'chords lose notes':
      return notesOn(read).length > 0 && notesOn(sent).some((note) => !notesOn(read).includes(note));
    case 'wrong notes':
      return notesOn(read).some((note) => !notesOn(sent).includes(note));
    case 'everything is channel 16':
      // A program that takes FF for a message finds channel 16 in its low half.
      return (
        readBytes.filter((byte) => byte === 0xff).length > readBytes.length / 4 ||
        (channels(read).length > 0 &&
          channels(read).every((one) => one === LAST_CHANNEL) &&
          !channels(sent).includes(LAST_CHANNEL))
      );
    case 'the channel is one off':
      return Math.abs(mean(channels(read)) - mean(channels(sent))) === 1;
    case 'the wrong preset comes':
      return programs(read).some((one) => !programs(sent).includes(one));
    case 'senseless messages':
      return read.broken > read.messages.length / 4;
    case 'messages that nobody sent':
      return read.messages.length > sent.messages.length;
    case 'the clock does not arrive':
      return ticks(sent) > 0 && ticks(read) === 0 && read.messages.length > 0;
    case 'slow works, fast does not':
      return (
        readBytes.length < sentBytes.length &&
        sentBytes.slice(0, SLOW_BYTES).every((byte, at) => byte === readBytes[at])
      );
    case 'it works with one sender only':
      return BY_SENDER.includes(cause);
  }
}
