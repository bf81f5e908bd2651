/**
 * A circuit whose drive goes back and forth between two states. It does not change with time, so what follows an edge depends
 * only on where the circuit stood and which way the drive went: an edge solved once is used again wherever both are the same.
 */
import { setValueAt } from './compile.ts';
import type { CompiledCircuit } from './compile.ts';
import { settle } from './operating-point.ts';
import type { Unsolved } from './operating-point.ts';
import { chargeAtRest, movingValue } from './rest.ts';
import { advance, jump } from './step.ts';
import { stepWork } from './step-work.ts';
import type { Slide } from './step.ts';
import type { StepTolerance, StepWork } from './step-work.ts';
import type { Stretch } from './trace.ts';
import { blendAt, readRow, slopeFrom } from './blend.ts';
import { standOn, startTrajectory } from './trajectory.ts';
import type { Blend } from './blend.ts';
import type { Trajectory } from './trajectory.ts';

/** Two starts count as the same when no node differs by more, volts: a ten-thousandth of the swing of a 5 V output. */
export const SAME_START_VOLTS = 0.5e-3;

/** Edges kept for one circuit; a message needs tens, so this is a guard. */
const EDGES_KEPT = 256;

/** Ways between two states, and stays in one. */
const DRIVEN_KEPT = 4;

/** Unit of the time after an edge, seconds: about a microsecond, by powers of two from there. */
const UNIT_SECONDS = 1e-6;

/** First step tried when nothing is known yet: seconds, and a share of the way of the drive. */
const FIRST_STEP_SECONDS = 16e-9;
const FIRST_SHARE_OF_WAY = 1 / 2;

/** The driven parts, their values in each state, and how long the way from one to the other takes. */
export interface TwoStates {
  readonly parts: readonly number[];
  /** `true`: the line rests; `false`: a 0 is sent. */
  readonly values: (level: boolean) => readonly number[];
  readonly riseSeconds: number;
  readonly fallSeconds: number;
}

/** A change of the drive. */
export interface DriveEdge {
  readonly seconds: number;
  readonly level: boolean;
}

interface Response {
  readonly level: boolean;
  readonly start: Float64Array;
  readonly from: readonly number[];
  readonly way: Trajectory | undefined;
  readonly wayDriven: Stretch['driven'];
  /** What follows the way; undefined until it is asked for. */
  rest: Trajectory | undefined;
  readonly restDriven: Stretch['driven'];
}

/** Everything needed to follow edges through one circuit; `solvedEdges` and `reusedEdges` count what was done. */
export interface EdgeWork {
  readonly compiled: CompiledCircuit;
  readonly states: TwoStates;
  readonly tolerance: StepTolerance;
  readonly reuse: boolean;
  readonly steps: StepWork;
  readonly known: Response[];
  readonly firstSteps: Map<string, number>;
  readonly blend: Blend;
  readonly driven: { from: readonly number[]; to: readonly number[]; driven: Stretch['driven'] }[];
  /** How every moving unknown is changing where the circuit stands, a second, and after them what belongs to each junction. */
  readonly slopes: Float64Array;
  /** Room for one row. */
  readonly row: Float64Array;
  solvedEdges: number;
  reusedEdges: number;
}

/** Make a circuit ready to follow edges. `reuse` false solves every edge afresh. */
export function edgeWork(
  compiled: CompiledCircuit,
  states: TwoStates,
  tolerance: StepTolerance,
  reuse = true,
): EdgeWork {
  const width = compiled.unknowns + 3 * compiled.junctions.volts.length;
  return {
    compiled,
    states,
    tolerance,
    reuse,
    steps: stepWork(compiled),
    known: [],
    firstSteps: new Map(),
    blend: { first: 0, weights: [1, 0, 0] },
    driven: [],
    slopes: new Float64Array(width),
    row: new Float64Array(width),
    solvedEdges: 0,
    reusedEdges: 0,
  };
}

/**
 * Follow a drive from a state at rest through its edges. Edges in order of time, each a real change, the first not before
 * `fromSeconds`, the last before `toSeconds`.
 * @returns the stretches solved, or what kept the circuit from having a state at rest.
 */
export function followEdges(
  work: EdgeWork,
  before: boolean,
  edges: readonly DriveEdge[],
  fromSeconds: number,
  toSeconds: number,
): readonly Stretch[] | Unsolved {
  const { compiled, states, steps, tolerance } = work;
  let values = states.values(before);
  setParts(work, values);
  const failed = settle(compiled);
  if (failed) return failed;
  chargeAtRest(compiled);
  work.slopes.fill(0);
  const stretches: Stretch[] = [];
  const firstSeconds = edges[0]?.seconds ?? toSeconds;
  if (firstSeconds > fromSeconds) {
    // Nothing moves at rest: one row would do, and two make it readable over the whole stretch.
    const run = startTrajectory(compiled, steps.room, firstSeconds - fromSeconds, firstSeconds - fromSeconds);
    advance(compiled, steps, run, 1, { volts: Infinity, share: 0 });
    stretches.push({ fromSeconds, toSeconds: firstSeconds, run, driven: drivenBy(work, values, values) });
  }
  edges.forEach(({ seconds, level }, index) => {
    const next = edges[index + 1]?.seconds ?? toSeconds;
    const response = respond(work, level, values);
    const lasts = level ? states.riseSeconds : states.fallSeconds;
    const turn = Math.min(next, seconds + lasts);
    if (response.way)
      stretches.push({
        fromSeconds: seconds,
        toSeconds: turn,
        run: response.way,
        driven: response.wayDriven,
      });
    const target = states.values(level);
    if (next <= turn && response.way) {
      const share = (next - seconds) / lasts;
      values = response.from.map((from, at) => from + ((target[at] as number) - from) * share);
      standAt(work, response.way, next - seconds);
      return;
    }
    values = target;
    const rest = restOf(work, response, level);
    setParts(work, target);
    const fresh = rest.count === 1;
    advance(compiled, steps, rest, (next - turn) / rest.unitSeconds, tolerance);
    if (fresh) learn(work, `rest ${level}`, rest);
    stretches.push({ fromSeconds: turn, toSeconds: next, run: rest, driven: response.restDriven });
    standAt(work, rest, next - turn);
  });
  return stretches;
}

