/** The few readings that tell apart the types a jack may have, chosen before any is taken, and what they leave once they are. */
import type { Connector, Direction, Style } from '../wiring/index.ts';
import { jacksWith } from './catalogue.ts';
import { crowdPoints } from './crowd.ts';
import { FINDER_WEIGHTS } from './evidence.ts';
import { meterProfile } from './instruments.ts';
import { overloadShare } from './likelihood.ts';
import { STEPS, entropyOf } from './next-reading.ts';
import { sayBetween } from './reading.ts';
import { howToTake, safeReadings } from './safe-readings.ts';
import { onScale } from './scale.ts';
import type { ScaledFunction } from './scale.ts';
import type { JackReading } from './subjects.ts';

/** One reading, how to take it safely, and everything that the meter may show, in words, the least first. */
interface DecidingReading {
  readonly at: JackReading;
  readonly how: readonly string[];
  readonly displays: readonly string[];
}

/** The readings, and for each set of displays, by their numbers, how many devices of each type would show it (shares of 1 in all). */
export interface Deciding {
  readonly readings: readonly DecidingReading[];
  readonly shown: readonly { readonly displays: readonly number[]; readonly shares: Shares }[];
}

type Shares = Readonly<Partial<Record<Style, number>>>;

/** Fewest readings, so that one checks the others, and most: what they leave open the whole finder is for (our choices). */
const FEWEST_READINGS = 3;
const MOST_READINGS = 5;

/** A reading beyond the fewest that adds less than this, bits, is not asked for. */
const LEAST_BITS = 0.01;

/** What a reading tells by itself counts this much beside what it adds: where the others tell all, it is the best check on them. */
const CHECK_SHARE = 0.02;

/** Displays side by side are shown as one where that loses less than this, bits. */
const BITS_OF_A_DISPLAY = 0.005;

/** So many devices of each crowd, the first ones, are enough to choose a few readings by. */
const DEVICES = 384;

const METER = meterProfile('usual');

/** One device of a crowd: its type's place in the list, and its weight. */
interface Device {
  readonly type: number;
  readonly weight: number;
}

/** A reading with the number of the display that each device would show. */
interface Seen {
  readonly at: JackReading;
  readonly steps: Uint8Array;
  readonly displays: number;
}

/**
 * The safe readings with an everyday meter alone that tell most about which of these types the jack has, at most five: each the best beside
 * those before it, so that the first three decide as far as three can. Fewer where more would tell nothing.
 * @param canStreamClock whether the device can send clock while readings are taken.
 */
export function decidingReadings(
  direction: Direction,
  connector: Connector,
  types: readonly Style[],
  canStreamClock: boolean,
): Deciding {
  const { devices, seen } = look(direction, connector, types, canStreamClock);
  const alone = new Map(seen.map((one) => [one, bitsOf(devices, types.length, [one])]));
  const score = ({ one, told }: { one: Seen; told: number }): number =>
    told + CHECK_SHARE * (alone.get(one) ?? 0);
  let best: readonly Seen[] = [];
  let bits = 0;
  while (best.length < MOST_READINGS) {
    const tried = seen
      .filter((one) => !best.includes(one) && (alone.get(one) ?? 0) > LEAST_BITS)
      .map((one) => ({ one, told: bitsOf(devices, types.length, [...best, one]) }))
      .sort((a, b) => score(b) - score(a));
    const [next] = tried;
    if (!next || (best.length >= FEWEST_READINGS && next.told < bits + LEAST_BITS)) break;
    best = [...best, next.one];
    bits = next.told;
  }
  return summary(devices, types, best);
}

/** How likely each type is when the meter showed these displays; undefined for a reading not taken yet. The likeliest first. */
export function likelyTypes(
  { shown, readings }: Deciding,
  pressed: readonly (number | undefined)[],
): readonly { readonly type: Style | undefined; readonly probability: number }[] {
  const sums = new Map<Style | undefined, number>();
  const add = (type: Style | undefined, share: number): void => {
    sums.set(type, (sums.get(type) ?? 0) + share);
  };
  // A jack in no catalogue may show anything.
  let none: number = FINDER_WEIGHTS.none;
  readings.forEach(({ displays }, at) => {
    if (pressed[at] !== undefined) none /= displays.length;
  });
  add(undefined, none);
  for (const { displays, shares } of shown)
    if (displays.every((number, at) => pressed[at] === undefined || pressed[at] === number))
      for (const [type, share] of Object.entries(shares)) add(type as Style, share);
  const total = [...sums.values()].reduce((sum, one) => sum + one, 0);
  return [...sums]
    .map(([type, share]) => ({ type, probability: share / total }))
    .sort((one, other) => other.probability - one.probability);
}

