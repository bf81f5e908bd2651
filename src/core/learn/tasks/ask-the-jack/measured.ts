/** Unmarked jacks with readings taken on them, for tasks. What the readings leave is asked of the finder, with few devices of each crowd, once for each. */
import { findJack, mayLoad, safeReadings, sayFunction, sayReading } from '../../../readings/index.ts';
import type { Evidence, JackReading, TakenReading } from '../../../readings/index.ts';
import { contactWords } from '../../../wiring/index.ts';
import {
  jackReading,
  meterOn,
  type AuthoredUnderTest,
  type LessonJacks,
  type MeterSetting,
  type ProbePair,
} from '../../jacks.ts';
import { remembered } from '../chance.ts';
import { inRows } from '../forms.ts';
import type { Drawn } from '../task.ts';
import { capital } from '../../../verdict/index.ts';

/** Jacks that may hide behind readings. */
export const JACKS = {
  outA: { direction: 'out', connector: 'trs-3.5', style: 'type-a' },
  outB: { direction: 'out', connector: 'trs-3.5', style: 'type-b' },
  lowA: { direction: 'out', connector: 'trs-3.5', style: 'type-a', circuit: 'driver-3v3' },
  lowB: { direction: 'out', connector: 'trs-3.5', style: 'type-b', circuit: 'driver-3v3' },
  inA: { direction: 'in', connector: 'trs-3.5', style: 'type-a' },
  inB: { direction: 'in', connector: 'trs-3.5', style: 'type-b' },
  switches: { other: 'footswitch-double', connector: 'trs-3.5' },
  pedal: { other: 'expression-ring', connector: 'trs-3.5' },
  headphone: { other: 'headphone', connector: 'trs-3.5' },
} as const satisfies LessonJacks;
/** One of these jacks. */
export type Hidden = keyof typeof JACKS;

/** A dial, a power and two contacts, the red probe's first. */
export type Asked = readonly [setting: MeterSetting, probes: ProbePair];

/** Readings that tasks ask for. */
const BY_NAME = {
  ring: ['volts idle', 'ring-sleeve'],
  tip: ['volts idle', 'tip-sleeve'],
  across: ['volts idle', 'ring-tip'],
  clock: ['volts clock', 'ring-tip'],
  loaded: ['loaded idle', 'ring-sleeve'],
  ohms: ['ohms off', 'ring-sleeve'],
  ohmsTip: ['ohms off', 'tip-sleeve'],
  ohmsAcross: ['ohms off', 'ring-tip'],
  diode: ['diode off', 'ring-tip'],
  diodeBack: ['diode off', 'tip-ring'],
} as const satisfies Readonly<Record<string, Asked>>;
/** The short name of a reading. */
export type AskedName = keyof typeof BY_NAME;
/** Readings that tasks ask for, by a short name. */
export const ASKED: Readonly<Record<AskedName, Asked>> = BY_NAME;

/** What is known of the jack beforehand: a phone jack without a label, on a box that can be switched on and send its clock. */
const UNMARKED: Evidence = {
  connector: 'trs-3.5',
  marked: 'nothing',
  menu: [],
  meter: 'usual',
  canSwitchOn: true,
  canStreamClock: true,
};

const SAFE = safeReadings(UNMARKED);

/** Whether two readings are the same; which way round the probes are counts in the diode test alone. */
export const isSame = (a: JackReading, b: JackReading): boolean =>
  a.meter === b.meter &&
  a.power === b.power &&
  ((a.red === b.red && a.black === b.black) ||
    (a.meter !== 'diode' && a.red === b.black && a.black === b.red));

/** Whether a reading is safe on an unmarked jack after those that were taken. */
export const isSafe = (at: JackReading, taken: readonly TakenReading[]): boolean =>
  SAFE.some((one) => isSame(one, at)) && (at.meter !== 'loaded' || mayLoad(at, taken));

/** One reading taken on a jack. */
function take(jack: AuthoredUnderTest, [setting, probes]: Asked): TakenReading {
  return { at: jackReading(setting, probes), reading: meterOn(jack, setting, probes) };
}

/** Readings taken on a hidden jack, by their short names. */
export const takeAll = (hidden: Hidden, names: readonly AskedName[]): readonly TakenReading[] =>
  names.map((name) => take(JACKS[hidden], ASKED[name]));

const POWER_WORDS = {
  off: 'power off',
  idle: 'on and at rest',
  clock: 'on, clock running',
  notes: 'on, notes now and then',
} as const;

/** 'DC volts, on and at rest, ring to sleeve'. */
export function sayAsked({ meter, power, red, black }: JackReading): string {
  const dial = meter === 'loaded' ? 'DC volts with 1 kohm across' : sayFunction(meter);
  return capital(`${dial}, ${POWER_WORDS[power]}, ${contactWords(red)} to ${contactWords(black)}`);
}

/** Readings as rows of a table. */
export const readingRows = (taken: readonly TakenReading[]): ReturnType<typeof inRows> =>
  inRows(taken.map(({ at, reading }) => [sayAsked(at), sayReading(reading)]));

/** Readings in a row, for the steps to the answer. */
export const sayTaken = (taken: readonly TakenReading[]): string =>
  `Read: ${taken.map(({ reading }) => sayReading(reading)).join('; ')}.`;

/** Readings on a jack: as rows, and as they lie in the finder, with what is known of the jack besides. */
export const inFinder = (
  taken: readonly TakenReading[],
  known: Partial<Evidence> = {},
): Pick<Drawn, 'shows' | 'material'> => ({
  shows: readingRows(taken),
  material: { on: 'finder', evidence: { ...UNMARKED, ...known }, taken },
});

/** Devices of each crowd that a task asks: enough for readings of which it is asked whether they fit at all (held against the whole crowds in the tests). */
const DEVICES = 64;

/** What the finder makes of some readings. */
export const findFrom = remembered((taken: readonly TakenReading[]) => findJack(UNMARKED, taken, DEVICES));

/** From this share of what the best name has gained on, a name still fits; up to that one it is ruled out; between them it is left open (our choice). */
const FITS = 0.12;
const RULED_OUT = 0.03;

/** How a name stands after readings. */
type Stands = 'fits' | 'open' | 'ruled out';

/** How each name stands: by how much the readings speak for it, beside the name that they speak for most. */
export function standsOf(taken: readonly TakenReading[]): ReadonlyMap<string, Stands> {
  const before = new Map(findFrom([]).ranked.map(({ name, probability }) => [name, probability]));
  const gains = findFrom(taken).ranked.map(
    ({ name, probability }) => [name, probability / (before.get(name) ?? 1)] as const,
  );
  const most = Math.max(...gains.map(([, gain]) => gain));
  return new Map(
    gains.map(([name, gain]) => [
      name,
      gain >= FITS * most ? 'fits' : gain <= RULED_OUT * most ? 'ruled out' : 'open',
    ]),
  );
}
