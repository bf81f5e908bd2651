/**
 * Steps in time by the second-order backward difference formula: x' = (3 x - 4 x1 + x2) / (2 h), where x2 lies one step of the
 * same length further back and is read from the parabola through the last rows when no row stands there. So one step length needs
 * one factored matrix. A run begins with one step by the trapezoidal rule where the slope at its start is known, and with backward
 * Euler where it is not. (Gear, Numerical Initial Value Problems, 1971; the formula's error is 2/9 h^3 x''' a step.)
 */
import { setValueAt } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { GMIN_SIEMENS, THERMAL_VOLTS } from './elements.ts';
import { stepFactorFor } from './factors.ts';
import { reduceSide, unfold } from './matrix.ts';
import type { Factor } from './matrix.ts';
import { newton } from './newton.ts';
import { blend, errorOf, predict, rowAt, worstNode } from './prediction.ts';
import { loadSources } from './stamp.ts';
import type { StepTolerance, StepWork } from './step-work.ts';
import { addRow, standOn, startTrajectory } from './trajectory.ts';
import type { Trajectory } from './trajectory.ts';

/** Parts whose value changes evenly over a unit of the trajectory; each list has one entry a part. */
export interface Slide {
  readonly parts: readonly number[];
  readonly from: readonly number[];
  readonly to: readonly number[];
}

/** Below this share of the unit no step is tried: something in the circuit does not settle. */
const LEAST_STEP = 2 ** -48;

/** How well a jump is solved, volts: as an operating point is. */
const JUMP_VOLTS = 1e-9;

/** Length of the step that stands for a jump, seconds: under every time constant of a lead. What happens within it is taken as is. */
const JUMP_SECONDS = 1e-12;

/** An error below this share of what is allowed lets the step double: the error grows eightfold. */
const DOUBLE_BELOW = 0.1;
const QUADRUPLE_BELOW = DOUBLE_BELOW / 8;

/**
 * After a Newton step that moved a junction by d volts the next would move it by d squared over 2 N VT: Newton's method ends
 * where that is less than this share of the error that a step may have, with the least N VT there is, that of N = 1.
 */
const NEWTON_SHARE = 0.1;

/**
 * Take a trajectory on until it reaches `untilUnits`.
 * @param slide parts that change on the way, or undefined while the drive stands still.
 * @throws when a step cannot be made however short, naming the node.
 */
export function advance(
  compiled: CompiledCircuit,
  work: StepWork,
  run: Trajectory,
  untilUnits: number,
  tolerance: StepTolerance,
  slide?: Slide,
): void {
  if ((run.times[run.count - 1] as number) >= untilUnits) return;
  work.factor = undefined;
  if (run.count === 1) takeSources(compiled, work, run, slide);
  const { moving, factor } = run.still;
  for (let at = 0; at < moving; at++) work.movingSources[at] = run.sourcesFrom[factor.pivots + at] as number;
  work.motion.voltTolerance = Math.sqrt(2 * THERMAL_VOLTS * NEWTON_SHARE * tolerance.volts);
  while ((run.times[run.count - 1] as number) < untilUnits) {
    if (run.step < LEAST_STEP)
      throw new Error(`circuit: no step in time settles${worstNode(compiled, work, run)}`);
    const now = run.times[run.count - 1] as number;
    const time = now + run.step;
    predict(run, work, time);
    if (slide) slideTo(compiled, work, run, slide, time);
    if (!solveStep(compiled, work, run)) {
      goBack(run, run.count - 1, run.step / 8);
      continue;
    }
    const error = run.count === 1 ? 0 : errorOf(work, run, time, tolerance);
    if (error > 1 && run.step * run.unitSeconds > JUMP_SECONDS) {
      // The first step has nothing to be judged by, so the second judges both.
      goBack(run, run.count === 2 ? 0 : run.count - 1, run.step / (error > 8 ? 4 : 2));
      continue;
    }
    addRow(compiled, run, time, work.solved);
    if (run.count > 2) run.step = nextStep(run, time, error);
  }
  standOn(compiled, run, run.rows, (run.count - 1) * run.width);
}

/** The step to try next: double, or four times as long, where the error of one step lets it. */
function nextStep(run: Trajectory, time: number, error: number): number {
  for (const growth of [4, 2]) {
    const step = growth * run.step;
    if (error >= (growth === 4 ? QUADRUPLE_BELOW : DOUBLE_BELOW)) continue;
    // A run with an end must meet it; one without must only not look back past its start.
    if (run.ends ? Number.isInteger(time / step) : step <= time) return step;
  }
  return run.step;
}

