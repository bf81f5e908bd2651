/** How fast an optocoupler's output follows its LED: delays to on and to off for each part, with status and source. */
import type { Part } from '../wiring/index.ts';
import type { Status } from '../wiring/index.ts';
import type { StageDelays } from './hop.ts';

/** Parts by speed: the 6N138 comes with and without a resistor at its base, pin 7 to 5. */
export const OPTO_OUTPUTS = ['6N138', '6N138-base-resistor', 'H11L1', 'PC900V', 'unknown'] as const;
export type OptoOutput = (typeof OPTO_OUTPUTS)[number];

/** The output side of an optocoupler. Delays count from the LED current's crossing of its threshold. */
export interface OptoEntry extends StageDelays {
  readonly output: OptoOutput;
  readonly label: string;
  readonly status: Status;
  readonly source: string;
}

/** Rise and fall of the output itself, seconds (from memory); the delays are counted to its middle. */
export const OPTO_EDGE_SECONDS = 0.1e-6;

const ENTRIES: Readonly<Record<OptoOutput, OptoEntry>> = {
  '6N138': {
    output: '6N138',
    label: '6N138, no base resistor',
    toOnSeconds: 2.0e-6,
    toOffSeconds: 7.0e-6,
    status: 'c',
    source:
      'to on: a 6N138 data sheet, typical at 1.6 mA and 2.2 kohm; to off: quoted from another in a forum',
  },
  '6N138-base-resistor': {
    output: '6N138-base-resistor',
    label: '6N138 with a base resistor',
    toOnSeconds: 1.5e-6,
    toOffSeconds: 2.5e-6,
    status: 'P',
    source: 'common practice with 4.7 to 10 kohm from pin 7 to 5, no source',
  },
  H11L1: {
    output: 'H11L1',
    label: 'H11L1',
    toOnSeconds: 1.0e-6,
    toOffSeconds: 1.2e-6,
    status: 'M',
    source: 'from memory: typical at 270 ohm and 5 V',
  },
  PC900V: {
    output: 'PC900V',
    label: 'PC900V',
    toOnSeconds: 1.0e-6,
    toOffSeconds: 2.0e-6,
    status: 'M',
    source: 'from memory: typical at 5 V, 4 mA and 280 ohm',
  },
  unknown: {
    output: 'unknown',
    label: 'part not known',
    toOnSeconds: 2.0e-6,
    toOffSeconds: 7.0e-6,
    status: 'D',
    source: 'the slowest of the named parts',
  },
};

/** What is known of an output. */
export function optoEntry(output: OptoOutput): OptoEntry {
  return ENTRIES[output];
}

/** The output of a part; `baseResistor` counts for the 6N138 alone. */
export function optoOf(part: Part, baseResistor = false): OptoEntry {
  return ENTRIES[part === '6N138' && baseResistor ? '6N138-base-resistor' : part];
}
