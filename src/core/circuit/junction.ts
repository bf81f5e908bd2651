/** Junctions: their law, the linear companion's work space, and the limiting that keeps Newton's method from running away. */
import { THERMAL_VOLTS } from './elements.ts';
import type { Diode, Element } from './elements.ts';

/** Below this many N VT the law turns to the cubic that SPICE uses, so that both agree to the nanoampere. */
const REVERSE_CORNER = -3;

/** Forward share of VJ from which the depletion capacitance goes on in a straight line; the SPICE default of FC. */
const FORWARD_CORNER = 0.5;

/** SPICE defaults of VJ, volts, and M. */
const BARRIER_VOLTS = 1;
const GRADING = 0.5;

/** A diode of a compiled circuit: its law, and where it stands. */
export interface Junction {
  /** Numbers of the part and of its nodes. */
  readonly element: number;
  readonly anode: number;
  readonly cathode: number;
  /** IS. */
  saturationAmperes: number;
  /** N VT. */
  readonly slopeVolts: number;
  /** RS. */
  readonly seriesOhms: number;
  /** Voltage from which limiting starts. */
  criticalVolts: number;
  /** CJO, VJ, M and TT; capacitance where the straight line begins. */
  readonly zeroFarads: number;
  readonly barrierVolts: number;
  readonly grading: number;
  readonly transitSeconds: number;
  readonly cornerFarads: number;
  /** Present voltage behind RS: where the next solution starts; charge and capacitance there. */
  volts: number;
  coulombs: number;
  farads: number;
  /** Present current into the anode, that of a moving charge included. */
  amperes: number;
  /** The companion model, RS included: conductance, and current at `baseVolts` across the diode, from which a solution is sought. */
  baseVolts: number;
  companionSiemens: number;
  companionAmperes: number;
  /** What the past of the charge adds to its current in the present step. */
  pastAmperes: number;
}

/** Current and slope of a junction, amperes and siemens. */
export interface JunctionLaw {
  amperes: number;
  siemens: number;
}

/** The junction of a diode. @throws when a value of its model is out of range. */
export function junctionOf(diode: Element, element: number, anode: number, cathode: number): Junction {
  const { name, saturationAmperes, emission, seriesOhms, ...charge } = diode as Diode;
  const { junctionFarads = 0, junctionVolts = BARRIER_VOLTS, grading = GRADING, transitSeconds = 0 } = charge;
  if (!(emission > 0 && emission < Infinity && seriesOhms >= 0 && seriesOhms < Infinity))
    throw new Error(
      `diode '${name}': emission must be more than 0 and series resistance at least 0 ohm, got ${emission} and ${seriesOhms}`,
    );
  if (!(junctionFarads >= 0 && junctionVolts > 0 && grading >= 0 && grading < 1 && transitSeconds >= 0))
    throw new Error(
      `diode '${name}': needs CJO and TT of at least 0, VJ above 0 V and M from 0 to below 1, ` +
        `got ${junctionFarads} F, ${transitSeconds} s, ${junctionVolts} V and ${grading}`,
    );
  const junction: Junction = {
    element,
    anode,
    cathode,
    saturationAmperes,
    slopeVolts: emission * THERMAL_VOLTS,
    seriesOhms,
    criticalVolts: 0,
    zeroFarads: junctionFarads,
    barrierVolts: junctionVolts,
    grading,
    transitSeconds,
    cornerFarads: junctionFarads * (1 - FORWARD_CORNER) ** -grading,
    volts: 0,
    coulombs: 0,
    farads: 0,
    amperes: 0,
    baseVolts: 0,
    companionSiemens: 0,
    companionAmperes: 0,
    pastAmperes: 0,
  };
  setSaturation(junction, saturationAmperes);
  junction.volts = junction.criticalVolts;
  return junction;
}

/** Give a junction another IS, amperes. */
export function setSaturation(junction: Junction, amperes: number): void {
  const { slopeVolts } = junction;
  junction.saturationAmperes = amperes;
  junction.criticalVolts = slopeVolts * Math.log(slopeVolts / (Math.SQRT2 * amperes));
}

/** Current and slope of a junction at a voltage behind RS, without the least conductance, written into `into`. */
export function junctionLaw(junction: Junction, volts: number, into: JunctionLaw): void {
  const { saturationAmperes: saturation, slopeVolts: slope } = junction;
  if (volts >= REVERSE_CORNER * slope) {
    const growth = saturation * Math.exp(volts / slope);
    into.amperes = growth - saturation;
    into.siemens = growth / slope;
    return;
  }
  const share = (3 * slope) / (Math.E * volts);
  const cube = share * share * share;
  into.amperes = -saturation * (1 + cube);
  into.siemens = (3 * saturation * cube) / volts;
}

/**
 * Find a junction's charge, coulombs, and capacitance, farads, at a voltage; `law` is that of its current alone. The charge is
 * that of the depletion layer, by CJO, VJ and M, and TT times the current.
 * Law: the SPICE diode model with FC = 0.5 (Nagel, UCB/ERL M520, 1975).
 */
export function setCharge(junction: Junction, volts: number, law: JunctionLaw): void {
  const { transitSeconds, zeroFarads, barrierVolts, grading, cornerFarads } = junction;
  let coulombs = transitSeconds * law.amperes;
  let farads = transitSeconds * law.siemens;
  if (zeroFarads > 0) {
    const past = volts - FORWARD_CORNER * barrierVolts;
    const room = past < 0 ? 1 - volts / barrierVolts : 1 - FORWARD_CORNER;
    const depletion =
      past >= 0
        ? cornerFarads
        : grading === GRADING
          ? zeroFarads / Math.sqrt(room)
          : zeroFarads * room ** -grading;
    farads += depletion;
    coulombs += (barrierVolts * (zeroFarads - depletion * room)) / (1 - grading);
    if (past >= 0) {
      const slope = (cornerFarads * grading) / (room * barrierVolts);
      farads += slope * past;
      coulombs += (cornerFarads + (slope / 2) * past) * past;
    }
  }
  junction.coulombs = coulombs;
  junction.farads = farads;
}

/**
 * Hold a junction voltage back to a step that the exponential can follow: beyond the critical voltage the step is taken
 * in current, not in volts. (Nagel's limiting, as in SPICE2: UCB/ERL M520, 1975.)
 */
export function limitJunction({ volts, slopeVolts, criticalVolts }: Junction, next: number): number {
  if (next <= criticalVolts || Math.abs(next - volts) <= 2 * slopeVolts) return next;
  if (volts <= 0) return slopeVolts * Math.log(next / slopeVolts);
  const share = 1 + (next - volts) / slopeVolts;
  return share > 0 ? volts + slopeVolts * Math.log(share) : criticalVolts;
}
