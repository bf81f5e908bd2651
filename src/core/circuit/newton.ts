/** Damped Newton on the reduced circuit: shared by the operating point and by every time step. */
import { chargeAt } from './charge.ts';
import { GROUND } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { switchSiemens } from './elements.ts';
import { junctionLaw, limitJunction } from './junction.ts';
import type { JunctionLaw } from './junction.ts';
import { loadRest, solveRest } from './matrix.ts';
import type { Factor } from './matrix.ts';

/** How close two Newton steps must be: the tight options used to compare with a SPICE engine. */
export const RELATIVE_TOLERANCE = 1e-6;
export const VOLT_TOLERANCE = 1e-9;
export const AMPERE_TOLERANCE = 1e-15;

/** Steps before another way is tried; loops of the workbook need 4 to 12. */
const MOST_STEPS = 100;

/**
 * Beyond so many steps a junction whose current moves by less than a picoampere, or whose volts by less than a microvolt, is
 * moved by rounding and not by Newton's method: where milliohms meet blocked junctions the last digits never rest. (Our choice;
 * a picoampere is what SPICE programs allow from the start.)
 */
const PATIENT_STEPS = 20;
const ROUNDING_AMPERES = 1e-12;
const ROUNDING_VOLTS = 1e-6;
/** But no junction may move by more than this, volts, whatever its current. */
const MOST_ROUNDING_VOLTS = 1e-3;

/** How charge moves in a time step: current of a junction's charge = `perSecond` times charge, plus `pastAmperes`. */
export interface Motion {
  perSecond: number;
  readonly pastAmperes: Float64Array;
  /** How close two Newton steps must be, volts. */
  voltTolerance: number;
}

/** How a Newton run ended: `steps` taken, or the unknown it failed at. */
export interface NewtonEnd {
  readonly converged: boolean;
  readonly steps: number;
  /** Number of the unknown (circuit's order) that failed, or -1. */
  readonly failedAt: number;
}

const law: JunctionLaw = { amperes: 0, siemens: 0 };

/**
 * Run Newton's method from the present junction voltages; the right-hand side must already be reduced.
 * Writes the junctions' voltages, currents and, in motion, charges; the rest of the solution is left in the factor, to be unfolded.
 * The series resistance of a junction is folded into its companion: g becomes g / (1 + g RS), whatever makes up g, since all
 * of the current, that of the charge too, passes through it.
 * @param leastSiemens conductance across every junction.
 * @param motion left out at DC, where charge stands still.
 */
export function newton(
  compiled: CompiledCircuit,
  factor: Factor,
  leastSiemens: number,
  motion?: Motion,
): NewtonEnd {
  const { junctions } = compiled;
  const { slopes, offsets, charges, volts: junctionVolts } = junctions;
  const count = junctions.element.length;
  const left = factor.size - factor.pivots;
  const { rest, restSide, endRows, endColumns } = factor;
  const voltTolerance = motion ? motion.voltTolerance : VOLT_TOLERANCE;
  let worst = -1;
  for (let step = 1; step <= MOST_STEPS; step++) {
    loadRest(factor);
    if (factor.ramps.length > 0) stampRamps(compiled, factor);
    for (let at = 0; at < count; at++) {
      const volts = junctionVolts[at] as number;
      junctionLaw(volts, junctions.saturation[at] as number, junctions.slope[at] as number, law);
      let siemens = law.siemens + leastSiemens;
      let amperes = law.amperes + leastSiemens * volts;
      if (motion) {
        chargeAt(charges, at, volts, law.amperes, law.siemens);
        siemens += motion.perSecond * (charges.farads[at] as number);
        amperes += motion.perSecond * (charges.coulombs[at] as number) + (motion.pastAmperes[at] as number);
      }
      const fold = 1 + siemens * (junctions.series[at] as number);
      slopes[at] = siemens / fold;
      offsets[at] = (amperes - siemens * volts) / fold;
      stampRest(
        rest,
        restSide,
        left,
        endRows[at] as number,
        endRows[count + at] as number,
        siemens / fold,
        offsets[at] as number,
      );
    }
    const stuck = solveRest(factor);
    if (stuck >= 0)
      return { converged: false, steps: step, failedAt: factor.columnOrder[stuck + factor.pivots] as number };
    let settled = true;
    let largest = 0;
    for (let at = 0; at < count; at++) {
      const volts = junctionVolts[at] as number;
      const anode = endColumns[at] as number;
      const cathode = endColumns[count + at] as number;
      const across =
        (anode < 0 ? 0 : (restSide[anode] as number)) - (cathode < 0 ? 0 : (restSide[cathode] as number));
      const amperes = (offsets[at] as number) + (slopes[at] as number) * across;
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
        change > voltTolerance + RELATIVE_TOLERANCE * Math.max(Math.abs(next), Math.abs(volts))
      )
        settled &&= step > PATIENT_STEPS && isRounding(change, slopes[at] as number);
      if (!(change <= largest)) {
        largest = change;
        worst = at;
      }
      // The charge that the straight-line companion used, so that the next step starts from what this one solved.
      if (motion)
        charges.coulombs[at] =
          (charges.coulombs[at] as number) + (charges.farads[at] as number) * (held - volts);
      junctionVolts[at] = held;
      junctions.amperes[at] = amperes;
    }
    if (settled) return { converged: true, steps: step, failedAt: -1 };
  }
  const anode = worst < 0 ? GROUND : (junctions.anode[worst] as number);
  return {
    converged: false,
    steps: MOST_STEPS,
    failedAt: anode === GROUND ? (junctions.cathode[worst] ?? -1) : anode,
  };
}

/** Add the switches that are part closed. */
function stampRamps({ values }: CompiledCircuit, factor: Factor): void {
  const { ramps, rampRows, rest, restSide, size, pivots } = factor;
  const count = ramps.length;
  for (let at = 0; at < count; at++) {
    const siemens = switchSiemens(values[ramps[at] as number] as number);
    stampRest(
      rest,
      restSide,
      size - pivots,
      rampRows[at] as number,
      rampRows[count + at] as number,
      siemens,
      0,
    );
  }
}

/** Add a branch to the rest, by the rows of its ends: so many siemens, and so many amperes at no volts. */
function stampRest(
  rest: Float64Array,
  restSide: Float64Array,
  left: number,
  a: number,
  c: number,
  siemens: number,
  amperes: number,
): void {
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

/** Whether a junction with this slope, siemens, that moves by so many volts is moved by rounding. */
function isRounding(volts: number, siemens: number): boolean {
  return volts < ROUNDING_VOLTS || (volts < MOST_ROUNDING_VOLTS && volts * siemens < ROUNDING_AMPERES);
}
