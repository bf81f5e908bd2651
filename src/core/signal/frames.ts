import type { Edge, Waveform } from './waveform.ts';

/** Bits a second on the wire. Source: MIDI 1.0 Detailed Specification 4.2.1, hardware; MMA CA-033. */
export const BAUD = 31250;
/** Start bit, eight data bits, stop bit. Same sources. */
export const BITS_PER_FRAME = 10;
/** Largest clock error that the standard allows, as a fraction. Same sources. */
export const STANDARD_CLOCK_ERROR = 0.01;

/** How a sender keeps time. */
export interface SenderClock {
  /** Bits a second by a perfect clock; `BAUD` when left out. */
  readonly baud?: number;
  /** Fraction by which the clock runs fast (positive) or slow (negative); 0 when left out. */
  readonly clockError?: number;
}

/** How bytes follow one another. */
export interface FrameOptions extends SenderClock {
  /** Moment of the first start bit, seconds; 0 when left out. */
  readonly startSeconds?: number;
  /** Idle time after each byte: one number for all, or one for each byte (the last is unused); 0 when left out. */
  readonly gapSeconds?: number | readonly number[];
}

/** One byte on the wire, from the start edge to the end of the stop bit. */
export interface SentByte {
  readonly value: number;
  readonly startSeconds: number;
  readonly endSeconds: number;
}

/** Bytes laid out in time: the line, where each byte stands, and the length of one bit by the sender's clock. */
export interface SentFrames {
  readonly wave: Waveform;
  readonly bytes: readonly SentByte[];
  readonly bitSeconds: number;
}

/** One bit cell: `bit` 0 is the start bit, 1 to 8 the data bits (lowest first), 9 the stop bit. */
interface BitCell {
  readonly bit: number;
  readonly level: boolean;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** Length of one bit, seconds: 32 us for the standard's clock. Throws RangeError for a clock that does not run. */
export function bitSecondsOf(clock: SenderClock): number {
  const { baud = BAUD, clockError = 0 } = clock;
  const hertz = baud * (1 + clockError);
  if (!(hertz > 0) || !Number.isFinite(hertz)) {
    throw new RangeError(`clock: bits a second must be more than 0, got ${hertz}`);
  }
  return 1 / hertz;
}

/** Level of a bit of a frame; `bit` counts as in `BitCell`. */
export function frameBit(value: number, bit: number): boolean {
  if (bit <= 0) return false;
  return bit > 8 || ((value >> (bit - 1)) & 1) === 1;
}

const us = (seconds: number): string => `${(seconds * 1e6).toFixed(1)} us`;

/** The ten bit cells of a sent byte, in order. */
export function bitCells(sent: SentByte): readonly BitCell[] {
  const bitSeconds = (sent.endSeconds - sent.startSeconds) / BITS_PER_FRAME;
  return Array.from({ length: BITS_PER_FRAME }, (_, bit) => ({
    bit,
    level: frameBit(sent.value, bit),
    fromSeconds: sent.startSeconds + bit * bitSeconds,
    toSeconds: sent.startSeconds + (bit + 1) * bitSeconds,
  }));
}

/**
 * Bytes that begin at given moments (seconds, in order). Throws RangeError for a number that is no byte and for a byte
 * that begins before the one ahead of it has ended.
 */
export function layFrames(
  starts: readonly { readonly value: number; readonly startSeconds: number }[],
  clock: SenderClock = {},
): SentFrames {
  const bitSeconds = bitSecondsOf(clock);
  // Rounding of sums may put a byte a hair before the end of the last one; a millionth of a bit is far below any effect.
  const slack = bitSeconds * 1e-6;
  const edges: Edge[] = [];
  const bytes: SentByte[] = [];
  let level = true;
  for (const { value, startSeconds } of starts) {
    if (!Number.isInteger(value) || value < 0 || value > 255) {
      throw new RangeError(`byte ${bytes.length}: must be a whole number from 0 to 255, got ${value}`);
    }
    const free = bytes.at(-1)?.endSeconds ?? -Infinity;
    if (!(startSeconds >= free - slack) || !Number.isFinite(startSeconds)) {
      throw new RangeError(
        `byte ${bytes.length}: must start at ${us(free)} or later, got ${us(startSeconds)}`,
      );
    }
    for (let bit = 0; bit < BITS_PER_FRAME; bit += 1) {
      const next = frameBit(value, bit);
      if (next !== level) edges.push({ seconds: startSeconds + bit * bitSeconds, level: next });
      level = next;
    }
    bytes.push({ value, startSeconds, endSeconds: startSeconds + BITS_PER_FRAME * bitSeconds });
  }
  return { wave: { before: true, edges }, bytes, bitSeconds };
}

/**
 * Bytes sent one after another: start bit (space), eight data bits lowest first, stop bit (mark), no parity.
 * Throws RangeError for a number that is no byte, a negative gap, or a clock that does not run.
 * Source: MIDI 1.0 Detailed Specification 4.2.1, hardware.
 */
export function sendBytes(values: readonly number[], options: FrameOptions = {}): SentFrames {
  const { startSeconds = 0, gapSeconds = 0 } = options;
  const frameSeconds = BITS_PER_FRAME * bitSecondsOf(options);
  let gaps = 0;
  const starts = values.map((value, index) => {
    const start = { value, startSeconds: startSeconds + index * frameSeconds + gaps };
    const gap = typeof gapSeconds === 'number' ? gapSeconds : (gapSeconds[index] ?? 0);
    if (!(gap >= 0)) throw new RangeError(`byte ${index}: gap must be 0 s or more, got ${gap} s`);
    gaps += gap;
    return start;
  });
  return layFrames(starts, options);
}
