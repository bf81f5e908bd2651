import { BAUD, BITS_PER_FRAME, bitSecondsOf } from './frames.ts';
import { hexOf } from './hex.ts';
import { edgesUpTo, levelAt } from './waveform.ts';
import type { Waveform } from './waveform.ts';

/** Samples a bit of the usual receiver. Source: KL27 reference manual rev 5, chapter 38. */
export const OVERSAMPLING = 16;
/** Samples of each bit that vote, the one that first sees the start bit being number 1. Same source. */
export const VOTE_SAMPLES: readonly number[] = [8, 9, 10];

/** How a receiver keeps time and makes up its mind; everything may be left out. */
export interface ReceiverOptions {
  readonly baud?: number;
  /** Fraction by which its clock runs fast (positive) or slow (negative). */
  readonly clockError?: number;
  /** Samples a bit. */
  readonly oversampling?: number;
  /** Numbers of the samples that vote, from 1, rising, an odd count of them. */
  readonly voteSamples?: readonly number[];
  /** Where the sample clock stands at `listensFromSeconds`: first sample this fraction of a sample later, 0 to below 1. */
  readonly phase?: number;
  /** Moment at which it starts to listen, seconds; it takes the line for idle until then. */
  readonly listensFromSeconds?: number;
}

/** One sample that voted: `bit` 0 start, 1 to 8 data, 9 stop. */
export interface Sample {
  readonly seconds: number;
  readonly level: boolean;
  readonly bit: number;
}

/**
 * One report. `startSeconds`: the sample that first saw the line low. `readySeconds`: the last vote.
 * `doubtfulBits`: bits whose votes differed, although the majority decided.
 */
interface HeardBase {
  readonly startSeconds: number;
  readonly readySeconds: number;
  readonly samples: readonly Sample[];
  readonly doubtfulBits: readonly number[];
}

/** A whole byte. */
export interface HeardByte extends HeardBase {
  readonly kind: 'byte';
  readonly value: number;
}

/** The stop bit read as 0; `value` is what the data bits read, and is not handed on. */
export interface FramingError extends HeardBase {
  readonly kind: 'framing error';
  readonly value: number;
}

/** Every bit and the stop bit read as 0; `endSeconds` is the first sample that saw the line high again, null if never. */
interface Break extends HeardBase {
  readonly kind: 'break';
  readonly endSeconds: number | null;
}

/** A false start: the line fell, but the start bit's own vote found it high. */
interface Glitch extends HeardBase {
  readonly kind: 'glitch';
}

/** What a receiver can report. */
export type Heard = HeardByte | FramingError | Break | Glitch;

/** A byte as a monitor shows it, good or not. `seconds`: when it was seen to start. */
export interface ReceivedByte {
  readonly value: number;
  readonly kind: 'byte' | 'framing error' | 'break';
  readonly seconds: number;
}

/** Every byte that a monitor shows, in order: those that end in a framing error as well, and a break as 00. A false start is none. */
export function receivedBytes(heard: readonly Heard[]): readonly ReceivedByte[] {
  return heard.flatMap((one): readonly ReceivedByte[] =>
    one.kind === 'glitch'
      ? []
      : [{ value: one.kind === 'break' ? 0 : one.value, kind: one.kind, seconds: one.startSeconds }],
  );
}

/** Bytes as a monitor shows them, those that are not good marked: 'F3 (framing error) FE'; 'nothing' where there is none. */
export function sayReceived(received: readonly ReceivedByte[]): string {
  const words = received.map(({ value, kind }) =>
    kind === 'byte' ? hexOf(value) : `${hexOf(value)} (${kind})`,
  );
  return words.join(' ') || 'nothing';
}

/** Everything a receiver made of a line; `bytes` are the good ones, `frameSeconds` its own length of a byte. */
export interface Reception {
  readonly heard: readonly Heard[];
  readonly bytes: readonly number[];
  readonly tickSeconds: number;
  readonly frameSeconds: number;
}

/** A receiver's samples of a line: their length, how many make a bit, which of them vote, and the moment of each by its number. */
export interface Sampler {
  readonly wave: Waveform;
  readonly tickSeconds: number;
  readonly perBit: number;
  readonly votes: readonly number[];
  readonly timeOf: (tick: number) => number;
}

/** Length of one sample of a receiver, seconds: 2 us for the usual one. */
export function tickSecondsOf(options: ReceiverOptions = {}): number {
  const { baud = BAUD, clockError = 0, oversampling = OVERSAMPLING } = options;
  return bitSecondsOf({ baud, clockError }) / oversampling;
}

