/** The jack finder: crowds of devices weighed by the readings, ranked by name, with 'sure', 'not sure' and 'fits nothing'. */
import { familyOf } from '../wiring/index.ts';
import type { Contact } from '../wiring/index.ts';
import { CROWD, crowdPoints } from './crowd.ts';
import { FINDER_WEIGHTS, candidatesFor, nameOf } from './evidence.ts';
import type { Evidence } from './evidence.ts';
import { METER_PROFILES, meterProfile } from './instruments.ts';
import type { MeterProfile } from './instruments.ts';
import { isShown, likelihoodOf, likelihoodOfAny } from './likelihood.ts';
import type { Reading } from './reading.ts';
import { isVolts } from './scale.ts';
import { probedContacts } from './subjects.ts';
import type { JackReading, JackUnderTest } from './subjects.ts';
import { sameReading, told } from './taken.ts';
import type { TakenReading, Told } from './taken.ts';

/** A kind of jack with one meter, after the readings: how likely each device of its crowd is. */
interface Weighed {
  readonly under: JackUnderTest;
  readonly profile: MeterProfile;
  readonly weights: Float64Array;
}

/** One name in the ranking: a direction and style, or another use. `best` is its likeliest circuit. */
interface Ranked {
  readonly name: string;
  readonly probability: number;
  readonly best: JackUnderTest;
}

/** What is known after the readings. */
export interface Finding {
  readonly state: 'sure' | 'not-sure' | 'fits-nothing';
  readonly ranked: readonly Ranked[];
  /** Probability that the jack is in no catalogue. */
  readonly none: number;
  readonly weighed: readonly Weighed[];
  /** Numbers of the readings that fit neither the likeliest name nor anything else that was read: set aside. */
  readonly doubtful: readonly number[];
  /** Numbers of those that fit as little, but were taken again and agree: no slips, so something there is unusual. */
  readonly odd: readonly number[];
}

/**
 * From this probability on a name counts as sure, once the checks are done too (our choice, tried on simulated jacks other than those
 * by which the finder is judged: with less, more than one name in two hundred was wrong and sure).
 */
export const SURE = 0.98;

/** Fewest readings before a name can be sure: the last of them is a check on what the others say. */
const FEWEST_READINGS = 4;

/** Fewest readings before all of them together can be said to fit nothing, for one or two may be slips, and how likely that must be. */
const FEWEST_TO_REFUSE = 3;
const REFUSED = 0.9;

/** Share of readings that say nothing of the jack: a probe that slipped, a dial set wrong (our choice). */
const SLIPS = 0.01;

/** Share of readings that no device of the right crowd shows, however often they are taken: no crowd is all jacks (our choice). */
const ODD = 1e-3;

/** What a reading counts beside what its likelihood says: readings of one jack lean on one another, and no crowd is all jacks. */
const TRUST = 0.9;

/** The contact of an expression input that no supply feeds: the resistor from there to ground sets it apart from an output at rest. */
const WIPERS: ReadonlyMap<string, Contact> = new Map([
  ['expression-ring', 'tip'],
  ['expression-tip', 'ring'],
]);

/** Weight beside that of the likeliest device at which one is given up: two slips and more. */
const GIVEN_UP = 1e-9;

/** Volts that are something and not a stray field. */
export const LEAST_SEEN_VOLTS = 0.2;

/**
 * Weigh every crowd by the readings. Only readings of volts, ohms and diode test tell; others are left out.
 * @param devices how many of each crowd, the first ones, which lie as evenly as all: fewer are quicker and tell less finely.
 */
export function findJack(
  evidence: Evidence,
  taken: readonly TakenReading[],
  devices: number = CROWD,
): Finding {
  const all = told(taken);
  const profiles = evidence.meter === 'not-known' ? METER_PROFILES : [evidence.meter];
  const weighed = candidatesFor(evidence).flatMap(({ under, prior }) =>
    profiles.map((name): Weighed => {
      const each = prior / profiles.length / devices;
      return { under, profile: meterProfile(name), weights: new Float64Array(devices).fill(each) };
    }),
  );
  for (const one of all) weigh(weighed, one);
  let none: number = FINDER_WEIGHTS.none;
  for (const { at, reading } of all) none *= likelihoodOfAny(at, reading) ** TRUST;
  const total = weighed.reduce((sum, { weights }) => sum + sumOf(weights), none);
  for (const { weights } of weighed) weights.forEach((weight, at) => (weights[at] = weight / total));
  const ranked = rank(weighed);
  const likeliest = weighed.filter(({ under }) => nameOf(under) === ranked[0]?.name);
  const unfit = all.filter((one) => slipShare(one, likeliest) > 0.5).map(({ numbers }) => numbers);
  const [doubtful, odd] = [
    unfit.filter(({ length }) => length < 2),
    unfit.filter(({ length }) => length > 1),
  ];
  const finding = { ranked, none: none / total, weighed, doubtful: doubtful.flat(), odd: odd.flat() };
  return { state: stateOf(evidence, finding, taken), ...finding };
}

