/** Lines that tests make by hand. */
import type { Edge, Waveform } from '../../../src/core/signal/waveform.ts';

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

/** The same line upside down, as an inverting driver or a pair of the wrong sense would make it. */
export function invertWave(wave: Waveform): Waveform {
  return {
    before: !wave.before,
    edges: wave.edges.map(({ seconds, level }) => ({ seconds, level: !level })),
  };
}