/** The samples of a line by a receiver. Throws RangeError for options that describe no receiver. */
export function samplerOf(wave: Waveform, options: ReceiverOptions): Sampler {
  const { oversampling = OVERSAMPLING, voteSamples = VOTE_SAMPLES } = options;
  const { phase = 0, listensFromSeconds = 0 } = options;
  if (!Number.isInteger(oversampling) || oversampling < 1) {
    throw new RangeError(`receiver: samples a bit must be a whole number from 1, got ${oversampling}`);
  }
  const rising = voteSamples.every((vote, index) => vote > (voteSamples[index - 1] ?? 0));
  const inside = voteSamples.every((vote) => Number.isInteger(vote) && vote <= oversampling);
  if (voteSamples.length % 2 !== 1 || !rising || !inside) {
    throw new RangeError(
      `receiver: vote samples must be an odd count of rising whole numbers from 1 to ${oversampling}, got ${voteSamples.join(', ')}`,
    );
  }
  if (!(phase >= 0 && phase < 1)) {
    throw new RangeError(`receiver: phase must be from 0 to below 1, got ${phase}`);
  }
  const tickSeconds = tickSecondsOf(options);
  const timeOf = (tick: number): number => listensFromSeconds + (tick + phase) * tickSeconds;
  return { wave, tickSeconds, perBit: oversampling, votes: voteSamples, timeOf };
}

/** First tick at or after a moment, seconds. */
export function tickAt(sampler: Sampler, seconds: number): number {
  const guess = Math.ceil((seconds - sampler.timeOf(0)) / sampler.tickSeconds);
  if (sampler.timeOf(guess - 1) >= seconds) return guess - 1;
  return sampler.timeOf(guess) < seconds ? guess + 1 : guess;
}

interface Frame {
  readonly heard: Heard;
  readonly lastTick: number;
}

function hearFrame(sampler: Sampler, startTick: number): Frame {
  const { wave, votes, perBit, timeOf } = sampler;
  const samples: Sample[] = [];
  const doubtfulBits: number[] = [];
  let lastTick = startTick;
  const vote = (bit: number): boolean => {
    let high = 0;
    for (const number of votes) {
      lastTick = startTick + bit * perBit + number - 1;
      const seconds = timeOf(lastTick);
      const level = levelAt(wave, seconds);
      samples.push({ seconds, level, bit });
      if (level) high += 1;
    }
    if (high > 0 && high < votes.length) doubtfulBits.push(bit);
    return high * 2 > votes.length;
  };
  const done = (): HeardBase => ({
    startSeconds: timeOf(startTick),
    readySeconds: timeOf(lastTick),
    samples,
    doubtfulBits,
  });
  if (vote(0)) return { heard: { kind: 'glitch', ...done() }, lastTick };
  let value = 0;
  for (let bit = 1; bit <= 8; bit += 1) if (vote(bit)) value |= 1 << (bit - 1);
  const stop = vote(BITS_PER_FRAME - 1);
  if (stop) return { heard: { kind: 'byte', value, ...done() }, lastTick };
  if (value !== 0) return { heard: { kind: 'framing error', value, ...done() }, lastTick };
  return { heard: { kind: 'break', endSeconds: firstHigh(sampler, lastTick), ...done() }, lastTick };
}

/** Moment of the first tick from `tick` on that sees the line high, or null. */
function firstHigh(sampler: Sampler, tick: number): number | null {
  const { wave, timeOf } = sampler;
  if (levelAt(wave, timeOf(tick))) return timeOf(tick);
  for (let index = edgesUpTo(wave, timeOf(tick)); index < wave.edges.length; index += 1) {
    const edge = wave.edges[index];
    if (!edge?.level) continue;
    const seconds = timeOf(tickAt(sampler, edge.seconds));
    if (levelAt(wave, seconds)) return seconds;
  }
  return null;
}

/**
 * What a serial receiver reads from a line. Its clock runs free; a start bit is a sample that sees the line low right
 * after one that saw it high, so the start is known to one sample only. Each bit is decided by a majority of its vote
 * samples, and the search for the next start begins with the sample after the last vote of the stop bit. After a
 * framing error or a break the line must be seen high before a new start counts. Looks at the line only at sample
 * instants, and at exact edge times; what falls between two samples is not seen, as in a real receiver.
 * Throws RangeError for options that describe no receiver, never for a strange line.
 */
export function receive(wave: Waveform, options: ReceiverOptions = {}): Reception {
  const sampler = samplerOf(wave, options);
  const { timeOf } = sampler;
  const heard: Heard[] = [];
  let lastTick = -1;
  const take = (startTick: number): void => {
    const frame = hearFrame(sampler, startTick);
    heard.push(frame.heard);
    lastTick = frame.lastTick;
  };
  if (!levelAt(wave, timeOf(0))) take(0);
  wave.edges.forEach((edge) => {
    // Every start needs a falling edge after the last tick already used, so each edge is looked at once.
    if (edge.level || edge.seconds <= timeOf(Math.max(lastTick, 0))) return;
    const tick = tickAt(sampler, edge.seconds);
    if (!levelAt(wave, timeOf(tick)) && levelAt(wave, timeOf(tick - 1))) take(tick);
  });
  const bytes = heard.flatMap((event) => (event.kind === 'byte' ? [event.value] : []));
  const frameSeconds = BITS_PER_FRAME * sampler.perBit * sampler.tickSeconds;
  return { heard, bytes, tickSeconds: sampler.tickSeconds, frameSeconds };
}
