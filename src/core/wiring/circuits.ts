/**
 * The default circuits behind a jack, and every value in them: named, changeable, with tolerance, status and source.
 * Where the documents leave room the value is the workbook's own choice, and says so.
 */
import type { DiodeModel } from '../circuit/index.ts';
import type { Status } from './styles.ts';

/** Circuits behind an output, then behind an input. */
export const DRIVERS = [
  'driver-5v',
  'driver-3v3',
  'driver-3v3-push-pull',
  'driver-off',
  'driver-ground',
] as const;
export const RECEIVERS = [
  'receiver-isolated',
  'receiver-both-ways',
  'receiver-logic',
  'receiver-led',
] as const;
export const CIRCUITS = [...DRIVERS, ...RECEIVERS] as const;
export type Driver = (typeof DRIVERS)[number];
export type Receiver = (typeof RECEIVERS)[number];
export type CircuitKind = (typeof CIRCUITS)[number];

/** Optocouplers to choose; `unknown` is judged as the worst part that the 2014 update names. */
export const PARTS = ['6N138', 'H11L1', 'PC900V', 'unknown'] as const;
export type Part = (typeof PARTS)[number];

/** Every value a reader can change. */
export const VALUES = [
  'supplyVolts',
  'sourceOhms',
  'sourceWatts',
  'sinkOhms',
  'sinkWatts',
  'stageOhms',
  'stageAmperes',
  'railAmperes',
  'railOhms',
  'seriesOhms',
  'seriesWatts',
  'ledShiftVolts',
  'turnOnAmperes',
  'ledAmperes',
  'ledReverseVolts',
  'pullUpOhms',
  'inputOhms',
  'lowVolts',
  'highVolts',
] as const;
export type ValueName = (typeof VALUES)[number];

/** One value of a circuit. `low` and `high` are its tolerance corners: factors for a relative spread, volts for a shift. */
export interface ValueEntry {
  readonly name: ValueName;
  readonly label: string;
  readonly unit: 'V' | 'ohm' | 'W' | 'A';
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly spread?: { readonly kind: 'factor' | 'shift'; readonly low: number; readonly high: number };
  readonly status: Status;
  readonly source: string;
}

/** An optocoupler's LED and thresholds. */
export interface PartEntry {
  readonly part: Part;
  readonly label: string;
  readonly led: DiodeModel;
  readonly turnOnAmperes: number;
  readonly turnOnStatus: Status;
  readonly turnOnSource: string;
  /** Greatest forward current, amperes, where a sheet was read. */
  readonly ledAmperes: number;
  readonly ledReverseVolts: number;
  readonly ratingStatus: Status;
}

/** Off is below this share of the turn-on current (common practice). */
export const OFF_SHARE = 0.5;

/** A current below this is none to speak of, amperes. */
export const CURRENT_TO_SPEAK_OF = 50e-6;

/** 1N4148 and 1N914: a widely used simulator card (status c). */
export const PROTECTION_DIODE: DiodeModel = {
  saturationAmperes: 2.52e-9,
  emission: 1.752,
  seriesOhms: 0.568,
  junctionFarads: 4e-12,
  grading: 0.4,
  transitSeconds: 20e-9,
};

/** Junction charge of an opto LED: 60 pF from memory, 50 ns common practice. */
const LED_CHARGE = { junctionFarads: 60e-12, transitSeconds: 50e-9 };

const LED_6N138: DiodeModel = { saturationAmperes: 7.91e-20, emission: 1.44, seriesOhms: 1, ...LED_CHARGE };

const PART_ENTRIES: Readonly<Record<Part, PartEntry>> = {
  '6N138': {
    part: '6N138',
    label: '6N138',
    led: LED_6N138,
    turnOnAmperes: 1.6e-3,
    turnOnStatus: 'D',
    turnOnSource: '6N138 data sheet 83605: the current of its transfer test, not a published threshold',
    ledAmperes: 25e-3,
    ledReverseVolts: 5,
    ratingStatus: 'C',
  },
  H11L1: {
    part: 'H11L1',
    label: 'H11L1',
    led: { saturationAmperes: 1.11e-12, emission: 1.99, seriesOhms: 2, ...LED_CHARGE },
    turnOnAmperes: 1.6e-3,
    turnOnStatus: 'c',
    turnOnSource: 'description in an open symbol library: 1.6 mA at most',
    ledAmperes: 30e-3,
    ledReverseVolts: 6,
    ratingStatus: 'C',
  },
  PC900V: {
    part: 'PC900V',
    label: 'PC900V',
    led: { saturationAmperes: 6.61e-16, emission: 1.44, seriesOhms: 1, ...LED_CHARGE },
    turnOnAmperes: 4e-3,
    turnOnStatus: 'C',
    turnOnSource: 'MMA CA-033, p. 4: worst case',
    ledAmperes: 50e-3,
    ledReverseVolts: 6,
    ratingStatus: 'M',
  },
  unknown: {
    part: 'unknown',
    label: 'part not known',
    led: LED_6N138,
    turnOnAmperes: 4e-3,
    turnOnStatus: 'D',
    turnOnSource: 'the worst part that MMA CA-033 names, with the 6N138 curve',
    ledAmperes: 20e-3,
    ledReverseVolts: 5,
    ratingStatus: 'D',
  },
};

