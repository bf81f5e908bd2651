/** Damped Newton on the reduced circuit: shared by the operating point and by every time step. */
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { junctionAmperes, junctionSiemens, limitJunction } from './junction.ts';
import { loadRest, solveRest, unfold } from './matrix.ts';
import type { Factor } from './matrix.ts';

/** How close two Newton steps must be: the tight options used to compare with a SPICE engine. */
export const RELATIVE_TOLERANCE = 1e-6;
export const VOLT_TOLERANCE = 1e-9;
export const AMPERE_TOLERANCE = 1e-15;

/** Steps before another way is tried; loops of the workbook need 4 to 12. */
const MOST_STEPS = 100;

/** Charge of the junctions in a time step: companion siemens and current for the junction voltage given. */
export type JunctionCharge = (at: number, volts: number, into: Companion) => void;
/** Conductance (siemens) and current (amperes) that charge adds to a junction. */
export interface Companion {
  siemens: number;
  amperes: number;
}

/** How a Newton run ended: `steps` taken, or the unknown it failed at. */
export interface NewtonEnd {
  readonly converged: boolean;
  readonly steps: number;
  /** Number of the unknown (circuit's order) that failed, or -1. */
  readonly failedAt: number;
}

/**
 * Run Newton's method from the present junction voltages; the right-hand side must already be reduced.
 * Writes `compiled.solution` and the junction voltages and currents.
 * @param leastSiemens conductance across every junction.
 */
export function newton(
  compiled: CompiledCircuit,
  factor: Factor,
  leastSiemens: number,
  charge?: JunctionCharge,
): NewtonEnd {
  const { junctions } = compiled;
  const count = junctions.element.length;
  const left = factor.size - factor.pivots;
  const { rest, restSide, columnPlace, rowPlace } = factor;
  const companion: Companion = { siemens: 0, amperes: 0 };
  const steadies = new Float64Array(count);
  const slopes = new Float64Array(count);
  let worst = -1;
  for (let step = 1; step <= MOST_STEPS; step++) {
    loadRest(factor);
    for (let at = 0; at < count; at++) {
      const volts = junctions.volts[at] as number;
      const saturation = junctions.saturation[at] as number;
      const slope = junctions.slope[at] as number;
      let siemens = junctionSiemens(volts, saturation, slope) + leastSiemens;
      let amperes = junctionAmperes(volts, saturation, slope) + leastSiemens * volts;
      if (charge) {
        charge(at, volts, companion);
        siemens += companion.siemens;
        amperes += companion.amperes;
      }
      const fold = 1 + siemens * (junctions.series[at] as number);
      const terminal = siemens / fold;
      const steady = (amperes - siemens * volts) / fold;
      slopes[at] = terminal;
      steadies[at] = steady;
      stamp(at, terminal, steady);
    }
    const stuck = solveRest(factor);
    if (stuck >= 0)
      return { converged: false, steps: step, failedAt: factor.columnOrder[stuck + factor.pivots] as number };
    let settled = true;
    let largest = 0;
    for (let at = 0; at < count; at++) {
      const volts = junctions.volts[at] as number;
      const across = answerAt(junctions.anode[at] as number) - answerAt(junctions.cathode[at] as number);
      const amperes = (steadies[at] as number) + (slopes[at] as number) * across;
      const next = across - (junctions.series[at] as number) * amperes;
      const held = limitJunction(
        next,
        volts,
        junctions.slope[at] as number,
        junctions.critical[at] as number,
      );
      const change = Math.abs(next - volts);
      if (
        held !== next ||
        change > VOLT_TOLERANCE + RELATIVE_TOLERANCE * Math.max(Math.abs(next), Math.abs(volts))
      )
        settled = false;
      if (!(change <= largest)) {
        largest = change;
        worst = at;
      }
      junctions.volts[at] = held;
      junctions.amperes[at] = amperes;
    }
    if (settled) {
      unfold(factor, compiled.solution);
      return { converged: true, steps: step, failedAt: -1 };
    }
  }
  const anode = worst < 0 ? GROUND : (junctions.anode[worst] as number);
  return {
    converged: false,
    steps: MOST_STEPS,
    failedAt: anode === GROUND ? (junctions.cathode[worst] ?? -1) : anode,
  };

  function answerAt(node: number): number {
    return node === GROUND ? 0 : (restSide[columnPlace[node] as number] as number);
  }

  function stamp(at: number, siemens: number, amperes: number): void {
    const anode = junctions.anode[at] as number;
    const cathode = junctions.cathode[at] as number;
    const a = anode === GROUND ? -1 : (rowPlace[anode] as number);
    const c = cathode === GROUND ? -1 : (rowPlace[cathode] as number);
    if (a >= 0) {
      rest[a * left + a] = (rest[a * left + a] as number) + siemens;
      restSide[a] = (restSide[a] as number) - amperes;
    }
    if (c >= 0) {
      rest[c * left + c] = (rest[c * left + c] as number) + siemens;
      restSide[c] = (restSide[c] as number) + amperes;
    }
    if (a >= 0 && c >= 0) {
      rest[a * left + c] = (rest[a * left + c] as number) - siemens;
      rest[c * left + a] = (rest[c * left + a] as number) - siemens;
    }
  }
}
