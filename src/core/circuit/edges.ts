/**
 * A circuit whose drive goes back and forth between two states. It does not change with time, so what follows an edge depends
 * only on where the circuit stood and which way the drive went: an edge solved once is used again wherever both are the same.
 */
import { advance, chargeAtRest, jump, standStill } from './bdf2.ts';
import { setValueAt } from './compile.ts';
import type { CompiledCircuit } from './compiled.ts';
import { blendAt, readRow, setSlopeBlend } from './interpolation.ts';
import { settle } from './operating-point.ts';
import type { Unsolved } from './operating-point.ts';
import { answers } from './response.ts';
import type { Response } from './response.ts';
import { slideOf } from './slide.ts';
import { takeNumbers } from './room.ts';
import { stepWork } from './step-work.ts';
import type { StepTolerance, StepWork } from './step-work.ts';
import { endOf, standOn, startTrajectory, widestRow } from './trajectory.ts';
import type { Trajectory } from './trajectory.ts';
import type { Stretch } from './transient.ts';

/** Edges kept for one circuit; a message needs tens, so this is a guard. */
const EDGES_KEPT = 256;

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
interface DriveEdge {
  readonly seconds: number;
  readonly level: boolean;
}

/** Everything needed to follow edges through one circuit. */
export interface EdgeWork {
  readonly compiled: CompiledCircuit;
  readonly states: TwoStates;
  readonly tolerance: StepTolerance;
  readonly reuse: boolean;
  readonly steps: StepWork;
  /** The edges solved that may come again. */
  readonly known: Response[];
  /** First steps that held, seconds, by level, on the way and at rest. */
  readonly firstSteps: Map<string, number>;
  /** How every node is changing where the circuit stands, a second, and after them what belongs to each junction. */
  readonly slopes: Float64Array;
  /** Room for one row. */
  readonly row: Float64Array;
}

/** Make a circuit ready to follow edges. `reuse` false solves every edge afresh. */
export function edgeWork(
  compiled: CompiledCircuit,
  states: TwoStates,
  tolerance: StepTolerance,
  reuse = true,
): EdgeWork {
  const width = widestRow(compiled);
  return {
    compiled,
    states,
    tolerance,
    reuse,
    steps: stepWork(compiled),
    known: [],
    firstSteps: new Map(),
    slopes: takeNumbers(compiled.room, width),
    row: takeNumbers(compiled.room, width),
  };
}

/** A drive followed: `stretches` cover all of the time asked for; where `unsolved` names a moment nothing moves from there on. */
interface Followed {
  readonly stretches: readonly Stretch[];
  readonly unsolved: Unsolved | undefined;
}

/** The stretches of a drive as they are added, one after the other from `here` on. */
class Following {
  readonly stretches: Stretch[] = [];
  readonly #work: EdgeWork;
  /** Values of the driven parts where the stretches end. */
  values: readonly number[];
  #here: number;

  constructor(work: EdgeWork, values: readonly number[], fromSeconds: number) {
    this.#work = work;
    this.values = values;
    this.#here = fromSeconds;
  }

