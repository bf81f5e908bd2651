/** The values of a circuit that a reader can change: their names, labels, units and bounds. */
import { LEAST_OHMS } from '../circuit/index.ts';
import { PARTS } from './parts.ts';
import type { Part } from './parts.ts';
import type { Status } from './styles.ts';

/** End of a tolerance: factors for a relative spread, volts for a shift. */
interface Corners {
  readonly kind: 'factor' | 'shift';
  readonly low: number;
  readonly high: number;
}

/** One value of a circuit, with the corners of its tolerance where it has one. */
export interface ValueEntry {
  readonly name: ValueName;
  readonly label: string;
  readonly unit: 'V' | 'ohm' | 'W' | 'A' | 's' | '%';
  /** As it is kept: volts, ohms, watts, amperes, seconds; a share where the unit is %. */
  readonly value: number;
  readonly least: number;
  readonly most: number;
  /** Where 0 stands for none: the least that is not none. */
  readonly floor?: number;
  readonly spread?: Corners;
  readonly status: Status;
  readonly source: string;
}

/** A relative spread, the same share up and down. */
export const factor = (share: number): Corners => ({ kind: 'factor', low: 1 - share, high: 1 + share });

const volts = (label: string, least: number, most: number) => ({ label, unit: 'V', least, most }) as const;
const amperes = (label: string, least: number, most: number) => ({ label, unit: 'A', least, most }) as const;
const watts = (label: string) => ({ label, unit: 'W', least: 0.01, most: 10 }) as const;
/** A resistor of the loop has 5 % (MMA CA-033, fig. 1). */
const resistor = (label: string) =>
  ({ label, unit: 'ohm', least: 0.1, most: 1e6, spread: factor(0.05) }) as const;

/** A resistance that may be none: so little that the solver cannot tell it from none is not taken. */
const ohmsOrNone = (label: string, most: number) =>
  ({ label, unit: 'ohm', least: 0, floor: LEAST_OHMS, most }) as const;

/** Bounds are our choice: what a device may hold, with room. Plans and links count on the order. */
const KINDS = {
  supplyVolts: volts('supply', 0.5, 24),
  sourceOhms: resistor('source resistor'),
  sourceWatts: watts('source resistor rating'),
  sinkOhms: resistor('sink resistor'),
  sinkWatts: watts('sink resistor rating'),
  stageOhms: ohmsOrNone('output stage', 1e4),
  stageAmperes: amperes('output stage rating', 1e-3, 10),
  railAmperes: amperes('supply rail rating', 1e-3, 10),
  railOhms: resistor('rail to ground'),
  seriesOhms: resistor('receiver resistor'),
  seriesWatts: watts('receiver resistor rating'),
  ledShiftVolts: volts('LED voltage, added', -0.5, 1),
  turnOnAmperes: amperes('turn-on current', 1e-4, 0.1),
  ledAmperes: amperes('LED current rating', 1e-3, 1),
  ledReverseVolts: volts('LED reverse voltage rating', 1, 100),
  pullUpOhms: resistor('pull-up'),
  inputOhms: resistor('input resistor'),
  lowVolts: volts('low below', 0.1, 10),
  highVolts: volts('high above', 0.2, 12),
  outputVolts: volts('output supply', 1.6, 18),
  loadOhms: { label: 'output pull-up', unit: 'ohm', least: 47, most: 1e6 },
  baseOhms: ohmsOrNone('base resistor, 0 for none', 1e7),
  gain: { label: 'current transfer ratio', unit: '%', least: 0.01, most: 100 },
  toOnSeconds: { label: 'delay to on', unit: 's', least: 0, most: 100e-6 },
  toOffSeconds: { label: 'delay to off', unit: 's', least: 0, most: 100e-6 },
  stageVolts: { label: 'output stage swings to, 0 for the supply', unit: 'V', least: 0, most: 24 },
  activityOhms: ohmsOrNone('activity LED across the input, its resistor, 0 for none', 1e5),
  tapOhms: ohmsOrNone('load from source line to ground, 0 for none', 1e6),
  // 48 V of phantom power, with room.
  foreignAcrossVolts: volts('foreign supply on source line against sink line, 0 for none', -60, 60),
  foreignSourceVolts: volts('foreign supply on source line against ground, 0 for none', -60, 60),
  foreignSinkVolts: volts('foreign supply on sink line against ground, 0 for none', -60, 60),
  foreignOhms: { label: 'resistor of the foreign supply', unit: 'ohm', least: 1, most: 1e6 },
} as const;
/** The name of a value, its unit in it. */
export type ValueName = keyof typeof KINDS;

/** Every value a reader can change. */
export const VALUES = Object.keys(KINDS) as readonly ValueName[];

/** Values of what no standard draws round the loop. */
export const BESIDE_VALUES: readonly ValueName[] = [
  'stageVolts',
  'activityOhms',
  'tapOhms',
  'foreignAcrossVolts',
  'foreignSourceVolts',
  'foreignSinkVolts',
  'foreignOhms',
];

/** What is wrong with a number as the value of an entry, in words; undefined where it is one. */
export function valueProblem(
  { least, most, floor = 0, unit }: Pick<ValueEntry, 'least' | 'most' | 'floor' | 'unit'>,
  given: number,
): string | undefined {
  if (!(given >= least && given <= most))
    return `must be at least ${least} ${unit} and at most ${most} ${unit}, got ${given} ${unit}`;
  return given > 0 && given < floor
    ? `must be 0 ${unit} or at least ${floor} ${unit}, got ${given} ${unit}`
    : undefined;
}

/** A value of a circuit with its default; `more` holds what differs from the other circuits that have it. */
export function value(
  name: ValueName,
  amount: number,
  status: Status,
  source: string,
  more: Partial<Pick<ValueEntry, 'label' | 'spread'>> = {},
): ValueEntry {
  return { name, ...KINDS[name], value: amount, status, source, ...more };
}

/** The figure of the 2014 update that shows an output. */
export const CA033 = 'MMA CA-033 (2014), fig. 1';
/** The source of what no document fixes. */
export const OURS = 'our choice, to be changed when the part is known';

const FOREIGN = 'caution: 9 and 12 V are reported on contacts; phantom power is 48 V behind 6810 ohm';
const FOREIGN_VOLTS = ['foreignAcrossVolts', 'foreignSourceVolts', 'foreignSinkVolts'] as const;

/** A supply of something else that reaches the contacts: none by default. Without a source line there is one place for it. */
const foreignSupply = (family: CircuitEntry['family']): readonly ValueEntry[] => [
  ...FOREIGN_VOLTS.filter((name) => family === 'loop' || name === 'foreignSinkVolts').map((name) =>
    value(name, 0, 'P', FOREIGN),
  ),
  value('foreignOhms', 1, 'P', 'our choice: what a supply and its leads have'),
];

/** A circuit behind a jack: in words, and its values with their defaults, which may hang on its optocoupler. */
export interface CircuitEntry {
  readonly family: 'loop' | 'ground-referenced';
  readonly label: string;
  readonly status: Status;
  readonly about: string;
  readonly values: Readonly<Record<Part, readonly ValueEntry[]>>;
}

/** A circuit; `values` gives those of each part. */
export const circuit = (
  family: CircuitEntry['family'],
  label: string,
  status: Status,
  about: string,
  values: (part: Part) => readonly ValueEntry[],
): CircuitEntry => ({
  family,
  label,
  status,
  about,
  values: Object.fromEntries(
    PARTS.map((part): [Part, readonly ValueEntry[]] => [part, [...values(part), ...foreignSupply(family)]]),
  ) as CircuitEntry['values'],
});
