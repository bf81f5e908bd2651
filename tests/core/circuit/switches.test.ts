import { expect, test } from 'vitest';
import { compileCircuit, setValue, solveOperatingPoint } from '../../../src/core/circuit/index.ts';
import type { Element } from '../../../src/core/circuit/index.ts';

/** Forty branches side by side, each a switch and its own resistor of 1 kohm times its number, on 1 V. */
const SWITCHES = 40;
const branches: readonly Element[] = Array.from({ length: SWITCHES }, (_, at) => at + 1).flatMap(
  (number): Element[] => [
    { kind: 'switch', name: `s${number}`, a: 'top', b: `n${number}`, closed: false },
    { kind: 'resistor', name: `r${number}`, a: `n${number}`, b: '0', ohms: 1000 * number },
  ],
);

test('every position of forty switches has its own solution, in whatever order they are asked for', () => {
  const compiled = compileCircuit({
    ground: '0',
    elements: [{ kind: 'voltage', name: 'v', plus: 'top', minus: '0', volts: 1 }, ...branches],
  });
  const supply = (): number => {
    const solved = solveOperatingPoint(compiled);
    if (!solved.ok) throw new Error(solved.reason);
    return -solved.amperes('v');
  };
  expect(supply()).toBeCloseTo(0, 9);
  for (const number of [1, 2, 39, 40, 7]) {
    setValue(compiled, `s${number}`, 1);
    // Ohm's law: 1 V over 1 kohm times the number; the closed switch adds a milliohm.
    expect(supply() * 1000 * number).toBeCloseTo(1, 5);
    setValue(compiled, `s${number}`, 0);
  }
  setValue(compiled, 's1', 1);
  setValue(compiled, 's40', 1);
  expect(supply() * 1000).toBeCloseTo(1 + 1 / 40, 5);
});
