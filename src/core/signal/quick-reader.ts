/** A receiver that tells only which bytes it read: for searches that read the same message from thousands of lines. */
import { BITS_PER_FRAME } from './frames.ts';
import { samplerOf, tickAt } from './receiver.ts';
import type { ReceivedByte, ReceiverOptions, Sampler } from './receiver.ts';
import type { Waveform } from './waveform.ts';

/** The level of a line at moments that mostly go forward: remembers the edge it stood at. */
function levelReader({ before, edges }: Waveform): (seconds: number) => boolean {
  let at = 0;
  return (seconds) => {
    while (at < edges.length && edges[at]!.seconds <= seconds) at += 1;
    while (at > 0 && edges[at - 1]!.seconds > seconds) at -= 1;
    return at === 0 ? before : edges[at - 1]!.level;
  };
}

/** The number that the bits of one frame make, start bit lowest, and the last tick that voted. */
function readFrame(sampler: Sampler, level: (seconds: number) => boolean, startTick: number) {
  const { votes, perBit, timeOf } = sampler;
  const needed = votes.length / 2;
  const last = votes.at(-1)! - 1;
  let bits = 0;
  for (let bit = 0; bit < BITS_PER_FRAME; bit += 1) {
    let high = 0;
    for (const number of votes) if (level(timeOf(startTick + bit * perBit + number - 1))) high += 1;
    if (high <= needed) continue;
    // A start bit that reads as 1 is a false start: nothing more of it is read.
    if (bit === 0) return { bits: 1, lastTick: startTick + last };
    bits |= 1 << bit;
  }
  return { bits, lastTick: startTick + (BITS_PER_FRAME - 1) * perBit + last };
}

/** What a receiver makes of a line from one falling edge on: the byte that it read, if any, and the edge at which it looks again. */
export interface LineStep {
  readonly read: ReceivedByte | undefined;
  readonly next: number;
}

/** The edge that stands for the beginning of a line, before its first: a line may rest at 0. */
export const BEFORE_EDGES = -1;

/**
 * Read a line step by step: given the index of a falling edge, or `BEFORE_EDGES`, what is read there and which falling edge comes
 * next; the count of edges where none does. Throws RangeError for options that describe no receiver.
 */
export function stepLine(wave: Waveform, options: ReceiverOptions = {}): (edge: number) => LineStep {
  const { edges } = wave;
  const sampler = samplerOf(wave, options);
  const { timeOf } = sampler;
  const level = levelReader(wave);
  const fallsAfter = (edge: number, seconds: number): number => {
    let at = edge + 1;
    while (at < edges.length && (edges[at]!.level || edges[at]!.seconds <= seconds)) at += 1;
    return at;
  };
  return (edge) => {
    const tick = edge === BEFORE_EDGES ? 0 : tickAt(sampler, edges[edge]!.seconds);
    const falls = !level(timeOf(tick)) && (edge === BEFORE_EDGES || level(timeOf(tick - 1)));
    if (!falls)
      return { read: undefined, next: fallsAfter(edge, edge === BEFORE_EDGES ? timeOf(0) : -Infinity) };
    const { bits, lastTick } = readFrame(sampler, level, tick);
    const next = fallsAfter(edge, timeOf(lastTick));
    if (bits & 1) return { read: undefined, next };
    const value = (bits >> 1) & 0xff;
    const stop = bits >> (BITS_PER_FRAME - 1) === 1;
    const kind = stop ? 'byte' : value === 0 ? 'break' : 'framing error';
    return { read: { value, kind, seconds: timeOf(tick) }, next };
  };
}

/**
 * The bytes that a monitor shows of a line: what `receive` hears, as `receivedBytes` lists it, without the samples.
 * Throws RangeError for options that describe no receiver.
 */
export function readLine(wave: Waveform, options: ReceiverOptions = {}): readonly ReceivedByte[] {
  const step = stepLine(wave, options);
  const list: ReceivedByte[] = [];
  for (let edge = BEFORE_EDGES; edge < wave.edges.length;) {
    const { read, next } = step(edge);
    if (read) list.push(read);
    edge = next;
  }
  return list;
}
