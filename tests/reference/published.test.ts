/**
 * Figures that others have published, and vectors that anyone can check with a pencil, against our solver and our catalogue.
 * The source stands beside each; 'from memory' means that nobody here has held the page beside the figure.
 */
import { describe, expect, test } from 'vitest';
import { compileCircuit } from '../../src/core/circuit/compile.ts';
import { THERMAL_VOLTS } from '../../src/core/circuit/elements.ts';
import type { DiodeModel, Element } from '../../src/core/circuit/elements.ts';
import { solveOperatingPoint } from '../../src/core/circuit/operating-point.ts';
import type { Solved } from '../../src/core/circuit/operating-point.ts';
import { PROTECTION_DIODE } from '../../src/core/wiring/diodes.ts';
import { partEntry } from '../../src/core/wiring/optocouplers.ts';
import { valuesOf } from '../../src/core/wiring/circuits.ts';
import type { CircuitKind } from '../../src/core/wiring/circuits.ts';
import type { ValueName } from '../../src/core/wiring/values.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/link.ts';
import { linkCircuit } from '../../src/core/wiring/link-circuit.ts';
import { wireDiameterMetres, wireOhmsPerMetre } from '../../src/core/wiring/wire.ts';

function solve(...elements: readonly Element[]): Solved {
  const solution = solveOperatingPoint(compileCircuit({ ground: '0', elements }));
  if (!solution.ok) throw new Error(solution.reason);
  return solution;
}

const volts = (name: string, plus: string, minus: string, value: number): Element => ({
  kind: 'voltage',
  name,
  plus,
  minus,
  volts: value,
});
const ohms = (name: string, a: string, b: string, value: number): Element => ({
  kind: 'resistor',
  name,
  a,
  b,
  ohms: value,
});
const amperes = (name: string, from: string, to: string, value: number): Element => ({
  kind: 'current',
  name,
  from,
  to,
  amperes: value,
});
const diode = (name: string, anode: string, cathode: string, model: DiodeModel): Element => ({
  kind: 'diode',
  name,
  anode,
  cathode,
  ...model,
});

/** Half a unit of the last digit that was published: `places` decimals of `unit`. */
function expectPublished(value: number, published: number, places: number, unit = 1): void {
  expect(Math.abs(value / unit - published)).toBeLessThanOrEqual(0.5 * 10 ** -places * (1 + 1e-9));
}

const MILLI = 1e-3;

describe('worked figures of the electrical update (MMA/AMEI CA-033, 2014)', () => {
  /** The loop with an LED that always drops the same voltage, as the document reckons. */
  const loop = (supply: number, resistors: readonly number[], ledVolts: number): number => {
    const parts = resistors.map((value, index) => ohms(`r${index}`, `n${index}`, `n${index + 1}`, value));
    const last = `n${resistors.length}`;
    return solve(volts('supply', 'n0', '0', supply), ...parts, volts('led', last, '0', ledVolts)).amperes(
      'r0',
    );
  };

  test('5 V over three times 220 ohm and 1.7 V gives 5.0 mA (footnote 1)', () => {
    expectPublished(loop(5, [220, 220, 220], 1.7), 5.0, 1, MILLI);
  });
  test('5 mA through 220 ohm and 1.9 V needs 3.0 V', () => {
    const point = solve(
      amperes('loop', '0', 'line', 5 * MILLI),
      ohms('rb', 'line', 'led', 220),
      volts('led', 'led', '0', 1.9),
    );
    expectPublished(point.volts('line'), 3.0, 1);
  });
  test('27 ohm may stand in the output at 3.135 V for 5 mA', () => {
    expectPublished(loop(3.135, [27, 220], 1.9), 5.0, 1, MILLI);
  });
  test('the worst case at 3.3 V is 4.472 mA', () => {
    expectPublished(loop(3.135, [33 * 1.05, 10 * 1.05, 220 * 1.05], 1.9), 4.472, 3, MILLI);
  });
  test('the typical case at 3.3 V is about 7.2 mA, 7.224 by the formula', () => {
    expectPublished(loop(3.3, [33, 10, 220], 1.4), 7.224, 3, MILLI);
  });
  test('four resistors of 130 ohm side by side make 32.5 ohm and share the power evenly', () => {
    const point = solve(volts('v', 'a', '0', 1), ...[1, 2, 3, 4].map((at) => ohms(`r${at}`, 'a', '0', 130)));
    expectPublished(-1 / point.amperes('v'), 32.5, 1);
    for (const at of [1, 2, 3, 4])
      expect(point.amperes(`r${at}`) / -point.amperes('v')).toBeCloseTo(0.25, 12);
  });
  test('a source line shorted to ground at the corners of 3.3 V takes 0.111 A and 0.383 W', () => {
    // Through the model: a TS plug in a type A output joins the source line to ground.
    const output = makeJack('out', 'trs-3.5', 'type-a', {
      circuit: 'driver-3v3',
      values: { supplyVolts: 3.465, sourceOhms: 31.35 },
    });
    const input = makeJack('in', 'ts-3.5', 'two-contact');
    const lead = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip'), { contactOhms: 0 });
    const solution = solveOperatingPoint(
      compileCircuit(linkCircuit({ output, branches: [{ input, leads: [lead] }] }, 'separate').circuit),
    );
    if (!solution.ok) throw new Error(solution.reason);
    const through = solution.amperes('out source resistor');
    expectPublished(through, 0.111, 3);
    expectPublished(through * through * 31.35, 0.383, 3);
  });

  /** CA-033, fig. 1 table and p. 4: ohms, watts, spread. */
  test.each<[CircuitKind, ValueName, number, ValueName, number]>([
    ['driver-5v', 'sourceOhms', 220, 'sourceWatts', 0.25],
    ['driver-5v', 'sinkOhms', 220, 'sinkWatts', 0.25],
    ['driver-3v3', 'sourceOhms', 33, 'sourceWatts', 0.5],
    ['driver-3v3', 'sinkOhms', 10, 'sinkWatts', 0.25],
  ])(
    'the catalogue gives the %s its %s of %d ohm, 5 %, with %s of %d W',
    (kind, name, value, power, rating) => {
      const entry = valuesOf(kind, '6N138').find((one) => one.name === name);
      expect(entry).toMatchObject({ value, spread: { kind: 'factor', low: 0.95, high: 1.05 }, status: 'C' });
      expect(valuesOf(kind, '6N138').find((one) => one.name === power)?.value).toBe(rating);
    },
  );
  test.each<[CircuitKind, number, number]>([
    ['driver-5v', 5, 0.1],
    ['driver-3v3', 3.3, 0.05],
  ])('the catalogue gives the %s its supply of %d V and its spread', (kind, value, share) => {
    const entry = valuesOf(kind, '6N138').find((one) => one.name === 'supplyVolts');
    expect(entry).toMatchObject({ value, spread: { low: 1 - share, high: 1 + share } });
  });
  test('the receiver resistor is 220 ohm, and the PC900V is taken to need 4 mA (p. 4)', () => {
    expect(valuesOf('receiver-isolated', '6N138').find(({ name }) => name === 'seriesOhms')?.value).toBe(220);
    expect(partEntry('PC900V').turnOnAmperes).toBe(4e-3);
  });
});

