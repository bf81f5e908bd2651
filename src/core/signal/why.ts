import { hexOf } from './hex.ts';
import { BITS_PER_FRAME, bitCells, frameBit } from './frames.ts';
import type { SentByte, SentFrames } from './frames.ts';
import type { FramingError, Heard, HeardByte, Sample } from './receiver.ts';
import { levelAt, pulsesOf } from './waveform.ts';
import type { Pulse, Waveform } from './waveform.ts';
import { sayMicroseconds } from './say-time.ts';

/** Why a byte did not arrive as it was sent. */
export type Cause =
  | 'none'
  | 'held back'
  | 'silence'
  | 'break'
  | 'upside down'
  | 'false start'
  | 'start overtook'
  | 'lost its place'
  | 'pulse vanished'
  | 'pulse shrunk'
  | 'edge late'
  | 'clocks';

/** A cause and its sentence. */
interface Reason {
  readonly cause: Cause;
  readonly why: string;
}

/** The part of a journey that reasons are read from. */
interface Trace {
  readonly sent: SentFrames;
  readonly arrived: Waveform;
  readonly heard: readonly Heard[];
}

/** Change of a pulse below which its length counts as kept, seconds (our own choice: far below one sample of 2 us). */
const KEPT_SECONDS = 0.2e-6;

function us(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'no end';
  return seconds < 0.05e-6 ? 'less than 0.1 µs' : sayMicroseconds(seconds);
}

/** A bit by name: `bit` 0 start bit, 1 to 8 data bits 0 to 7, 9 stop bit. */
export function bitName(bit: number): string {
  if (bit === 0) return 'start bit';
  return bit > 8 ? 'stop bit' : `data bit ${bit - 1}`;
}

const digit = (level: boolean): string => (level ? '1' : '0');

/** Delay of the first falling edge, which no hop can distort against itself; 0 when there is none. */
function edgeLag({ sent, arrived }: Trace): number {
  const first = sent.wave.edges.find(({ level }) => !level);
  const came = arrived.edges.find(({ level }) => !level);
  return first && came ? came.seconds - first.seconds : 0;
}

function overlap(pulse: Pulse, fromSeconds: number, toSeconds: number): number {
  return Math.min(pulse.toSeconds, toSeconds) - Math.max(pulse.fromSeconds, fromSeconds);
}

/** True when every bit cell of every byte arrives at the opposite level, and the idle line too. */
function upsideDown(trace: Trace): boolean {
  if (trace.arrived.before || trace.arrived.edges.length === 0) return false;
  const lead = trace.arrived.edges[0];
  const begin = trace.sent.wave.edges[0];
  if (!lead || !begin) return false;
  const lag = lead.seconds - begin.seconds;
  return trace.sent.bytes.every((byte) =>
    bitCells(byte).every(
      ({ level, fromSeconds, toSeconds }) =>
        levelAt(trace.arrived, (fromSeconds + toSeconds) / 2 + lag) !== level,
    ),
  );
}

const UPSIDE_DOWN: Reason = {
  cause: 'upside down',
  why: 'every bit arrives as its opposite: current flows when it should rest and rests when it should flow',
};

/** First bit of a frame that was read wrong; the start bit never is, or there would be no frame. */
function firstWrongBit(sent: SentByte, event: HeardByte | FramingError): number {
  for (let bit = 1; bit <= 8; bit += 1)
    if (frameBit(sent.value, bit) !== frameBit(event.value, bit)) return bit;
  return 9;
}

/** The vote that decided wrongly and stood nearest to being right: the last wrong sample of a bit. */
function wrongSample(samples: readonly Sample[], bit: number, level: boolean): Sample | undefined {
  return samples.findLast((sample) => sample.bit === bit && sample.level !== level);
}

/** A start bit that fell while the receiver still read bits before it; null when it was free. */
function startMissed(trace: Trace, value: number, startSeconds: number): Reason | null {
  const busy = trace.heard.find(
    (event) => event.startSeconds < startSeconds && event.readySeconds >= startSeconds,
  );
  if (!busy) return null;
  const early = busy.readySeconds - startSeconds;
  const head = `the start bit of ${hexOf(value)} was missed: it began ${us(early)} before the receiver's last vote on the bits ahead of it`;
  if (early < trace.sent.bitSeconds) return { cause: 'start overtook', why: head };
  return { cause: 'lost its place', why: `${head}, the receiver having lost its place` };
}

