/** What joins a circuit at rest to the same circuit in time. */
import { chargeAt } from './charge.ts';
import type { CompiledCircuit } from './compile.ts';
import { junctionLaw } from './junction.ts';

/** Give every junction the charge of its present voltage. */
export function chargeAtRest(compiled: CompiledCircuit): void {
  const { junctions } = compiled;
  const law = { amperes: 0, siemens: 0 };
  junctions.volts.forEach((volts, at) => {
    junctionLaw(volts, junctions.saturation[at] as number, junctions.slope[at] as number, law);
    chargeAt(junctions.charges, at, volts, law.amperes, law.siemens);
  });
}

/** A switch that moves stays this far from both its ends, so that its ends are moments only. */
const SWITCH_MARGIN = 1e-9;

/** The value of a part while it moves: a switch keeps off its ends. */
export function movingValue(compiled: CompiledCircuit, index: number, value: number): number {
  if (compiled.circuit.elements[index]?.kind !== 'switch') return value;
  return Math.min(1 - SWITCH_MARGIN, Math.max(SWITCH_MARGIN, value));
}
