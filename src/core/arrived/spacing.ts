/** How bytes may have followed each other in time: nobody writes that down, so every usual way is tried. */
import { decode, sendBytes } from '../signal/index.ts';
import type { SenderClock, SentFrames, Waveform } from '../signal/index.ts';

/** Idle time after each byte inside a message, and after each message, seconds. */
export interface Spacing {
  readonly insideSeconds: number;
  readonly betweenSeconds: number;
  readonly words: string;
}

/** Messages apart: long enough for every effect of one to be over before the next (our choice). */
const APART_SECONDS = 5e-3;

/** Pauses after each byte that small senders make, microseconds: from one bit to three, in steps of an eighth of a bit (our choice). */
const PAUSES = [32, 40, 48, 56, 72, 80, 88, 96, 36, 44, 52, 60, 68, 76, 84, 92];
/** The first half of them, a quarter of a bit apart, is enough where other amounts are tried besides. */
const WIDE_PAUSES = PAUSES.length / 2;

const paused = (micro: number): Spacing => ({
  insideSeconds: micro * 1e-6,
  betweenSeconds: APART_SECONDS,
  words: `${micro} µs after each byte`,
});

/** The usual ways: a sender that never stops, and messages apart with bytes that follow at once or after a while (our choice). */
export const USUAL_SPACINGS: readonly Spacing[] = [
  { insideSeconds: 0, betweenSeconds: APART_SECONDS, words: 'messages apart' },
  { insideSeconds: 0, betweenSeconds: 0, words: 'all bytes without a pause' },
  paused(64),
  paused(320),
];

/** These and more pauses: a line upside down is read by its pauses, so that each of them gives other bytes. */
export const SPACINGS: readonly Spacing[] = [...USUAL_SPACINGS, ...PAUSES.map(paused)];

/** How many of these have pauses a quarter of a bit apart. */
export const FEWER_SPACINGS = USUAL_SPACINGS.length + WIDE_PAUSES;

/** The indexes after which a message ends; a real-time byte inside another message ends none. */
function endsOf(bytes: readonly number[]): ReadonlySet<number> {
  const events = decode(bytes);
  const inside = (at: number): boolean => events.some(({ from, to }) => from < at && at < to - 1);
  return new Set(events.map(({ to }) => to - 1).filter((at) => !inside(at)));
}

/** The line of bytes sent with a spacing. Throws RangeError for a number that is no byte. */
export function layOut(bytes: readonly number[], spacing: Spacing, clock: SenderClock = {}): SentFrames {
  const ends = endsOf(bytes);
  const gapSeconds = bytes.map((_, at) => (ends.has(at) ? spacing.betweenSeconds : spacing.insideSeconds));
  return sendBytes(bytes, { ...clock, gapSeconds });
}

/** The beginning of a line; what is read of it up to a moment, seconds, is read of the whole line as well. */
export interface Head {
  readonly wave: Waveform;
  readonly untilSeconds: number;
}

/** Bytes of a beginning: enough to tell that a cause does not fit, and few beside a log that takes long (our choice). */
const HEAD_BYTES = 12;

/** The beginning of a line; undefined for one that is hardly longer. */
export function headOf({ wave, bytes }: SentFrames): Head | undefined {
  const after = bytes[HEAD_BYTES];
  if (!after || bytes.length < 2 * HEAD_BYTES) return undefined;
  const untilSeconds = after.startSeconds;
  const edges = wave.edges.filter(({ seconds }) => seconds < untilSeconds);
  return { wave: { before: wave.before, edges }, untilSeconds };
}
