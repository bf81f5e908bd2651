/** The default circuits behind an input. Where the documents leave room the value is the workbook's own choice, and says so. */
import { outputModel } from './opto-outputs.ts';
import { OUTPUT_VOLTS, partEntry } from './optocouplers.ts';
import type { Part } from './parts.ts';
import { PRACTICE } from './styles.ts';
import { OURS, circuit, factor, value } from './values.ts';
import type { CircuitEntry, ValueEntry } from './values.ts';

/** The LED moved from its typical curve, the same for every part. */
const LED_SHIFT = value(
  'ledShiftVolts',
  0,
  'C',
  '6N138: 1.4 V typical, 1.7 V at most (twin data sheet 83669; MMA CA-033)',
  { spread: { kind: 'shift', low: -0.1, high: 0.3 } },
);

/** Values of the LED that the part decides; a reader's own value wins over the part's. */
function ledValues(part: Part): readonly ValueEntry[] {
  const { label, turnOnAmperes, turnOnStatus, turnOnSource, ...rating } = partEntry(part);
  const { ledAmperes, ledReverseVolts, ratingStatus } = rating;
  return [
    LED_SHIFT,
    value('turnOnAmperes', turnOnAmperes, turnOnStatus, turnOnSource),
    value('ledAmperes', ledAmperes, ratingStatus, `${label} data sheet`),
    value('ledReverseVolts', ledReverseVolts, ratingStatus, `${label} data sheet`),
    ...outputValues(part),
  ];
}

/** Values of the output side. */
function outputValues(part: Part): readonly ValueEntry[] {
  const { kind, loadOhms, loadStatus, loadSource, baseOhms, status, source } = outputModel(part);
  const around = [
    value('outputVolts', OUTPUT_VOLTS, 'P', PRACTICE),
    value('loadOhms', loadOhms, loadStatus, loadSource),
  ];
  if ('toOnSeconds' in kind)
    return [
      ...around,
      value('toOnSeconds', kind.toOnSeconds, status, source),
      value('toOffSeconds', kind.toOffSeconds, status, source),
    ];
  const base = value('baseOhms', baseOhms, 'P', '4.7 to 10 kohm speeds up a 6N138');
  return [
    ...around,
    ...(kind.baseGain === undefined ? [] : [base]),
    value('gain', kind.gain, status, `${source}, at ${kind.gainAmperes * 1e3} mA`),
  ];
}

const isolated = (part: Part): readonly ValueEntry[] => [
  value('seriesOhms', 220, 'C', 'MMA CA-033, p. 4'),
  value('seriesWatts', 0.25, 'P', OURS),
  ...ledValues(part),
  value('activityOhms', 0, 'P', 'caution: it takes current from the input, outside the standard'),
];
const logic = (): readonly ValueEntry[] => [
  value('supplyVolts', 3.3, 'P', PRACTICE, { spread: factor(0.05) }),
  value('pullUpOhms', 10e3, 'P', PRACTICE),
  value('inputOhms', 1e3, 'P', PRACTICE),
  value('lowVolts', 0.8, 'P', PRACTICE),
  value('highVolts', 2, 'P', PRACTICE),
];
const ownSupply = (part: Part): readonly ValueEntry[] => [
  value('supplyVolts', 5, 'P', PRACTICE, { spread: factor(0.1) }),
  value('seriesOhms', 470, 'P', PRACTICE, { label: 'LED resistor' }),
  value('seriesWatts', 0.25, 'P', OURS, { label: 'LED resistor rating' }),
  ...ledValues(part),
];

/** Circuits behind an input, the usual one first. */
export const RECEIVERS = [
  'receiver-isolated',
  'receiver-both-ways',
  'receiver-logic',
  'receiver-led',
] as const;
/** A circuit behind an input. */
export type Receiver = (typeof RECEIVERS)[number];

/** What is known of each. */
export const RECEIVER_ENTRIES: Readonly<Record<Receiver, CircuitEntry>> = {
  'receiver-isolated': circuit(
    'loop',
    'isolated input',
    'C',
    '220 ohm, opto LED, protection diode',
    isolated,
  ),
  'receiver-both-ways': circuit(
    'loop',
    'isolated input, either direction',
    'P',
    '220 ohm, bridge of four diodes, opto LED',
    isolated,
  ),
  'receiver-logic': circuit(
    'ground-referenced',
    'ground-referenced logic input',
    'P',
    'pull-up to 3.3 V, low below 0.8 V',
    logic,
  ),
  'receiver-led': circuit(
    'ground-referenced',
    'ground-referenced LED input',
    'P',
    'its own 5 V feeds the LED',
    ownSupply,
  ),
};
