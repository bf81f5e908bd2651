/**
 * The parts a circuit is made of. A circuit knows nothing of cables: nodes are names, parts join nodes.
 * Currents count as positive from a part's first node, through the part, to its second node.
 */

/** A linear resistor; `ohms` must be more than 0. Current counts from `a` to `b`. */
interface Resistor {
  readonly kind: 'resistor';
  readonly name: string;
  readonly a: string;
  readonly b: string;
  readonly ohms: number;
}

/**
 * Shockley diode with series resistance: I = IS (exp((V - I RS) / (N VT)) - 1).
 * Current counts from anode to cathode. Names follow the SPICE parameters IS, N, RS, CJO, VJ, M, TT.
 */
export interface DiodeModel {
  /** IS, amperes at 300.15 K. */
  readonly saturationAmperes: number;
  /** N, no unit. */
  readonly emission: number;
  /** RS, ohms. */
  readonly seriesOhms: number;
  /** CJO, farads at zero bias; 0 when left out. */
  readonly junctionFarads?: number;
  /** VJ, volts; 1 when left out (SPICE default). */
  readonly junctionVolts?: number;
  /** M, no unit; 0.5 when left out (SPICE default). */
  readonly grading?: number;
  /** TT, seconds; 0 when left out. */
  readonly transitSeconds?: number;
}

/** A diode between two nodes. */
export interface Diode extends DiodeModel {
  readonly kind: 'diode';
  readonly name: string;
  readonly anode: string;
  readonly cathode: string;
}

/** An ideal voltage source: `plus` is held `volts` above `minus`. Current counts from plus, through the source, to minus. */
interface VoltageSource {
  readonly kind: 'voltage';
  readonly name: string;
  readonly plus: string;
  readonly minus: string;
  readonly volts: number;
}

/** An ideal current source that drives `amperes` out of `from`, through itself, into `to`. */
interface CurrentSource {
  readonly kind: 'current';
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly amperes: number;
}

/**
 * A switch: `SWITCH_ON_OHMS` when closed, nothing at all when open. In time it may be part closed; see `switchSiemens`.
 */
interface Switch {
  readonly kind: 'switch';
  readonly name: string;
  readonly a: string;
  readonly b: string;
  readonly closed: boolean;
}

/** A capacitor: open at DC. `farads` must be more than 0. */
interface Capacitor {
  readonly kind: 'capacitor';
  readonly name: string;
  readonly a: string;
  readonly b: string;
  readonly farads: number;
}

/** Any part. */
export type Element = Resistor | Diode | VoltageSource | CurrentSource | Switch | Capacitor;
/** What kind of part. */
export type ElementKind = Element['kind'];

/** Parts and the name of the node that counts as 0 V. */
export interface Circuit {
  readonly ground: string;
  readonly elements: readonly Element[];
}

/** Thermal voltage k T / q at 27 C, volts. k and q: SI values exact since 2019; 300.15 K is the SPICE default. */
export const THERMAL_VOLTS = (1.380649e-23 * 300.15) / 1.602176634e-19;

/**
 * Least resistance to build a circuit with, ohms; less is none (our choice: three micrometres of 30 AWG wire). What a resistor
 * carries is its volts over its ohms, and the last digit of 24 V over this much is 4 nA: far below any current that is judged.
 */
export const LEAST_OHMS = 1e-6;

/** Least conductance across every junction, siemens; the SPICE default. */
export const GMIN_SIEMENS = 1e-12;

/** A closed switch, ohms: small against every resistor of the loop (10 ohm and up), large enough to keep the matrix well scaled. */
export const SWITCH_ON_OHMS = 1e-3;

/** A switch that has only begun to close, siemens: as little as a blocked junction, so that opening is no jump. */
export const SWITCH_OFF_SIEMENS = GMIN_SIEMENS;

/**
 * Conductance of a switch at a position between 0, open, and 1, closed; equal steps multiply it by equal factors, as the gate
 * of a transistor does while it turns on (our choice). Exactly 0 is nothing at all.
 */
export function switchSiemens(position: number): number {
  if (position <= 0) return 0;
  return SWITCH_OFF_SIEMENS ** (1 - position) / SWITCH_ON_OHMS ** position;
}

/** Tie from a floating part of a circuit to ground, ohms: lets it be solved without taking a current that counts. */
export const FLOATING_TIE_OHMS = 1e9;

/** The two nodes of a part, in the order its current counts. */
export function nodesOf(element: Element): readonly [string, string] {
  switch (element.kind) {
    case 'diode':
      return [element.anode, element.cathode];
    case 'voltage':
      return [element.plus, element.minus];
    case 'current':
      return [element.from, element.to];
    case 'resistor':
    case 'switch':
    case 'capacitor':
      return [element.a, element.b];
  }
}