describe('a diode and a resistor', () => {
  const point = (supply: number, model: DiodeModel): { milliamperes: number; volts: number } => {
    const solved = solve(
      volts('v', 'in', '0', supply),
      ohms('r', 'in', 'd', 1000),
      diode('d', 'd', '0', model),
    );
    return { milliamperes: solved.amperes('d') / MILLI, volts: solved.volts('d') };
  };
  /** A diode of 0.7 V at 1 mA whose voltage grows by so much for each tenfold current. */
  const perDecade = (decadeVolts: number): DiodeModel => {
    const slope = decadeVolts / Math.LN10;
    return {
      saturationAmperes: 1e-3 / Math.expm1(0.7 / slope),
      emission: slope / THERMAL_VOLTS,
      seriesOhms: 0,
    };
  };

  test('5 V, 1 kohm, 60 mV a decade: 4.262 mA and 0.738 V (Sedra and Smith, iterative analysis; from memory)', () => {
    const { milliamperes, volts: across } = point(5, perDecade(0.06));
    expectPublished(milliamperes, 4.262, 3);
    expectPublished(across, 0.738, 3);
    // The same carried on by hand until nothing changes.
    expectPublished(milliamperes, 4.2622, 4);
    expectPublished(across, 0.73778, 5);
  });
  test('the same at 100 mV a decade, as in older editions: 4.237 mA and 0.763 V (from memory; arithmetic 4.2373, 0.7627)', () => {
    const { milliamperes, volts: across } = point(5, perDecade(0.1));
    expectPublished(milliamperes, 4.237, 3);
    expectPublished(across, 0.763, 3);
    expectPublished(milliamperes, 4.2373, 4);
    expectPublished(across, 0.7627, 4);
  });
  test('the same with N = 1 and IS = 1.7636e-15 A at 300.15 K: 4.2625 mA and 0.73750 V (arithmetic)', () => {
    const { milliamperes, volts: across } = point(5, {
      saturationAmperes: 1.7636e-15,
      emission: 1,
      seriesOhms: 0,
    });
    expectPublished(milliamperes, 4.2625, 4);
    expectPublished(across, 0.7375, 5);
  });
  test('1 V, 1 kohm, IS 1e-15 A, VT 25 mV: 0.3365 mA and 0.6635 V (problem in Sedra and Smith; answer by arithmetic)', () => {
    const model = { saturationAmperes: 1e-15, emission: 0.025 / THERMAL_VOLTS, seriesOhms: 0 };
    const { milliamperes, volts: across } = point(1, model);
    expectPublished(milliamperes, 0.3365, 4);
    expectPublished(across, 0.6635, 4);
  });
  test('the thermal voltage at 27 C is 25.864926 mV (300.15 K x 8.617333262e-5 V/K, the exact SI constants of 2019)', () => {
    // The engine's own constants are those of CODATA 2014 and give 25.864917 mV: half a microvolt on an LED.
    expectPublished(THERMAL_VOLTS, 25.864926, 6, MILLI);
  });
});