/** What is known of an optocoupler. */
export function partEntry(part: Part): PartEntry {
  return PART_ENTRIES[part];
}

const factor = (share: number): NonNullable<ValueEntry['spread']> => ({
  kind: 'factor',
  low: 1 - share,
  high: 1 + share,
});
const CA033 = 'MMA CA-033 (2014), fig. 1';
const PRACTICE = 'common practice, no source';
const OURS = 'our choice, to be changed when the part is known';

function supply(volts: number, share: number, status: Status, source: string): ValueEntry {
  return {
    name: 'supplyVolts',
    label: 'supply',
    unit: 'V',
    value: volts,
    least: 0.5,
    most: 24,
    spread: factor(share),
    status,
    source,
  };
}

function resistor(name: ValueName, label: string, ohms: number, status: Status, source: string): ValueEntry {
  return {
    name,
    label,
    unit: 'ohm',
    value: ohms,
    least: 0.1,
    most: 1e6,
    spread: factor(0.05),
    status,
    source,
  };
}

function watts(name: ValueName, label: string, value: number, status: Status, source: string): ValueEntry {
  return { name, label, unit: 'W', value, least: 0.01, most: 10, status, source };
}

const STAGE: readonly ValueEntry[] = [
  {
    name: 'stageOhms',
    label: 'output stage',
    unit: 'ohm',
    value: 0,
    least: 0,
    most: 1e4,
    status: 'P',
    source: '0 ohm by default; 20 to 50 ohm is usual for a logic gate (common practice)',
  },
  {
    name: 'stageAmperes',
    label: 'output stage rating',
    unit: 'A',
    value: 25e-3,
    least: 1e-3,
    most: 10,
    status: 'P',
    source: PRACTICE,
  },
  {
    name: 'railAmperes',
    label: 'supply rail rating',
    unit: 'A',
    value: 50e-3,
    least: 1e-3,
    most: 10,
    status: 'P',
    source: PRACTICE,
  },
];

function loopDriver(
  volts: number,
  share: number,
  sourceOhms: number,
  sourceWatts: number,
  sinkOhms: number,
): readonly ValueEntry[] {
  return [
    supply(volts, share, 'C', CA033),
    resistor('sourceOhms', 'source resistor', sourceOhms, 'C', CA033),
    watts('sourceWatts', 'source resistor rating', sourceWatts, 'C', CA033),
    resistor('sinkOhms', 'sink resistor', sinkOhms, 'C', CA033),
    watts('sinkWatts', 'sink resistor rating', 0.25, 'C', CA033),
    ...STAGE,
  ];
}

const SERIES: readonly ValueEntry[] = [
  resistor('seriesOhms', 'receiver resistor', 220, 'C', 'MMA CA-033, p. 4'),
  watts('seriesWatts', 'receiver resistor rating', 0.25, 'P', OURS),
];

/** Values of the LED that the part decides; a reader's own value wins over the part's. */
const LED_SHIFT: ValueEntry = {
  name: 'ledShiftVolts',
  label: 'LED voltage, added',
  unit: 'V',
  value: 0,
  least: -0.5,
  most: 1,
  spread: { kind: 'shift', low: -0.1, high: 0.3 },
  status: 'C',
  source: '6N138: 1.4 V typical, 1.7 V at most (twin data sheet 83669; MMA CA-033)',
};

function ledValues(part: Part): readonly ValueEntry[] {
  const entry = PART_ENTRIES[part];
  return [
    LED_SHIFT,
    {
      name: 'turnOnAmperes',
      label: 'turn-on current',
      unit: 'A',
      value: entry.turnOnAmperes,
      least: 1e-4,
      most: 0.1,
      status: entry.turnOnStatus,
      source: entry.turnOnSource,
    },
    {
      name: 'ledAmperes',
      label: 'LED current rating',
      unit: 'A',
      value: entry.ledAmperes,
      least: 1e-3,
      most: 1,
      status: entry.ratingStatus,
      source: `${entry.label} data sheet`,
    },
    {
      name: 'ledReverseVolts',
      label: 'LED reverse voltage rating',
      unit: 'V',
      value: entry.ledReverseVolts,
      least: 1,
      most: 100,
      status: entry.ratingStatus,
      source: `${entry.label} data sheet`,
    },
  ];
}

/** A circuit behind a jack in words. */
export interface CircuitEntry {
  readonly kind: CircuitKind;
  readonly label: string;
  readonly family: 'loop' | 'ground-referenced';
  readonly status: Status;
  readonly about: string;
}