/** Why a byte was read wrong or without its stop bit. */
export function whyWrong(trace: Trace, sent: SentByte, event: HeardByte | FramingError): Reason {
  if (upsideDown(trace)) return UPSIDE_DOWN;
  const lag = edgeLag(trace);
  const { bitSeconds } = trace.sent;
  const away = event.startSeconds - (sent.startSeconds + lag);
  if (Math.abs(away) > bitSeconds / 2) {
    return (
      startMissed(trace, sent.value, sent.startSeconds + lag) ?? {
        cause: 'lost its place',
        why: `${hexOf(sent.value)} was not read from its start bit: the receiver began ${us(Math.abs(away))} ${away > 0 ? 'after' : 'before'} it, having lost its place`,
      }
    );
  }
  const bit = firstWrongBit(sent, event);
  const level = frameBit(sent.value, bit);
  const framing = event.kind === 'framing error' && bit === 9 ? 'framing error: ' : '';
  const head = `${framing}${bitName(bit)} of ${hexOf(sent.value)} read as ${digit(!level)}`;
  const middle = sent.startSeconds + (bit + 0.5) * bitSeconds;
  const left = pulsesOf(trace.sent.wave).find((pulse) => overlap(pulse, middle, middle) >= 0);
  if (!left) throw new Error(`sent wave: must cover bit ${bit}, got no pulse at ${middle} s`);
  const came = pulsesOf(trace.arrived)
    .filter(
      (pulse) => pulse.level === level && overlap(pulse, left.fromSeconds + lag, left.toSeconds + lag) > 0,
    )
    .toSorted((one, other) => length(other) - length(one))[0];
  if (!came) {
    return { cause: 'pulse vanished', why: `${head}: its pulse of ${us(length(left))} vanished on the way` };
  }
  const shrink = length(left) - length(came);
  if (shrink > KEPT_SECONDS) {
    const why = `${head}: its pulse shrank from ${us(length(left))} to ${us(length(came))}`;
    return { cause: 'pulse shrunk', why };
  }
  const late = came.fromSeconds - (left.fromSeconds + lag);
  if (late > KEPT_SECONDS) return { cause: 'edge late', why: `${head}: its edge came ${us(late)} late` };
  const sample = wrongSample(event.samples, bit, level);
  const cell = sent.startSeconds + lag + bit * bitSeconds;
  const missed = sample ? offCell(sample.seconds, cell, cell + bitSeconds) : 'off its cell';
  return { cause: 'clocks', why: `${head}: sampled ${missed}, since the two clocks differ` };
}

const length = (pulse: Pulse): number => pulse.toSeconds - pulse.fromSeconds;

function offCell(seconds: number, fromSeconds: number, toSeconds: number): string {
  if (seconds < fromSeconds) return `${us(fromSeconds - seconds)} before it began`;
  return seconds >= toSeconds ? `${us(seconds - toSeconds)} after it ended` : 'close to its edge';
}

/**
 * A report as a frame that can be laid beside a sent byte, or null for a false start and a true break. Nine bits of 0 with
 * a missed stop bit look like a break to the receiver; the line tells them apart, since it comes back within a bit of the
 * end of the frame.
 */
export function asFrame(event: Heard, trace: Trace): HeardByte | FramingError | null {
  if (event.kind === 'byte' || event.kind === 'framing error') return event;
  if (event.kind === 'glitch') return null;
  const low = pulsesOf(trace.arrived).find((pulse) => !pulse.level && pulse.toSeconds > event.startSeconds);
  if (!low || length(low) > (BITS_PER_FRAME + 1) * trace.sent.bitSeconds) return null;
  const { startSeconds, readySeconds, samples, doubtfulBits } = event;
  return { kind: 'framing error', value: 0, startSeconds, readySeconds, samples, doubtfulBits };
}

/** Why a byte left no trace at the receiver. */
export function whyMissing(trace: Trace, sent: SentByte): Reason {
  const { arrived, heard } = trace;
  const name = hexOf(sent.value);
  if (arrived.edges.length === 0) {
    if (arrived.before)
      return { cause: 'silence', why: `${name} never arrived: the line stayed idle throughout` };
    return {
      cause: 'break',
      why: `${name} never arrived: current flowed throughout, which reads as a break`,
    };
  }
  if (upsideDown(trace)) return UPSIDE_DOWN;
  const lag = edgeLag(trace);
  const fromSeconds = sent.startSeconds + lag;
  const toSeconds = sent.endSeconds + lag;
  const meets = (event: Heard, end: number): boolean => event.startSeconds < toSeconds && end > fromSeconds;
  const broken = heard.find((event) => event.kind === 'break' && meets(event, event.endSeconds ?? Infinity));
  if (broken) {
    return {
      cause: 'break',
      why: `${name} was lost in a break: the line stayed at 0 for longer than a byte`,
    };
  }
  const glitch = heard.find((event) => event.kind === 'glitch' && meets(event, event.readySeconds));
  if (glitch) {
    return {
      cause: 'false start',
      why: `${name} was lost: the line was back at 1 before the middle of its start bit`,
    };
  }
  const low = pulsesOf(arrived).some((pulse) => !pulse.level && overlap(pulse, fromSeconds, toSeconds) > 0);
  if (!low) return { cause: 'silence', why: `${name} never arrived: the line stayed idle` };
  return {
    cause: 'lost its place',
    why: `${name} was lost: the receiver was still busy with bits before it`,
  };
}
