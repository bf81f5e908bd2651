/**
 * Steps in time by BDF2, the second-order backward difference formula: x' = (3 x - 4 x1 + x2) / (2 h), where x2 lies one step of
 * the same length further back and is read from the parabola through the last rows. So one step length needs one eliminated mesh.
 * A run begins with one step by the trapezoidal rule where the slope at its start is known, and with backward Euler where it is
 * not. (Gear, Numerical Initial Value Problems, 1971; the formula's error is 2/9 h^3 x''' a step.)
 */
import type { CompiledCircuit } from './compiled.ts';
import { THERMAL_VOLTS } from './elements.ts';
import { readRow, setBlend } from './interpolation.ts';
import { junctionLaw, setCharge } from './junction.ts';
import { blendFlow, drive, driveRest, listBranches, subtractFlow } from './flow.ts';
import { reduceSide } from './mesh.ts';
import { newton } from './newton.ts';
import { errorOf, furthestOff, predict } from './predictor.ts';
import { takeIndices } from './room.ts';
import { loadSources, movingMesh, setBase } from './stamp.ts';
import { setSlide } from './slide.ts';
import type { Slide } from './slide.ts';
import type { StepTolerance, StepWork } from './step-work.ts';
import { setOffsets } from './supernodes.ts';
import { addRow, endOf, standOn, startTrajectory } from './trajectory.ts';
import type { Trajectory } from './trajectory.ts';

/** Below this share of the unit no step is tried: something in the circuit does not settle. */
const LEAST_STEP = 2 ** -48;

/** Steps of one stretch, those taken back included (our choice): a whole byte through links 1 to 200 000 of `npm run soak:links` took 2106 moments at most. */
const MOST_STEPS = 4096;

/** How well a jump is solved, volts: as an operating point is. */
const JUMP_TOLERANCE: StepTolerance = { volts: 1e-9, share: 0 };

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

/** Give every junction the charge of its present voltage: what joins a circuit at rest to the same circuit in time. */
export function chargeAtRest({ junctions }: CompiledCircuit): void {
  const law = { amperes: 0, siemens: 0 };
  for (const junction of junctions) {
    junctionLaw(junction, junction.volts, law);
    setCharge(junction, junction.volts, law);
  }
}

/**
 * Take a trajectory on until it reaches `untilUnits`, or no step settles however short; the circuit then stands on its last row.
 * @param slide parts that change on the way, or undefined while the drive stands still.
 */
export function advance(
  compiled: CompiledCircuit,
  work: StepWork,
  run: Trajectory,
  untilUnits: number,
  tolerance: StepTolerance,
  slide?: Slide,
): void {
  if (endOf(run) >= untilUnits || run.failedAt !== undefined) return;
  if (run.count === 1) takeSources(compiled, run, slide);
  else setOffsets(compiled);
  work.mesh = undefined;
  work.motion.voltTolerance = Math.sqrt(2 * THERMAL_VOLTS * NEWTON_SHARE * tolerance.volts);
  for (let tried = 0; endOf(run) < untilUnits; tried++) {
    if (run.step < LEAST_STEP || tried === MOST_STEPS) {
      run.failedAt = furthestOff(work, run);
      break;
    }
    tryStep(compiled, work, run, tolerance, slide);
  }
  standOn(compiled, run, run.rows.subarray((run.count - 1) * run.width), endOf(run));
}

/** Try the run's next step: a row more where it is good, else a shorter step to be tried. */
function tryStep(
  compiled: CompiledCircuit,
  work: StepWork,
  run: Trajectory,
  tolerance: StepTolerance,
  slide: Slide | undefined,
): void {
  const time = endOf(run) + run.step;
  predict(run, work, run.moving + 2 * compiled.junctions.length, time);
  if (slide) {
    setSlide(compiled, slide, time);
    setOffsets(compiled);
  }
  if (!solveStep(compiled, work, run, time)) return goBack(run, run.count - 1, run.step / 8);
  const error = run.count === 1 ? 0 : errorOf(work, run, time, tolerance);
  // The first step has nothing to be judged by, so the second judges both.
  if (error > 1 && run.step * run.unitSeconds > JUMP_SECONDS)
    return goBack(run, run.count === 2 ? 0 : run.count - 1, run.step / (error > 8 ? 4 : 2));
  addRow(compiled, run, time, work.solved);
  if (run.count > 2) run.step = nextStep(run, time, error);
}

