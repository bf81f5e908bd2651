/** What the tests of this floor work out for themselves, and circuits of one jack or one lead with a load across them. */
import { compileCircuit, setValue, solveOperatingPoint } from '../../../src/core/circuit/index.ts';
import type { DiodeModel, Element, Solved } from '../../../src/core/circuit/index.ts';
import { OUTPUT_GROUND, addDriver, collector, inputGround } from '../../../src/core/wiring/index.ts';
import type { Jack, State } from '../../../src/core/wiring/index.ts';

/** Thermal voltage at 27 C as the facts sheet prints it, volts. */
const VT = 25.864917e-3;

/** Volts across a diode that carries so many amperes: Shockley's law turned over, RS in series. */
export function diodeVolts({ saturationAmperes, emission, seriesOhms }: DiodeModel, amperes: number): number {
  return emission * VT * Math.log1p(amperes / saturationAmperes) + amperes * seriesOhms;
}

/** The current at which a supply is used up by resistors and diodes in series: halved until it stands, no Newton in it. */
export function seriesAmperes(volts: number, ohms: number, ...diodes: readonly DiodeModel[]): number {
  let [low, high] = [0, volts / ohms];
  for (let step = 0; step < 200; step++) {
    const middle = (low + high) / 2;
    const used = diodes.reduce((sum, one) => sum + diodeVolts(one, middle), middle * ohms);
    if (used < volts) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** A resistor between two nodes. */
export const resistor = (name: string, a: string, b: string, ohms: number): Element => ({
  kind: 'resistor',
  name,
  a,
  b,
  ohms,
});

/** A source that holds one node above another. */
export const held = (name: string, plus: string, minus: string, volts: number): Element => ({
  kind: 'voltage',
  name,
  plus,
  minus,
  volts,
});

/** The solution of some parts, with values set as a state asks. */
export function solvedParts(
  elements: readonly Element[],
  values: readonly (readonly [name: string, value: number])[] = [],
  ground = OUTPUT_GROUND,
): Solved {
  const compiled = compileCircuit({ ground, elements });
  for (const [name, value] of values) setValue(compiled, name, value);
  const solution = solveOperatingPoint(compiled);
  if (!solution.ok) throw new Error(`expected a solution, got: ${solution.reason}`);
  return solution;
}

/** An output in a state with loads on its contacts; `inTime` for the stage that has edges. */
export function outputAt(jack: Jack, state: State, loads: readonly Element[], inTime = false): Solved {
  const into = collector();
  const switching = addDriver(into, jack, inTime);
  return solvedParts([...into.parts.map(({ element }) => element), ...loads], switching[state]);
}

/** The ground of the first input. */
export const IN_GROUND = inputGround(0);