describe('circuits to check with a pencil', () => {
  test('10 V over 1 kohm and 2 kohm: 6.6667 V, and 666.67 ohm seen from the middle', () => {
    const divider = [
      volts('v', 'top', '0', 10),
      ohms('r1', 'top', 'mid', 1000),
      ohms('r2', 'mid', '0', 2000),
    ];
    const open = solve(...divider).volts('mid');
    expectPublished(open, 6.6667, 4);
    const loaded = solve(...divider, amperes('load', 'mid', '0', 1 * MILLI)).volts('mid');
    expectPublished((open - loaded) / MILLI, 666.67, 2);
  });
  test('an unbalanced bridge at 10 V: nodes at 6.0 V and 5.5 V, 1.0 mA in the 500 ohm between them', () => {
    const bridge = solve(
      volts('v', 'top', '0', 10),
      ohms('r1', 'top', 'left', 1000),
      ohms('r2', 'left', '0', 2000),
      ohms('r3', 'top', 'right', 1000),
      ohms('r4', 'right', '0', 1000),
      ohms('detector', 'left', 'right', 500),
    );
    expect(bridge.volts('left')).toBeCloseTo(6, 12);
    expect(bridge.volts('right')).toBeCloseTo(5.5, 12);
    expect(bridge.amperes('detector')).toBeCloseTo(1 * MILLI, 15);
  });
  test('5 V and 660 ohm backwards through the 1N914: 6.556 mA, 0.6731 V', () => {
    const point = solve(
      volts('v', 'in', '0', 5),
      ohms('r', 'in', 'd', 660),
      diode('d', 'd', '0', PROTECTION_DIODE),
    );
    expectPublished(point.amperes('d'), 6.556, 3, MILLI);
    expectPublished(point.volts('d'), 0.6731, 4);
  });
  test('5 V and 660 ohm through the LED of a 6N138: 5.38 mA, 1.449 V', () => {
    const point = solve(
      volts('v', 'in', '0', 5),
      ohms('r', 'in', 'd', 660),
      diode('d', 'd', '0', partEntry('6N138').led),
    );
    expectPublished(point.amperes('d'), 5.38, 2, MILLI);
    expectPublished(point.volts('d'), 1.449, 3);
  });
});

describe('diode curves go through the points they were fitted to', () => {
  const forward = (model: DiodeModel, milliamperes: number): number =>
    solve(amperes('i', '0', 'd', milliamperes * MILLI), diode('d', 'd', '0', model)).volts('d');

  test.each([
    // SFH6138/9 data sheet 83669 (twin of the 6N138); 6N135/6 data sheet for the second point.
    ['6N138', 1.6, 1.4],
    ['6N138', 16, 1.5],
    // H11L3M/D, from memory.
    ['H11L1', 0.3, 1.0],
    ['H11L1', 10, 1.2],
    // PC900V data sheet, from memory.
    ['PC900V', 0.3, 1.0],
    ['PC900V', 4, 1.1],
  ] as const)('%s at %d mA: %d V', (part, milliamperes, expected) => {
    // N is rounded to two places in the fits, worth 0.3 mV at the second point.
    expect(Math.abs(forward(partEntry(part).led, milliamperes) - expected)).toBeLessThan(0.0005);
  });
  test.each([
    [1, 0.585],
    [5, 0.66],
    [10, 0.694],
  ])('the 1N914 card at %d mA: %d V (worked out from the card)', (milliamperes, expected) => {
    expectPublished(forward(PROTECTION_DIODE, milliamperes), expected, 3);
  });
});

describe('the wire table (diameters by ASTM B258, by way of a secondary page; ohms per km from a printed table)', () => {
  test.each([
    [24, 0.511, 84.2, 2.53],
    [26, 0.405, 133.9, 4.02],
    [28, 0.321, 212.9, 6.39],
    [30, 0.255, 338.5, 10.2],
  ])('%d AWG: %d mm, %d ohm/km, %d ohm out and back over 15 m', (gauge, millimetres, ohmsPerKm, pair) => {
    expectPublished(wireDiameterMetres(gauge), millimetres, 3, MILLI);
    // The printed table and the formula round copper's resistivity in different places: 0.1 %.
    expect(Math.abs(wireOhmsPerMetre(gauge) * 1000 - ohmsPerKm) / ohmsPerKm).toBeLessThan(0.001);
    expectPublished(wireOhmsPerMetre(gauge) * 30, pair, pair > 10 ? 1 : 2);
  });
});
