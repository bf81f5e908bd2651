/** How likely a reading is: for a device that stands at a point of the scale, and when nothing at all is known. */
import { meterProfile } from './instruments.ts';
import type { MeterProfile } from './instruments.ts';
import type { Reading } from './reading.ts';
import { both, isVolts, onScale, reachAt } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import type { JackReading } from './subjects.ts';

/** More ohms than this count as overload: what a leak or a blocked diode comes to. */
const MOST_OHMS = 3e6;

/**
 * No crowd is all jacks, so one reading in ten may stand as far off again by this factor; beyond so many standard deviations it is a
 * slip (our choices).
 */
const FAR_SHARE = 0.1;
const FAR = 3;
const MOST_STEPS = 7 * FAR;

/** How far one meter's diode test ends from another's of its kind, as a share: 2 to 4 V for one said to end at 3 V. */
const DIODE_END_SPREAD = 0.2;

/** Shares of overload, and of no volts; our choice. */
const OVERLOAD = 0.35;
const ZERO = 0.3;

/** Span of what a meter can show, on its scale: volts from -6 to 12, a diode test from 0 to 3 V, ohms up to 20 Mohm. */
const SPANS: Readonly<Record<ScaledFunction, readonly [number, number]>> = {
  volts: [-6, 12],
  loaded: [-6, 12],
  diode: [0, 3],
  ohms: [onScale('ohms', 0), onScale('ohms', meterProfile('usual').ohmsMost)],
};

/** How likely a reading is when nothing is known: a density on the scale, or for overload (undefined) a share; never nothing. */
function anyLikelihood(meter: ScaledFunction, point: number | undefined): number {
  if (point === undefined) return OVERLOAD;
  const [least, most] = SPANS[meter];
  const even = 1 / (most - least);
  if (!isVolts(meter)) return (1 - OVERLOAD) * even;
  const steps = point / reachAt('volts', 0);
  return (
    (ZERO * Math.exp(-0.5 * steps * steps)) / (Math.sqrt(2 * Math.PI) * reachAt('volts', 0)) +
    (1 - ZERO) * even
  );
}

/** The shares of readings in each step between `edges`, the least first, then of overload, when nothing is known. */
export function anyShares(meter: ScaledFunction, edges: readonly number[]): readonly number[] {
  const [least, most] = SPANS[meter];
  const volts = isVolts(meter);
  const [over, zero] = volts ? [0, ZERO] : [OVERLOAD, 0];
  const below = (edge: number): number =>
    (1 - zero) * Math.min(1, Math.max(0, (edge - least) / (most - least))) +
    (volts ? zero * stepUp(edge / reachAt(meter, 0)) : 0);
  const upTo = [0, ...edges.map(below), 1];
  return [...upTo.slice(1).map((share, at) => (1 - over) * (share - upTo[at]!)), over];
}

/** How likely a device that stands at a point of the scale shows this reading. */
export function likelihoodOf(
  { meter }: JackReading,
  reading: Reading,
  profile: MeterProfile,
): (point: number) => number {
  const scaled = meter as ScaledFunction;
  if (!isShown(reading)) return (point) => overloadShare(scaled, point, profile);
  const shown = onScale(scaled, reading.value);
  return (point) => {
    const reach = reachAt(scaled, point);
    const steps = (shown - point) / reach;
    if (Math.abs(steps) > MOST_STEPS) return 0;
    const seen = 1 - overloadShare(scaled, point, profile);
    const near = (1 - FAR_SHARE) * Math.exp(-0.5 * steps * steps);
    const far = (FAR_SHARE / FAR) * Math.exp((-0.5 / (FAR * FAR)) * steps * steps);
    return (seen * (near + far)) / (Math.sqrt(2 * Math.PI) * reach);
  };
}

/** Share of meters of a kind that show overload here. */
export function overloadShare(meter: ScaledFunction, point: number, profile: MeterProfile): number {
  if (isVolts(meter)) return 0;
  const [end, spread] =
    meter === 'diode'
      ? [profile.diodeVolts, DIODE_END_SPREAD * profile.diodeVolts]
      : [onScale('ohms', MOST_OHMS), 1];
  return stepUp((point - end) / both(spread, reachAt(meter, point)));
}

/** A logistic curve from 0 to 1: as close to the normal one as what is known of such meters, and cheaper. */
function stepUp(deviations: number): number {
  return 1 / (1 + Math.exp(-1.7 * deviations));
}

/** How likely a reading is of a jack in no catalogue, and of a probe that slipped. */
export function likelihoodOfAny({ meter }: JackReading, reading: Reading): number {
  const scaled = meter as ScaledFunction;
  return anyLikelihood(scaled, isShown(reading) ? onScale(scaled, reading.value) : undefined);
}

/** Whether two readings taken in the same way show the same: a crowd could not tell them apart, or both are overload. */
export function agree(one: Reading, other: Reading): boolean {
  if (!isShown(one) || !isShown(other)) return isShown(one) === isShown(other);
  const meter = one.meter as ScaledFunction;
  return samePoint(meter, onScale(meter, one.value), onScale(meter, other.value));
}

/** Whether two points of a scale are too close to be told apart. */
export function samePoint(meter: ScaledFunction, one: number, other: number): boolean {
  return Math.abs(one - other) <= 2 * reachAt(meter, one);
}

/** Whether a reading shows a value that says something: no overload, nor ohms that come to one. */
export function isShown(reading: Reading): reading is Extract<Reading, { shows: 'value' }> {
  return reading.shows === 'value' && !(reading.meter === 'ohms' && reading.value > MOST_OHMS);
}
