/** Causes in whoever reads: every byte arrives, and is misunderstood, counted differently or not shown. */
import type { Cause, ReaderCandidate } from './causes.ts';

/** First real-time byte: from here on a byte may stand inside any message. */
const FIRST_REAL_TIME = 0xf8;
/** First byte of a system message, which ends running status. */
const FIRST_SYSTEM = 0xf0;
const FIRST_STATUS = 0x80;
const SEVEN_BITS = 0x7f;
const [CLOCK, SENSING] = [0xf8, 0xfe];
const EXCLUSIVE = 0xf0;

/** Data bytes of a channel message by the high half of its status byte, from 8 on. Source: MIDI 1.0 4.2.1, table I. */
const DATA_BYTES = [2, 2, 2, 2, 1, 1, 2];

const isRealTime = (byte: number): boolean => byte >= FIRST_REAL_TIME;
const needs = (status: number): number =>
  status < FIRST_SYSTEM ? (DATA_BYTES[(status >> 4) - 8] ?? 0) : Infinity;

/** A reader that waits for a status byte before each message: data without one is passed over. */
function withoutRunningStatus(bytes: readonly number[]): readonly number[] {
  let left = 0;
  return bytes.filter((byte) => {
    if (isRealTime(byte)) return true;
    if (byte >= FIRST_STATUS) {
      left = needs(byte);
      return true;
    }
    left -= 1;
    return left >= 0;
  });
}

/** A reader whose message ends where a real-time byte stands inside it: the rest of its data is passed over. */
function brokenByRealTime(bytes: readonly number[]): readonly number[] {
  let lost = false;
  return bytes.filter((byte) => {
    if (byte >= FIRST_STATUS) {
      lost = isRealTime(byte);
      return true;
    }
    return !lost;
  });
}

/** The same where such a message is dropped whole, its status byte as well, and the reader waits for the next status byte. */
function droppedAtRealTime(bytes: readonly number[]): readonly number[] {
  const out: number[] = [];
  let message: number[] = [];
  let waiting = 0;
  for (const byte of bytes) {
    if (isRealTime(byte)) {
      [message, waiting] = [[], 0];
      out.push(byte);
    } else if (byte >= FIRST_STATUS) {
      out.push(...message);
      [message, waiting] = [[byte], needs(byte)];
    } else if (waiting > 0) {
      message.push(byte);
      waiting -= 1;
    }
    if (waiting === 0 && message.length > 1) {
      out.push(...message);
      [message, waiting] = [[], needs(message[0] ?? 0)];
    }
  }
  return [...out, ...message];
}

/** A reader that takes a real-time byte inside a message for data. */
function realTimeAsData(bytes: readonly number[]): readonly number[] {
  let left = 0;
  return bytes.map((byte) => {
    if (isRealTime(byte) && left > 0) {
      left -= 1;
      return byte & SEVEN_BITS;
    }
    if (byte >= FIRST_STATUS && !isRealTime(byte)) left = needs(byte);
    else if (byte < FIRST_STATUS) left -= 1;
    return byte;
  });
}

/** Data bytes changed by their message: told its status byte and their place, from 0. */
function changeData(
  bytes: readonly number[],
  change: (byte: number, status: number, place: number, before: number) => number,
): readonly number[] {
  let [status, place, before] = [0, 0, 0];
  return bytes.map((byte) => {
    if (byte >= FIRST_STATUS) {
      if (!isRealTime(byte)) [status, place] = [byte, 0];
      return byte;
    }
    const out = status === EXCLUSIVE ? byte : change(byte, status, place, before) & SEVEN_BITS;
    before = byte;
    place = (place + 1) % needs(status);
    return out;
  });
}

const PROGRAM = 0xc0;
const CONTROL = 0xb0;
/** Controllers that choose a bank, the high part and the low part. */
const BANK = [0, 32];
const kindOf = (status: number): number => status & 0xf0;

/** Programs counted by `program` more, banks by `bank` more: 0, 1 or -1 each. */
function counted(program: number, bank: number): (bytes: readonly number[]) => readonly number[] {
  return (bytes) =>
    changeData(bytes, (byte, status, place, before) => {
      if (kindOf(status) === PROGRAM) return byte + program;
      const isBank = kindOf(status) === CONTROL && place === 1 && BANK.includes(before);
      return isBank ? byte + bank : byte;
    });
}

/** Channels counted by one more or less. */
function otherChannel(more: number): (bytes: readonly number[]) => readonly number[] {
  return (bytes) =>
    bytes.map((byte) =>
      byte >= FIRST_STATUS && byte < FIRST_SYSTEM ? (byte & 0xf0) | ((byte + more) & 0x0f) : byte,
    );
}

const candidate = (
  cause: Cause,
  amount: number,
  understood: ReaderCandidate['understood'],
): ReaderCandidate => ({ kind: 'reader', cause, amount, understood });

const COUNTS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
  [1, 1],
  [-1, -1],
] as const;

/** A monitor that shows no real-time at all, no clock and sensing, or only one of the two. */
const HIDDEN: readonly ((byte: number) => boolean)[] = [
  isRealTime,
  (byte) => byte === CLOCK || byte === SENSING,
  (byte) => byte === CLOCK,
  (byte) => byte === SENSING,
];

/** Every candidate of a reader; `amount` numbers the ways in which it goes wrong, or is by how much it counts more. */
export function readerCandidates(): readonly ReaderCandidate[] {
  return [
    candidate('running status', 0, withoutRunningStatus),
    candidate('real-time inside', 0, brokenByRealTime),
    candidate('real-time inside', 1, droppedAtRealTime),
    candidate('real-time inside', 2, realTimeAsData),
    ...COUNTS.map(([program, bank]) => candidate('program count', program || bank, counted(program, bank))),
    ...[1, -1].map((more) => candidate('channel count', more, otherChannel(more))),
    ...HIDDEN.map((hides, at) =>
      candidate('hidden real-time', at, (bytes) => bytes.filter((byte) => !hides(byte))),
    ),
  ];
}
