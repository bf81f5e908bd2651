/**
 * LED currents predicted for the usual outputs, in milliamperes to two places: by the SPICE engine and by our solver.
 * Worked out from the circuits of MMA CA-033 and LED curves fitted to data sheets; the output's low level counts as 0 V.
 */
import { describe, expect, test, vi } from 'vitest';
import { compileCircuit } from '../../src/core/circuit/compile.ts';
import type { Circuit, DiodeModel, Element } from '../../src/core/circuit/elements.ts';
import { solveOperatingPoint } from '../../src/core/circuit/operating-point.ts';
import { deckOf } from '../support/deck-of.ts';
import { runOperatingPoint } from '../support/spice.ts';

vi.setConfig({ testTimeout: 60_000 });

const LEDS = {
  '6N138': { saturationAmperes: 7.91e-20, emission: 1.44, seriesOhms: 1 },
  '6N137': { saturationAmperes: 4.23e-20, emission: 1.44, seriesOhms: 1 },
  H11L1: { saturationAmperes: 1.11e-12, emission: 1.99, seriesOhms: 2 },
  PC900V: { saturationAmperes: 6.61e-16, emission: 1.44, seriesOhms: 1 },
} as const satisfies Record<string, DiodeModel>;
type Led = keyof typeof LEDS;

/** Ohms of an output in both lines together, and of each input. */
function split(volts: number, outputOhms: number, inputOhms: number, led: Led, inputs: number): Circuit {
  const branch = (at: number): readonly Element[] => [
    { kind: 'resistor', name: `r${at}`, a: 'line', b: `led${at}`, ohms: inputOhms },
    { kind: 'diode', name: `led${at}`, anode: `led${at}`, cathode: '0', ...LEDS[led] },
  ];
  return {
    ground: '0',
    elements: [
      { kind: 'voltage', name: 'supply', plus: 'rail', minus: '0', volts },
      { kind: 'resistor', name: 'output', a: 'rail', b: 'line', ohms: outputOhms },
      ...Array.from({ length: inputs }, (_, at) => branch(at)).flat(),
    ],
  };
}

/** Both must show the printed figure: within half of its last digit, 0.005 mA. */
async function expectEach(circuit: Circuit, inputs: number, milliamperes: number): Promise<void> {
  const deck = deckOf('predicted LED current', circuit);
  const engine = await runOperatingPoint(deck.text);
  const ours = solveOperatingPoint(compileCircuit(circuit));
  if (!ours.ok) throw new Error(ours.reason);
  for (let at = 0; at < inputs; at += 1) {
    const theirs = engine.amperes.get(deck.parts.get(`led${at}`) ?? '') ?? NaN;
    expect(Math.abs(theirs * 1e3 - milliamperes), 'engine').toBeLessThanOrEqual(0.005);
    expect(Math.abs(ours.amperes(`led${at}`) * 1e3 - milliamperes), 'ours').toBeLessThanOrEqual(0.005);
  }
}

const CASES: readonly [string, number, number, number, Readonly<Record<Led, number>>][] = [
  ['5 V, 220 + 220 + 220 ohm', 5, 440, 220, { '6N138': 5.38, '6N137': 5.35, H11L1: 5.81, PC900V: 5.88 }],
  ['3.3 V, 33 + 10 + 220 ohm', 3.3, 43, 220, { '6N138': 6.99, '6N137': 6.91, H11L1: 8.04, PC900V: 8.25 }],
  [
    '3.3 V left at 220 + 220 + 220 ohm',
    3.3,
    440,
    220,
    { '6N138': 2.84, '6N137': 2.81, H11L1: 3.29, PC900V: 3.34 },
  ],
  ['5 V with 33 + 10 + 220 ohm', 5, 43, 220, { '6N138': 13.34, '6N137': 13.26, H11L1: 14.35, PC900V: 14.6 }],
  ['4.5 V, resistors 5 % high', 4.5, 462, 231, { '6N138': 4.41, '6N137': 4.38, H11L1: 4.83, PC900V: 4.89 }],
  [
    '3.135 V, resistors 5 % high',
    3.135,
    45.15,
    231,
    { '6N138': 6.09, '6N137': 6.0, H11L1: 7.09, PC900V: 7.28 },
  ],
];

const SPLITS: readonly [string, number, number, number, Readonly<Record<Exclude<Led, '6N137'>, number>>][] = [
  ['5 V split to two', 5, 440, 2, { '6N138': 3.25, H11L1: 3.52, PC900V: 3.55 }],
  ['5 V split to three', 5, 440, 3, { '6N138': 2.33, H11L1: 2.52, PC900V: 2.54 }],
  ['3.3 V split to two', 3.3, 43, 2, { '6N138': 6.03, H11L1: 6.94, PC900V: 7.11 }],
];

const partsOf = <Name extends Led>(row: Readonly<Record<Name, number>>): readonly [Name, number][] =>
  Object.entries(row) as [Name, number][];

describe.each(CASES)('%s', (_title, volts, outputOhms, inputOhms, row) => {
  test.each(partsOf(row))('lights a %s with %d mA', async (led, milliamperes) => {
    await expectEach(split(volts, outputOhms, inputOhms, led, 1), 1, milliamperes);
  });
});

describe.each(SPLITS)('%s', (_title, volts, outputOhms, inputs, row) => {
  test.each(partsOf(row))('lights each %s with %d mA', async (led, milliamperes) => {
    await expectEach(split(volts, outputOhms, 220, led, inputs), inputs, milliamperes);
  });
});

test('the source line of 5 V shorted to ground takes 22.7 mA', () => {
  const elements: readonly Element[] = [
    { kind: 'voltage', name: 'supply', plus: 'rail', minus: '0', volts: 5 },
    { kind: 'resistor', name: 'output', a: 'rail', b: '0', ohms: 220 },
  ];
  const ours = solveOperatingPoint(compileCircuit({ ground: '0', elements }));
  if (!ours.ok) throw new Error(ours.reason);
  expect(Math.abs(ours.amperes('output') * 1e3 - 22.7)).toBeLessThan(0.05);
});
