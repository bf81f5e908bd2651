/** Copper wire: gauge, resistance, and the resistances of contacts and mishaps on a lead. */
import { LEAST_OHMS } from '../circuit/index.ts';

/** Resistivity of annealed copper at 20 C, ohm metres (from memory: the usual handbook value). */
const COPPER_OHM_METRES = 1.7241e-8;

/** Gauges a reader may choose, AWG. Loops use 22 to 30. */
export const GAUGES = [20, 22, 24, 26, 28, 30] as const;

/** A touch of plug on jack, ohms: between the 10 mohm of new contacts and the 100 mohm of worn ones (from memory). */
export const CONTACT_OHMS = 0.03;

/** Least and greatest resistance of a touch that the workbook takes, ohms; 0 stands for none. */
export const CONTACT_RANGE = [0, 10] as const;
/** The least touch that is not none, ohms. */
export const CONTACT_FLOOR: number = LEAST_OHMS;

/** Least and greatest contact resistance of the tolerance corners, ohms. The least stands for 0. */
export const CONTACT_CORNERS = [1e-4, 0.1] as const;

/** A solder bridge between two contacts, ohms (our choice: a drop of solder is far below any resistor of the loop). */
export const BRIDGE_OHMS = 0.01;

/** Spread of the wire's resistance (our choice; stranded wire runs a few percent above solid). */
export const WIRE_SPREAD = 0.05;

/** Least and greatest length of one lead that the workbook takes, metres. */
export const LENGTH_METRES = [0.01, 100] as const;

/** Length of a tail that lies by the device, metres: an adapter, or each jack of a breakout lead (our choice). */
export const PIGTAIL_METRES = 0.15;

/** Longest run of the standard, metres (MMA CA-033, p. 3). */
export const STANDARD_METRES = 15;
/** Longest adapter lead of the standard, metres (MMA RP-054, item 3). */
export const ADAPTER_METRES = 2;

/** Diameter of a solid wire in metres: d = 0.127 mm x 92^((36 - n)/39) (ASTM B258, by a secondary page). */
export function wireDiameterMetres(gauge: number): number {
  return 0.127e-3 * 92 ** ((36 - gauge) / 39);
}

/** Resistance of one solid conductor, ohms per metre. */
export function wireOhmsPerMetre(gauge: number): number {
  return COPPER_OHM_METRES / ((Math.PI / 4) * wireDiameterMetres(gauge) ** 2);
}
