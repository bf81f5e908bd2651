/**
 * Steps in time by the second-order backward difference formula: x' = (3 x - 4 x1 + x2) / (2 h), where x2 lies one step of the
 * same length further back and is read from the parabola through the last rows when no row stands there. So one step length needs
 * one factored matrix. A run begins with one backward Euler step. (Gear, Numerical Initial Value Problems, 1971; the formula's
 * error is 2/9 h^3 x''' a step.)
 */
import { setValueAt } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { GMIN_SIEMENS, THERMAL_VOLTS } from './elements.ts';
import { reduceSide, unfold } from './matrix.ts';
import type { Factor } from './matrix.ts';
import { newton } from './newton.ts';
import type { Motion } from './newton.ts';
import { loadSources, stepFactorFor } from './stamp.ts';
import { addRow, blendFrom, rowRoom, standOn, startTrajectory } from './trajectory.ts';
import type { RowRoom, Trajectory } from './trajectory.ts';

/** How much one step may be wrong: volts, and this share of the voltage besides. */
export interface StepTolerance {
  readonly volts: number;
  readonly share: number;
}

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

/** Carry the last three rows on to a time, in units; what is known of the slope at the start stands for a row before it. */
function predict(run: Trajectory, work: StepWork, time: number): void {
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

function blend(run: Trajectory, work: StepWork, first: number, time: number, into: Float64Array): void {
  blendFrom(run, first, time, work.weights);
  const [one, two, three] = work.weights;
  const { rows, width } = run;
  const at = first * width;
  const have = run.count - first;
  const columns = movingColumns(run);
  for (let column = 0; column < columns; column++) {
    let sum = one * (rows[at + column] as number);
    if (have > 1) sum += two * (rows[at + width + column] as number);
    if (have > 2) sum += three * (rows[at + 2 * width + column] as number);
    into[column] = sum;
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

/** The row at a time, among the last three; -1 when none stands there. */
function rowAt(run: Trajectory, time: number): number {
  for (let at = run.count - 1; at >= 0 && at > run.count - 4; at--) if (run.times[at] === time) return at;
  return -1;
}

/** The error of the step just solved, over the error allowed: at most 1 is good. Judged by the distance from the prediction. */
function errorOf(work: StepWork, run: Trajectory, time: number, tolerance: StepTolerance): number {
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

function worstNode(compiled: CompiledCircuit, work: StepWork, { still }: Trajectory): string {
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
