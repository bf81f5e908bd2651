/** Where a step is expected to end, and how far off it ended. */
import type { CompiledCircuit } from './compile.ts';
import type { StepTolerance, StepWork } from './step-work.ts';
import { blendFrom, readRow } from './blend.ts';
import type { Trajectory } from './trajectory.ts';

/** Carry the last three rows on to a time, in units; what is known of the slope at the start stands for a row before it. */
export function predict(run: Trajectory, work: StepWork, time: number): void {
  const { slopes, rows, width } = run;
  const columns = movingColumns(run);
  if (slopes && run.count < 3) {
    const seconds = time * run.unitSeconds;
    const bend = run.count === 1 ? 0 : (time / (run.times[1] as number)) ** 2;
    const there = run.count === 1 ? 0 : (run.times[1] as number) * run.unitSeconds;
    const second = (run.count - 1) * width;
    for (let column = 0; column < columns; column++) {
      const start = rows[column] as number;
      const slope = slopes[column] as number;
      const line = start + seconds * slope;
      work.predicted[column] = line + bend * ((rows[second + column] as number) - start - there * slope);
    }
    return;
  }
  const first = Math.max(0, run.count - 3);
  blend(run, work, first, time, work.predicted);
}

/** The columns that a step works on: moving unknowns, and volts and charges of the junctions. */
function movingColumns({ still, junctions }: Trajectory): number {
  return still.moving + 2 * junctions;
}

/** The parabola through rows from `first` on, read at a time in units. */
export function blend(
  run: Trajectory,
  work: StepWork,
  first: number,
  time: number,
  into: Float64Array,
): void {
  blendFrom(run, first, time, work.weights);
  readRow(run, first, work.weights, into, movingColumns(run));
}

/** The row at a time, among the last three; -1 when none stands there. */
export function rowAt(run: Trajectory, time: number): number {
  for (let at = run.count - 1; at >= 0 && at > run.count - 4; at--) if (run.times[at] === time) return at;
  return -1;
}

/** The error of the step just solved, over the error allowed: at most 1 is good. Judged by the distance from the prediction. */
export function errorOf(work: StepWork, run: Trajectory, time: number, tolerance: StepTolerance): number {
  const { predicted, solved } = work;
  const { watched } = run.still;
  const step = run.step;
  let share = 0.5;
  const last = run.count - 1;
  if (run.count > 2 || run.slopes) {
    // The parabola misses by P = s (s + a) (s + b) / 6 x''', the formula by L = 2/9 s^3 x''' on the other side.
    const before = run.times[last - 1] as number;
    const first = run.count > 2 ? (run.times[last - 2] as number) : before;
    const parabola = ((time - (run.times[last] as number)) * (time - before) * (time - first)) / 6;
    const formula = (2 / 9) * step * step * step;
    share = formula / (formula + parabola);
  }
  let worst = 0;
  for (let at = 0; at < watched.length; at++) {
    const node = watched[at] as number;
    const volts = solved[node] as number;
    const off = Math.abs(volts - (predicted[node] as number));
    const allowed = tolerance.volts + tolerance.share * Math.abs(volts);
    if (!(off <= worst * allowed)) worst = off / allowed;
  }
  return worst * share;
}

export function worstNode(compiled: CompiledCircuit, work: StepWork, { still }: Trajectory): string {
  let worst = -1;
  let most = 0;
  for (let node = 0; node < compiled.nodeNames.length; node++) {
    const place = still.factor.columnPlace[node] as number;
    if (place < 0) continue;
    const off = Math.abs((work.solved[place] as number) - (work.predicted[place] as number));
    if (off > most) {
      most = off;
      worst = node;
    }
  }
  return worst < 0 ? '' : `; the furthest off is node '${compiled.nodeNames[worst] as string}'`;
}
