/** What a reader types from the display of a meter, turned into a reading. */
import type { ScaledFunction } from './scale.ts';
import type { Reading } from './reading.ts';

/** Units a display may show, by function; the usual one first. */
export function unitsOf(meter: ScaledFunction): readonly Unit[] {
  return meter === 'ohms' ? ['ohm', 'kohm', 'Mohm'] : ['V', 'mV'];
}

/** Every unit, with what it counts in SI. */
const UNITS = { V: 1, mV: 1e-3, ohm: 1, kohm: 1e3, Mohm: 1e6 } as const;

/** A unit that a display may show. */
export type Unit = keyof typeof UNITS;

/** Bounds of what is taken for a reading, volts and ohms: wider than any jack, narrow enough to catch a slip of the unit. */
const BOUNDS: Readonly<Record<ScaledFunction, readonly [least: number, most: number]>> = {
  volts: [-60, 60],
  loaded: [-60, 60],
  diode: [-1, 4],
  ohms: [0, 100e6],
};

/** The reading for what was typed, or a message that says what was expected and what came. Comma and point both do. */
export function readEntry(meter: ScaledFunction, text: string, unit: Unit): Reading | string {
  const typed = text.trim().replace(',', '.').replace('−', '-');
  const value = Number(typed) * UNITS[unit];
  const [least, most] = BOUNDS[meter];
  if (typed === '' || !(value >= least && value <= most)) {
    const bound = (limit: number): string => String(Number((limit / UNITS[unit]).toPrecision(6)));
    return `reading: expected a number from ${bound(least)} to ${bound(most)} ${unit}, got '${text}'`;
  }
  return { meter, shows: 'value', value };
}
