/** The predictor of a step, and the local truncation error that its distance from the solution tells. */
import { readRow, setBlend } from './interpolation.ts';
import type { StepTolerance, StepWork } from './step-work.ts';
import type { Trajectory } from './trajectory.ts';

/** Carry the last three rows on to a time, in units; what is known of the slope at the start stands for a row before it. */
export function predict(
  run: Trajectory,
  { predicted, blend }: StepWork,
  columns: number,
  time: number,
): void {
  const { slopes, rows, width, count, times } = run;
  if (!slopes || count > 2) {
    setBlend(run, Math.max(0, count - 3), time, blend);
    readRow(run, blend, predicted, columns);
    return;
  }
  const seconds = time * run.unitSeconds;
  const there = times[count - 1]!;
  // The parabola with the known slope through the first two rows; the tangent while there is only one.
  const bend = count === 1 ? 0 : (time / there) ** 2;
  const along = seconds - bend * there * run.unitSeconds;
  const last = (count - 1) * width;
  for (let column = 0; column < columns; column++)
    predicted[column] = (1 - bend) * rows[column]! + bend * rows[last + column]! + along * slopes[column]!;
}

/** The local truncation error of the step just solved, over the error allowed: at most 1 is good. */
export function errorOf(work: StepWork, run: Trajectory, time: number, tolerance: StepTolerance): number {
  const { predicted, solved } = work;
  const { count, times, step } = run;
  let share = 0.5;
  if (count > 2 || run.slopes) {
    // The predictor misses by P = s (s + a) (s + b) / 6 x''', the formula by L = 2/9 s^3 x''' on the other side.
    const before = times[count - 2]!;
    const first = count > 2 ? times[count - 3]! : before;
    const predictor = ((time - times[count - 1]!) * (time - before) * (time - first)) / 6;
    const formula = (2 / 9) * step * step * step;
    share = formula / (formula + predictor);
  }
  let worst = 0;
  for (const at of run.topology.watched) {
    const volts = solved[at]!;
    const off = Math.abs(volts - predicted[at]!);
    const allowed = tolerance.volts + tolerance.share * Math.abs(volts);
    if (!(off <= worst * allowed)) worst = off / allowed;
  }
  return worst * share;
}

/** The node whose solution lies furthest from its prediction. */
export function furthestOff({ solved, predicted }: StepWork, { topology, moving }: Trajectory): number {
  let worst = 0;
  const off = (at: number): number => Math.abs(solved[at]! - predicted[at]!);
  for (let at = 1; at < moving; at++) if (off(at) > off(worst)) worst = at;
  return topology.roots[topology.stillCount + worst]!;
}
