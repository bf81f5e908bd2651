/** Work space of the steps in time. */
import type { CompiledCircuit } from './compile.ts';
import type { Factor } from './matrix.ts';
import type { Motion } from './newton.ts';
import { rowRoom } from './trajectory.ts';
import type { RowRoom } from './trajectory.ts';

/** How much one step may be wrong: volts, and this share of the voltage besides. */
export interface StepTolerance {
  readonly volts: number;
  readonly share: number;
}

/** Room for the work of one circuit's steps; kept, so that no step makes garbage. */
export interface StepWork {
  readonly motion: Motion;
  /** Rows: as predicted, as it stood one step length further back, and as solved (moving unknowns alone). */
  readonly predicted: Float64Array;
  readonly back: Float64Array;
  readonly solved: Float64Array;
  readonly side: Float64Array;
  /** The sources, all of them, and what they come to for the moving unknowns. */
  readonly sources: Float64Array;
  readonly movingSources: Float64Array;
  readonly weights: [number, number, number];
  /** What each moving unknown's past adds to the charge current of one farad, amperes; ground's place stays 0. */
  readonly past: Float64Array;
  readonly room: RowRoom;
  /** The factor used last, and its companion of the capacitors: steps of one length follow one another. */
  factor: Factor | undefined;
  perSecond: number;
}

/** Work space for a circuit. */
export function stepWork(compiled: CompiledCircuit): StepWork {
  const junctions = compiled.junctions.volts.length;
  const { unknowns } = compiled;
  const width = unknowns + 3 * junctions;
  return {
    motion: { perSecond: 0, pastAmperes: new Float64Array(junctions), voltTolerance: 0 },
    predicted: new Float64Array(width),
    back: new Float64Array(width),
    solved: new Float64Array(unknowns),
    side: new Float64Array(unknowns + 1),
    sources: new Float64Array(unknowns),
    movingSources: new Float64Array(unknowns + 1),
    weights: [1, 0, 0],
    past: new Float64Array(unknowns + 1),
    room: rowRoom(),
    factor: undefined,
    perSecond: 0,
  };
}
