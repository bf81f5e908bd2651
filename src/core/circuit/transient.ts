/** A circuit in time: from its operating point on, through every corner of its drives. */
import { setValueAt } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { cornersOf, driveAt, readyDrives } from './drive.ts';
import type { Drive } from './drive.ts';
import { settle } from './operating-point.ts';
import type { Unsolved } from './operating-point.ts';
import { chargeAtRest, movingValue } from './rest.ts';
import { advance, jump } from './step.ts';
import { stepWork } from './step-work.ts';
import type { StepTolerance } from './step-work.ts';
import { transientOf } from './trace.ts';
import type { Stretch, Transient } from './trace.ts';
import { startTrajectory } from './trajectory.ts';

/**
 * Allowed error of one step: half a millivolt and a five-thousandth of the voltage. What is stranded on a line that nothing holds
 * stays there, so that errors add up: a line let go by an open-drain stage is then right to a thousandth.
 */
export const STEP_TOLERANCE: StepTolerance = { volts: 5e-4, share: 2e-4 };

/** First step after a corner, seconds: a fraction of the shortest edge; shortened where it is too long. */
const FIRST_STEP_SECONDS = 1e-9;

/** Options of a solution in time; everything may be left out. */
export interface TransientOptions {
  readonly fromSeconds?: number;
  readonly tolerance?: StepTolerance;
}

/**
 * Solve a circuit in time, from the operating point that the drives' first values give.
 * Steps vary with the error of one step; the method restarts at every corner of a drive.
 * @throws on a drive that does not fit (see `readyDrives`), or an end that is not after the start.
 */
export function solveTransient(
  compiled: CompiledCircuit,
  drives: readonly Drive[],
  toSeconds: number,
  options: TransientOptions = {},
): Transient | Unsolved {
  const { fromSeconds = 0, tolerance = STEP_TOLERANCE } = options;
  if (!(toSeconds > fromSeconds) || !Number.isFinite(toSeconds - fromSeconds))
    throw new Error(`transient: the end must be after ${fromSeconds} s, got ${toSeconds} s`);
  const ready = readyDrives(compiled, drives);
  for (const { index, points } of ready) setValueAt(compiled, index, driveAt(points, fromSeconds, 'before'));
  const failed = settle(compiled);
  if (failed) return failed;
  chargeAtRest(compiled);
  const work = stepWork(compiled);
  const corners = cornersOf(ready, fromSeconds, toSeconds);
  const stretches: Stretch[] = [];
  for (let at = 1; at < corners.length; at++) {
    const start = corners[at - 1] as number;
    const end = corners[at] as number;
    const unit = end - start;
    const driven = new Map<number, readonly [number, number]>();
    let jumps = false;
    for (const { index, points } of ready) {
      const from = driveAt(points, start, 'after');
      const to = driveAt(points, end, 'before');
      driven.set(index, [from, to]);
      if (from !== driveAt(points, start, 'before')) jumps = true;
    }
    const moving = [...driven].filter(([, [from, to]]) => from !== to);
    for (const [index, [from]] of driven) setValueAt(compiled, index, from);
    if (jumps) jump(compiled, work);
    const run = startTrajectory(compiled, work.room, unit, FIRST_STEP_SECONDS);
    const slide =
      moving.length === 0
        ? undefined
        : {
            parts: moving.map(([index]) => index),
            from: moving.map(([index, [from]]) => movingValue(compiled, index, from)),
            to: moving.map(([index, [, to]]) => movingValue(compiled, index, to)),
          };
    advance(compiled, work, run, 1, tolerance, slide);
    stretches.push({ fromSeconds: start, toSeconds: end, run, driven });
  }
  return transientOf(compiled, stretches);
}
