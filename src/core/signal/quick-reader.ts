/** A receiver that tells only which bytes it read: for searches that read the same message from thousands of lines. */
import { BITS_PER_FRAME } from './frames.ts';
import { samplerOf, tickAt } from './receiver.ts';
import type { ReceivedByte, ReceiverOptions, Sampler } from './receiver.ts';
import type { Waveform } from './waveform.ts';

/** The edges of a line up to moments that mostly go forward, as a count: remembers where it stood. */
function edgeCounter({ edges }: Waveform): (seconds: number) => number {
  let at = 0;
  return (seconds) => {
    while (at < edges.length && edges[at]!.seconds <= seconds) at += 1;
    while (at > 0 && edges[at - 1]!.seconds > seconds) at -= 1;
    return at;
  };
}

/** The number that the bits of one frame make, start bit lowest, and the last tick that voted. */
function readFrame(
  { votes, perBit, timeOf }: Sampler,
  edgesAt: (seconds: number) => number,
  levelAfter: (count: number) => boolean,
  startTick: number,
) {
  const needed = votes.length / 2;
  const [first, last] = [votes[0]! - 1, votes.at(-1)! - 1];
  let bits = 0;
  for (let bit = 0; bit < BITS_PER_FRAME; bit += 1) {
    const tick = startTick + bit * perBit;
    const count = edgesAt(timeOf(tick + first));
    let one = levelAfter(count);
    // Where no edge stands between the first vote and the last, all of them see one level.
    if (edgesAt(timeOf(tick + last)) !== count) {
      let high = 0;
      for (const number of votes) if (levelAfter(edgesAt(timeOf(tick + number - 1)))) high += 1;
      one = high > needed;
    }
    if (!one) continue;
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
  const { before, edges } = wave;
  const sampler = samplerOf(wave, options);
  const { timeOf } = sampler;
  const edgesAt = edgeCounter(wave);
  const levelAfter = (count: number): boolean => (count === 0 ? before : edges[count - 1]!.level);
  const level = (seconds: number): boolean => levelAfter(edgesAt(seconds));
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
    const { bits, lastTick } = readFrame(sampler, edgesAt, levelAfter, tick);
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
