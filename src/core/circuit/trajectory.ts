/**
 * What a circuit did from one breakpoint of its drive on, step by step. Times are counted in units of the trajectory, each step
 * being the unit halved or doubled some times over, so that times are exact and one eliminated mesh serves all equal steps.
 */
import type { CompiledCircuit, Topology } from './compiled.ts';
import { backSubstitute } from './mesh.ts';
import type { Mesh } from './mesh.ts';
import { takeNumbers } from './room.ts';
import { stillMesh } from './stamp.ts';
import { topologyFor } from './topology.ts';

/** Rows first made room for; more are made when needed. A run with an end is mostly the short way of an edge. */
const FIRST_ROWS = 8;
const FIRST_OPEN_ROWS = 32;

/** Columns of a row that belong to each junction: volts, coulombs, amperes. */
const JUNCTION_COLUMNS = 3;

/**
 * One run. A row of it holds the volts of every moving row of the circuit, then volts, coulombs and amperes of all junctions.
 * The still rows of the circuit follow from these and the sources, and are worked out when they are first read.
 */
export interface Trajectory {
  readonly topology: Topology;
  /** The still rows as they were eliminated when the run was made. */
  readonly still: Mesh;
  /**
   * What the sources drive into the still rows and between the moving ones, and the offsets in supernodes, at time 0 and at one unit:
   * they change evenly, or not at all.
   */
  readonly stillFrom: Float64Array;
  readonly stillTo: Float64Array;
  readonly flowFrom: Float64Array;
  readonly flowTo: Float64Array;
  /** The branches between moving rows that carry anything, each by its two rows. */
  branches: Int32Array;
  /** Whether the sources change at all. */
  slides: boolean;
  readonly offsetsFrom: Float64Array;
  readonly offsetsTo: Float64Array;
  /** How many rows of the circuit move. */
  readonly moving: number;
  readonly width: number;
  /** Length of the unit, seconds. */
  readonly unitSeconds: number;
  /** How the first row was changing already, a second, by column; undefined where nothing is known of it, as after a jump. */
  readonly slopes: Float64Array | undefined;
  /** Number of rows so far. */
  count: number;
  /** Time of each row, units. */
  times: Float64Array;
  rows: Float64Array;
  /** Still rows of the circuit at the first `stillDone` times. */
  stillRows: Float64Array;
  stillDone: number;
  /** The step to try next, units. */
  step: number;
  /** The node that no step settles, which is as far as the run goes; undefined while there is none. */
  failedAt: number | undefined;
  /** Whether the run ends at one unit, where a row must stand; else it goes on for as long as is asked. */
  readonly ends: boolean;
}

const NOTHING = new Float64Array(0);
const NO_BRANCHES = new Int32Array(0);

/** Columns of a row of any run of a circuit at most: what belongs to its nodes, then what belongs to its junctions. */
export function widestRow({ volts, junctions }: CompiledCircuit): number {
  return volts.length + JUNCTION_COLUMNS * junctions.length;
}

/**
 * A trajectory that starts with the circuit's present solution.
 * @param stepSeconds the first step to try.
 * @param slopes how every node is changing, a second, and then the volts, coulombs and amperes of every junction.
 */
export function startTrajectory(
  compiled: CompiledCircuit,
  unitSeconds: number,
  stepSeconds: number,
  ends = true,
  slopes?: Float64Array,
): Trajectory {
  const topology = topologyFor(compiled);
  const still = stillMesh(compiled, topology);
  still.kept = true;
  const { room, volts, supernodes } = compiled;
  const moving = topology.roots.length - topology.stillCount;
  const width = moving + JUNCTION_COLUMNS * compiled.junctions.length;
  const first = ends ? FIRST_ROWS : FIRST_OPEN_ROWS;
  const made: Trajectory = {
    topology,
    still,
    stillFrom: takeNumbers(room, topology.stillCount),
    stillTo: takeNumbers(room, topology.stillCount),
    flowFrom: takeNumbers(room, moving * (moving + 1)),
    branches: NO_BRANCHES,
    slides: false,
    flowTo: takeNumbers(room, moving * (moving + 1)),
    offsetsFrom: takeNumbers(room, volts.length),
    offsetsTo: takeNumbers(room, volts.length),
    moving,
    width,
    unitSeconds,
    slopes: slopes && takeNumbers(room, width),
    count: 0,
    times: takeNumbers(room, first),
    rows: takeNumbers(room, first * width),
    stillRows: NOTHING,
    stillDone: 0,
    // Powers of two keep every sum of steps exact.
    step: 2 ** Math.min(0, Math.round(Math.log2(stepSeconds / unitSeconds))),
    failedAt: undefined,
    ends,
  };
  made.offsetsFrom.set(supernodes.offsets);
  const { movingSide, roots, stillCount } = topology;
  for (let at = 0; at < moving; at++) {
    const root = roots[stillCount + at]!;
    movingSide[at] = volts[root]!;
    if (slopes) made.slopes![at] = slopes[root]!;
  }
  if (slopes) made.slopes!.set(slopes.subarray(volts.length), moving);
  addRow(compiled, made, 0, movingSide);
  return made;
}

