/** Optocouplers: the LED that the loop lights, and how fast the output follows it. */
import type { DiodeModel } from '../circuit/index.ts';
import type { Status } from './styles.ts';

/** Optocouplers to choose; `unknown` is judged as the worst part that the 2014 update names. */
export const PARTS = ['6N138', 'H11L1', 'PC900V', 'unknown'] as const;
/** An optocoupler, or that it is not known. */
export type Part = (typeof PARTS)[number];

/** How long the output takes after the LED's current crosses its threshold, seconds: LED on, output low; LED off, output high. */
export interface OutputDelays {
  readonly label: string;
  readonly toOnSeconds: number;
  readonly toOffSeconds: number;
  readonly status: Status;
  readonly source: string;
}

/** An optocoupler's LED, its thresholds, and its delays. */
interface PartEntry {
  readonly label: string;
  readonly led: DiodeModel;
  readonly turnOnAmperes: number;
  readonly turnOnStatus: Status;
  readonly turnOnSource: string;
  /** Greatest forward current, amperes, where a sheet was read. */
  readonly ledAmperes: number;
  readonly ledReverseVolts: number;
  readonly ratingStatus: Status;
  readonly delays: OutputDelays;
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

/** A 6N138 with nothing at its base is the slowest of all. */
const BARE_6N138: OutputDelays = {
  label: '6N138, no base resistor',
  toOnSeconds: 2e-6,
  toOffSeconds: 7e-6,
  status: 'c',
  source: 'to on: a 6N138 data sheet, typical at 1.6 mA and 2.2 kohm; to off: quoted from another in a forum',
};

const ENTRIES: Readonly<Record<Part, PartEntry>> = {
  '6N138': {
    label: '6N138',
    led: LED_6N138,
    turnOnAmperes: 1.6e-3,
    turnOnStatus: 'D',
    turnOnSource: '6N138 data sheet 83605: the current of its transfer test, not a published threshold',
    ledAmperes: 25e-3,
    ledReverseVolts: 5,
    ratingStatus: 'C',
    delays: {
      label: '6N138 with a base resistor',
      toOnSeconds: 1.5e-6,
      toOffSeconds: 2.5e-6,
      status: 'P',
      source: 'common practice with 4.7 to 10 kohm from pin 7 to 5, no source',
    },
  },
  H11L1: {
    label: 'H11L1',
    led: { saturationAmperes: 1.11e-12, emission: 1.99, seriesOhms: 2, ...LED_CHARGE },
    turnOnAmperes: 1.6e-3,
    turnOnStatus: 'c',
    turnOnSource: 'description in an open symbol library: 1.6 mA at most',
    ledAmperes: 30e-3,
    ledReverseVolts: 6,
    ratingStatus: 'C',
    delays: {
      label: 'H11L1',
      toOnSeconds: 1e-6,
      toOffSeconds: 1.2e-6,
      status: 'M',
      source: 'from memory: typical at 270 ohm and 5 V',
    },
  },
  PC900V: {
    label: 'PC900V',
    led: { saturationAmperes: 6.61e-16, emission: 1.44, seriesOhms: 1, ...LED_CHARGE },
    turnOnAmperes: 4e-3,
    turnOnStatus: 'C',
    turnOnSource: 'MMA CA-033, p. 4: worst case',
    ledAmperes: 50e-3,
    ledReverseVolts: 6,
    ratingStatus: 'M',
    delays: {
      label: 'PC900V',
      toOnSeconds: 1e-6,
      toOffSeconds: 2e-6,
      status: 'M',
      source: 'from memory: typical at 5 V, 4 mA and 280 ohm',
    },
  },
  unknown: {
    label: 'part not known',
    led: LED_6N138,
    turnOnAmperes: 4e-3,
    turnOnStatus: 'D',
    turnOnSource: 'the worst part that MMA CA-033 names, with the 6N138 curve',
    ledAmperes: 20e-3,
    ledReverseVolts: 5,
    ratingStatus: 'D',
    delays: {
      ...BARE_6N138,
      label: 'part not known',
      status: 'D',
      source: 'the slowest of the named parts: a 6N138 with no base resistor',
    },
  },
};

/** What is known of an optocoupler. */
export function partEntry(part: Part): PartEntry {
  return ENTRIES[part];
}

/** The delays of a part's output. `baseResistor` counts for the 6N138 alone; who builds for a chain fits one (common practice). */
export function outputDelays(part: Part, baseResistor = true): OutputDelays {
  return part === '6N138' && !baseResistor ? BARE_6N138 : ENTRIES[part].delays;
}
