/** Scales on which readings are compared: volts as they are, ohms as a logarithm that bends to a line near zero. */
import type { MeterFunction } from './instruments.ts';

/**
 * How close a device of a crowd must come to count, as a standard deviation: a share of the reading and a floor. Wider than any
 * hand-held meter is off, since it also bridges the gaps between the devices of a crowd (our choice).
 */
const VOLTS_SHARE = 0.04;
const VOLTS_FLOOR = 0.015;
const OHMS_SHARE = 0.35;

/** Uncertainty of a hand-held meter on volts: a share of the reading and a floor (our choice; 2000 counts on its best range). */
const METER_SHARE = 0.02;
const METER_FLOOR_VOLTS = 3e-3;

/** Ohms below which the resistance scale is a line: what a touch and a meter's last digit come to. */
const BEND_OHMS = 5;

/** What stands for a resistance without end on the scale, ohms. */
const MOST_OHMS = 1e12;

/** Functions whose readings are numbers, and so can be compared on a scale. */
export type ScaledFunction = Exclude<MeterFunction, 'continuity' | 'led'>;

/** Whether a function tells on a jack's name. */
export function isScaled(meter: MeterFunction): meter is ScaledFunction {
  return meter !== 'continuity' && meter !== 'led';
}

/** Whether a function shows volts of the thing itself, and never overload. */
export function isVolts(meter: MeterFunction): meter is 'volts' | 'loaded' {
  return meter === 'volts' || meter === 'loaded';
}

/** A measured value on its scale. */
export function onScale(meter: ScaledFunction, value: number): number {
  if (meter !== 'ohms') return value;
  // Less than nothing means a foreign voltage: the meter shows overload, so it stands with no end of ohms.
  const ohms = value < 0 || value > MOST_OHMS ? MOST_OHMS : value;
  return Math.log(ohms + BEND_OHMS);
}

/** Standard deviation of what counts as the same at a point of the scale. */
export function reachAt(meter: ScaledFunction, point: number): number {
  return meter === 'ohms' ? OHMS_SHARE : both(VOLTS_SHARE * point, VOLTS_FLOOR);
}

/** A point of the scale as a measured value again. */
export function offScale(meter: ScaledFunction, point: number): number {
  return meter === 'ohms' ? Math.max(0, Math.exp(point) - BEND_OHMS) : point;
}

/** Standard uncertainty of a hand-held meter that shows so many volts. */
export function noiseVolts(volts: number): number {
  return both(METER_SHARE * volts, METER_FLOOR_VOLTS);
}

/** Two standard deviations that add up to one. Asked millions of times: `Math.hypot`, which minds huge numbers, takes far longer. */
export function both(one: number, other: number): number {
  return Math.sqrt(one * one + other * other);
}
