/**
 * What a circuit did from one corner of its drive on, step by step. Times are counted in units of the trajectory, each step
 * being the unit halved or doubled some times over, so that times are exact and one factored matrix serves all equal steps.
 */
import type { CompiledCircuit } from './compile.ts';

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

/** One run. A row holds every unknown, then volts, coulombs and amperes of every junction. */
export interface Trajectory {
  readonly room: RowRoom;
  readonly unknowns: number;
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

/** A trajectory that starts with the circuit's present solution; `stepSeconds` is the first step to try. */
export function startTrajectory(
  compiled: CompiledCircuit,
  room: RowRoom,
  unitSeconds: number,
  stepSeconds: number,
  ends = true,
  slopes?: Float64Array,
): Trajectory {
  const { unknowns } = compiled;
  const junctions = compiled.junctions.volts.length;
  const width = unknowns + 3 * junctions;
  // Powers of two keep every sum of steps exact.
  const step = 2 ** Math.min(0, Math.round(Math.log2(stepSeconds / unitSeconds)));
  const first = ends ? FIRST_ROWS : FIRST_OPEN_ROWS;
  const made: Trajectory = {
    room,
    unknowns,
    junctions,
    width,
    unitSeconds,
    slopes,
    count: 0,
    times: takeRoom(room, first),
    rows: takeRoom(room, first * width),
    step,
    ends,
  };
  addRow(compiled, made, 0);
  return made;
}

/** Add the circuit's present solution as the row at a time, units. */
export function addRow(compiled: CompiledCircuit, run: Trajectory, time: number): void {
  if (run.count === run.times.length) {
    const times = takeRoom(run.room, 2 * run.count);
    const rows = takeRoom(run.room, 2 * run.count * run.width);
    times.set(run.times);
    rows.set(run.rows);
    run.times = times;
    run.rows = rows;
  }
  const { solution, junctions } = compiled;
  const { rows } = run;
  let into = run.count * run.width;
  for (let at = 0; at < run.unknowns; at++) rows[into++] = solution[at] as number;
  for (let at = 0; at < run.junctions; at++) rows[into++] = junctions.volts[at] as number;
  for (let at = 0; at < run.junctions; at++) rows[into++] = junctions.charges.coulombs[at] as number;
  for (let at = 0; at < run.junctions; at++) rows[into++] = junctions.amperes[at] as number;
  run.times[run.count++] = time;
}

/** Put row `at` of a trajectory back into the circuit, as the state to go on from. */
export function restoreRow(compiled: CompiledCircuit, run: Trajectory, at: number): void {
  const { solution, junctions } = compiled;
  const { rows } = run;
  let from = at * run.width;
  for (let one = 0; one < run.unknowns; one++) solution[one] = rows[from++] as number;
  for (let one = 0; one < run.junctions; one++) junctions.volts[one] = rows[from++] as number;
  for (let one = 0; one < run.junctions; one++) junctions.charges.coulombs[one] = rows[from++] as number;
  for (let one = 0; one < run.junctions; one++) junctions.amperes[one] = rows[from++] as number;
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
