import { expect, test } from 'vitest';
import {
  compileCircuit,
  elementNumber,
  junctionNumber,
  nodeNumber,
  sensitivityOf,
  setValue,
  settle,
} from '../../../src/core/circuit/index.ts';
import type { Element, Quantity } from '../../../src/core/circuit/index.ts';

const resistor = (name: string, a: string, b: string, ohms: number): Element => ({
  kind: 'resistor',
  name,
  a,
  b,
  ohms,
});
const parts: readonly Element[] = [
  { kind: 'voltage', name: 'supply', plus: 'rail', minus: '0', volts: 5 },
  { kind: 'voltage', name: 'lift', plus: 'far', minus: 'low', volts: 0.2 },
  resistor('source', 'rail', 'a', 220),
  resistor('series', 'a', 'b', 220),
  resistor('leak', 'b', '0', 4700),
  { kind: 'switch', name: 'closed', a: 'low', b: '0', closed: true },
  resistor('sink', 'c', 'far', 220),
  {
    kind: 'diode',
    name: 'LED',
    anode: 'b',
    cathode: 'c',
    saturationAmperes: 7.91e-20,
    emission: 1.44,
    seriesOhms: 1,
  },
  {
    kind: 'diode',
    name: 'beside',
    anode: 'c',
    cathode: 'b',
    saturationAmperes: 2.52e-9,
    emission: 1.752,
    seriesOhms: 0.568,
  },
];

test('5 V over 1 kohm and 2 kohm: the middle moves by a third of the supply, and by 10/9 mV for an ohm of the lower', () => {
  const compiled = compileCircuit({
    ground: '0',
    elements: [
      { kind: 'voltage', name: 'V', plus: 'top', minus: '0', volts: 5 },
      resistor('upper', 'top', 'mid', 2000),
      resistor('lower', 'mid', '0', 1000),
    ],
  });
  expect(settle(compiled)).toBeUndefined();
  const slope = sensitivityOf(compiled, { kind: 'volts', node: nodeNumber(compiled, 'mid'), above: 0 });
  // By hand: V R1 / (R1 + R2): by V, 1/3; by R1, V R2 / (R1 + R2)^2; by R2, -V R1 / (R1 + R2)^2.
  expect(slope(elementNumber(compiled, 'V'))).toBeCloseTo(1 / 3, 12);
  expect(slope(elementNumber(compiled, 'lower'))).toBeCloseTo(10e3 / 9e6, 12);
  expect(slope(elementNumber(compiled, 'upper'))).toBeCloseTo(-5e3 / 9e6, 12);
});

test.each(['amperes of the LED', 'volts across the LED'])(
  '%s move with every part as two solutions tell',
  (what) => {
    const compiled = compileCircuit({ ground: '0', elements: parts });
    const led = junctionNumber(compiled, 'LED');
    const [node, above] = [nodeNumber(compiled, 'b'), nodeNumber(compiled, 'c')];
    const quantity: Quantity = what.startsWith('amperes')
      ? { kind: 'amperes', junction: led }
      : { kind: 'volts', node, above };
    const read = (): number => {
      expect(settle(compiled)).toBeUndefined();
      return quantity.kind === 'amperes'
        ? (compiled.junctions[led]?.amperes ?? NaN)
        : (compiled.volts[node] ?? NaN) - (compiled.volts[above] ?? NaN);
    };
    for (const { name } of parts.filter(({ kind }) => kind !== 'switch')) {
      read();
      const index = elementNumber(compiled, name);
      const slope = sensitivityOf(compiled, quantity)(index);
      const value = compiled.values[index] as number;
      // Two solutions a thousandth apart; what is left is the bend between them.
      setValue(compiled, name, value * 1.0005);
      const high = read();
      setValue(compiled, name, value * 0.9995);
      const low = read();
      setValue(compiled, name, value);
      const measured = (high - low) / (value * 0.001);
      expect(Math.abs(slope - measured), name).toBeLessThan(1e-4 * Math.abs(measured) + 1e-9 / value);
    }
  },
);
