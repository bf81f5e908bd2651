import { describe, expect, test } from 'vitest';
import { compileCircuit } from '../../../src/core/circuit/compile.ts';
import type { Circuit } from '../../../src/core/circuit/elements.ts';
import type { Transient } from '../../../src/core/circuit/transient.ts';
import { solveTransient } from '../../support/solve-transient.ts';
import type { Drive } from '../../../src/core/circuit/drive.ts';
import type { StepTolerance } from '../../../src/core/circuit/step-work.ts';

const RC: Circuit = {
  ground: '0',
  elements: [
    { kind: 'voltage', name: 'source', plus: 'in', minus: '0', volts: 0 },
    { kind: 'resistor', name: 'r', a: 'in', b: 'out', ohms: 1000 },
    { kind: 'capacitor', name: 'c', a: 'out', b: '0', farads: 1e-9 },
  ],
};
const TAU = 1e-6;
const STEP: Drive = {
  part: 'source',
  points: [
    { seconds: 0, value: 0 },
    { seconds: 0, value: 1 },
  ],
};
const TIGHT: StepTolerance = { volts: 1e-6, share: 0 };

function solved(
  circuit: Circuit,
  drives: readonly Drive[],
  toSeconds: number,
  tolerance?: StepTolerance,
): Transient {
  const found = solveTransient(compileCircuit(circuit), drives, toSeconds, {
    fromSeconds: -1e-6,
    ...(tolerance ? { tolerance } : {}),
  });
  if (!found.ok) throw new Error(found.reason);
  return found;
}

/** First moment at which a node passes a voltage, seconds, to a tenth of a nanosecond. */
function passes(run: Transient, node: string, volts: number): number {
  for (let when = 0; ; when += 1e-10) if (run.volts(node, when) >= volts) return when;
}

describe('a capacitor charged through a resistor', () => {
  // Values of any circuits text (Nilsson and Riedel; Hayt): 1 - exp(-t / tau).
  test.each([
    [1, 0.63212],
    [2, 0.86466],
    [3, 0.95021],
    [5, 0.99326],
  ])('stands at the textbook share after %i time constants', (taus, share) => {
    expect(Math.abs(solved(RC, [STEP], 6 * TAU, TIGHT).volts('out', taus * TAU) - share)).toBeLessThan(5e-5);
    // The usual accuracy: a step may be wrong by half a millivolt, so a few of them by less than half a per cent.
    expect(Math.abs(solved(RC, [STEP], 6 * TAU).volts('out', taus * TAU) - share)).toBeLessThan(5e-3);
  });

  test('rises from 10 to 90 % in 2.1972 time constants and reaches half in 0.6931', () => {
    const run = solved(RC, [STEP], 6 * TAU, TIGHT);
    expect((passes(run, 'out', 0.9) - passes(run, 'out', 0.1)) / TAU).toBeCloseTo(2.1972, 3);
    expect(passes(run, 'out', 0.5) / TAU).toBeCloseTo(0.6931, 3);
  });

  test('draws V/R at first, and its current dies with the same time constant', () => {
    const run = solved(RC, [STEP], 6 * TAU, TIGHT);
    expect(run.amperes('r', 1e-12)).toBeCloseTo(1e-3, 7);
    expect(run.amperes('c', TAU)).toBeCloseTo(1e-3 * Math.exp(-1), 7);
    expect(run.amperes('source', TAU)).toBeCloseTo(-1e-3 * Math.exp(-1), 7);
  });

  test('follows a ramp one time constant behind, as the particular solution says', () => {
    const ramp: Drive = {
      part: 'source',
      points: [
        { seconds: 0, value: 0 },
        { seconds: 20e-6, value: 20 },
      ],
    };
    const run = solved(RC, [ramp], 20e-6, TIGHT);
    for (const when of [2e-6, 7e-6, 18e-6]) {
      const exact = 1e6 * (when - TAU * (1 - Math.exp(-when / TAU)));
      expect(Math.abs(run.volts('out', when) - exact)).toBeLessThan(2e-4);
    }
  });

  test('gets closer as the error allowed gets smaller: a hundredth of it costs a ninth of the error or less', () => {
    const errorAt = (volts: number): number => {
      const run = solved(RC, [STEP], 10 * TAU, { volts, share: 0 });
      return Math.max(
        ...run
          .moments()
          .filter((when) => when > 0)
          .map((when) => Math.abs(run.volts('out', when) - (1 - Math.exp(-when / TAU)))),
      );
    };
    expect(errorAt(1e-4)).toBeLessThan(3e-3);
    expect(errorAt(1e-6)).toBeLessThan(errorAt(1e-4) / 9);
  });
});

