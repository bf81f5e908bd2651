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

/** A line that idles for ever. */
export const IDLE_LINE: Waveform = { before: true, edges: [] };

/**
 * A waveform from edges in any order; edges that change nothing are dropped, and at one moment the last one given wins.
 * Throws RangeError for a time that is not finite.
 */
export function waveform(edges: readonly Edge[], before = true): Waveform {
  const kept: Edge[] = [];
  for (const edge of edges.toSorted((one, other) => one.seconds - other.seconds)) {
    if (!Number.isFinite(edge.seconds)) {
      throw new RangeError(`edge: time must be a finite number of seconds, got ${edge.seconds}`);
    }
    if (kept.at(-1)?.seconds === edge.seconds) kept.pop();
    if ((kept.at(-1)?.level ?? before) !== edge.level) kept.push(edge);
  }
  return { before, edges: kept };
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

/** The same line upside down, as an inverting driver or a pair of the wrong sense would make it. */
export function invertWave(wave: Waveform): Waveform {
  return {
    before: !wave.before,
    edges: wave.edges.map(({ seconds, level }) => ({ seconds, level: !level })),
  };
}