function setParts({ compiled, states }: EdgeWork, values: readonly number[]): void {
  for (let at = 0; at < values.length; at++)
    setValueAt(compiled, states.parts[at] as number, values[at] as number);
}

/** Values of the driven parts at both ends of a stretch; the four that come again and again are kept. */
function drivenBy(work: EdgeWork, from: readonly number[], to: readonly number[]): Stretch['driven'] {
  const known = work.driven.find((one) => one.from === from && one.to === to);
  if (known) return known.driven;
  const driven = new Map(
    work.states.parts.map((part, at): [number, [number, number]] => [
      part,
      [from[at] as number, to[at] as number],
    ]),
  );
  if (work.driven.length < DRIVEN_KEPT) work.driven.push({ from, to, driven });
  return driven;
}

/** What follows an edge from the circuit's present state: known already, or solved now as far as the drive moves. */
function respond(work: EdgeWork, level: boolean, from: readonly number[]): Response {
  const { compiled, states, steps, tolerance } = work;
  const known = work.reuse ? findKnown(work, level, from) : undefined;
  if (known) {
    work.reusedEdges++;
    return known;
  }
  work.solvedEdges++;
  const lasts = level ? states.riseSeconds : states.fallSeconds;
  const to = states.values(level);
  const start = work.reuse ? compiled.solution.slice(0, compiled.nodeNames.length) : compiled.solution;
  let way: Trajectory | undefined;
  if (lasts > 0) {
    const moving = (values: readonly number[]): readonly number[] =>
      values.map((value, at) => movingValue(compiled, states.parts[at] as number, value));
    const slide: Slide = { parts: states.parts, from: moving(from), to: moving(to) };
    setParts(work, slide.from);
    way = startTrajectory(
      compiled,
      steps.room,
      lasts,
      firstStep(work, `way ${level}`, lasts * FIRST_SHARE_OF_WAY),
      true,
      work.slopes,
    );
    advance(compiled, steps, way, 1, tolerance, slide);
    learn(work, `way ${level}`, way);
  }
  const response: Response = {
    level,
    start,
    from,
    way,
    wayDriven: drivenBy(work, from, to),
    rest: undefined,
    restDriven: drivenBy(work, to, to),
  };
  if (work.reuse) {
    if (work.known.length >= EDGES_KEPT) work.known.length = 0;
    work.known.push(response);
  }
  if (!way) restOf(work, response, level);
  return response;
}

/** What follows once the drive stands still again. */
function restOf(work: EdgeWork, response: Response, level: boolean): Trajectory {
  if (response.rest) return response.rest;
  const { compiled, steps } = work;
  setParts(work, work.states.values(level));
  if (response.way) standAt(work, response.way, response.way.unitSeconds);
  else jump(compiled, steps);
  response.rest = startTrajectory(
    compiled,
    steps.room,
    UNIT_SECONDS,
    firstStep(work, `rest ${level}`, FIRST_STEP_SECONDS),
    false,
    response.way && work.slopes,
  );
  return response.rest;
}

function firstStep(work: EdgeWork, key: string, otherwise: number): number {
  return work.firstSteps.get(key) ?? otherwise;
}

/** Remember the first step that held, so that the next edge of the kind need not search for it. */
function learn(work: EdgeWork, key: string, run: Trajectory): void {
  if (run.count > 1) work.firstSteps.set(key, (run.times[1] as number) * run.unitSeconds);
}

function findKnown(work: EdgeWork, level: boolean, from: readonly number[]): Response | undefined {
  const { solution, nodeNames } = work.compiled;
  const count = nodeNames.length;
  for (let index = work.known.length - 1; index >= 0; index--) {
    const one = work.known[index] as Response;
    if (one.level !== level) continue;
    let same = true;
    for (let at = 0; same && at < from.length; at++)
      same = Math.abs((one.from[at] as number) - (from[at] as number)) <= SAME_START_VOLTS;
    for (let at = 0; same && at < count; at++)
      same = Math.abs((one.start[at] as number) - (solution[at] as number)) <= SAME_START_VOLTS;
    if (same) return one;
  }
  return undefined;
}

/** Put the circuit where a trajectory stood at a moment. */
function standAt(work: EdgeWork, run: Trajectory, seconds: number): void {
  const { compiled, blend } = work;
  blendAt(run, seconds, blend);
  readRow(run, blend.first, blend.weights, work.row, run.width);
  standOn(compiled, run, work.row);
  slopeFrom(run, blend.first, seconds / run.unitSeconds, blend.weights);
  readRow(run, blend.first, blend.weights, work.row, run.width, 1 / run.unitSeconds);
  const { moving, factor } = run.still;
  for (let at = 0; at < moving; at++)
    work.slopes[factor.columnOrder[factor.pivots + at] as number] = work.row[at] as number;
  for (let at = 0; at < 3 * run.junctions; at++)
    work.slopes[compiled.unknowns + at] = work.row[moving + at] as number;
}