/** A trajectory of so many seconds in which nothing moves, from where the circuit stands. */
export function standStill(compiled: CompiledCircuit, seconds: number): Trajectory {
  const run = startTrajectory(compiled, seconds, seconds);
  takeSources(compiled, run);
  // One row would do, and two make it readable to its end.
  addRow(compiled, run, 1, run.rows);
  return run;
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
export function jump(compiled: CompiledCircuit, work: StepWork): Trajectory {
  const run = startTrajectory(compiled, JUMP_SECONDS, JUMP_SECONDS);
  advance(compiled, work, run, 1, JUMP_TOLERANCE);
  return run;
}

/**
 * Work out what the sources come to at the start of a run and at its end. Sources that move a supernode's nodes against each other
 * do so evenly, so that what this drives through capacitors is a current that stays the same.
 */
function takeSources(compiled: CompiledCircuit, run: Trajectory, slide?: Slide): void {
  const { topology, moving, stillFrom, stillTo, flowFrom, flowTo, offsetsFrom, offsetsTo } = run;
  const { side, movingFlow, capacitorRows, stillCount } = topology;
  const take = (still: Float64Array, flow: Float64Array): void => {
    loadSources(compiled, topology, 1);
    still.set(side.subarray(0, stillCount));
    flow.set(movingFlow);
  };
  run.slides = slide !== undefined;
  if (slide) setSlide(compiled, slide, 1);
  take(stillTo, flowTo);
  offsetsTo.set(compiled.supernodes.offsets);
  if (slide) {
    setSlide(compiled, slide, 0);
    take(stillFrom, flowFrom);
  } else {
    stillFrom.set(stillTo);
    flowFrom.set(flowTo);
  }
  const { ofKind, first, second, values } = compiled;
  ofKind.capacitor.forEach((at, place) => {
    const [a, b] = [first[at]!, second[at]!];
    const moved = offsetsTo[a]! - offsetsFrom[a]! - offsetsTo[b]! + offsetsFrom[b]!;
    if (moved === 0) return;
    const amperes = (values[at]! * moved) / run.unitSeconds;
    for (const flow of [flowFrom, flowTo])
      drive(flow, moving, capacitorRows[2 * place]!, capacitorRows[2 * place + 1]!, amperes);
  });
  const most = takeIndices(compiled.room, moving * (moving + 1));
  run.branches = listBranches(run.still.schur, moving, flowFrom, flowTo, most);
}

function goBack(run: Trajectory, row: number, step: number): void {
  run.count = row + 1;
  run.step = step >= 2 * LEAST_STEP || step < LEAST_STEP ? step : LEAST_STEP;
}

/**
 * Solve one step, from the prediction. @returns whether it settled; its volts are then in `work.solved`.
 * What is solved for is how far the volts move from the last row, driven by the currents that this row leaves over, branch by
 * branch: between the ends of a capacitor the amperes of a short step at full volts would be thousands, whose rounding alone
 * would drive a part that hangs on a blocked junction volts away.
 */
function solveStep(compiled: CompiledCircuit, work: StepWork, run: Trajectory, time: number): boolean {
  const { moving, topology, still, slides, flowFrom, flowTo } = run;
  const { motion, predicted, drift, last, solved } = work;
  const { junctions, ofKind, values } = compiled;
  const { capacitorRows, movingFlow } = topology;
  takePast(work, run, moving, moving + 2 * junctions.length);
  setBase(compiled, topology, last);
  const flow = slides ? blendFlow(flowFrom, flowTo, time, movingFlow) : flowFrom;
  for (let at = 0; at <= moving; at++) solved[at] = 0;
  subtractFlow(run.branches, still.schur, moving, last, flow, solved);
  // Ground's drift is none: what belongs to the junctions stands in its place.
  for (let at = 0; at < capacitorRows.length; at += 2) {
    const a = capacitorRows[at]!;
    const b = capacitorRows[at + 1]!;
    const farads = values[ofKind.capacitor[at >> 1]!]!;
    const amperes = farads * ((a < moving ? drift[a]! : 0) - (b < moving ? drift[b]! : 0));
    solved[a]! -= amperes;
    solved[b]! += amperes;
  }
  const coulombsAt = moving + junctions.length;
  const rowAt = (run.count - 1) * run.width;
  for (let at = 0; at < junctions.length; at++) {
    const junction = junctions[at]!;
    junction.volts = predicted[moving + at]!;
    junction.pastAmperes = drift[coulombsAt + at]! - motion.perSecond * run.rows[rowAt + coulombsAt + at]!;
  }
  if (work.mesh?.perSecond !== motion.perSecond) work.mesh = movingMesh(compiled, topology, motion.perSecond);
  const { mesh } = work;
  reduceSide(mesh, solved);
  driveRest(mesh, solved, topology.linearFlow);
  if (newton(compiled, topology, mesh, solved, motion) !== undefined) return false;
  for (let at = 0; at < moving; at++) solved[at]! += last[at]!;
  return true;
}

/**
 * Set the formula x' = perSecond (x - last) + drift: by BDF2, and for the first step of a run by the trapezoidal rule or backward
 * Euler.
 */
function takePast(
  { motion, drift, last, blend }: StepWork,
  run: Trajectory,
  moving: number,
  columns: number,
): void {
  const { rows, width, count, times, step, unitSeconds, slopes } = run;
  const from = (count - 1) * width;
  const rate = 1 / (step * unitSeconds);
  for (let at = 0; at < moving; at++) last[at] = rows[from + at]!;
  last[moving] = 0;
  if (count > 1) {
    motion.perSecond = 1.5 * rate;
    const back = times[count - 1]! - step;
    const half = 0.5 * rate;
    if (times[count - 2] === back) {
      for (let at = from; at < from + columns; at++)
        drift[at - from] = half * (rows[at - width]! - rows[at]!);
    } else {
      setBlend(run, Math.max(0, count - 3), back, blend);
      readRow(run, blend, drift, columns);
      for (let at = 0; at < columns; at++) drift[at] = half * (drift[at]! - rows[from + at]!);
    }
  } else if (slopes) {
    motion.perSecond = 2 * rate;
    for (let at = 0; at < columns; at++) drift[at] = -slopes[at]!;
  } else {
    motion.perSecond = rate;
    drift.fill(0);
  }
}
