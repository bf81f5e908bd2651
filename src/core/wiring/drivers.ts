/** The default circuits behind an output. Where the documents leave room the value is the workbook's own choice, and says so. */
import { PRACTICE } from './styles.ts';
import { CA033, OURS, circuit, factor, value } from './values.ts';
import type { CircuitEntry, ValueEntry } from './values.ts';

const STAGE_SOURCE = '0 ohm by default; 20 to 50 ohm is usual for a logic gate (common practice)';
const STAGE: readonly ValueEntry[] = [
  value('stageOhms', 0, 'P', STAGE_SOURCE),
  value('stageAmperes', 25e-3, 'P', PRACTICE),
  value('railAmperes', 50e-3, 'P', PRACTICE),
];

const resistors = (sourceOhms: number, sourceWatts: number, sinkOhms: number): readonly ValueEntry[] => [
  value('sourceOhms', sourceOhms, 'C', CA033),
  value('sourceWatts', sourceWatts, 'C', CA033),
  value('sinkOhms', sinkOhms, 'C', CA033),
  value('sinkWatts', 0.25, 'C', CA033),
];

/** A stage of another supply than the source line's: at rest the difference of the two drives a current through the loop. */
const MIXED: ValueEntry = value(
  'stageVolts',
  0,
  'P',
  'caution: below the supply, a sensitive input may stay on at rest',
  { spread: factor(0.05) },
);

/** What a device that feeds itself from the loop draws, as a resistor from the source line to the shield. */
const TAP: ValueEntry = value(
  'tapOhms',
  0,
  'P',
  'caution: outside the standard; it starves the input and loads the source resistor',
);

const at5Volts = (): readonly ValueEntry[] => [
  value('supplyVolts', 5, 'C', CA033, { spread: factor(0.1) }),
  ...resistors(220, 0.25, 220),
  ...STAGE,
  TAP,
  MIXED,
];
const at3Volts3 = (): readonly ValueEntry[] => [
  value('supplyVolts', 3.3, 'C', CA033, { spread: factor(0.05) }),
  ...resistors(33, 0.5, 10),
  ...STAGE,
  TAP,
];
const at3Volts3PushPull = (): readonly ValueEntry[] => [...at3Volts3(), MIXED];
const off = (): readonly ValueEntry[] => [
  value('railOhms', 1000, 'P', PRACTICE),
  ...resistors(220, 0.25, 220),
];
const toGround = (): readonly ValueEntry[] => [
  value('supplyVolts', 5, 'P', OURS, { spread: factor(0.1) }),
  value('sinkOhms', 220, 'P', PRACTICE, { label: 'signal resistor' }),
  value('sinkWatts', 0.25, 'P', OURS, { label: 'signal resistor rating' }),
  ...STAGE,
];

/** Circuits behind an output, the usual one first. */
export const DRIVERS = [
  'driver-5v',
  'driver-3v3',
  'driver-3v3-push-pull',
  'driver-off',
  'driver-ground',
] as const;
/** A circuit behind an output. */
export type Driver = (typeof DRIVERS)[number];

/** What is known of each. */
export const DRIVER_ENTRIES: Readonly<Record<Driver, CircuitEntry>> = {
  'driver-5v': circuit('loop', '5 V output', 'C', '220 ohm in each line, push-pull stage', at5Volts),
  'driver-3v3': circuit('loop', '3.3 V output', 'C', '33 ohm and 10 ohm, open-drain stage', at3Volts3),
  'driver-3v3-push-pull': circuit(
    'loop',
    '3.3 V output, push-pull',
    'C',
    '33 ohm and 10 ohm, push-pull stage',
    at3Volts3PushPull,
  ),
  'driver-off': circuit('loop', 'output, supply off', 'P', 'rail to ground through 1 kohm, stage open', off),
  'driver-ground': circuit(
    'ground-referenced',
    'ground-referenced output',
    'P',
    'logic level behind 220 ohm',
    toGround,
  ),
};
