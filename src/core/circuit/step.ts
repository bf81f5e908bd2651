/**
 * Steps in time by the second-order backward difference formula: x' = (3 x - 4 x1 + x2) / (2 h), where x2 lies one step of the
 * same length further back and is read from the parabola through the last rows when no row stands there. So one step length needs
 * one factored matrix. A run begins with one backward Euler step. (Gear, Numerical Initial Value Problems, 1971; the formula's
 * error is 2/9 h^3 x''' a step.)
 */
import { GROUND, setValueAt } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { GMIN_SIEMENS, THERMAL_VOLTS } from './elements.ts';
import { reduceSide } from './matrix.ts';
import type { Factor } from './matrix.ts';
import { newton } from './newton.ts';
import type { Motion } from './newton.ts';
import { factorFor, loadSources } from './stamp.ts';
import { addRow, blendFrom, restoreRow, rowRoom } from './trajectory.ts';
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
  readonly predicted: Float64Array;
  readonly back: Float64Array;
  readonly side: Float64Array;
  /** The sources alone, as long as the drive stands still. */
  readonly sources: Float64Array;
  readonly weights: [number, number, number];
  /** What each node's past adds to the charge current of one farad, amperes; the last entry is ground's, 0. */
  readonly past: Float64Array;
  /** Ends of each capacitor as places in `past`. */
  readonly firstEnds: Int32Array;
  readonly secondEnds: Int32Array;
  /** Nodes that a step is judged by: those of capacitors, junctions and switches. All others follow them in a straight line. */
  readonly watched: Int32Array;
  readonly room: RowRoom;
  /** The factor used last, and its companion of the capacitors: steps of one length follow one another. */
  factor: Factor | undefined;
  perSecond: number;
}

/** Work space for a circuit. */
export function stepWork(compiled: CompiledCircuit): StepWork {
  const junctions = compiled.junctions.volts.length;
  const width = compiled.unknowns + 3 * junctions;
  return {
    motion: { perSecond: 0, pastAmperes: new Float64Array(junctions), voltTolerance: 0 },
    predicted: new Float64Array(width),
    back: new Float64Array(width),
    side: new Float64Array(compiled.unknowns + 1),
    sources: new Float64Array(compiled.unknowns + 1),
    weights: [1, 0, 0],
    past: new Float64Array(compiled.unknowns + 1),
    firstEnds: endsIn(compiled, compiled.first),
    secondEnds: endsIn(compiled, compiled.second),
    watched: watchedIn(compiled),
    room: rowRoom(),
    factor: undefined,
    perSecond: 0,
  };
}

/** One end of each capacitor, ground counted as the place after the last unknown. */
function endsIn({ ofKind, unknowns }: CompiledCircuit, ends: Int32Array): Int32Array {
  return ofKind.capacitor.map((at) => (ends[at] === GROUND ? unknowns : (ends[at] as number)));
}

