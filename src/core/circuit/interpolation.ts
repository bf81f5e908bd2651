/** Reading a trajectory between its rows: by the parabola through the nearest three. */
import type { Trajectory } from './trajectory.ts';

/** Weights of a row and the two after it in what is read from them. */
export interface Blend {
  first: number;
  readonly weights: Float64Array;
}

/** A blend to be set. */
export function makeBlend(): Blend {
  return { first: 0, weights: new Float64Array(3) };
}

/** Set a blend to the parabola through rows `first` to `first + 2` (fewer when there are not so many) at a time, units. */
export function setBlend({ times, count }: Trajectory, first: number, time: number, into: Blend): void {
  const { weights } = into;
  into.first = first;
  const a = times[first]!;
  const b = times[first + 1]!;
  if (count - first < 3) {
    weights[1] = count - first > 1 ? (time - a) / (b - a) : 0;
    weights[0] = 1 - weights[1];
    weights[2] = 0;
    return;
  }
  const c = times[first + 2]!;
  weights[0] = ((time - b) * (time - c)) / ((a - b) * (a - c));
  weights[1] = ((time - a) * (time - c)) / ((b - a) * (b - c));
  weights[2] = ((time - a) * (time - b)) / ((c - a) * (c - b));
}

/** Turn a blend into the slope, a unit, of its own parabola at a time, units. */
export function setSlopeBlend({ times, count }: Trajectory, time: number, { first, weights }: Blend): void {
  weights.fill(0);
  if (count - first < 2) return;
  const a = times[first]!;
  const b = times[first + 1]!;
  weights[0] = 1 / (a - b);
  weights[1] = -weights[0];
  if (count - first < 3) return;
  const c = times[first + 2]!;
  weights[0] *= (2 * time - b - c) / (a - c);
  weights[1] *= (2 * time - a - c) / (b - c);
  weights[2] = (2 * time - a - b) / ((c - a) * (c - b));
}

/** Set a blend to read a trajectory at a time, seconds: the parabola through the two rows about it and one more beside. */
export function blendAt(run: Trajectory, seconds: number, into: Blend): void {
  const time = seconds / run.unitSeconds;
  let low = 0;
  let high = Math.max(0, run.count - 2);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (run.times[middle]! <= time) low = middle;
    else high = middle - 1;
  }
  setBlend(run, Math.max(0, Math.min(low - 1, run.count - 3)), time, into);
}

/** What a quantity comes to by a blend, given its value in each row. */
export function readBlend({ first, weights }: Blend, read: (row: number) => number): number {
  const one = weights[0]!;
  const two = weights[1]!;
  const three = weights[2]!;
  return (
    one * read(first) + (two === 0 ? 0 : two * read(first + 1)) + (three === 0 ? 0 : three * read(first + 2))
  );
}

/** The first `columns` columns of a trajectory by a blend, scaled. */
export function readRow(
  { rows, width, count }: Trajectory,
  { first, weights }: Blend,
  into: Float64Array,
  columns: number,
  scale = 1,
): void {
  const one = weights[0]!;
  const two = weights[1]!;
  const three = weights[2]!;
  const at = first * width;
  const have = count - first;
  for (let column = 0; column < columns; column++) {
    let sum = one * rows[at + column]!;
    if (have > 1) sum += two * rows[at + width + column]!;
    if (have > 2) sum += three * rows[at + 2 * width + column]!;
    into[column] = scale * sum;
  }
}
