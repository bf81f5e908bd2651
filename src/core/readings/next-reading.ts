/** The next best reading: the safe one that is expected to tell most about what the jack is. */
import { sayList } from '../verdict/index.ts';
import { anyOverload, anyShare } from './anything.ts';
import { nameOf } from './evidence.ts';
import type { Evidence } from './evidence.ts';
import { SURE, isChecked, predictionOf, uncheckedBy } from './finder.ts';
import type { Finding, Scored } from './finder.ts';
import { expected, normalShare } from './gauss.ts';
import { METER_PROFILES, meterProfile } from './instruments.ts';
import { LEAST_STEPS, partingsOf, sameReading } from './partings.ts';
import { sayReading, shown } from './reading.ts';
import { howToTake, safeReadings } from './safe-readings.ts';
import { FLOOR_VOLTS, READING_SHARE, offScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import type { JackReading, JackUnderTest } from './subjects.ts';
import { sayJackReading, sayName } from './words.ts';

/** A proposal: what to read, how much it is expected to tell in bits, why, and how to take it safely. */
export interface Advice {
  readonly at: JackReading;
  readonly bits: number;
  readonly what: string;
  readonly why: string;
  readonly how: readonly string[];
}

/** Candidates below this probability do not count when the next reading is chosen. */
const LEAST_PROBABILITY = 2e-4;

/** A reading that is expected to tell less than this, bits, is not worth taking while another tells more. */
export const LEAST_BITS = 0.01;

/** Width of a bin in standard uncertainties of the meter, and how many there are on each side of zero. */
const BIN_STEPS = 2;
const BINS = 400;
/** Bits that an easier reading is worth: less than any difference that matters. */
const EFFORT_BITS = { off: 0, idle: 0.01, clock: 0.02 } as const;

/** Every safe reading not yet taken with the bits it is expected to tell, best first. */
export function rankReadings(
  evidence: Evidence,
  finding: Finding,
  taken: readonly JackReading[],
): readonly { readonly at: JackReading; readonly bits: number }[] {
  const left = finding.scored.filter(({ probability }) => probability > LEAST_PROBABILITY);
  return safeReadings(evidence)
    .filter((at) => !taken.some((one) => sameReading(one, at)))
    .map((at) => ({ at, bits: bitsOf(at, left, finding.none) }))
    .sort((a, b) => b.bits - EFFORT_BITS[b.at.power] - (a.bits - EFFORT_BITS[a.at.power]));
}

/**
 * The next reading to take, or undefined when every permitted one differs by less than the noise between all that is still
 * possible. A name that is as good as sure after few readings gets one more as a check, however little it is expected to tell.
 */
export function nextReading(
  evidence: Evidence,
  finding: Finding,
  taken: readonly JackReading[],
): Advice | undefined {
  const readings = rankReadings(evidence, finding, taken);
  const checks = (finding.ranked[0]?.probability ?? 0) >= SURE && !isChecked(evidence, taken);
  const best = checks
    ? bestCheck(evidence, readings, taken)
    : tellingMost(evidence, finding, readings, taken);
  if (!best) return undefined;
  const { at, bits } = best;
  return {
    at,
    bits,
    what: sayJackReading(at),
    why: checks ? check(at, finding) : why(at, finding),
    how: howToTake(at),
  };
}

/** The reading that tells most; where all tell little, the one that parts something possible by more than the noise, or none. */
function tellingMost(
  evidence: Evidence,
  finding: Finding,
  readings: ReturnType<typeof rankReadings>,
  taken: readonly JackReading[],
): ReturnType<typeof rankReadings>[number] | undefined {
  const [first] = readings;
  if (first && first.bits >= LEAST_BITS) return first;
  const [parting] = partingsOf(evidence, finding, taken);
  if (!parting || parting.steps < LEAST_STEPS) return undefined;
  return readings.find(({ at }) => sameReading(at, parting.at));
}

/** The check that leaves fewest others to do; among those the one that tells most. */
function bestCheck(
  evidence: Evidence,
  readings: ReturnType<typeof rankReadings>,
  taken: readonly JackReading[],
): ReturnType<typeof rankReadings>[number] | undefined {
  const left = readings.map(({ at }) => uncheckedBy(evidence, [...taken, at]));
  return readings[left.indexOf(Math.min(...left))];
}

const LOG2 = Math.log(2);

/** Expected information on the name of the jack, bits. */
function bitsOf(at: JackReading, left: readonly Scored[], none: number): number {
  const meter = at.meter as ScaledFunction;
  const names = new Map<string, Named>();
  const all = new Map<number, number>();
  let total = 0;
  for (const { under, profile, probability, joint } of left) {
    const prediction = predictionOf(under, at, profile);
    const { mean, deviation } = expected(joint, prediction);
    const name = names.get(nameOf(under)) ?? { weight: 0, mass: new Map<number, number>() };
    names.set(nameOf(under), name);
    name.weight += probability;
    total += probability;
    const put = (bin: number, share: number): void => {
      name.mass.set(bin, (name.mass.get(bin) ?? 0) + probability * share);
      all.set(bin, (all.get(bin) ?? 0) + probability * share);
    };
    const within = normalShare((prediction.limit - mean) / deviation);
    if (within < 1) put(Infinity, 1 - within);
    if (within < 1e-9) continue;
    const first = binOf(meter, mean - 3.5 * deviation);
    const last = binOf(meter, Math.min(mean + 3.5 * deviation, prediction.limit));
    let below = 0;
    for (let bin = first; bin <= last; bin++) {
      const upTo =
        bin === last ? within : Math.min(within, normalShare((edgeOf(meter, bin) - mean) / deviation));
      if (upTo > below) put(bin, upTo - below);
      below = Math.max(below, upTo);
    }
  }
  if (none > 0) addNone(meter, none, names, all);
  total += none;
  let bits = entropyOf(all, total);
  for (const { weight, mass } of names.values()) bits -= (weight / total) * entropyOf(mass, weight);
  return bits;
}

/** What is expected of one name: its probability, and how that divides among the bins of a reading. */
interface Named {
  weight: number;
  readonly mass: Map<number, number>;
}

/** A jack in no catalogue counts too: it may read anything, so a reading that fits makes it less likely. */
function addNone(
  meter: ScaledFunction,
  none: number,
  names: Map<string, Named>,
  all: Map<number, number>,
): void {
  const mass = new Map<number, number>();
  const put = (bin: number, share: number): void => {
    mass.set(bin, none * share);
    all.set(bin, (all.get(bin) ?? 0) + none * share);
  };
  for (const [bin, share] of anyBins(meter)) put(bin, share);
  names.set('none', { weight: none, mass });
}

const ANY_BINS = new Map<ScaledFunction, readonly (readonly [bin: number, share: number])[]>();

/** How the readings of a jack in no catalogue divide among the bins. */
function anyBins(meter: ScaledFunction): readonly (readonly [bin: number, share: number])[] {
  const known = ANY_BINS.get(meter);
  if (known) return known;
  const bins = Array.from({ length: 2 * BINS + 1 }, (_, at) => at - BINS).map(
    (bin) => [bin, anyShare(meter, edgeOf(meter, bin - 1), edgeOf(meter, bin))] as const,
  );
  const made = [[Infinity, anyOverload(meter)] as const, ...bins].filter(([, share]) => share > 0);
  ANY_BINS.set(meter, made);
  return made;
}

function entropyOf(mass: ReadonlyMap<number, number>, total: number): number {
  let sum = 0;
  for (const value of mass.values()) if (value > 0) sum -= (value / total) * Math.log(value / total);
  return sum / LOG2;
}

/** Volts are binned in steps of their own uncertainty, which grows with them; ohms are on such a scale already. */
function binOf(meter: ScaledFunction, point: number): number {
  const steps =
    meter === 'ohms'
      ? point / READING_SHARE
      : Math.asinh((point * READING_SHARE) / FLOOR_VOLTS) / READING_SHARE;
  return Math.max(-BINS, Math.min(BINS, Math.floor(steps / BIN_STEPS)));
}

/** Upper edge of a bin. */
function edgeOf(meter: ScaledFunction, bin: number): number {
  const steps = (bin + 1) * BIN_STEPS;
  return meter === 'ohms'
    ? steps * READING_SHARE
    : (Math.sinh(steps * READING_SHARE) * FLOOR_VOLTS) / READING_SHARE;
}

/** Why this reading, in a sentence: what the likeliest names would show. */
function why(at: JackReading, finding: Finding): string {
  const names = finding.ranked.filter(({ probability }) => probability > 0.01).slice(0, 4);
  const groups = new Map<string, string[]>();
  for (const { name, best } of names) {
    const words = sayReading(showOf(best, at, finding));
    groups.set(words, [...(groups.get(words) ?? []), sayName(name)]);
  }
  const parts = [...groups].map(([words, who]) => `${sayList(who)}: ${words}`);
  return `It tells apart what is still likely. ${parts.join('; ')}.`;
}

/** Why a check: what it must show if the name is right. */
function check(at: JackReading, finding: Finding): string {
  const [top] = finding.ranked;
  if (!top) return why(at, finding);
  return `A check: if this is ${sayName(top.name)}, the meter shows about ${sayReading(showOf(top.best, at, finding))}.`;
}

function showOf(under: JackUnderTest, at: JackReading, finding: Finding): ReturnType<typeof shown> {
  const profile =
    finding.scored.find((one) => one.under === under)?.profile ?? meterProfile(METER_PROFILES[0]);
  const { meter, point } = predictionOf(under, at, profile);
  const value = offScale(meter, point);
  return shown({ meter, value }, profile, 0);
}
