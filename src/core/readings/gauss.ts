/** Readings of one candidate taken together: tolerances move them together, the meter's noise each for itself. */
import { noiseAt } from './scale.ts';
import type { Prediction } from './predict.ts';

/** Readings taken so far of one candidate, with the factor of their covariance. */
export interface Joint {
  readonly predictions: readonly Prediction[];
  /** Lower factor of the covariance, by rows. */
  readonly factor: readonly (readonly number[])[];
  /** Factor solved for the differences between what was read and what was predicted. */
  readonly whitened: readonly number[];
  /** Log of the joint density of the readings. */
  readonly logDensity: number;
  /** Sum of squared whitened differences: about the number of readings when the candidate is right. */
  readonly misfit: number;
}

const LOG_TWO_PI = Math.log(2 * Math.PI);

/** Covariance of two predictions by the tolerances they share. */
function shared(a: Prediction, b: Prediction): number {
  let sum = 0;
  for (const [name, slope] of Object.entries(a.slopes)) sum += slope * (b.slopes[name] ?? 0);
  return sum;
}

/** Take readings together; `points` are what was read, on the scales of the predictions. */
export function joint(predictions: readonly Prediction[], points: readonly number[]): Joint {
  const factor: number[][] = [];
  const whitened: number[] = [];
  let logDensity = 0;
  predictions.forEach((prediction, row) => {
    const { along, rest } = project(factor, predictions, prediction);
    const own = noiseAt(prediction.meter, prediction.point) ** 2 + shared(prediction, prediction);
    const root = Math.sqrt(Math.max(own - rest, noiseAt(prediction.meter, prediction.point) ** 2));
    const gap = (points[row] as number) - prediction.point;
    const value = (gap - dot(along, whitened)) / root;
    factor.push([...along, root]);
    whitened.push(value);
    logDensity -= 0.5 * (value * value + LOG_TWO_PI) + Math.log(root);
  });
  return {
    predictions,
    factor,
    whitened,
    logDensity,
    misfit: whitened.reduce((sum, value) => sum + value * value, 0),
  };
}

/** Where one more reading is to be expected, given those taken: mean and standard deviation on its scale. */
export function expected(
  taken: Joint,
  next: Prediction,
): { readonly mean: number; readonly deviation: number } {
  const { along, rest } = project(taken.factor, taken.predictions, next);
  const noise = noiseAt(next.meter, next.point) ** 2;
  const mean = next.point + dot(along, taken.whitened);
  return { mean, deviation: Math.sqrt(Math.max(noise + shared(next, next) - rest, noise)) };
}

/** Solve the factor for the covariances of one more prediction with those before it. */
function project(
  factor: readonly (readonly number[])[],
  before: readonly Prediction[],
  next: Prediction,
): { along: number[]; rest: number } {
  const along: number[] = [];
  for (let row = 0; row < factor.length; row++) {
    const line = factor[row] as readonly number[];
    let sum = shared(before[row] as Prediction, next);
    for (let at = 0; at < row; at++) sum -= (line[at] as number) * (along[at] as number);
    along.push(sum / (line[row] as number));
  }
  return { along, rest: dot(along, along) };
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < a.length; at++) sum += (a[at] as number) * (b[at] as number);
  return sum;
}

/** Share of a normal distribution below `steps` standard deviations (Abramowitz and Stegun, 26.2.17; error under 1e-7). */
export function normalShare(steps: number): number {
  const at = Math.abs(steps);
  if (at > 8) return steps > 0 ? 1 : 0;
  const t = 1 / (1 + 0.2316419 * at);
  const tail =
    (Math.exp(-0.5 * at * at) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return steps > 0 ? 1 - tail : tail;
}
