/** Parts in few words, and the operating point of a circuit that has one. */
import { expect } from 'vitest';
import { compileCircuit, solveOperatingPoint } from '../../../src/core/circuit/index.ts';
import type { Element, Solved } from '../../../src/core/circuit/index.ts';

/** A resistor. */
export const resistor = (name: string, a: string, b: string, ohms: number): Element => ({
  kind: 'resistor',
  name,
  a,
  b,
  ohms,
});
/** A voltage source. */
export const source = (name: string, plus: string, minus: string, volts: number): Element => ({
  kind: 'voltage',
  name,
  plus,
  minus,
  volts,
});
/** A current source. */
export const current = (name: string, from: string, to: string, amperes: number): Element => ({
  kind: 'current',
  name,
  from,
  to,
  amperes,
});

/** The operating point; ground is '0'. */
export function solved(elements: readonly Element[]): Solved {
  const solution = solveOperatingPoint(compileCircuit({ ground: '0', elements }));
  if (!solution.ok) throw new Error(`expected a solution, got: ${solution.reason}`);
  return solution;
}

/** Two numbers agree to nine digits of the greater of the wanted one and 1. */
export const near = (given: number, wanted: number): void => {
  expect(Math.abs(given - wanted)).toBeLessThan(1e-9 * Math.max(1, Math.abs(wanted)));
};
