/** What a link has in time that it does not need at rest, and the values for it. */
import type { Status } from './styles.ts';

/** How a link behaves in time. Times in seconds, capacitance in farads. */
export interface Timing {
  /** From low to high of the output stage, end to end; an open-drain stage takes as long to let go. */
  readonly riseSeconds: number;
  /** From high to low of the output stage, end to end; an open-drain stage takes as long to take hold. */
  readonly fallSeconds: number;
  /** Capacitor from the shield contact of an isolated input to its device's ground; 0 for none. */
  readonly pin2Farads: number;
}

/** The workbook's own times: the stage of a logic gate (common practice); no capacitor at pin 2. */
export const DEFAULT_TIMING: Timing = { riseSeconds: 50e-9, fallSeconds: 50e-9, pin2Farads: 0 };

/** A value of the timing in words, with its status and source. */
export interface TimingEntry {
  readonly name: keyof Timing;
  readonly label: string;
  readonly unit: 's' | 'F';
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly status: Status;
  readonly source: string;
}

/** Every value of the timing that a reader can change. */
export const TIMING_ENTRIES: readonly TimingEntry[] = [
  {
    name: 'riseSeconds',
    label: 'rise time of the output stage',
    unit: 's',
    value: DEFAULT_TIMING.riseSeconds,
    least: 1e-9,
    most: 10e-6,
    status: 'P',
    source: 'a logic gate: common practice, no source',
  },
  {
    name: 'fallSeconds',
    label: 'fall time of the output stage',
    unit: 's',
    value: DEFAULT_TIMING.fallSeconds,
    least: 1e-9,
    most: 10e-6,
    status: 'P',
    source: 'a logic gate: common practice, no source',
  },
  {
    name: 'pin2Farads',
    label: 'capacitor from pin 2 to ground at the input',
    unit: 'F',
    value: DEFAULT_TIMING.pin2Farads,
    least: 0,
    most: 1e-6,
    status: 'C',
    source: 'MMA CA-033 (2014), p. 3: 0.1 uF allowed',
  },
];

/** The capacitor at pin 2 that the 2014 update allows, farads (MMA CA-033, p. 3). */
export const PIN_2_FARADS = 0.1e-6;
