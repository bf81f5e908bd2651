/** Scales on which readings are compared: volts as they are, ohms as a logarithm that bends to a line near zero. */
import type { MeterFunction } from './instruments.ts';

/** Uncertainty of a hand-held meter as a share of the reading (our choice; a display of 2000 counts on its best range). */
export const READING_SHARE = 0.02;

/** The uncertainty that stays at nothing, volts (our choice, like the share). */
export const FLOOR_VOLTS = 3e-3;

/** The uncertainty that stays at nothing, ohms (our choice, like the share). */
const FLOOR_OHMS = 0.5;

/** Ohms below which the resistance scale is a line: where the floor outweighs the share. */
const BEND_OHMS = FLOOR_OHMS / READING_SHARE;

/** What stands for a resistance without end on the scale, ohms. */
const MOST_OHMS = 1e12;

/** Functions whose readings are numbers, and so can be compared on a scale. */
export type ScaledFunction = Extract<MeterFunction, 'volts' | 'ohms' | 'diode'>;

/** A measured value on its scale. */
export function onScale(meter: ScaledFunction, value: number): number {
  if (meter !== 'ohms') return value;
  // Less than nothing means a foreign voltage: the meter shows overload, so it stands with no end of ohms.
  const ohms = value < 0 || value > MOST_OHMS ? MOST_OHMS : value;
  return Math.log(ohms + BEND_OHMS);
}

/** Standard uncertainty of the meter at a point of the scale. */
export function noiseAt(meter: ScaledFunction, point: number): number {
  return meter === 'ohms' ? READING_SHARE : Math.hypot(READING_SHARE * point, FLOOR_VOLTS);
}

/** A point of the scale as a measured value again. */
export function offScale(meter: ScaledFunction, point: number): number {
  return meter === 'ohms' ? Math.max(0, Math.exp(point) - BEND_OHMS) : point;
}
