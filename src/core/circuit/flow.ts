/** Flows: the amperes that sources drive between rows, laid out as the conductances of a mesh are. */
import type { Mesh } from './mesh.ts';

/** Add amperes driven from row `a` to row `b`, laid out as the conductances are. */
export function drive(flow: Float64Array, size: number, a: number, b: number, amperes: number): void {
  if (a < b) flow[a * (size + 1) + b]! += amperes;
  else if (b < a) flow[b * (size + 1) + a]! -= amperes;
}

/** The reduced currents into the rows that are left, as a flow from ground. */
export function driveRest({ size, eliminated }: Mesh, side: Float64Array, into: Float64Array): void {
  const left = size - eliminated;
  for (let row = 0; row < left; row++) {
    for (let at = row + 1; at < left; at++) into[row * (left + 1) + at] = 0;
    into[row * (left + 1) + left] = -side[row + eliminated]!;
  }
}

/**
 * List the branches that conduct or in which one of two flows drives, each by its two rows.
 * @param into has room for every branch there can be.
 */
export function listBranches(
  siemens: Float64Array,
  size: number,
  flow: Float64Array,
  other: Float64Array,
  into: Int32Array,
): Int32Array {
  let end = 0;
  for (let row = 0; row < size; row++) {
    for (let at = row + 1; at <= size; at++) {
      const branch = row * (size + 1) + at;
      if (siemens[branch] === 0 && flow[branch] === 0 && other[branch] === 0) continue;
      into[end++] = row;
      into[end++] = at;
    }
  }
  return into.subarray(0, end);
}

/**
 * Take what branches carry between rows at these volts, ground's the last, out of the currents into them: what their conductances do
 * and what is driven besides, branch by branch, so that only what is left of both is added up.
 */
export function subtractFlow(
  branches: Int32Array,
  siemens: Float64Array,
  size: number,
  volts: Float64Array,
  flow: Float64Array,
  side: Float64Array,
): void {
  for (let one = 0; one < branches.length; one += 2) {
    const row = branches[one]!;
    const at = branches[one + 1]!;
    const branch = row * (size + 1) + at;
    const amperes = flow[branch]! + siemens[branch]! * (volts[row]! - volts[at]!);
    side[row]! -= amperes;
    side[at]! += amperes;
  }
}

/** The flow at a share of the way from one to another. */
export function blendFlow(
  from: Float64Array,
  to: Float64Array,
  share: number,
  into: Float64Array,
): Float64Array {
  for (let at = 0; at < from.length; at++) into[at] = from[at]! + (to[at]! - from[at]!) * share;
  return into;
}
