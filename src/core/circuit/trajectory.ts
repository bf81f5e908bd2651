/**
 * What a circuit did from one corner of its drive on, step by step. Times are counted in units of the trajectory, each step
 * being the unit halved or doubled some times over, so that times are exact and one factored matrix serves all equal steps.
 */
import type { CompiledCircuit } from './compile.ts';
import { stillFor } from './stamp.ts';
import type { Still } from './stamp.ts';

/** Rows first made room for; more are made when needed. A run with an end is mostly the short way of an edge. */
const FIRST_ROWS = 8;
const FIRST_OPEN_ROWS = 32;

/** Numbers in one block of memory. */
const BLOCK_NUMBERS = 8192;

/** Memory for trajectories, handed out piece by piece: a block for each would cost more than what is written into it. */
export interface RowRoom {
  block: Float64Array;
  used: number;
}

/** Room with nothing in it. */
export function rowRoom(): RowRoom {
  return { block: new Float64Array(0), used: 0 };
}

function takeRoom(room: RowRoom, numbers: number): Float64Array {
  if (room.used + numbers > room.block.length) {
    room.block = new Float64Array(Math.max(BLOCK_NUMBERS, numbers));
    room.used = 0;
  }
  const piece = room.block.subarray(room.used, room.used + numbers);
  room.used += numbers;
  return piece;
}

/**
 * One run. A row holds every moving unknown, then volts, coulombs and amperes of every junction, then every still unknown.
 * `still` is the part of the circuit that stands still, as it was when the run was made.
 */
export interface Trajectory {
  readonly room: RowRoom;
  readonly still: Still;
  readonly junctions: number;
  readonly width: number;
  /** Length of the unit, seconds. */
  readonly unitSeconds: number;
  /**
   * How the first row was changing already, a second, by column; undefined where nothing is known of it, as after a jump.
   */
  readonly slopes: Float64Array | undefined;
  /** Number of rows so far. */
  count: number;
  /** Time of each row, units. */
  times: Float64Array;
  rows: Float64Array;
  /** The step to try next, units. */
  step: number;
  /** Whether the run ends at one unit, where a row must stand; else it goes on for as long as is asked. */
  readonly ends: boolean;
}

/**
 * A trajectory that starts with the circuit's present solution.
 * @param stepSeconds the first step to try.
 * @param slopes how every unknown is changing, a second, and then the volts, coulombs and amperes of every junction.
 */
export function startTrajectory(
  compiled: CompiledCircuit,
  room: RowRoom,
  unitSeconds: number,
  stepSeconds: number,
  ends = true,
  slopes?: Float64Array,
): Trajectory {
  const still = stillFor(compiled);
  const junctions = compiled.junctions.volts.length;
  const width = compiled.unknowns + 3 * junctions;
  // Powers of two keep every sum of steps exact.
  const step = 2 ** Math.min(0, Math.round(Math.log2(stepSeconds / unitSeconds)));
  const first = ends ? FIRST_ROWS : FIRST_OPEN_ROWS;
  const { solution, junctions: now } = compiled;
  const made: Trajectory = {
    room,
    still,
    junctions,
    width,
    unitSeconds,
    slopes: slopes && takeRoom(room, width),
    count: 1,
    times: takeRoom(room, first),
    rows: takeRoom(room, first * width),
    step,
    ends,
  };
  const { rows, slopes: kept } = made;
  made.times[0] = 0;
  for (let at = 0; at < solution.length; at++) {
    const column = columnOf(made, at);
    rows[column] = solution[at] as number;
    if (kept && slopes) kept[column] = slopes[at] as number;
  }
  const { moving } = still;
  for (let at = 0; at < junctions; at++) {
    rows[moving + at] = now.volts[at] as number;
    rows[moving + junctions + at] = now.charges.coulombs[at] as number;
    rows[moving + 2 * junctions + at] = now.amperes[at] as number;
  }
  for (let at = 0; kept && slopes && at < 3 * junctions; at++)
    kept[moving + at] = slopes[solution.length + at] as number;
  return made;
}

/** The column of an unknown of the circuit in a run's rows. */
export function columnOf({ still, junctions }: Trajectory, unknown: number): number {
  const place = still.factor.columnPlace[unknown] as number;
  return place >= 0 ? place : still.moving + 3 * junctions + still.factor.pivots + place;
}

