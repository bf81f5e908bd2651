/** Charge of junctions: the depletion layer by CJO, VJ and M, and the charge under way, TT times the current. */
import type { DiodeModel } from './elements.ts';

/** Forward share of VJ from which the depletion capacitance goes on in a straight line; the SPICE default of FC. */
const FORWARD_CORNER = 0.5;

/** SPICE defaults of VJ, volts, and M. */
const BARRIER_VOLTS = 1;
const GRADING = 0.5;

/** Charge laws of a circuit's junctions side by side, and their present charge, coulombs, and capacitance, farads. */
export interface JunctionCharges {
  readonly zeroFarads: Float64Array;
  readonly barrierVolts: Float64Array;
  readonly grading: Float64Array;
  readonly transitSeconds: Float64Array;
  /** From the forward corner on: capacitance there, farads, its slope, farads a volt, and charge there, coulombs. */
  readonly cornerFarads: Float64Array;
  readonly cornerSlope: Float64Array;
  readonly cornerCoulombs: Float64Array;
  readonly coulombs: Float64Array;
  readonly farads: Float64Array;
}

/** The charge laws of some diodes. @throws when a value is out of its range. */
export function chargesOf(models: readonly (DiodeModel & { readonly name: string })[]): JunctionCharges {
  for (const model of models) {
    const {
      junctionFarads = 0,
      junctionVolts = BARRIER_VOLTS,
      grading = GRADING,
      transitSeconds = 0,
    } = model;
    if (!(junctionFarads >= 0 && junctionVolts > 0 && grading >= 0 && grading < 1 && transitSeconds >= 0)) {
      throw new Error(
        `diode '${model.name}': needs CJO and TT of at least 0, VJ above 0 V and M from 0 to below 1, ` +
          `got ${junctionFarads} F, ${transitSeconds} s, ${junctionVolts} V and ${grading}`,
      );
    }
  }
  const zeroFarads = Float64Array.from(models, (model) => model.junctionFarads ?? 0);
  const barrierVolts = Float64Array.from(models, (model) => model.junctionVolts ?? BARRIER_VOLTS);
  const grading = Float64Array.from(models, (model) => model.grading ?? GRADING);
  const room = 1 - FORWARD_CORNER;
  const cornerFarads = zeroFarads.map((zero, at) => zero * room ** -(grading[at] as number));
  return {
    zeroFarads,
    barrierVolts,
    grading,
    cornerFarads,
    cornerSlope: cornerFarads.map(
      (farads, at) => (farads * (grading[at] as number)) / (room * (barrierVolts[at] as number)),
    ),
    cornerCoulombs: cornerFarads.map(
      (farads, at) =>
        ((barrierVolts[at] as number) * ((zeroFarads[at] as number) - farads * room)) /
        (1 - (grading[at] as number)),
    ),
    transitSeconds: Float64Array.from(models, (model) => model.transitSeconds ?? 0),
    coulombs: new Float64Array(models.length),
    farads: new Float64Array(models.length),
  };
}

/**
 * Find charge and capacitance of junction `at` at a voltage; `amperes` and `siemens` are those of its current alone.
 * Writes `coulombs` and `farads`. Law: the SPICE diode model with FC = 0.5 (Nagel, UCB/ERL M520, 1975).
 */
export function chargeAt(
  charges: JunctionCharges,
  at: number,
  volts: number,
  amperes: number,
  siemens: number,
): void {
  const transit = charges.transitSeconds[at] as number;
  let coulombs = transit * amperes;
  let farads = transit * siemens;
  const zero = charges.zeroFarads[at] as number;
  if (zero > 0) {
    const barrier = charges.barrierVolts[at] as number;
    const grading = charges.grading[at] as number;
    const corner = FORWARD_CORNER * barrier;
    if (volts < corner) {
      const room = 1 - volts / barrier;
      const here = grading === 0.5 ? zero / Math.sqrt(room) : zero * room ** -grading;
      farads += here;
      coulombs += (zero * barrier - here * room * barrier) / (1 - grading);
    } else {
      const atCorner = charges.cornerFarads[at] as number;
      const slope = charges.cornerSlope[at] as number;
      const past = volts - corner;
      farads += atCorner + slope * past;
      coulombs += (charges.cornerCoulombs[at] as number) + (atCorner + (slope / 2) * past) * past;
    }
  }
  charges.coulombs[at] = coulombs;
  charges.farads[at] = farads;
}