  /** Nothing moves until then. */
  hold(seconds: number): void {
    if (seconds <= this.#here) return;
    const { compiled, states } = this.#work;
    const driven = { parts: states.parts, from: this.values, to: this.values };
    const run = standStill(compiled, seconds - this.#here);
    this.stretches.push({ fromSeconds: this.#here, toSeconds: seconds, run, driven });
    this.#here = seconds;
  }

  /** Add a run; where it gives up before its time nothing moves to the end. */
  add(seconds: number, run: Trajectory, to: readonly number[]): Unsolved | undefined {
    const { compiled, states } = this.#work;
    const reached =
      run.failedAt === undefined ? seconds : Math.min(seconds, this.#here + endOf(run) * run.unitSeconds);
    const driven = { parts: states.parts, from: this.values, to };
    if (reached > this.#here)
      this.stretches.push({ fromSeconds: this.#here, toSeconds: reached, run, driven });
    this.#here = reached;
    this.values = to;
    return reached < seconds ? notSolved(compiled, run, reached) : undefined;
  }
}

/**
 * Follow a drive from a state at rest through its edges. Edges in order of time, each a real change, the first not before
 * `fromSeconds`, the last before `toSeconds`.
 */
export function followEdges(
  work: EdgeWork,
  before: boolean,
  edges: readonly DriveEdge[],
  fromSeconds: number,
  toSeconds: number,
): Followed {
  const { compiled, states } = work;
  const following = new Following(work, states.values(before), fromSeconds);
  setParts(work, following.values);
  let unsolved = settle(compiled);
  if (unsolved) compiled.volts.fill(0);
  chargeAtRest(compiled);
  work.slopes.fill(0);
  following.hold(edges[0]?.seconds ?? toSeconds);
  for (let at = 0; at < edges.length && !unsolved; at++) {
    const { seconds, level } = edges[at]!;
    const next = edges[at + 1]?.seconds ?? toSeconds;
    const target = states.values(level);
    const lasts = level ? states.riseSeconds : states.fallSeconds;
    const turn = Math.min(next, seconds + lasts);
    const response = respond(work, level, following.values);
    const { way, from } = response;
    if (way && next <= turn) {
      const share = (next - seconds) / lasts;
      const reached = from.map((one, part) => one + (target[part]! - one) * share);
      unsolved = following.add(next, way, reached);
      standAt(work, way, next - seconds);
      continue;
    }
    unsolved = way && following.add(turn, way, target);
    following.values = target;
    if (unsolved) break;
    const rest = restOf(work, response, next - turn);
    unsolved = following.add(next, rest, target);
    standAt(work, rest, next - turn);
  }
  following.hold(toSeconds);
  return { stretches: following.stretches, unsolved };
}

function notSolved({ nodeNames }: CompiledCircuit, run: Trajectory, seconds: number): Unsolved {
  const node = nodeNames[run.failedAt!]!;
  return { ok: false, node, seconds, reason: `no step in time settles at node '${node}'` };
}

function setParts({ compiled, states }: EdgeWork, values: readonly number[]): void {
  for (let at = 0; at < values.length; at++) setValueAt(compiled, states.parts[at]!, values[at]!);
}

/** What follows an edge from the circuit's present state: known already, or solved now as far as the drive moves. */
function respond(work: EdgeWork, level: boolean, from: readonly number[]): Response {
  const { compiled, states, steps, tolerance } = work;
  const known = work.known.findLast((one) => answers(one, level, from, compiled.volts));
  if (known) return known;
  const lasts = level ? states.riseSeconds : states.fallSeconds;
  const start = takeNumbers(compiled.room, compiled.volts.length);
  start.set(compiled.volts);
  let way: Trajectory | undefined;
  if (lasts > 0) {
    const slide = slideOf(compiled, states.parts, from, states.values(level));
    setParts(work, slide.from);
    const first = firstStep(work, `way ${level}`, lasts * FIRST_SHARE_OF_WAY);
    way = startTrajectory(compiled, lasts, first, true, work.slopes);
    advance(compiled, steps, way, 1, tolerance, slide);
    learn(work, `way ${level}`, way);
  }
  const response: Response = { level, start, from, way, rest: undefined };
  if (work.reuse) {
    if (work.known.length >= EDGES_KEPT) work.known.length = 0;
    work.known.push(response);
  }
  return response;
}

/** What follows once the drive stands still again, for so many seconds. */
function restOf(work: EdgeWork, response: Response, lasts: number): Trajectory {
  const { compiled, steps, states, tolerance } = work;
  const { level, way } = response;
  const target = states.values(level);
  setParts(work, target);
  const fresh = response.rest === undefined;
  if (fresh) {
    const jumped = way ? undefined : jump(compiled, steps).failedAt;
    if (way) standAt(work, way, way.unitSeconds);
    const first = firstStep(work, `rest ${level}`, FIRST_STEP_SECONDS);
    response.rest = startTrajectory(compiled, UNIT_SECONDS, first, false, way && work.slopes);
    response.rest.failedAt = jumped;
  }
  const rest = response.rest!;
  advance(compiled, steps, rest, lasts / rest.unitSeconds, tolerance);
  if (fresh) learn(work, `rest ${level}`, rest);
  return rest;
}

function firstStep(work: EdgeWork, key: string, otherwise: number): number {
  return work.firstSteps.get(key) ?? otherwise;
}

/** Remember the first step that held, so that the next edge of the kind need not search for it. */
function learn(work: EdgeWork, key: string, run: Trajectory): void {
  if (run.count > 1) work.firstSteps.set(key, run.times[1]! * run.unitSeconds);
}

/** Put the circuit where a trajectory stood at a moment. */
function standAt({ compiled, steps, row, slopes }: EdgeWork, run: Trajectory, seconds: number): void {
  const { blend } = steps;
  const time = seconds / run.unitSeconds;
  blendAt(run, seconds, blend);
  readRow(run, blend, row, run.width);
  standOn(compiled, run, row, time);
  setSlopeBlend(run, time, blend);
  readRow(run, blend, row, run.width, 1 / run.unitSeconds);
  const { roots, stillCount } = run.topology;
  for (let at = 0; at < run.moving; at++) slopes[roots[stillCount + at]!] = row[at]!;
  const beyond = compiled.volts.length - run.moving;
  for (let at = run.moving; at < run.width; at++) slopes[at + beyond] = row[at]!;
}
