/** Reading a trajectory between its rows: by the parabola through the nearest three. */
import { unknownIn } from './trajectory.ts';
import type { Trajectory } from './trajectory.ts';

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

/** An unknown of the circuit, read by a blend. */
export function readUnknown(run: Trajectory, { first, weights }: Blend, unknown: number): number {
  const [one, two, three] = weights;
  return (
    one * unknownIn(run, first, unknown) +
    (two === 0 ? 0 : two * unknownIn(run, first + 1, unknown)) +
    (three === 0 ? 0 : three * unknownIn(run, first + 2, unknown))
  );
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

/** The first `columns` columns of rows `first` and on, by weights, scaled. */
export function readRow(
  { rows, width, count }: Trajectory,
  first: number,
  weights: readonly [number, number, number],
  into: Float64Array,
  columns: number,
  scale = 1,
): void {
  const [one, two, three] = weights;
  const at = first * width;
  const have = count - first;
  for (let column = 0; column < columns; column++) {
    let sum = one * (rows[at + column] as number);
    if (have > 1) sum += two * (rows[at + width + column] as number);
    if (have > 2) sum += three * (rows[at + 2 * width + column] as number);
    into[column] = scale * sum;
  }
}
