/** The jack finder: readings scored against every candidate, ranked, with 'sure', 'not sure', 'cannot tell', 'fits nothing'. */
import { METER_PROFILES, meterProfile } from './instruments.ts';
import type { MeterProfile } from './instruments.ts';
import { anyDensity, anyOverload } from './anything.ts';
import { FINDER_WEIGHTS, candidatesFor, nameOf } from './evidence.ts';
import type { Candidate, Evidence } from './evidence.ts';
import { joint, normalShare } from './gauss.ts';
import type { Joint } from './gauss.ts';
import { predict } from './predict.ts';
import type { Prediction } from './predict.ts';
import type { Reading } from './reading.ts';
import { noiseAt, onScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import { probedContacts } from './subjects.ts';
import type { JackReading, JackUnderTest } from './subjects.ts';
import { familyOf } from '../wiring/index.ts';

/** A reading that the reader entered. */
export interface TakenReading {
  readonly at: JackReading;
  readonly reading: Reading;
}

/** A candidate with one meter, after the readings. */
export interface Scored {
  readonly under: JackUnderTest;
  readonly profile: MeterProfile;
  readonly probability: number;
  readonly joint: Joint;
  /** Worst disagreement with any reading, in standard deviations; more for an impossible overload. */
  readonly strain: number;
}

/** One name in the ranking: a direction and style, or another use. `best` is its likeliest circuit and part. */
interface Ranked {
  readonly name: string;
  readonly probability: number;
  readonly best: JackUnderTest;
}

/** How an answer stands. */
export type FinderState = 'sure' | 'not-sure' | 'fits-nothing';

/** What is known after the readings. `none`: probability that the jack is in no catalogue. */
export interface Finding {
  readonly state: FinderState;
  readonly ranked: readonly Ranked[];
  readonly none: number;
  readonly scored: readonly Scored[];
}

/** From this probability on a name counts as sure. */
export const SURE = 0.99;

/** Fewest readings before a name can be sure: the last of them is a check on what the others say. */
const FEWEST_READINGS = 3;

/** From this disagreement on, even the best candidate does not fit, standard deviations. */
const MOST_STRAIN = 4;

const PREDICTIONS = new WeakMap<JackUnderTest, Map<string, Prediction>>();

/** The prediction of a candidate, kept with it: it depends on nothing that the reader enters. */
export function predictionOf(under: JackUnderTest, at: JackReading, profile: MeterProfile): Prediction {
  let kept = PREDICTIONS.get(under);
  if (!kept) PREDICTIONS.set(under, (kept = new Map()));
  const key = `${at.meter} ${at.power} ${at.red} ${at.black} ${profile.name}`;
  const known = kept.get(key);
  if (known) return known;
  const made = predict(under, at, profile);
  kept.set(key, made);
  return made;
}

/** Score every candidate against the readings. Only readings of volts, ohms and diode test tell; others are left out. */
export function findJack(evidence: Evidence, taken: readonly TakenReading[]): Finding {
  const told = taken.filter(
    ({ reading }) => reading.meter === 'volts' || reading.meter === 'ohms' || reading.meter === 'diode',
  );
  const profiles = evidence.meter === 'not-known' ? METER_PROFILES : [evidence.meter];
  const weighed = candidatesFor(evidence).flatMap((candidate) =>
    profiles.map((name) => score(candidate, meterProfile(name), 1 / profiles.length, told)),
  );
  const none = Math.log(FINDER_WEIGHTS.none) + told.reduce((sum, one) => sum + logAnything(one), 0);
  const most = weighed.reduce((top, { logWeight }) => Math.max(top, logWeight), none);
  const total = weighed.reduce(
    (sum, { logWeight }) => sum + Math.exp(logWeight - most),
    Math.exp(none - most),
  );
  const scored = weighed
    .map(({ logWeight, ...rest }) => ({ ...rest, probability: Math.exp(logWeight - most) / total }))
    .sort((a, b) => b.probability - a.probability);
  const ranked = rank(scored);
  const noneShare = Math.exp(none - most) / total;
  return {
    state: stateOf(
      ranked,
      scored,
      noneShare,
      isChecked(
        evidence,
        taken.map(({ at }) => at),
      ),
    ),
    ranked,
    none: noneShare,
    scored,
  };
}

/**
 * Whether enough was read to be sure: three readings, every contact of a phone jack touched, and one reading with the power
 * on where the device can be switched on. A jack in no catalogue often looks like another until one of these is done.
 */
export function isChecked(evidence: Evidence, taken: readonly JackReading[]): boolean {
  return taken.length >= FEWEST_READINGS && uncheckedBy(evidence, taken) === 0;
}

/** How many of the checks are still to do: contacts of a phone jack that no probe has touched, and power on. */
export function uncheckedBy(evidence: Evidence, taken: readonly JackReading[]): number {
  const contacts = familyOf(evidence.connector) === 'din' ? [] : probedContacts(evidence.connector);
  const untouched = contacts.filter(
    (contact) => !taken.some(({ red, black }) => red === contact || black === contact),
  );
  const dead = evidence.canSwitchOn && !taken.some(({ power }) => power !== 'off');
  return untouched.length + (dead ? 1 : 0);
}

function rank(scored: readonly Scored[]): readonly Ranked[] {
  const names = new Map<string, { probability: number; best: JackUnderTest }>();
  for (const { under, probability } of scored) {
    const known = names.get(nameOf(under));
    if (known) known.probability += probability;
    else names.set(nameOf(under), { probability, best: under });
  }
  return [...names]
    .map(([name, { probability, best }]) => ({ name, probability, best }))
    .sort((a, b) => b.probability - a.probability);
}

function stateOf(
  ranked: readonly Ranked[],
  scored: readonly Scored[],
  none: number,
  checked: boolean,
): FinderState {
  const top = ranked[0];
  const best = scored.find(({ under }) => nameOf(under) === top?.name);
  if (!top || !best || none > 0.5 || best.strain > MOST_STRAIN) return 'fits-nothing';
  return top.probability >= SURE && checked ? 'sure' : 'not-sure';
}

function score(
  { under, prior }: Candidate,
  profile: MeterProfile,
  share: number,
  told: readonly TakenReading[],
): Omit<Scored, 'probability'> & { logWeight: number } {
  const predictions: Prediction[] = [];
  const points: number[] = [];
  let logWeight = Math.log(prior * share);
  let strain = 0;
  for (const { at, reading } of told) {
    const prediction = predictionOf(under, at, profile);
    if (reading.shows === 'value') {
      predictions.push(prediction);
      points.push(onScale(prediction.meter, reading.value));
      continue;
    }
    const spread = Math.sqrt(
      Object.values(prediction.slopes).reduce(
        (sum, slope) => sum + slope * slope,
        noiseAt(prediction.meter, prediction.point) ** 2,
      ),
    );
    const beyond = (prediction.point - prediction.limit) / spread;
    logWeight += Math.log(Math.max(normalShare(beyond), LEAST_SHARE));
    strain = Math.max(strain, -beyond);
  }
  const together = joint(predictions, points);
  for (const value of together.whitened) strain = Math.max(strain, Math.abs(value));
  return { under, profile, joint: together, strain, logWeight: logWeight + together.logDensity };
}

/** An overload is never quite impossible: a probe may not have touched. */
const LEAST_SHARE = 1e-6;

function logAnything({ at, reading }: TakenReading): number {
  const meter = at.meter as ScaledFunction;
  if (reading.shows !== 'value') return Math.log(anyOverload(meter));
  return Math.log(anyDensity(meter, onScale(meter, reading.value)));
}