/** Every device of the crowds of these types, and what each would show at each safe reading. */
function look(
  direction: Direction,
  connector: Connector,
  types: readonly Style[],
  canStreamClock: boolean,
): { devices: readonly Device[]; seen: readonly Seen[] } {
  const crowds = jacksWith(connector).flatMap((under) => {
    if (under.kind !== 'control' || under.jack.direction !== direction) return [];
    const type = types.indexOf(under.jack.style);
    return type < 0 ? [] : [{ under, type }];
  });
  const circuits = (type: number): number => crowds.filter((one) => one.type === type).length;
  const whole = types.reduce((sum, type) => sum + FINDER_WEIGHTS.style[type], 0);
  const devices = crowds.flatMap(({ type }): Device[] => {
    const weight = FINDER_WEIGHTS.style[types[type]!] / whole / circuits(type) / DEVICES;
    return Array.from({ length: DEVICES }, () => ({ type, weight }));
  });
  const readings = safeReadings({
    connector,
    marked: direction,
    menu: [],
    meter: METER.name,
    canSwitchOn: true,
    canStreamClock,
  }).filter(({ meter }) => meter !== 'loaded');
  const seen = readings.map((at) => ({
    at,
    steps: Uint8Array.from(
      crowds.flatMap(({ under }) => {
        const points = crowdPoints(under, at, METER);
        return Array.from({ length: DEVICES }, (_, device) => stepAt(at)(points(device)));
      }),
    ),
    displays: STEPS[at.meter as ScaledFunction].length + 2,
  }));
  return { devices, seen };
}

/** The number of the step that a point of the scale lies in; the last is overload. */
function stepAt({ meter }: JackReading): (point: number) => number {
  const scaled = meter as ScaledFunction;
  const edges = STEPS[scaled].map((value) => onScale(scaled, value));
  return (point) =>
    overloadShare(scaled, point, METER) > 0.5
      ? edges.length + 1
      : edges.filter((edge) => point >= edge).length;
}

/** What some readings together are expected to tell about the type, bits. */
function bitsOf(devices: readonly Device[], types: number, some: readonly Seen[]): number {
  const masses = new Map<number, number[]>();
  const all = Array.from({ length: types }, () => 0);
  devices.forEach(({ type, weight }, at) => {
    const key = some.reduce((sum, { steps, displays }) => sum * displays + steps[at]!, 0);
    let mass = masses.get(key);
    if (!mass) masses.set(key, (mass = Array.from({ length: types }, () => 0)));
    mass[type]! += weight;
    all[type]! += weight;
  });
  let bits = entropyOf(all);
  for (const mass of masses.values()) bits -= mass.reduce((sum, one) => sum + one, 0) * entropyOf(mass);
  return bits;
}

/** The readings with their displays: steps side by side that nobody has to tell apart are one. */
function summary(devices: readonly Device[], types: readonly Style[], best: readonly Seen[]): Deciding {
  let seen = best;
  const spans = best.map(({ displays }) => Array.from({ length: displays }, (_, step) => [step]));
  for (;;) {
    const whole = bitsOf(devices, types.length, seen);
    const joins = seen.flatMap((_, at) =>
      Array.from({ length: seen[at]!.displays - 1 }, (_, low) => {
        const joined = seen.with(at, joinSteps(seen[at]!, low));
        return { at, low, joined, lost: whole - bitsOf(devices, types.length, joined) };
      }),
    );
    const least = joins.sort((one, other) => one.lost - other.lost)[0];
    if (!least || least.lost > BITS_OF_A_DISPLAY) break;
    seen = least.joined;
    const span = spans[least.at]!;
    span.splice(least.low, 2, [...span[least.low]!, ...span[least.low + 1]!]);
  }
  const shown = new Map<string, Partial<Record<Style, number>>>();
  devices.forEach(({ type, weight }, at) => {
    const key = seen.map(({ steps }) => steps[at]!).join(' ');
    const shares = shown.get(key) ?? {};
    shares[types[type]!] = (shares[types[type]!] ?? 0) + weight;
    shown.set(key, shares);
  });
  return {
    readings: seen.map(({ at }, place) => ({
      at,
      how: howToTake(at),
      displays: spans[place]!.map((steps) => sayDisplay(at, steps)),
    })),
    shown: [...shown].map(([key, shares]) => ({ displays: key.split(' ').map(Number), shares })),
  };
}

/** A reading whose display `low` and the one above it count as one. */
function joinSteps(seen: Seen, low: number): Seen {
  return {
    ...seen,
    steps: seen.steps.map((step) => (step > low ? step - 1 : step)),
    displays: seen.displays - 1,
  };
}

/** What the steps of a display show: '0.40 V to 0.85 V', 'more than 1.9 V or OL'. */
function sayDisplay({ meter }: JackReading, steps: readonly number[]): string {
  const edges = STEPS[meter as ScaledFunction];
  const over = steps.includes(edges.length + 1);
  const values = steps.filter((step) => step <= edges.length);
  const words =
    values.length > 0 ? [sayBetween(meter, edges[Math.min(...values) - 1], edges[Math.max(...values)])] : [];
  return [...words, ...(over && meter !== 'volts' ? ['OL'] : [])].join(' or ');
}