const CIRCUIT_ENTRIES: Readonly<Record<CircuitKind, CircuitEntry>> = {
  'driver-5v': {
    kind: 'driver-5v',
    label: '5 V output',
    family: 'loop',
    status: 'C',
    about: '220 ohm in each line, push-pull stage',
  },
  'driver-3v3': {
    kind: 'driver-3v3',
    label: '3.3 V output',
    family: 'loop',
    status: 'C',
    about: '33 ohm and 10 ohm, open-drain stage',
  },
  'driver-3v3-push-pull': {
    kind: 'driver-3v3-push-pull',
    label: '3.3 V output, push-pull',
    family: 'loop',
    status: 'C',
    about: '33 ohm and 10 ohm, push-pull stage',
  },
  'driver-off': {
    kind: 'driver-off',
    label: 'output, supply off',
    family: 'loop',
    status: 'P',
    about: 'rail to ground through 1 kohm, stage open',
  },
  'driver-ground': {
    kind: 'driver-ground',
    label: 'ground-referenced output',
    family: 'ground-referenced',
    status: 'P',
    about: 'logic level behind 220 ohm',
  },
  'receiver-isolated': {
    kind: 'receiver-isolated',
    label: 'isolated input',
    family: 'loop',
    status: 'C',
    about: '220 ohm, opto LED, protection diode',
  },
  'receiver-both-ways': {
    kind: 'receiver-both-ways',
    label: 'isolated input, either direction',
    family: 'loop',
    status: 'P',
    about: '220 ohm, bridge of four diodes, opto LED',
  },
  'receiver-logic': {
    kind: 'receiver-logic',
    label: 'ground-referenced logic input',
    family: 'ground-referenced',
    status: 'P',
    about: 'pull-up to 3.3 V, low below 0.8 V',
  },
  'receiver-led': {
    kind: 'receiver-led',
    label: 'ground-referenced LED input',
    family: 'ground-referenced',
    status: 'P',
    about: 'its own 5 V feeds the LED',
  },
};

/** What is known of a circuit. */
export function circuitEntry(kind: CircuitKind): CircuitEntry {
  return CIRCUIT_ENTRIES[kind];
}

/** Whether a circuit belongs behind an output. */
export function isDriver(kind: CircuitKind): kind is Driver {
  return (DRIVERS as readonly string[]).includes(kind);
}

/** Whether a circuit lights the LED of an optocoupler, so that a part can be chosen. */
export function hasLed(kind: CircuitKind): boolean {
  return kind === 'receiver-isolated' || kind === 'receiver-both-ways' || kind === 'receiver-led';
}

const VALUE_ENTRIES: Partial<Record<CircuitKind, Partial<Record<Part, readonly ValueEntry[]>>>> = {};

/** Every value of a circuit with its default; `part` decides those of the LED. */
export function valuesOf(kind: CircuitKind, part: Part): readonly ValueEntry[] {
  const ofKind = (VALUE_ENTRIES[kind] ??= {});
  return (ofKind[part] ??= makeValues(kind, part));
}

function makeValues(kind: CircuitKind, part: Part): readonly ValueEntry[] {
  switch (kind) {
    case 'driver-5v':
      return loopDriver(5, 0.1, 220, 0.25, 220);
    case 'driver-3v3':
    case 'driver-3v3-push-pull':
      return loopDriver(3.3, 0.05, 33, 0.5, 10);
    case 'driver-off':
      return [
        resistor('railOhms', 'rail to ground', 1000, 'P', PRACTICE),
        resistor('sourceOhms', 'source resistor', 220, 'C', CA033),
        watts('sourceWatts', 'source resistor rating', 0.25, 'C', CA033),
        resistor('sinkOhms', 'sink resistor', 220, 'C', CA033),
        watts('sinkWatts', 'sink resistor rating', 0.25, 'C', CA033),
      ];
    case 'driver-ground':
      return [
        supply(5, 0.1, 'P', OURS),
        resistor('sinkOhms', 'signal resistor', 220, 'P', PRACTICE),
        watts('sinkWatts', 'signal resistor rating', 0.25, 'P', OURS),
        ...STAGE,
      ];
    case 'receiver-isolated':
    case 'receiver-both-ways':
      return [...SERIES, ...ledValues(part)];
    case 'receiver-logic':
      return [
        supply(3.3, 0.05, 'P', PRACTICE),
        resistor('pullUpOhms', 'pull-up', 10e3, 'P', PRACTICE),
        resistor('inputOhms', 'input resistor', 1e3, 'P', PRACTICE),
        {
          name: 'lowVolts',
          label: 'low below',
          unit: 'V',
          value: 0.8,
          least: 0.1,
          most: 10,
          status: 'P',
          source: PRACTICE,
        },
        {
          name: 'highVolts',
          label: 'high above',
          unit: 'V',
          value: 2,
          least: 0.2,
          most: 12,
          status: 'P',
          source: PRACTICE,
        },
      ];
    case 'receiver-led':
      return [
        supply(5, 0.1, 'P', PRACTICE),
        resistor('seriesOhms', 'LED resistor', 470, 'P', PRACTICE),
        watts('seriesWatts', 'LED resistor rating', 0.25, 'P', OURS),
        ...ledValues(part),
      ];
  }
}
