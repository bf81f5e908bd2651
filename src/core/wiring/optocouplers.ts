/** Optocouplers: the LED that the loop lights; what follows its light is in `opto-outputs.ts`. */
import type { DiodeModel } from '../circuit/index.ts';
import { outputModel } from './opto-outputs.ts';
import type { Part } from './parts.ts';
import type { Status } from './styles.ts';
import { LOW_SHARE, ledAmperesFor } from './transistor-stage.ts';

/** An optocoupler's LED, the current at which it turns on, and its ratings. */
interface PartEntry {
  readonly label: string;
  readonly led: DiodeModel;
  readonly turnOnAmperes: number;
  readonly turnOnStatus: Status;
  readonly turnOnSource: string;
  /** Whether the turn-on current is a figure of a document, good for every part on the load of that document. */
  readonly turnOnBySheet: boolean;
  /** Greatest forward current, amperes, where a sheet was read. */
  readonly ledAmperes: number;
  readonly ledReverseVolts: number;
  readonly ratingStatus: Status;
}

/** A logic output lets go at this share of the current at which it takes hold: half, the most hysteresis of the named parts (from memory). */
export const LET_GO_SHARE = 0.5;

/** A current below this is none to speak of, amperes. */
export const CURRENT_TO_SPEAK_OF = 50e-6;

/** Junction charge of an opto LED: 60 pF from memory, 50 ns common practice. */
const LED_CHARGE = { junctionFarads: 60e-12, transitSeconds: 50e-9 };

const LED_6N138: DiodeModel = { saturationAmperes: 7.91e-20, emission: 1.44, seriesOhms: 1, ...LED_CHARGE };

/** Supply of the output side by default, volts (common practice, no source). */
export const OUTPUT_VOLTS = 5;

/** Turn-on of a transistor part: the LED current at which its typical gain pulls its usual load low. */
function workedOut(
  part: Part,
): Pick<PartEntry, 'turnOnAmperes' | 'turnOnStatus' | 'turnOnSource' | 'turnOnBySheet'> {
  const { kind, loadOhms, baseOhms } = outputModel(part);
  if ('toOnSeconds' in kind) throw new Error(`part '${part}': needs a transistor, got logic`);
  const stage = { model: kind, supplyVolts: OUTPUT_VOLTS, loadOhms, baseOhms };
  return {
    turnOnAmperes: ledAmperesFor(stage, LOW_SHARE),
    turnOnStatus: 'D',
    turnOnSource: 'worked out: the typical gain pulls the usual pull-up low',
    turnOnBySheet: false,
  };
}

/** Infrared LED of the common transistor parts: 1.15 V typical at 10 mA (Motorola 4N25), the slope of the H11L1's. */
const LED_TRANSISTOR: DiodeModel = {
  saturationAmperes: 2.92e-12,
  emission: 1.99,
  seriesOhms: 2,
  ...LED_CHARGE,
};

const transistorPart = (part: Part, ledAmperes: number): PartEntry => ({
  label: part,
  led: LED_TRANSISTOR,
  ...workedOut(part),
  ledAmperes,
  ledReverseVolts: 6,
  ratingStatus: 'M',
});

const ENTRIES: Readonly<Record<Part, PartEntry>> = {
  '6N138': {
    label: '6N138',
    led: LED_6N138,
    turnOnAmperes: 1.6e-3,
    turnOnStatus: 'D',
    turnOnSource:
      '6N138 data sheet 83605: the current of its gain test, good for a load of 2.2 kohm; no threshold is published',
    turnOnBySheet: true,
    ledAmperes: 25e-3,
    ledReverseVolts: 5,
    ratingStatus: 'C',
  },
  H11L1: {
    label: 'H11L1',
    led: { saturationAmperes: 1.11e-12, emission: 1.99, seriesOhms: 2, ...LED_CHARGE },
    turnOnAmperes: 1.6e-3,
    turnOnStatus: 'c',
    turnOnSource: 'description in an open symbol library: 1.6 mA at most',
    turnOnBySheet: true,
    ledAmperes: 30e-3,
    ledReverseVolts: 6,
    ratingStatus: 'C',
  },
  PC900V: {
    label: 'PC900V',
    led: { saturationAmperes: 6.61e-16, emission: 1.44, seriesOhms: 1, ...LED_CHARGE },
    turnOnAmperes: 4e-3,
    turnOnStatus: 'C',
    turnOnSource: 'MMA CA-033, p. 4: worst case',
    turnOnBySheet: true,
    ledAmperes: 50e-3,
    ledReverseVolts: 6,
    ratingStatus: 'M',
  },
  unknown: {
    label: 'part not known',
    led: LED_6N138,
    turnOnAmperes: 4e-3,
    turnOnStatus: 'D',
    turnOnSource: 'the worst part that MMA CA-033 names, with the 6N138 curve',
    turnOnBySheet: true,
    ledAmperes: 20e-3,
    ledReverseVolts: 5,
    ratingStatus: 'D',
  },
  '6N136': {
    ...transistorPart('6N136', 25e-3),
    led: LED_6N138,
    ledReverseVolts: 5,
  },
  '6N137': {
    label: '6N137',
    led: { saturationAmperes: 4.23e-20, emission: 1.44, seriesOhms: 1, ...LED_CHARGE },
    turnOnAmperes: 5e-3,
    turnOnStatus: 'M',
    turnOnSource: 'from memory: 5 mA at most',
    turnOnBySheet: true,
    ledAmperes: 20e-3,
    ledReverseVolts: 5,
    ratingStatus: 'M',
  },
  '4N35': transistorPart('4N35', 60e-3),
  '4N25': transistorPart('4N25', 60e-3),
  'CNY17-1': transistorPart('CNY17-1', 60e-3),
  'CNY17-2': transistorPart('CNY17-2', 60e-3),
  'CNY17-3': transistorPart('CNY17-3', 60e-3),
  PC817: {
    ...transistorPart('PC817', 50e-3),
    label: 'PC817, PC123',
    led: { saturationAmperes: 3.26e-12, emission: 1.99, seriesOhms: 2, ...LED_CHARGE },
  },
};

/** What is known of an optocoupler. */
export function partEntry(part: Part): PartEntry {
  return ENTRIES[part];
}