describe('switches and current sources in time', () => {
  test('a switch that opens lets the capacitor run down through its resistor', () => {
    const circuit: Circuit = {
      ground: '0',
      elements: [
        { kind: 'voltage', name: 'source', plus: 'in', minus: '0', volts: 4 },
        { kind: 'switch', name: 'gate', a: 'in', b: 'out', closed: true },
        { kind: 'resistor', name: 'load', a: 'out', b: '0', ohms: 1000 },
        { kind: 'capacitor', name: 'c', a: 'out', b: '0', farads: 1e-9 },
      ],
    };
    const open: Drive = {
      part: 'gate',
      points: [
        { seconds: 0, value: 1 },
        { seconds: 0, value: 0 },
      ],
    };
    const run = solved(circuit, [open], 5e-6, TIGHT);
    // A milliohm stands before the load: 4 V less 4 uV.
    expect(run.volts('out', -0.5e-6)).toBeCloseTo(4, 4);
    expect(run.volts('out', 1e-6)).toBeCloseTo(4 * Math.exp(-1), 4);
    expect(run.amperes('gate', 1e-6)).toBe(0);
  });

  test('a current charges a capacitor at I/C', () => {
    const circuit: Circuit = {
      ground: '0',
      elements: [
        { kind: 'current', name: 'source', from: '0', to: 'out', amperes: 0 },
        { kind: 'resistor', name: 'leak', a: 'out', b: '0', ohms: 1e9 },
        { kind: 'capacitor', name: 'c', a: 'out', b: '0', farads: 1e-9 },
      ],
    };
    const on: Drive = {
      part: 'source',
      points: [
        { seconds: 0, value: 0 },
        { seconds: 0, value: 1e-3 },
      ],
    };
    expect(solved(circuit, [on], 5e-6, TIGHT).volts('out', 3e-6)).toBeCloseTo(3, 4);
  });

  test('charge is kept: what flows into two capacitors in series is the same, and divides the volts by their sizes', () => {
    const circuit: Circuit = {
      ground: '0',
      elements: [
        { kind: 'voltage', name: 'source', plus: 'in', minus: '0', volts: 0 },
        { kind: 'resistor', name: 'r', a: 'in', b: 'top', ohms: 100 },
        { kind: 'capacitor', name: 'upper', a: 'top', b: 'middle', farads: 1e-9 },
        { kind: 'capacitor', name: 'lower', a: 'middle', b: '0', farads: 3e-9 },
        { kind: 'resistor', name: 'leak', a: 'middle', b: '0', ohms: 1e9 },
      ],
    };
    expect(solved(circuit, [{ ...STEP }], 5e-6, TIGHT).volts('middle', 5e-6)).toBeCloseTo(0.25, 4);
  });
});

describe('charge of junctions', () => {
  const diodeCircuit = (series: number): Circuit => ({
    ground: '0',
    elements: [
      { kind: 'voltage', name: 'source', plus: 'in', minus: '0', volts: 0 },
      { kind: 'resistor', name: 'r', a: 'in', b: 'a', ohms: 1000 },
      {
        kind: 'diode',
        name: 'd',
        anode: '0',
        cathode: 'a',
        saturationAmperes: 1e-15,
        emission: 1,
        seriesOhms: series,
        junctionFarads: 1e-9,
        junctionVolts: 1,
        grading: 0.5,
      },
    ],
  });

  test('a blocked junction takes the charge that its law gives: CJO VJ / (1 - M) ((1 + V/VJ)^(1 - M) - 1)', () => {
    const run = solved(
      diodeCircuit(1),
      [
        {
          part: 'source',
          points: [
            { seconds: 0, value: 0 },
            { seconds: 1e-7, value: 3 },
          ],
        },
      ],
      20e-6,
      TIGHT,
    );
    // By hand: 1 nF x 1 V / 0.5 x (sqrt(4) - 1) = 2 nC; the current through the resistor, summed by trapezoids of 1 ns.
    let coulombs = 0;
    for (let when = 0; when < 20e-6; when += 1e-9)
      coulombs += ((run.amperes('r', when) + run.amperes('r', when + 1e-9)) / 2) * 1e-9;
    expect(coulombs).toBeCloseTo(2e-9, 12);
  });

  test('series resistance delays the charge: with 1 kohm in the diode the start is V / (R + RS)', () => {
    const run = solved(diodeCircuit(1000), [STEP], 5e-6, TIGHT);
    expect(run.amperes('r', 1e-12)).toBeCloseTo(0.5e-3, 6);
  });

  test('stored charge keeps a diode conducting backwards for TT ln(1 + IF / IR)', () => {
    // Charge control (any text on pulse circuits): forward 1 mA, reverse 1 mA, TT 1 us: 0.693 us.
    const circuit: Circuit = {
      ground: '0',
      elements: [
        { kind: 'current', name: 'source', from: '0', to: 'a', amperes: 1e-3 },
        { kind: 'resistor', name: 'leak', a: 'a', b: '0', ohms: 1e6 },
        {
          kind: 'diode',
          name: 'd',
          anode: 'a',
          cathode: '0',
          saturationAmperes: 1e-15,
          emission: 1,
          seriesOhms: 1,
          transitSeconds: 1e-6,
        },
      ],
    };
    const turn: Drive = {
      part: 'source',
      points: [
        { seconds: 0, value: 1e-3 },
        { seconds: 0, value: -1e-3 },
      ],
    };
    const run = solved(circuit, [turn], 1e-6, TIGHT);
    let when = 0;
    while (run.volts('a', when) > 0) when += 1e-10;
    expect(when * 1e6).toBeCloseTo(Math.LN2, 2);
    // Until then the terminal current is the reverse one, while the junction still conducts forward.
    expect(run.amperes('d', 0.3e-6)).toBeCloseTo(-1e-3, 5);
    expect(run.crossing('d', 0.3e-6)).toBeGreaterThan(0);
  });

  test('values out of range are refused by name', () => {
    const circuit = diodeCircuit(1);
    const bad = circuit.elements.map((one) => (one.kind === 'diode' ? { ...one, grading: 1 } : one));
    expect(() => compileCircuit({ ...circuit, elements: bad })).toThrow(
      "diode 'd': needs CJO and TT of at least 0, VJ above 0 V and M from 0 to below 1, got 1e-9 F, 0 s, 1 V and 1",
    );
  });
});
