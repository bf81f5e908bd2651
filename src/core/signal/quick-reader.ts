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

/**
 * The bytes that a monitor shows of a line: what `receive` hears, as `receivedBytes` lists it, without the samples.
 * Throws RangeError for options that describe no receiver.
 */
export function readLine(wave: Waveform, options: ReceiverOptions = {}): readonly ReceivedByte[] {
  const sampler = samplerOf(wave, options);
  const { timeOf } = sampler;
  const level = levelReader(wave);
  const read: ReceivedByte[] = [];
  let lastTick = -1;
  const take = (startTick: number): void => {
    const frame = readFrame(sampler, level, startTick);
    lastTick = frame.lastTick;
    if (frame.bits & 1) return;
    const value = (frame.bits >> 1) & 0xff;
    const stop = frame.bits >> (BITS_PER_FRAME - 1) === 1;
    const kind = stop ? 'byte' : value === 0 ? 'break' : 'framing error';
    read.push({ value, kind, seconds: timeOf(startTick) });
  };
  if (!level(timeOf(0))) take(0);
  for (const edge of wave.edges) {
    if (edge.level || edge.seconds <= timeOf(Math.max(lastTick, 0))) continue;
    const tick = tickAt(sampler, edge.seconds);
    if (!level(timeOf(tick)) && level(timeOf(tick - 1))) take(tick);
  }
  return read;
}