/** Add a row at a time, units: the moving unknowns as given, the junctions as they are; the still ones are found later. */
export function addRow(
  { junctions }: CompiledCircuit,
  run: Trajectory,
  time: number,
  moving: Float64Array,
): void {
  if (run.count === run.times.length) {
    const times = takeRoom(run.room, 2 * run.count);
    const rows = takeRoom(run.room, 2 * run.count * run.width);
    times.set(run.times);
    rows.set(run.rows);
    run.times = times;
    run.rows = rows;
  }
  const { rows } = run;
  let into = run.count * run.width;
  for (let at = 0; at < run.still.moving; at++) rows[into++] = moving[at] as number;
  for (let at = 0; at < run.junctions; at++) rows[into++] = junctions.volts[at] as number;
  for (let at = 0; at < run.junctions; at++) rows[into++] = junctions.charges.coulombs[at] as number;
  for (let at = 0; at < run.junctions; at++) rows[into++] = junctions.amperes[at] as number;
  run.times[run.count++] = time;
}

/** Put a row, blended or not, into the circuit as its state. */
export function standOn(compiled: CompiledCircuit, run: Trajectory, row: Float64Array, from = 0): void {
  const { solution, junctions } = compiled;
  for (let at = 0; at < solution.length; at++) solution[at] = row[from + columnOf(run, at)] as number;
  let next = from + run.still.moving;
  for (let at = 0; at < run.junctions; at++) junctions.volts[at] = row[next++] as number;
  for (let at = 0; at < run.junctions; at++) junctions.charges.coulombs[at] = row[next++] as number;
  for (let at = 0; at < run.junctions; at++) junctions.amperes[at] = row[next++] as number;
}

/** Number of the last row at or before a time, seconds; 0 before the first, the last but one from the last on. */
export function rowBefore(run: Trajectory, seconds: number): number {
  const time = seconds / run.unitSeconds;
  let low = 0;
  let high = Math.max(0, run.count - 2);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((run.times[middle] as number) <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Weights of three rows in a parabola through them. `rows` are their numbers, times in units. */
export interface Blend {
  first: number;
  weights: [number, number, number];
}

/** Set a blend to read a trajectory at a time, seconds: the parabola through the two rows about it and one more beside. */
export function blendAt(run: Trajectory, seconds: number, into: Blend): void {
  const before = rowBefore(run, seconds);
  const first = Math.max(0, Math.min(before === 0 ? 0 : before - 1, run.count - 3));
  into.first = first;
  blendFrom(run, first, seconds / run.unitSeconds, into.weights);
}

/** Weights of rows `first` to `first + 2` (fewer when there are not so many) for a time in units. */
export function blendFrom(
  run: Trajectory,
  first: number,
  time: number,
  weights: [number, number, number],
): void {
  const { times, count } = run;
  const a = times[first] as number;
  if (count - first < 2) {
    weights[0] = 1;
    weights[1] = weights[2] = 0;
    return;
  }
  const b = times[first + 1] as number;
  if (count - first < 3) {
    weights[1] = (time - a) / (b - a);
    weights[0] = 1 - weights[1];
    weights[2] = 0;
    return;
  }
  const c = times[first + 2] as number;
  weights[0] = ((time - b) * (time - c)) / ((a - b) * (a - c));
  weights[1] = ((time - a) * (time - c)) / ((b - a) * (b - c));
  weights[2] = ((time - a) * (time - b)) / ((c - a) * (c - b));
}

/** One column of a trajectory, read by a blend. */
export function readBlend(run: Trajectory, blend: Blend, column: number): number {
  const at = blend.first * run.width + column;
  const [one, two, three] = blend.weights;
  return (
    one * (run.rows[at] as number) +
    (two === 0 ? 0 : two * (run.rows[at + run.width] as number)) +
    (three === 0 ? 0 : three * (run.rows[at + 2 * run.width] as number))
  );
}

/** Weights of the same rows for the slope at a time, a unit: that of the parabola through them. */
export function slopeFrom(
  run: Trajectory,
  first: number,
  time: number,
  weights: [number, number, number],
): void {
  const { times, count } = run;
  weights[0] = weights[1] = weights[2] = 0;
  if (count - first < 2) return;
  const a = times[first] as number;
  const b = times[first + 1] as number;
  if (count - first < 3) {
    weights[1] = 1 / (b - a);
    weights[0] = -weights[1];
    return;
  }
  const c = times[first + 2] as number;
  weights[0] = (2 * time - b - c) / ((a - b) * (a - c));
  weights[1] = (2 * time - a - c) / ((b - a) * (b - c));
  weights[2] = (2 * time - a - b) / ((c - a) * (c - b));
}
