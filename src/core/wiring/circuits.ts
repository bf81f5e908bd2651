/** Every circuit behind a jack, and what is known of it. */
import { DRIVERS, DRIVER_ENTRIES } from './drivers.ts';
import type { Part } from './parts.ts';
import { RECEIVERS, RECEIVER_ENTRIES } from './receivers.ts';
import type { CircuitEntry, ValueEntry } from './values.ts';

/** Circuits behind an output, then behind an input. Links count on the order. */
export const CIRCUITS = [...DRIVERS, ...RECEIVERS] as const;
/** A circuit behind a jack. */
export type CircuitKind = (typeof CIRCUITS)[number];

const ENTRIES: Readonly<Record<CircuitKind, CircuitEntry>> = { ...DRIVER_ENTRIES, ...RECEIVER_ENTRIES };

/** What is known of a circuit. */
export function circuitEntry(kind: CircuitKind): CircuitEntry {
  return ENTRIES[kind];
}

/** Every value of a circuit with its default; `part` decides those of the LED. */
export function valuesOf(kind: CircuitKind, part: Part): readonly ValueEntry[] {
  return ENTRIES[kind].values[part];
}

/** Whether a circuit lights the LED of an optocoupler, so that a part can be chosen. */
export function hasLed(kind: CircuitKind): boolean {
  return kind === 'receiver-isolated' || kind === 'receiver-both-ways' || kind === 'receiver-led';
}
