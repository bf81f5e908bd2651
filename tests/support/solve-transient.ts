/** Any circuit under any drives in time, from its operating point on: the steps of the core, without the reuse of edges. */
import { advance, chargeAtRest, jump } from '../../src/core/circuit/bdf2.ts';
import { setValueAt } from '../../src/core/circuit/compile.ts';
import { elementNumber } from '../../src/core/circuit/compiled.ts';
import type { CompiledCircuit } from '../../src/core/circuit/compiled.ts';
import { driveAt } from '../../src/core/circuit/drive.ts';
import type { Drive } from '../../src/core/circuit/drive.ts';
import { settle } from '../../src/core/circuit/operating-point.ts';
import type { Unsolved } from '../../src/core/circuit/operating-point.ts';
import { slideOf } from '../../src/core/circuit/slide.ts';
import { STEP_TOLERANCE, stepWork } from '../../src/core/circuit/step-work.ts';
import type { StepTolerance } from '../../src/core/circuit/step-work.ts';
import { startTrajectory } from '../../src/core/circuit/trajectory.ts';
import { transientOf } from '../../src/core/circuit/transient.ts';
import type { Stretch, Transient } from '../../src/core/circuit/transient.ts';

/** First step after a breakpoint, seconds: a fraction of the shortest edge; shortened where it is too long. */
const FIRST_STEP_SECONDS = 1e-9;

/** Solve a circuit in time under drives; the method restarts at every breakpoint of a drive. */
export function solveTransient(
  compiled: CompiledCircuit,
  drives: readonly Drive[],
  toSeconds: number,
  { fromSeconds = 0, tolerance = STEP_TOLERANCE }: { fromSeconds?: number; tolerance?: StepTolerance } = {},
): Transient | Unsolved {
  const parts = drives.map(({ part }) => elementNumber(compiled, part));
  const valuesAt = (seconds: number, side: 'before' | 'after'): readonly number[] =>
    drives.map((drive) => driveAt(drive, seconds, side));
  const set = (values: readonly number[]): void =>
    values.forEach((value, at) => setValueAt(compiled, parts[at] as number, value));
  set(valuesAt(fromSeconds, 'before'));
  const failed = settle(compiled);
  if (failed) return failed;
  chargeAtRest(compiled);
  const work = stepWork(compiled);
  const inside = drives.flatMap(({ points }) => points.map(({ seconds }) => seconds));
  const breakpoints = [
    ...new Set([fromSeconds, ...inside.filter((one) => one > fromSeconds && one < toSeconds), toSeconds]),
  ].sort((a, b) => a - b);
  const stretches = breakpoints.slice(1).map((end, at): Stretch => {
    const start = breakpoints[at] as number;
    const from = valuesAt(start, 'after');
    const to = valuesAt(end, 'before');
    set(from);
    if (valuesAt(start, 'before').some((value, one) => value !== from[one])) jump(compiled, work);
    const moving = parts.map((_, one) => one).filter((one) => from[one] !== to[one]);
    const pick = <T>(list: readonly T[]): readonly T[] => moving.map((one) => list[one] as T);
    const slide = moving.length === 0 ? undefined : slideOf(compiled, pick(parts), pick(from), pick(to));
    const run = startTrajectory(compiled, end - start, FIRST_STEP_SECONDS);
    advance(compiled, work, run, 1, tolerance, slide);
    return { fromSeconds: start, toSeconds: end, run, driven: { parts, from, to } };
  });
  return transientOf(compiled, stretches);
}
