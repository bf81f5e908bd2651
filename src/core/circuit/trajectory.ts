/**
 * What a circuit did from one corner of its drive on, step by step. Times are counted in units of the trajectory, each step
 * being the unit halved or doubled some times over, so that times are exact and one factored matrix serves all equal steps.
 */
import type { CompiledCircuit } from './compile.ts';
import { workBack } from './matrix.ts';
import { stillFor } from './factors.ts';
import type { Still } from './plans.ts';

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
 * One run. A row holds every moving unknown, then volts, coulombs and amperes of every junction. The still unknowns follow from
 * these and the sources, and are worked out when they are first read.
 */
export interface Trajectory {
  readonly room: RowRoom;
  /** The still part of the circuit as it was when the run was made. */
  readonly still: Still;
  /** What the sources come to for all unknowns, still ones first, at time 0 and at one unit: they change evenly, or not at all. */
  readonly sourcesFrom: Float64Array;
  readonly sourcesTo: Float64Array;
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
  /** Still unknowns of the first `stillCount` rows. */
  stillRows: Float64Array;
  stillCount: number;
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
  const { moving, factor } = still;
  const width = moving + 3 * junctions;
  // Powers of two keep every sum of steps exact.
  const step = 2 ** Math.min(0, Math.round(Math.log2(stepSeconds / unitSeconds)));
  const first = ends ? FIRST_ROWS : FIRST_OPEN_ROWS;
  const { solution, junctions: now } = compiled;
  const made: Trajectory = {
    room,
    still,
    sourcesFrom: takeRoom(room, factor.size),
    sourcesTo: takeRoom(room, factor.size),
    junctions,
    width,
    unitSeconds,
    slopes: slopes && takeRoom(room, width),
    count: 1,
    times: takeRoom(room, first),
    rows: takeRoom(room, first * width),
    stillRows: NOTHING,
    stillCount: 0,
    step,
    ends,
  };
  const { rows, slopes: kept } = made;
  made.times[0] = 0;
  for (let at = 0; at < moving; at++) {
    const unknown = factor.columnOrder[factor.pivots + at] as number;
    rows[at] = solution[unknown] as number;
    if (kept && slopes) kept[at] = slopes[unknown] as number;
  }
  for (let at = 0; at < junctions; at++) {
    rows[moving + at] = now.volts[at] as number;
    rows[moving + junctions + at] = now.charges.coulombs[at] as number;
    rows[moving + 2 * junctions + at] = now.amperes[at] as number;
  }
  for (let at = 0; kept && slopes && at < 3 * junctions; at++)
    kept[moving + at] = slopes[solution.length + at] as number;
  return made;
}

const NOTHING = new Float64Array(0);

/** An unknown of the circuit in a row of a run. */
export function unknownIn(run: Trajectory, row: number, unknown: number): number {
  const { columnPlace, pivots } = run.still.factor;
  const place = columnPlace[unknown] as number;
  if (place >= 0) return run.rows[row * run.width + place] as number;
  if (run.stillCount <= row) findStill(run);
  return run.stillRows[row * pivots + pivots + place] as number;
}

/** Work out the still unknowns of every row. */
function findStill(run: Trajectory): void {
  const { still, rows, width, sourcesFrom, sourcesTo } = run;
  const { answer, side, pivots } = still.factor;
  run.stillRows = new Float64Array(run.count * pivots);
  for (let row = 0; row < run.count; row++) {
    const time = run.times[row] as number;
    for (let at = 0; at < pivots; at++) {
      const from = sourcesFrom[at] as number;
      side[at] = from === sourcesTo[at] ? from : from + ((sourcesTo[at] as number) - from) * time;
    }
    for (let at = 0; at < still.moving; at++) answer[pivots + at] = rows[row * width + at] as number;
    workBack(still.factor);
    run.stillRows.set(answer.subarray(0, pivots), row * pivots);
  }
  run.stillCount = run.count;
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

/** Put a row, blended or not, into the circuit as its state; still unknowns are left as they are. */
export function standOn(compiled: CompiledCircuit, run: Trajectory, row: Float64Array, from = 0): void {
  const { solution, junctions } = compiled;
  const { columnOrder, pivots } = run.still.factor;
  let next = from;
  for (let at = 0; at < run.still.moving; at++)
    solution[columnOrder[pivots + at] as number] = row[next++] as number;
  for (let at = 0; at < run.junctions; at++) junctions.volts[at] = row[next++] as number;
  for (let at = 0; at < run.junctions; at++) junctions.charges.coulombs[at] = row[next++] as number;
  for (let at = 0; at < run.junctions; at++) junctions.amperes[at] = row[next++] as number;
}