function stateOf(
  evidence: Evidence,
  finding: Omit<Finding, 'state'>,
  taken: readonly TakenReading[],
): Finding['state'] {
  const [top] = finding.ranked;
  if (!top || (finding.none > REFUSED && taken.length >= FEWEST_TO_REFUSE)) return 'fits-nothing';
  return top.probability >= SURE && checksLeft(evidence, finding, taken) === 0 ? 'sure' : 'not-sure';
}

/**
 * How many checks are still to do before a name can be sure: four readings, every contact of a phone jack touched, one reading
 * with the power off and one with it on where the device can be switched on, for a Type A or B one between tip and ring, which alone tells them
 * apart, for an expression input the resistance of the contact that is not fed, each reading that was set aside taken again,
 * and something seen at all besides overload and no volts. @param next one more reading, supposed to be good.
 */
export function checksLeft(
  { connector, canSwitchOn }: Evidence,
  { ranked, doubtful }: Pick<Finding, 'ranked' | 'doubtful'>,
  taken: readonly TakenReading[],
  next?: JackReading,
): number {
  const good = goodOf(taken, doubtful);
  if (next) good.push(next);
  const contacts = familyOf(connector) === 'din' ? [] : probedContacts(connector);
  const untouched = contacts.filter((one) => !good.some(({ red, black }) => red === one || black === one));
  const again = doubtful.filter((number) => !good.some((at) => sameReading(at, taken[number]!.at)));
  const dead = canSwitchOn && !good.some(({ power }) => power !== 'off');
  const live = !good.some(({ power }) => power === 'off');
  const across = good.some(({ red, black }) => red !== 'sleeve' && black !== 'sleeve');
  const top = ranked[0]?.name ?? '';
  const turned = / type-[ab]$/.test(top) && !across;
  const wiper = WIPERS.get(top);
  const unproved =
    wiper !== undefined &&
    !good.some(
      ({ meter, red, black }) =>
        meter === 'ohms' && red !== black && [red, black].every((one) => one === wiper || one === 'sleeve'),
    );
  const seen = taken.some(({ reading }, number) => !doubtful.includes(number) && showsSomething(reading));
  const few = Math.max(0, FEWEST_READINGS - good.length);
  return (
    few +
    untouched.length +
    again.length +
    Number(dead) +
    Number(live) +
    Number(unproved) +
    Number(turned) +
    Number(!seen && !next)
  );
}

function showsSomething(reading: Reading): boolean {
  return isShown(reading) && (!isVolts(reading.meter) || Math.abs(reading.value) > LEAST_SEEN_VOLTS);
}

/** The readings that were not set aside. */
function goodOf(taken: readonly TakenReading[], doubtful: readonly number[]): JackReading[] {
  return taken.filter((_, number) => !doubtful.includes(number)).map(({ at }) => at);
}

/** Weigh every device by one more reading; those that earlier readings left far behind are given up, so that they need no solving. */
function weigh(weighed: readonly Weighed[], one: Told): void {
  const { at, reading } = one;
  const [slips, slip] = [slipsOf(one), slipsOf(one) * likelihoodOfAny(at, reading)];
  const given = GIVEN_UP * Math.max(...weighed.map(({ weights }) => Math.max(...weights)));
  for (const { under, profile, weights } of weighed) {
    const likely = likelihoodOf(at, reading, profile);
    const points = crowdPoints(under, at, profile);
    weights.forEach((weight, device) => {
      weights[device] = weight < given ? 0 : weight * (slip + (1 - slips) * likely(points(device))) ** TRUST;
    });
  }
}

/** How often a reading says nothing of a crowd: each that was taken and agrees would have to be a slip, or the device is odd there. */
function slipsOf({ numbers }: Told): number {
  return SLIPS ** numbers.length + ODD;
}

/** How much of what speaks for these crowds rests on the reading having been a slip, 0 to 1. */
function slipShare(one: Told, crowds: readonly Weighed[]): number {
  const { at, reading } = one;
  const [slips, slip] = [slipsOf(one), slipsOf(one) * likelihoodOfAny(at, reading)];
  let [slipped, all] = [0, 0];
  for (const { under, profile, weights } of crowds) {
    const likely = likelihoodOf(at, reading, profile);
    const points = crowdPoints(under, at, profile);
    weights.forEach((weight, device) => {
      if (weight === 0) return;
      slipped += (weight * slip) / (slip + (1 - slips) * likely(points(device)));
      all += weight;
    });
  }
  return all > 0 ? slipped / all : 0;
}

function rank(weighed: readonly Weighed[]): readonly Ranked[] {
  const names = new Map<string, { probability: number; best: JackUnderTest; most: number }>();
  for (const { under, weights } of weighed) {
    const weight = sumOf(weights);
    const { probability = 0, best = under, most = 0 } = names.get(nameOf(under)) ?? {};
    names.set(nameOf(under), {
      probability: probability + weight,
      best: weight > most ? under : best,
      most: Math.max(most, weight),
    });
  }
  return [...names]
    .map(([name, { probability, best }]) => ({ name, probability, best }))
    .sort((a, b) => b.probability - a.probability);
}

function sumOf(weights: Float64Array): number {
  return weights.reduce((sum, weight) => sum + weight, 0);
}
