/** Conductors of the leads that are made most: line by line between two jacks of one kind, and from DIN to a phone plug. */
import { wires } from './link.ts';

/** Pin to pin, the two lines and the shield (MMA CA-033, p. 3). */
export const STRAIGHT_DIN = wires('4-4', '5-5', '2-2');
/** Contact to contact. */
export const STRAIGHT_TRS = wires('tip-tip', 'ring-ring', 'sleeve-sleeve');
/** From DIN to a jack of type-a (MMA RP-054, by way of two reports). */
export const DIN_TO_TYPE_A = wires('4-ring', '5-tip', '2-sleeve');
/** From DIN to a jack of type-b (common practice, no source). */
export const DIN_TO_TYPE_B = wires('4-tip', '5-ring', '2-sleeve');
