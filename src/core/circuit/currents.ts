/** Currents of parts, worked out from a solution at rest or in time. */
import { elementNumber } from './compiled.ts';
import type { CompiledCircuit } from './compiled.ts';
import { switchSiemens } from './elements.ts';

/** A solution as it stands at one moment, by number of the part or of the junction. */
interface Reading {
  /** Volts from a part's first node to its second. */
  across(element: number): number;
  value(element: number): number;
  /** Amperes into a junction's anode. */
  junction(junction: number): number;
  /** Amperes that charge a capacitor. */
  charging(element: number): number;
  /** Amperes fed into a node from outside; none where left out. */
  fed?(node: number): number;
}

/** Amperes from a part's first node through it to its second. @throws when no part has that name. */
export function amperesThrough(compiled: CompiledCircuit, name: string, reading: Reading): number {
  return amperesAt(compiled, elementNumber(compiled, name), reading);
}

/** As `amperesThrough`, by the part's number. */
export function amperesAt(compiled: CompiledCircuit, element: number, reading: Reading): number {
  const { kind } = compiled.circuit.elements[element]!;
  switch (kind) {
    case 'resistor':
      return reading.across(element) / reading.value(element);
    case 'switch':
      return reading.across(element) * switchSiemens(reading.value(element));
    case 'capacitor':
      return reading.charging(element);
    case 'current':
      return reading.value(element);
    case 'voltage':
      return sourceAmperes(compiled, element, reading);
    case 'diode':
      return reading.junction(compiled.ofKind.diode.indexOf(element));
  }
}

/** By Kirchhoff's law: what a source carries is what its plus, and all that other sources tie to it, takes in by other parts. */
function sourceAmperes(compiled: CompiledCircuit, source: number, reading: Reading): number {
  const { first, second, ofKind, circuit } = compiled;
  const tied = new Set([first[source]!]);
  for (const node of tied)
    for (const other of ofKind.voltage) {
      if (other === source) continue;
      if (first[other] === node) tied.add(second[other]!);
      if (second[other] === node) tied.add(first[other]!);
    }
  let amperes = 0;
  for (const node of tied) amperes += reading.fed?.(node) ?? 0;
  circuit.elements.forEach(({ kind }, at) => {
    const leaves = tied.has(first[at]!);
    if (kind === 'voltage' || leaves === tied.has(second[at]!)) return;
    amperes += leaves ? -amperesAt(compiled, at, reading) : amperesAt(compiled, at, reading);
  });
  return amperes;
}
