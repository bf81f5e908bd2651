/**
 * A line with two levels, described by the moments at which it changes.
 * Level true: mark, idle, no current in the LED. Level false: space, a 0 bit, current flows.
 */

/** The line takes `level` at `seconds` and keeps it until the next edge. */
export interface Edge {
  readonly seconds: number;
  readonly level: boolean;
}

/** A line over all time: `before` the first edge, then the edges in order of time, each a real change. */
export interface Waveform {
  readonly before: boolean;
  readonly edges: readonly Edge[];
}

/** A stretch of one level; infinite where the line never changes again. */
export interface Pulse {
  readonly level: boolean;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** Number of edges at or before `seconds`. */
export function edgesUpTo(wave: Waveform, seconds: number): number {
  let low = 0;
  let high = wave.edges.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((wave.edges[middle]?.seconds ?? Infinity) <= seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Level at a moment; at the very moment of an edge the new level holds. */
export function levelAt(wave: Waveform, seconds: number): boolean {
  return wave.edges[edgesUpTo(wave, seconds) - 1]?.level ?? wave.before;
}

/** The stretches of one level, in order; the first begins at -Infinity, the last ends at Infinity. */
export function pulsesOf(wave: Waveform): readonly Pulse[] {
  const starts = [{ seconds: -Infinity, level: wave.before }, ...wave.edges];
  return starts.map(({ seconds, level }, index) => ({
    level,
    fromSeconds: seconds,
    toSeconds: starts[index + 1]?.seconds ?? Infinity,
  }));
}
