/** What follows an edge of a drive, kept so that it need not be solved again. */
import type { Trajectory } from './trajectory.ts';

/** Two starts count as the same when no node differs by more, volts: a ten-thousandth of the swing of a 5 V output. */
const SAME_START_VOLTS = 0.5e-3;

/** What follows an edge: while the drive is on its way, and once it stands still again. */
export interface Response {
  readonly level: boolean;
  /** Volts of every node and values of the driven parts as the edge came. */
  readonly start: Float64Array;
  readonly from: readonly number[];
  readonly way: Trajectory | undefined;
  /** Undefined until it is asked for. */
  rest: Trajectory | undefined;
}

/** Whether a response is that to an edge from these volts and driven values. */
export function answers(
  one: Response,
  level: boolean,
  from: readonly number[],
  volts: Float64Array,
): boolean {
  if (one.level !== level) return false;
  for (let at = 0; at < from.length; at++) if (!same(one.from[at]!, from[at]!)) return false;
  for (let at = 0; at < volts.length; at++) if (!same(one.start[at]!, volts[at]!)) return false;
  return true;
}

function same(one: number, other: number): boolean {
  return Math.abs(one - other) <= SAME_START_VOLTS;
}
