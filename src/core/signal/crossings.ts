import type { Edge, Waveform } from './waveform.ts';

/** A point of a solved current. */
export interface CurrentPoint {
  readonly seconds: number;
  readonly amperes: number;
}

/** LED currents at which a receiver turns on and off again; `offAmperes` at most `onAmperes`. */
export interface LedThreshold {
  readonly onAmperes: number;
  readonly offAmperes: number;
}

/**
 * The line at an LED, from its current over time: level false from the moment the current rises through `onAmperes` until
 * it falls through `offAmperes`. Points in order of time; between two points the current runs straight.
 * Throws RangeError when the thresholds are the wrong way round.
 */
export function edgesFromCurrent(points: readonly CurrentPoint[], threshold: LedThreshold): Waveform {
  const { onAmperes, offAmperes } = threshold;
  if (!(offAmperes <= onAmperes)) {
    throw new RangeError(`threshold: off must be at most on (${onAmperes} A), got ${offAmperes} A`);
  }
  const edges: Edge[] = [];
  const before = !((points[0]?.amperes ?? 0) >= onAmperes);
  let level = before;
  for (let index = 1; index < points.length; index += 1) {
    const from = points[index - 1];
    const to = points[index];
    if (!from || !to) continue;
    const goesOn = level && to.amperes >= onAmperes;
    const goesOff = !level && to.amperes < offAmperes;
    if (!goesOn && !goesOff) continue;
    level = goesOff;
    const at = goesOn ? onAmperes : offAmperes;
    // With hysteresis the crossing lies within this stretch unless the current already stood past it.
    const share = Math.min(1, Math.max(0, (at - from.amperes) / (to.amperes - from.amperes)));
    edges.push({ seconds: from.seconds + share * (to.seconds - from.seconds), level });
  }
  return { before, edges };
}