/** Let the circuit jump to where its capacitors hold it after the drive jumped: a step too short for any charge to move. */
export function jump(compiled: CompiledCircuit, work: StepWork): void {
  const run = startTrajectory(compiled, work.room, JUMP_SECONDS, JUMP_SECONDS);
  advance(compiled, work, run, 1, { volts: JUMP_VOLTS, share: 0 });
}

/** Work out what the sources come to for all unknowns, at the start of a run and at its end. */
function takeSources(compiled: CompiledCircuit, work: StepWork, run: Trajectory, slide?: Slide): void {
  const { factor } = run.still;
  const take = (into: Float64Array): void => {
    loadSources(compiled, 1, work.sources);
    reduceSide(factor, work.sources);
    into.set(factor.side);
  };
  if (slide) setSlide(compiled, slide, 1);
  take(run.sourcesTo);
  if (slide) {
    setSlide(compiled, slide, 0);
    take(run.sourcesFrom);
  } else run.sourcesFrom.set(run.sourcesTo);
}

function goBack(run: Trajectory, row: number, step: number): void {
  run.count = row + 1;
  run.step = step >= 2 * LEAST_STEP || step < LEAST_STEP ? step : LEAST_STEP;
}

function slideTo(
  compiled: CompiledCircuit,
  work: StepWork,
  run: Trajectory,
  slide: Slide,
  time: number,
): void {
  setSlide(compiled, slide, time);
  const { sourcesFrom, sourcesTo, still } = run;
  for (let at = 0; at < still.moving; at++) {
    const from = sourcesFrom[still.factor.pivots + at] as number;
    work.movingSources[at] = from + ((sourcesTo[still.factor.pivots + at] as number) - from) * time;
  }
}

function setSlide(compiled: CompiledCircuit, { parts, from, to }: Slide, time: number): void {
  for (let at = 0; at < parts.length; at++) {
    const start = from[at] as number;
    setValueAt(compiled, parts[at] as number, start + ((to[at] as number) - start) * time);
  }
}

function solveStep(compiled: CompiledCircuit, work: StepWork, run: Trajectory): boolean {
  const { junctions: count, width, still } = run;
  const { moving, firstEnds, secondEnds } = still;
  const { motion, side, predicted, past, movingSources } = work;
  const seconds = run.step * run.unitSeconds;
  const last = (run.count - 1) * width;
  const now = run.rows;
  let then = now;
  let back = last;
  let nowShare = -1 / seconds;
  let backShare = 0;
  motion.perSecond = 1 / seconds;
  const slopes = run.count === 1 ? run.slopes : undefined;
  if (slopes) {
    motion.perSecond = 2 / seconds;
    nowShare = -2 / seconds;
  } else if (run.count > 1) {
    motion.perSecond = 1.5 / seconds;
    nowShare = -2 / seconds;
    backShare = 0.5 / seconds;
    const time = (run.times[run.count - 1] as number) - run.step;
    const row = rowAt(run, time);
    if (row >= 0) back = row * width;
    else {
      blend(run, work, Math.max(0, run.count - 3), time, work.back);
      then = work.back;
      back = 0;
    }
  }
  const factor = stepFactor(compiled, work);
  for (let at = 0; at < moving; at++) {
    side[at] = movingSources[at] as number;
    past[at] = nowShare * (now[last + at] as number) + backShare * (then[back + at] as number);
  }
  past[moving] = 0;
  if (slopes) for (let at = 0; at < moving; at++) past[at] = (past[at] as number) - (slopes[at] as number);
  const capacitors = compiled.ofKind.capacitor;
  for (let at = 0; at < capacitors.length; at++) {
    const a = firstEnds[at] as number;
    const b = secondEnds[at] as number;
    const amperes =
      (compiled.values[capacitors[at] as number] as number) * ((past[a] as number) - (past[b] as number));
    side[a] = (side[a] as number) - amperes;
    side[b] = (side[b] as number) + amperes;
  }
  const chargeAt = moving + count;
  for (let at = 0; at < count; at++) {
    motion.pastAmperes[at] =
      nowShare * (now[last + chargeAt + at] as number) + backShare * (then[back + chargeAt + at] as number);
    if (slopes) motion.pastAmperes[at]! -= slopes[chargeAt + at] as number;
    compiled.junctions.volts[at] = predicted[moving + at] as number;
  }
  reduceSide(factor, side);
  if (!newton(compiled, factor, GMIN_SIEMENS, motion).converged) return false;
  unfold(factor, work.solved);
  return true;
}

function stepFactor(compiled: CompiledCircuit, work: StepWork): Factor {
  const { perSecond } = work.motion;
  if (work.factor && work.perSecond === perSecond) return work.factor;
  work.perSecond = perSecond;
  return (work.factor = stepFactorFor(compiled, perSecond));
}