/** The time of the last row, units. */
export function endOf({ times, count }: Trajectory): number {
  return times[count - 1]!;
}

/** Volts of a node in a row of a run. */
export function voltsIn(run: Trajectory, row: number, node: number): number {
  const { topology, offsetsFrom, offsetsTo, moving } = run;
  const { stillCount } = topology;
  const from = offsetsFrom[node]!;
  const offset = from + (offsetsTo[node]! - from) * run.times[row]!;
  const place = topology.row[node]! - stillCount;
  if (place === moving) return offset;
  if (place >= 0) return offset + run.rows[row * run.width + place]!;
  if (run.stillDone <= row) findStill(run);
  return offset + run.stillRows[row * stillCount + place + stillCount]!;
}

/** Work out the still rows of the circuit at every time. */
function findStill(run: Trajectory): void {
  const { still, rows, width, moving, stillFrom, stillTo, topology } = run;
  const { stillCount, side, movingSide } = topology;
  run.stillRows = new Float64Array(run.count * stillCount);
  for (let row = 0; row < run.count; row++) {
    const time = run.times[row]!;
    for (let at = 0; at < stillCount; at++)
      side[at] = stillFrom[at]! + (stillTo[at]! - stillFrom[at]!) * time;
    for (let at = 0; at < moving; at++) movingSide[at] = rows[row * width + at]!;
    backSubstitute(still, side);
    run.stillRows.set(side.subarray(0, stillCount), row * stillCount);
  }
  run.stillDone = run.count;
}

/** Add a row at a time, units: the moving rows of the circuit as given, the junctions as they are. */
export function addRow(
  { room, junctions }: CompiledCircuit,
  run: Trajectory,
  time: number,
  moving: Float64Array,
): void {
  if (run.count === run.times.length) {
    const { times, rows } = run;
    run.times = takeNumbers(room, 2 * run.count);
    run.rows = takeNumbers(room, 2 * run.count * run.width);
    run.times.set(times);
    run.rows.set(rows);
  }
  const { rows } = run;
  const count = junctions.length;
  let into = run.count * run.width;
  for (let at = 0; at < run.moving; at++) rows[into++] = moving[at]!;
  for (let at = 0; at < count; at++, into++) {
    const { volts, coulombs, amperes } = junctions[at]!;
    rows[into] = volts;
    rows[into + count] = coulombs;
    rows[into + 2 * count] = amperes;
  }
  run.times[run.count++] = time;
}

/** Put a row, blended or not, into the circuit as its state at a time, units; still rows are left as they are. */
export function standOn(
  { volts, junctions, supernodes }: CompiledCircuit,
  run: Trajectory,
  row: Float64Array,
  time: number,
): void {
  const { roots, stillCount } = run.topology;
  for (let at = 0; at < run.moving; at++) volts[roots[stillCount + at]!] = row[at]!;
  const count = junctions.length;
  for (let at = 0, from = run.moving; at < count; at++, from++) {
    const junction = junctions[at]!;
    junction.volts = row[from]!;
    junction.coulombs = row[from + count]!;
    junction.amperes = row[from + 2 * count]!;
  }
  const { offsets } = supernodes;
  for (let node = 0; node < offsets.length; node++)
    offsets[node] = run.offsetsFrom[node]! + (run.offsetsTo[node]! - run.offsetsFrom[node]!) * time;
}