function watchedIn({ ofKind, first, second }: CompiledCircuit): Int32Array {
  const nodes = new Set<number>();
  for (const kind of ['capacitor', 'diode', 'switch'] as const)
    for (const at of ofKind[kind]) nodes.add(first[at] as number).add(second[at] as number);
  nodes.delete(GROUND);
  return Int32Array.from(nodes);
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
  restoreRow(compiled, run, run.count - 1);
  stand(compiled, work);
  work.motion.voltTolerance = Math.sqrt(2 * THERMAL_VOLTS * NEWTON_SHARE * tolerance.volts);
  while ((run.times[run.count - 1] as number) < untilUnits) {
    if (run.step < LEAST_STEP)
      throw new Error(`circuit: no step in time settles${worstNode(compiled, work)}`);
    const now = run.times[run.count - 1] as number;
    const time = now + run.step;
    predict(run, work, time);
    if (slide) {
      slideTo(compiled, slide, time);
      loadSources(compiled, 1, work.sources);
    }
    if (!solveStep(compiled, work, run)) {
      goBack(compiled, run, run.count - 1, run.step / 8);
      continue;
    }
    const error = run.count === 1 ? 0 : errorOf(compiled, work, run, time, tolerance);
    if (error > 1 && run.step * run.unitSeconds > JUMP_SECONDS) {
      // The first step has nothing to be judged by, so the second judges both.
      goBack(compiled, run, run.count === 2 ? 0 : run.count - 1, run.step / (error > 8 ? 4 : 2));
      continue;
    }
    addRow(compiled, run, time);
    if (run.count > 2) run.step = nextStep(run, time, error);
  }
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
export function jump(compiled: CompiledCircuit, work: StepWork, unitSeconds: number): void {
  const run = startOf(compiled, work, unitSeconds);
  stand(compiled, work);
  predict(run, work, run.step);
  if (!solveStep(compiled, work, run))
    throw new Error(`circuit: no jump settles${worstNode(compiled, work)}`);
}

/** Take up the values and switch positions as they are now. */
function stand(compiled: CompiledCircuit, work: StepWork): void {
  work.factor = undefined;
  loadSources(compiled, 1, work.sources);
}

function startOf(compiled: CompiledCircuit, work: StepWork, unitSeconds: number): Trajectory {
  const junctions = compiled.junctions.volts.length;
  const width = compiled.unknowns + 3 * junctions;
  const run: Trajectory = {
    room: work.room,
    unknowns: compiled.unknowns,
    junctions,
    width,
    unitSeconds,
    slopes: undefined,
    count: 0,
    times: new Float64Array(1),
    rows: new Float64Array(width),
    step: JUMP_SECONDS / unitSeconds,
    ends: true,
  };
  addRow(compiled, run, 0);
  return run;
}

function goBack(compiled: CompiledCircuit, run: Trajectory, row: number, step: number): void {
  run.count = row + 1;
  run.step = step >= 2 * LEAST_STEP || step < LEAST_STEP ? step : LEAST_STEP;
  restoreRow(compiled, run, row);
}

function slideTo(compiled: CompiledCircuit, { parts, from, to }: Slide, time: number): void {
  for (let at = 0; at < parts.length; at++) {
    const start = from[at] as number;
    setValueAt(compiled, parts[at] as number, start + ((to[at] as number) - start) * time);
  }
}

/** Carry the last three rows on to a time, in units; what is known of the slope at the start stands for a row before it. */
function predict(run: Trajectory, work: StepWork, time: number): void {
  const { slopes, rows, width } = run;
  if (slopes && run.count < 3) {
    const seconds = time * run.unitSeconds;
    const bend = run.count === 1 ? 0 : (time / (run.times[1] as number)) ** 2;
    const there = run.count === 1 ? 0 : (run.times[1] as number) * run.unitSeconds;
    const second = (run.count - 1) * width;
    for (let column = 0; column < width; column++) {
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

function blend(run: Trajectory, work: StepWork, first: number, time: number, into: Float64Array): void {
  blendFrom(run, first, time, work.weights);
  const [one, two, three] = work.weights;
  const { rows, width } = run;
  const at = first * width;
  const have = run.count - first;
  for (let column = 0; column < width; column++) {
    let sum = one * (rows[at + column] as number);
    if (have > 1) sum += two * (rows[at + width + column] as number);
    if (have > 2) sum += three * (rows[at + 2 * width + column] as number);
    into[column] = sum;
  }
}

function solveStep(compiled: CompiledCircuit, work: StepWork, run: Trajectory): boolean {
  const { unknowns, junctions: count, width } = run;
  const { motion, side, predicted } = work;
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
  side.set(work.sources);
  const { past, firstEnds, secondEnds } = work;
  const nodes = compiled.nodeNames.length;
  for (let node = 0; node < nodes; node++)
    past[node] = nowShare * (now[last + node] as number) + backShare * (then[back + node] as number);
  if (slopes)
    for (let node = 0; node < nodes; node++) past[node] = (past[node] as number) - (slopes[node] as number);
  const capacitors = compiled.ofKind.capacitor;
  for (let at = 0; at < capacitors.length; at++) {
    const a = firstEnds[at] as number;
    const b = secondEnds[at] as number;
    const amperes =
      (compiled.values[capacitors[at] as number] as number) * ((past[a] as number) - (past[b] as number));
    side[a] = (side[a] as number) - amperes;
    side[b] = (side[b] as number) + amperes;
  }
  const voltsAt = unknowns;
  const chargeAt = unknowns + count;
  for (let at = 0; at < count; at++) {
    motion.pastAmperes[at] =
      nowShare * (now[last + chargeAt + at] as number) + backShare * (then[back + chargeAt + at] as number);
    if (slopes) motion.pastAmperes[at]! -= slopes[chargeAt + at] as number;
    compiled.junctions.volts[at] = predicted[voltsAt + at] as number;
  }
  reduceSide(factor, side);
  return newton(compiled, factor, GMIN_SIEMENS, motion).converged;
}

function stepFactor(compiled: CompiledCircuit, work: StepWork): Factor {
  const { perSecond } = work.motion;
  if (work.factor && work.perSecond === perSecond) return work.factor;
  work.perSecond = perSecond;
  return (work.factor = factorFor(compiled, perSecond));
}

/** The row at a time, among the last three; -1 when none stands there. */
function rowAt(run: Trajectory, time: number): number {
  for (let at = run.count - 1; at >= 0 && at > run.count - 4; at--) if (run.times[at] === time) return at;
  return -1;
}

/** The error of the step just solved, over the error allowed: at most 1 is good. Judged by the distance from the prediction. */
function errorOf(
  compiled: CompiledCircuit,
  work: StepWork,
  run: Trajectory,
  time: number,
  tolerance: StepTolerance,
): number {
  const { solution } = compiled;
  const { predicted, watched } = work;
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
    const volts = solution[node] as number;
    const off = Math.abs(volts - (predicted[node] as number));
    const allowed = tolerance.volts + tolerance.share * Math.abs(volts);
    if (!(off <= worst * allowed)) worst = off / allowed;
  }
  return worst * share;
}

function worstNode(compiled: CompiledCircuit, work: StepWork): string {
  let worst = -1;
  let most = 0;
  for (let node = 0; node < compiled.nodeNames.length; node++) {
    const off = Math.abs((compiled.solution[node] as number) - (work.predicted[node] as number));
    if (off > most) {
      most = off;
      worst = node;
    }
  }
  return worst < 0 ? '' : `; the furthest off is node '${compiled.nodeNames[worst] as string}'`;
}
