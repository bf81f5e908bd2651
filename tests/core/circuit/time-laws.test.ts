/** Laws of circuits in time: charge is kept, scales go together, and what is linear adds up. */
import { describe, expect, test } from 'vitest';
import { compileCircuit } from '../../../src/core/circuit/index.ts';
import type { Circuit, Drive, Element, StepTolerance, Transient } from '../../../src/core/circuit/index.ts';
import { solveTransient } from '../../support/solve-transient.ts';

const TIGHT: StepTolerance = { volts: 1e-6, share: 0 };
const step = (part: string, value: number): Drive => ({
  part,
  points: [
    { seconds: 0, value: 0 },
    { seconds: 0, value },
  ],
});

function run(elements: readonly Element[], drives: readonly Drive[], toSeconds: number): Transient {
  const circuit: Circuit = { ground: '0', elements };
  const found = solveTransient(compileCircuit(circuit), drives, toSeconds, {
    fromSeconds: -toSeconds / 10,
    tolerance: TIGHT,
  });
  if (!found.ok) throw new Error(found.reason);
  return found;
}

const source = (name: string, plus: string): Element => ({
  kind: 'voltage',
  name,
  plus,
  minus: '0',
  volts: 0,
});
const resistor = (name: string, a: string, b: string, ohms: number): Element => ({
  kind: 'resistor',
  name,
  a,
  b,
  ohms,
});
const capacitor = (name: string, a: string, b: string, farads: number): Element => ({
  kind: 'capacitor',
  name,
  a,
  b,
  farads,
});

/** Two sections of resistor and capacitor behind one source. */
const ladder = (ohms: number, farads: number): readonly Element[] => [
  source('V', 'in'),
  resistor('R1', 'in', 'a', ohms),
  capacitor('C1', 'a', '0', farads),
  resistor('R2', 'a', 'b', ohms),
  capacitor('C2', 'b', '0', farads),
];
const TAU = 1e-6;
const TIMES = [0.05, 0.2, 0.5, 1, 2, 4, 8].map((taus) => taus * TAU);

describe('A ladder of resistors and capacitors', () => {
  const base = run(ladder(1e3, 1e-9), [step('V', 1)], 10 * TAU);

  test('answers a step as its two time constants say', () => {
    // Equal sections: s^2 + 3 s + 1 = 0 in 1 / RC, so s = -0.381966 and -2.618034. V(b) = 1 + A e^(s1 t) + B e^(s2 t), at rest at
    // 0: A + B = -1, A s1 + B s2 = 0, so A = -s2 / (s2 - s1) = -1.170820, B = 0.170820.
    for (const seconds of TIMES) {
      const t = seconds / TAU;
      const wanted = 1 - 1.1708204 * Math.exp(-0.381966 * t) + 0.1708204 * Math.exp(-2.618034 * t);
      expect(Math.abs(base.volts('b', seconds) - wanted)).toBeLessThan(2e-4);
    }
  });

  test('is the same picture ten times slower for ten times the resistance or ten times the capacitance', () => {
    for (const parts of [ladder(1e4, 1e-9), ladder(1e3, 1e-8)]) {
      const slow = run(parts, [step('V', 1)], 100 * TAU);
      for (const seconds of TIMES)
        expect(Math.abs(slow.volts('b', 10 * seconds) - base.volts('b', seconds))).toBeLessThan(2e-4);
    }
  });

  test('answers twice as much to twice the step, and upside down to a step down', () => {
    const twice = run(ladder(1e3, 1e-9), [step('V', 2)], 10 * TAU);
    const down = run(ladder(1e3, 1e-9), [step('V', -1)], 10 * TAU);
    for (const seconds of TIMES) {
      expect(Math.abs(twice.volts('b', seconds) - 2 * base.volts('b', seconds))).toBeLessThan(4e-4);
      expect(Math.abs(down.volts('b', seconds) + base.volts('b', seconds))).toBeLessThan(4e-4);
    }
  });

  test('adds up what two steps do, one after the other', () => {
    const later: Drive = {
      part: 'V',
      points: [
        { seconds: 0, value: 0 },
        { seconds: 0, value: 1 },
        { seconds: TAU, value: 1 },
        { seconds: TAU, value: 0 },
      ],
    };
    const pulse = run(ladder(1e3, 1e-9), [later], 10 * TAU);
    for (const seconds of [1.5, 2, 4].map((taus) => taus * TAU))
      expect(
        Math.abs(pulse.volts('b', seconds) - (base.volts('b', seconds) - base.volts('b', seconds - TAU))),
      ).toBeLessThan(4e-4);
  });

  test('balances the currents at every node at every moment', () => {
    for (const seconds of TIMES) {
      const at = (name: string): number => base.amperes(name, seconds);
      // Between two steps each current is read from a parabola of its own: to a thousandth of the first milliampere.
      expect(Math.abs(at('R1') - at('C1') - at('R2'))).toBeLessThan(1e-6);
      expect(Math.abs(at('R2') - at('C2'))).toBeLessThan(1e-6);
      expect(Math.abs(at('V') + at('R1'))).toBeLessThan(1e-12);
    }
  });

  test('takes from the source the charge that stands on its capacitors in the end: 1 V x 2 nF', () => {
    const moments = base.moments().filter((seconds) => seconds >= 0);
    let coulombs = 0;
    moments.forEach((seconds, at) => {
      const next = moments[at + 1];
      if (next === undefined) return;
      // Simpson on each step of the solver: it reads a parabola there.
      const middle = (seconds + next) / 2;
      const start = Math.max(seconds, 1e-15);
      coulombs +=
        ((next - seconds) / 6) *
        (base.amperes('R1', start) + 4 * base.amperes('R1', middle) + base.amperes('R1', next));
    });
    expect(coulombs / (base.volts('a', 10 * TAU) * 1e-9 + base.volts('b', 10 * TAU) * 1e-9)).toBeCloseTo(
      1,
      2,
    );
  });
});

describe('Capacitors alone', () => {
  test('share a jump in inverse proportion to their farads', () => {
    // 1 nF over 3 nF behind a jump of 4 V: 3 V and 1 V; 1 Gohm across each hardly moves them.
    const parts = [
      source('V', 'in'),
      resistor('R', 'in', 'top', 1),
      capacitor('C1', 'top', 'm', 1e-9),
      capacitor('C2', 'm', '0', 3e-9),
      resistor('bleed', 'm', '0', 1e9),
    ];
    const made = run(parts, [step('V', 4)], 1e-6);
    expect(made.volts('m', 0.5e-6)).toBeCloseTo(1, 2);
    expect(made.volts('top', 0.5e-6)).toBeCloseTo(4, 2);
  });

  test('side by side are one of their sum, and in a row one of their reciprocal sum', () => {
    const charged = (...parts: readonly Element[]): number =>
      run([source('V', 'in'), resistor('R', 'in', 'x', 1e3), ...parts], [step('V', 1)], 6e-6).volts(
        'x',
        1e-6,
      );
    const two = charged(capacitor('C1', 'x', '0', 0.4e-9), capacitor('C2', 'x', '0', 0.6e-9));
    expect(Math.abs(two - (1 - Math.exp(-1)))).toBeLessThan(2e-4);
    const row = charged(
      capacitor('C1', 'x', 'm', 2e-9),
      capacitor('C2', 'm', '0', 2e-9),
      resistor('bleed', 'm', '0', 1e9),
    );
    expect(Math.abs(row - (1 - Math.exp(-1)))).toBeLessThan(1e-3);
  });
});
