/** Work space of the steps in time. */
import type { CompiledCircuit } from './compiled.ts';
import { makeBlend } from './interpolation.ts';
import type { Blend } from './interpolation.ts';
import type { Mesh } from './mesh.ts';
import type { Motion } from './newton.ts';
import { takeNumbers } from './room.ts';
import { widestRow } from './trajectory.ts';

/** How much one step may be wrong: volts, and this share of the voltage besides. */
export interface StepTolerance {
  readonly volts: number;
  readonly share: number;
}

/**
 * Allowed error of one step: half a millivolt and a five-thousandth of the voltage. What is stranded on a line that nothing holds
 * stays there, so that errors add up: a line let go by an open-drain stage is then right to a thousandth.
 */
export const STEP_TOLERANCE: StepTolerance = { volts: 5e-4, share: 2e-4 };

/** Room for the work of one circuit's steps; kept, so that no step makes garbage. */
export interface StepWork {
  readonly motion: Motion;
  /** A row as predicted, and what its past adds to how it changes, a second. */
  readonly predicted: Float64Array;
  readonly drift: Float64Array;
  /** Volts of the moving rows where the step starts; ground's place is the last, here and below. */
  readonly last: Float64Array;
  /** Currents into the moving rows that become their volts. */
  readonly solved: Float64Array;
  readonly blend: Blend;
  /** The mesh used last: steps of one length follow one another. */
  mesh: Mesh | undefined;
}

/** Work space for a circuit. */
export function stepWork(compiled: CompiledCircuit): StepWork {
  const { room, volts } = compiled;
  const width = widestRow(compiled);
  return {
    motion: { perSecond: 0, voltTolerance: 0 },
    predicted: takeNumbers(room, width),
    drift: takeNumbers(room, width),
    last: takeNumbers(room, volts.length),
    solved: takeNumbers(room, volts.length),
    blend: makeBlend(),
    mesh: undefined,
  };
}
