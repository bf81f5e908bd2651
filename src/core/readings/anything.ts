/** What a jack in no catalogue may read: even over all that a meter can show, with a share for overload or for no volts at all. */
import { normalShare } from './gauss.ts';
import { meterProfile } from './instruments.ts';
import { FLOOR_VOLTS, onScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';

/** Shares of overload, and of no volts; our choice. */
const OVERLOAD = 0.35;
const ZERO = 0.3;

/** Span of what a meter can show, on its scale: volts from -6 to 6, a diode test from 0 to 3 V, ohms up to 20 Mohm. */
const SPANS: Readonly<Record<ScaledFunction, readonly [number, number]>> = {
  volts: [-6, 6],
  diode: [0, 3],
  ohms: [onScale('ohms', 0), onScale('ohms', meterProfile('usual').ohmsMost)],
};

/** Share of overload readings of a function. */
export function anyOverload(meter: ScaledFunction): number {
  return meter === 'volts' ? 0 : OVERLOAD;
}

/** Share of readings between two points of the scale. */
export function anyShare(meter: ScaledFunction, low: number, high: number): number {
  const [least, most] = SPANS[meter];
  const even = Math.max(0, Math.min(high, most) - Math.max(low, least)) / (most - least);
  if (meter !== 'volts') return (1 - OVERLOAD) * even;
  return ZERO * (normalShare(high / FLOOR_VOLTS) - normalShare(low / FLOOR_VOLTS)) + (1 - ZERO) * even;
}

/** Density of readings at a point of the scale; never quite nothing. */
export function anyDensity(meter: ScaledFunction, point: number): number {
  const [least, most] = SPANS[meter];
  if (meter !== 'volts') return (1 - OVERLOAD) / (most - least);
  const steps = point / FLOOR_VOLTS;
  const zero = Math.exp(-0.5 * steps * steps) / (Math.sqrt(2 * Math.PI) * FLOOR_VOLTS);
  return ZERO * zero + (1 - ZERO) / (most - least);
}
