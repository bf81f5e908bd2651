import { CHANNEL_MODES, FIRST_MODE_CONTROLLER, REAL_TIME_BYTES } from './messages.ts';
import type { Message, RealTimeSignal } from './messages.ts';

/** What a run of bytes can turn out to be. */
export const DECODED_KINDS = ['message', 'stray data', 'undefined status', 'stray end', 'cut short'] as const;
export type DecodedKind = (typeof DECODED_KINDS)[number];

/**
 * Where the bytes of an event stand. `from` is the first index, `to` one past the last; `at` lists the event's own
 * bytes, which leaves out real-time bytes that stand inside.
 */
export interface ByteRange {
  readonly from: number;
  readonly to: number;
  readonly at: readonly number[];
}

/** A whole message. `runningStatus`: its status byte was left out. `endedBy`: the byte that ended an exclusive. */
export interface DecodedMessage extends ByteRange {
  readonly kind: 'message';
  readonly message: Message;
  readonly runningStatus: boolean;
  readonly endedBy?: number;
}

/** A data byte that no status byte stands for. */
export interface StrayData extends ByteRange {
  readonly kind: 'stray data';
  readonly value: number;
}

/** F4, F5, F9 or FD: the standard gives them no meaning, receivers ignore them. */
export interface UndefinedStatus extends ByteRange {
  readonly kind: 'undefined status';
  readonly status: number;
}

/** F7 with no exclusive open. */
export interface StrayEnd extends ByteRange {
  readonly kind: 'stray end';
}

/** A message that lacks data: `by` is the status byte that cut it off, or null when the bytes ran out. */
export interface CutShort extends ByteRange {
  readonly kind: 'cut short';
  readonly status: number;
  readonly data: readonly number[];
  readonly runningStatus: boolean;
  readonly by: number | null;
}

export type Decoded = DecodedMessage | StrayData | UndefinedStatus | StrayEnd | CutShort;

interface Open {
  readonly status: number;
  readonly runningStatus: boolean;
  readonly data: number[];
  readonly at: number[];
}

const EXCLUSIVE = 0xf0;
const END = 0xf7;
const SIGNALS = new Map<number, RealTimeSignal>(
  (Object.keys(REAL_TIME_BYTES) as RealTimeSignal[]).map((signal) => [REAL_TIME_BYTES[signal], signal]),
);

/** Data bytes that a status byte announces; null for exclusive (any number) and for statuses without meaning. */
export function dataBytesNeeded(status: number): number | null {
  if (status < EXCLUSIVE) return (status & 0xe0) === 0xc0 ? 1 : 2;
  if (status === 0xf1 || status === 0xf3) return 1;
  if (status === 0xf2) return 2;
  return status === 0xf6 || SIGNALS.has(status) ? 0 : null;
}

function channelMessage(status: number, first: number, second: number): Message {
  const channel = status & 0x0f;
  switch (status & 0xf0) {
    case 0x80:
      return { kind: 'note off', channel, note: first, velocity: second };
    case 0x90:
      return { kind: 'note on', channel, note: first, velocity: second };
    case 0xa0:
      return { kind: 'key pressure', channel, note: first, pressure: second };
    case 0xb0: {
      const mode = CHANNEL_MODES[first - FIRST_MODE_CONTROLLER];
      if (mode) return { kind: 'channel mode', channel, mode, value: second };
      return { kind: 'control change', channel, controller: first, value: second };
    }
    case 0xc0:
      return { kind: 'program change', channel, program: first };
    case 0xd0:
      return { kind: 'channel pressure', channel, pressure: first };
    default:
      return { kind: 'pitch bend', channel, bend: first + 128 * second };
  }
}

function commonMessage(status: number, first: number, second: number): Message {
  if (status === 0xf1) return { kind: 'quarter frame', value: first };
  if (status === 0xf2) return { kind: 'song position', sixteenths: first + 128 * second };
  if (status === 0xf3) return { kind: 'song select', song: first };
  return { kind: 'tune request' };
}

function range(at: readonly number[]): ByteRange {
  return { from: at[0] ?? 0, to: (at.at(-1) ?? -1) + 1, at };
}

function whole(open: Open): DecodedMessage {
  const [first = 0, second = 0] = open.data;
  const make = open.status < EXCLUSIVE ? channelMessage : commonMessage;
  const message = make(open.status, first, second);
  return { kind: 'message', message, runningStatus: open.runningStatus, ...range(open.at) };
}

/** Ends an open message at status byte `by`; an exclusive is whole at any status, anything else is cut short. */
function close(open: Open, by: number | null): Decoded {
  if (open.status === EXCLUSIVE && by !== null) {
    const message: Message = { kind: 'exclusive', data: open.data };
    return { kind: 'message', message, runningStatus: false, endedBy: by, ...range(open.at) };
  }
  const { status, data, runningStatus } = open;
  return { kind: 'cut short', status, data, runningStatus, by, ...range(open.at) };
}

/**
 * Reads bytes (0 to 255) into events, in the order in which each becomes whole; so a clock inside a note comes first.
 * Every byte belongs to exactly one event. Nonsense is an event of its own and never throws; only a number that is no
 * byte does (RangeError). Source: MIDI 1.0 Detailed Specification 4.2.1, data format and tables I to VII.
 */
export function decode(bytes: readonly number[]): readonly Decoded[] {
  const events: Decoded[] = [];
  let open: Open | null = null;
  let running: number | null = null;
  const settle = (): void => {
    if (open && open.data.length === dataBytesNeeded(open.status)) {
      events.push(whole(open));
      open = null;
    }
  };
  bytes.forEach((byte, index) => {
    if (!Number.isInteger(byte) || byte < 0 || byte > 255) {
      throw new RangeError(`byte ${index}: must be a whole number from 0 to 255, got ${byte}`);
    }
    if (byte >= 0xf8) {
      const signal = SIGNALS.get(byte);
      const place = range([index]);
      if (signal) {
        events.push({
          kind: 'message',
          message: { kind: 'real-time', signal },
          runningStatus: false,
          ...place,
        });
      } else events.push({ kind: 'undefined status', status: byte, ...place });
    } else if (byte >= 0x80) {
      const endsExclusive = byte === END && open?.status === EXCLUSIVE;
      if (endsExclusive) open?.at.push(index);
      if (open) events.push(close(open, byte));
      open = null;
      running = byte < EXCLUSIVE ? byte : null;
      if (endsExclusive) return;
      if (byte === END) events.push({ kind: 'stray end', ...range([index]) });
      else if (byte !== EXCLUSIVE && dataBytesNeeded(byte) === null) {
        events.push({ kind: 'undefined status', status: byte, ...range([index]) });
      } else open = { status: byte, runningStatus: false, data: [], at: [index] };
      settle();
    } else if (open || running !== null) {
      open ??= { status: running ?? 0, runningStatus: true, data: [], at: [] };
      open.data.push(byte);
      open.at.push(index);
      settle();
    } else events.push({ kind: 'stray data', value: byte, ...range([index]) });
  });
  if (open) events.push(close(open, null));
  return events;
}
