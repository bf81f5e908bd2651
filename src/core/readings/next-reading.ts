/** The next best reading: the safe one that is expected to tell most about what the jack is. */
import { sayList } from '../verdict/index.ts';
import { crowdPoints } from './crowd.ts';
import { nameOf } from './evidence.ts';
import type { Evidence } from './evidence.ts';
import { LEAST_SEEN_VOLTS, SURE, checksLeft } from './finder.ts';
import type { Finding } from './finder.ts';
import { anyShares, isShown, overloadShare, samePoint } from './likelihood.ts';
import type { Reading } from './reading.ts';
import { howToTake, mayLoad, safeReadings } from './safe-readings.ts';
import { isVolts, onScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import type { JackReading } from './subjects.ts';
import { sameReading } from './taken.ts';
import type { TakenReading } from './taken.ts';
import { sayJackReading, sayName } from './words.ts';
import { sayWouldShow } from './would-show.ts';

/** A proposal: what to read, why, and how to take it safely. */
export interface Advice {
  readonly at: JackReading;
  readonly what: string;
  readonly why: string;
  readonly how: readonly string[];
}

/** A reading with what it is expected to tell about the name of the jack, bits. */
interface Considered {
  readonly at: JackReading;
  readonly bits: number;
}

/** A reading that is expected to tell less than this, bits, is not worth taking. */
export const LEAST_BITS = 0.003;

/** Devices below this probability do not count when the next reading is chosen. */
const LEAST_PROBABILITY = 1e-7;

/** After few readings many devices count alike, and one in so many is enough to choose by; by number of readings. */
const EARLY_STRIDES = [64, 16, 8, 4] as const;

/** One in so many devices is enough to see whether a check would show something. */
const CHECK_STRIDE = 8;

/** Bits that an easier reading is worth. */
const EFFORT_BITS = { off: 0, idle: 0.01, clock: 0.1, notes: 0.1 } as const;

/** What a reader tells apart at a glance, upper ends: volts, volts of a diode test, ohms. Finer steps would count chance as knowledge. */
export const STEPS: Readonly<Record<ScaledFunction, readonly number[]>> = {
  volts: [-0.1, -0.01, 0.01, 0.1, 0.8, 2.2, 2.9, 3.7, 4.4, 5.6],
  loaded: [-0.1, -0.01, 0.01, 0.1, 0.3, 0.8, 1.4, 2, 2.6, 3.1, 3.7, 4.4, 5.6],
  diode: [0.05, 0.4, 0.85, 1.1, 1.4, 1.9],
  ohms: [3, 30, 300, 3e3, 30e3, 300e3],
};

/** Most times a reading is asked for: the second tells a slip, a third nothing more. */
const MOST_TIMES = 2;

/**
 * Every safe reading not yet taken twice, with the bits it is expected to tell; best first. One that was taken can only agree or not.
 * @param stride one device in so many is looked at: fewer are quicker and tell less finely.
 */
export function rankReadings(
  evidence: Evidence,
  finding: Finding,
  taken: readonly TakenReading[],
  stride = 1,
): readonly Considered[] {
  return safeReadings(evidence)
    .filter((at) => at.meter !== 'loaded' || mayLoad(at, taken))
    .flatMap((at) => {
      const before = taken.filter((one) => sameReading(one.at, at));
      if (before.length >= MOST_TIMES) return [];
      return [{ at, bits: bitsOf(outcomesOf(at, before[0]?.reading), at, finding, stride) }];
    })
    .sort((a, b) => b.bits - EFFORT_BITS[b.at.power] - (a.bits - EFFORT_BITS[a.at.power]));
}

/**
 * The next reading to take, or undefined when none tells apart what is still possible. A name that is as good as sure after few
 * readings gets one more as a check, however little it is expected to tell.
 */
export function nextReading(
  evidence: Evidence,
  finding: Finding,
  taken: readonly TakenReading[],
): Advice | undefined {
  let readings = rankReadings(evidence, finding, taken, EARLY_STRIDES[taken.length]);
  if ((readings[0]?.bits ?? 0) < LEAST_BITS) readings = rankReadings(evidence, finding, taken);
  const [top] = finding.ranked;
  const telling = readings[0] && readings[0].bits >= LEAST_BITS ? readings[0] : undefined;
  const checking =
    top !== undefined && (top.probability >= SURE || !telling) && checksLeft(evidence, finding, taken) > 0;
  const best = checking ? bestCheck(evidence, finding, taken, readings) : telling;
  if (!best) return undefined;
  const { at } = best;
  return {
    at,
    what: sayJackReading(at),
    why: checking
      ? `A check: if this is ${sayName(top.name)}, the meter shows ${sayWouldShow(top.best, at, finding)}.`
      : `It tells apart what is still likely. ${whatEachShows(at, finding)}.`,
    how: howToTake(at),
  };
}

/** The check that leaves fewest others to do; among those the one by which the likeliest name would show most. */
function bestCheck(
  evidence: Evidence,
  finding: Finding,
  taken: readonly TakenReading[],
  readings: readonly Considered[],
): Considered | undefined {
  const [top] = finding.ranked;
  const left = new Map(readings.map((one) => [one, checksLeft(evidence, finding, taken, one.at)]));
  const least = Math.min(...left.values());
  if (least >= checksLeft(evidence, finding, taken)) return undefined;
  const rated = readings
    .filter((one) => left.get(one) === least)
    .map((one) => ({ one, shows: top ? shownShare(top.name, one.at, finding) : 0 }));
  return rated.sort((a, b) => b.shows - a.shows)[0]?.one;
}

/** Share of the devices of a name that would show something: no overload, and more than no volts. */
function shownShare(name: string, at: JackReading, { weighed }: Finding): number {
  const meter = at.meter as ScaledFunction;
  return weighed
    .filter(({ under }) => nameOf(under) === name)
    .reduce((sum, { under, profile, weights }) => {
      const points = crowdPoints(under, at, profile);
      return weights.reduce((all, weight, device) => {
        if (device % CHECK_STRIDE !== 0 || weight < LEAST_PROBABILITY) return all;
        const point = points(device);
        const nothing = isVolts(meter) && Math.abs(point) < LEAST_SEEN_VOLTS;
        return nothing ? all : all + weight * (1 - overloadShare(meter, point, profile));
      }, sum);
    }, 0);
}

/** What a reading can come to: the step of a point that is shown, that of overload, and the shares when nothing is known. */
interface Outcomes {
  readonly stepOf: (point: number) => number;
  readonly overload: number;
  readonly any: readonly number[];
}

/** The steps of a reading; of one that was taken `before`, whether it agrees: a jack in no catalogue shows the same again. */
function outcomesOf({ meter }: JackReading, before: Reading | undefined): Outcomes {
  const scaled = meter as ScaledFunction;
  if (before) {
    const known = isShown(before) ? onScale(scaled, before.value) : Infinity;
    const stepOf = (point: number): number => (samePoint(scaled, known, point) ? 0 : 1);
    return { stepOf, overload: known === Infinity ? 0 : 1, any: [1, 0] };
  }
  const edges = STEPS[scaled].map((value) => onScale(scaled, value));
  const stepOf = (point: number): number => {
    let step = 0;
    while (step < edges.length && point >= edges[step]!) step++;
    return step;
  };
  return { stepOf, overload: edges.length + 1, any: anyShares(scaled, edges) };
}

/** Expected information on the name of the jack, bits: what is open now, less what stays open after each outcome of the reading. */
function bitsOf(
  { stepOf, overload, any }: Outcomes,
  at: JackReading,
  { weighed, none }: Finding,
  stride: number,
): number {
  const meter = at.meter as ScaledFunction;
  const names = new Map<string, Float64Array>();
  for (const { under, profile, weights } of weighed) {
    const mass = names.get(nameOf(under)) ?? new Float64Array(any.length);
    names.set(nameOf(under), mass);
    const points = crowdPoints(under, at, profile);
    for (let device = 0; device < weights.length; device += stride) {
      const weight = stride * weights[device]!;
      if (weight < LEAST_PROBABILITY) continue;
      const point = points(device);
      const over = overloadShare(meter, point, profile);
      mass[stepOf(point)]! += weight * (1 - over);
      mass[overload]! += weight * over;
    }
  }
  names.set(
    'none',
    Float64Array.from(any, (share) => none * share),
  );
  const all = [...names.values()];
  const sums = all.map((mass) => mass.reduce((sum, one) => sum + one, 0));
  let bits = entropyOf(sums);
  for (let step = 0; step < any.length; step++) {
    const here = all.map((mass) => mass[step]!);
    bits -= here.reduce((sum, one) => sum + one, 0) * entropyOf(here);
  }
  return bits;
}

/** Entropy of shares that need not sum to 1, bits. */
export function entropyOf(shares: readonly number[]): number {
  const total = shares.reduce((sum, one) => sum + one, 0);
  return shares.reduce((sum, one) => (one > 0 ? sum - (one / total) * Math.log2(one / total) : sum), 0);
}

/** What the likeliest names would show, those that show the same together. */
function whatEachShows(at: JackReading, finding: Finding): string {
  const names = finding.ranked.filter(({ probability }) => probability > 0.01).slice(0, 4);
  const groups = Map.groupBy(names, ({ best }) => sayWouldShow(best, at, finding));
  return [...groups]
    .map(([words, who]) => `${sayList(who.map(({ name }) => sayName(name)))}: ${words}`)
    .join('; ');
}
