import { between, meterOn, sayMeter, unbroken } from '../../../src/core/learn/index.ts';
import type { AuthoredUnderTest, Claims, MeterSetting, ProbePair } from '../../../src/core/learn/index.ts';
import { jacks } from './data.ts';

const { out, outTurned, outLow, outUntied, in: input, inTurned, switches } = jacks;

const volts = (jack: AuthoredUnderTest, setting: MeterSetting, probes: ProbePair): number => {
  const reading = meterOn(jack, setting, probes);
  return reading.shows === 'value' ? reading.value : NaN;
};

export const claims: Claims = {
  'an output shows its supply at rest, and an input shows nothing on any two contacts': () => [
    [sayMeter(out, 'volts idle', 'ring-sleeve'), unbroken('5.00 V')],
    [sayMeter(out, 'volts idle', 'tip-sleeve'), unbroken('5.00 V')],
    ...(['ring-sleeve', 'tip-sleeve', 'ring-tip'] as const).map(
      (pair) => [sayMeter(input, 'volts idle', pair), unbroken('0 mV')] as const,
    ),
  ],
  'while clock runs the sign between ring and tip names the source': () => [
    // 48 bytes F8 a second, each 4 bits of 32 us at 0: 0.6144 % of the time, and 5 V between the lines then: 30.7 mV.
    [volts(out, 'volts clock', 'ring-tip') - 48 * 4 * 32e-6 * 5, between(-0.0005, 0.0005)],
    [sayMeter(out, 'volts clock', 'ring-tip'), unbroken('31 mV')],
    [sayMeter(outTurned, 'volts clock', 'ring-tip'), unbroken('−31 mV')],
    [sayMeter(out, 'volts idle', 'ring-tip'), unbroken('0 mV')],
  ],
  'a 3.3 V output that lets go of its sink shows its source alone at rest': () => [
    [sayMeter(outLow, 'volts idle', 'ring-sleeve'), unbroken('3.30 V')],
    [sayMeter(outLow, 'volts idle', 'tip-sleeve'), unbroken('0 mV')],
  ],
  'the diode test shows the LED one way and about half as much the other way': () => {
    const forward = volts(input, 'diode off', 'ring-tip');
    return [
      [volts(input, 'diode off', 'tip-ring') / forward, between(0.45, 0.55)],
      [volts(inTurned, 'diode off', 'tip-ring') - forward, between(-5e-7, 5e-7)],
      [meterOn(input, 'diode off', 'ring-tip', 'low-diode').shows, 'overload'],
      [meterOn(input, 'diode off', 'tip-ring', 'low-diode').shows, 'value'],
    ];
  },
  'the LED tester glows faintly across the loop while something is sent, and plainly where a line is fed':
    () => [
      ...[out, outLow].flatMap((jack) => [
        [meterOn(jack, 'led clock', 'ring-tip').shows, 'faint'] as const,
        [meterOn(jack, 'led notes', 'ring-tip').shows, 'faint'] as const,
        [meterOn(jack, 'led idle', 'ring-tip').shows, 'dark'] as const,
        [meterOn(jack, 'led clock', 'ring-sleeve').shows, 'glows'] as const,
      ]),
      [meterOn(out, 'led clock', 'tip-sleeve').shows, 'glows'],
      [meterOn(outLow, 'led clock', 'tip-sleeve').shows, 'dark'],
    ],
  'an output that ties its sleeve to nothing leaves the LED dark from there, and lights it across the loop as any other':
    () => [
      ...(['led idle', 'led clock', 'led notes'] as const).flatMap((setting) =>
        (['ring-sleeve', 'tip-sleeve'] as const).map(
          (pair) => [meterOn(outUntied, setting, pair).shows, 'dark'] as const,
        ),
      ),
      [meterOn(outUntied, 'led clock', 'ring-tip').shows, 'faint'],
      [meterOn(outUntied, 'led notes', 'ring-tip').shows, 'faint'],
    ],
  'a footswitch input shows the voltage of a 3.3 V output, and ten times its resistance': () => [
    [sayMeter(switches, 'volts idle', 'ring-sleeve'), sayMeter(outLow, 'volts idle', 'ring-sleeve')],
    [volts(switches, 'ohms off', 'ring-sleeve') / volts(outLow, 'ohms off', 'ring-sleeve'), between(8, 12)],
  ],
};
