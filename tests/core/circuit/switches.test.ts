import { expect, test } from 'vitest';
import {
  STEP_TOLERANCE,
  compileCircuit,
  edgeWork,
  elementNumber,
  followEdges,
  setValue,
  solveOperatingPoint,
  transientOf,
} from '../../../src/core/circuit/index.ts';
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

/**
 * A supply that drives an ampere round within a part that one switch alone joins to ground. Where it begins to close it conducts a
 * picosiemens, over which the last digit of that ampere is a tenth of a millivolt, and of a sum of some of them several.
 */
test('a switch that begins to close on a part with an ampere in it is followed in a few steps', () => {
  const elements: readonly Element[] = [
    { kind: 'voltage', name: 'supply', plus: 'rail', minus: 'back', volts: 5 },
    { kind: 'resistor', name: 'limit', a: 'rail', b: 'anode', ohms: 0.1 },
    {
      kind: 'diode',
      name: 'led',
      anode: 'anode',
      cathode: 'tip',
      saturationAmperes: 2.92e-12,
      emission: 1.99,
      seriesOhms: 2,
      junctionFarads: 6e-11,
      transitSeconds: 5e-8,
    },
    { kind: 'resistor', name: 'touch', a: 'tip', b: 'near', ohms: 1e-4 },
    { kind: 'resistor', name: 'wire', a: 'near', b: 'far', ohms: 3.3 },
    { kind: 'resistor', name: 'other wire', a: 'far', b: 'end', ohms: 3.3 },
    { kind: 'resistor', name: 'other touch', a: 'end', b: 'back', ohms: 1e-4 },
    { kind: 'capacitor', name: 'c', a: 'near', b: 'far', farads: 1.6e-10 },
    { kind: 'capacitor', name: 'other c', a: 'far', b: 'end', farads: 1.6e-10 },
    { kind: 'resistor', name: 'sink', a: 'far', b: 'stage', ohms: 1e4 },
    { kind: 'switch', name: 'low', a: 'stage', b: '0', closed: false },
  ];
  const compiled = compileCircuit({ ground: '0', elements });
  const states = {
    parts: [elementNumber(compiled, 'low')],
    values: (level: boolean) => [level ? 0 : 1],
    riseSeconds: 50e-9,
    fallSeconds: 50e-9,
  };
  const edges = [1, 2, 3, 4, 5, 6].map((at) => ({ seconds: at * 32e-6, level: at % 2 === 0 }));
  const work = edgeWork(compiled, states, STEP_TOLERANCE);
  const { stretches, unsolved } = followEdges(work, true, edges, 0, 256e-6);
  expect(unsolved).toBeUndefined();
  // Six edges of two stretches each; 5224 moments while rounding drove the steps.
  expect(transientOf(compiled, stretches).moments().length).toBeLessThan(800);
});
