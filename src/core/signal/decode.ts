import {
  CHANNEL_MODES,
  END_OF_EXCLUSIVE,
  FIRST_MODE_CONTROLLER,
  MESSAGE_SHAPES,
  REAL_TIME_BYTES,
  isWide,
} from './messages.ts';
import type { Message, MessageKind, RealTimeSignal } from './messages.ts';

/**
 * Where the bytes of an event stand. `from` is the first index, `to` one past the last; `at` lists the event's own
 * bytes, which leaves out real-time bytes that stand inside.
 */
interface ByteRange {
  readonly from: number;
  readonly to: number;
  readonly at: readonly number[];
}

/** A whole message. `runningStatus`: its status byte was left out. `endedBy`: the byte that ended an exclusive. */
interface DecodedMessage extends ByteRange {
  readonly kind: 'message';
  readonly message: Message;
  readonly runningStatus: boolean;
  readonly endedBy?: number;
}

/** A data byte that no status byte stands for. */
interface StrayData extends ByteRange {
  readonly kind: 'stray data';
  readonly value: number;
}

/** F4, F5, F9 or FD: the standard gives them no meaning, receivers ignore them. */
interface UndefinedStatus extends ByteRange {
  readonly kind: 'undefined status';
  readonly status: number;
}

/** F7 with no exclusive open. */
interface StrayEnd extends ByteRange {
  readonly kind: 'stray end';
}

/** A message that lacks data: `by` is the status byte that cut it off, or null when the bytes ran out. */
interface CutShort extends ByteRange {
  readonly kind: 'cut short';
  readonly status: number;
  readonly data: readonly number[];
  readonly runningStatus: boolean;
  readonly by: number | null;
}

/** What a run of bytes can turn out to be. */
export type Decoded = DecodedMessage | StrayData | UndefinedStatus | StrayEnd | CutShort;

interface Open {
  readonly status: number;
  readonly runningStatus: boolean;
  readonly data: number[];
  readonly at: number[];
}

const EXCLUSIVE = MESSAGE_SHAPES.exclusive.status;
const SIGNALS = new Map<number, RealTimeSignal>(
  (Object.keys(REAL_TIME_BYTES) as RealTimeSignal[]).map((signal) => [REAL_TIME_BYTES[signal], signal]),
);

/** Kinds by the status byte without its channel; a channel mode is told from a control change by its controller. */
const KINDS = new Map<number, Exclude<MessageKind, 'real-time'>>(
  (Object.keys(MESSAGE_SHAPES) as Exclude<MessageKind, 'real-time'>[])
    .filter((kind) => kind !== 'channel mode' && kind !== 'exclusive')
    .map((kind) => [MESSAGE_SHAPES[kind].status, kind]),
);

const kindOf = (status: number) => KINDS.get(status < EXCLUSIVE ? status & 0xf0 : status);

/** Data bytes that a status byte announces; null for exclusive (any number) and for statuses without meaning. */
function dataBytesNeeded(status: number): number | null {
  const kind = kindOf(status);
  if (!kind) return null;
  return MESSAGE_SHAPES[kind].fields.reduce((sum, field) => sum + (isWide(field) ? 2 : 1), 0);
}

function messageOf(status: number, data: readonly number[]): Message {
  const kind = kindOf(status);
  if (!kind) throw new Error(`status ${status}: announces no data`);
  const [first = 0, second = 0] = data;
  const channel = status & 0x0f;
  const mode = kind === 'control change' ? CHANNEL_MODES[first - FIRST_MODE_CONTROLLER] : undefined;
  if (mode) return { kind: 'channel mode', channel, mode, value: second };
  const numbers = MESSAGE_SHAPES[kind].fields.map((field, at) => [
    field.name,
    isWide(field) ? first + 128 * second : (data[at] ?? 0),
  ]);
  return {
    kind,
    ...(status < EXCLUSIVE ? { channel } : {}),
    ...(Object.fromEntries(numbers) as object),
  } as Message;
}

function range(at: readonly number[]): ByteRange {
  return { from: at[0] ?? 0, to: (at.at(-1) ?? -1) + 1, at };
}

function whole(open: Open): DecodedMessage {
  const message = messageOf(open.status, open.data);
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
      const endsExclusive = byte === END_OF_EXCLUSIVE && open?.status === EXCLUSIVE;
      if (endsExclusive) open?.at.push(index);
      if (open) events.push(close(open, byte));
      open = null;
      running = byte < EXCLUSIVE ? byte : null;
      if (endsExclusive) return;
      if (byte === END_OF_EXCLUSIVE) events.push({ kind: 'stray end', ...range([index]) });
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
