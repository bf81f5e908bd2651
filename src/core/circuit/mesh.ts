/**
 * Meshes of conductances and their elimination. With supernodes for its sources, a circuit with companion models is conductances
 * between nodes and to ground, all of them positive. Taking a node out joins its neighbours by the star-mesh transform, which only
 * adds and multiplies: no pivot is searched for, none can vanish, and each conductance keeps its digits however far the others lie
 * from it. (Gaussian elimination of an M-matrix without subtraction: Grassmann, Taksar and Heyman, Operations Research 33, 1985.)
 * What is left when some nodes are out is the Schur complement of the rest.
 */

/**
 * Conductances between rows, siemens. Row `i` holds those to the rows after it, column by column, ground the last; `size + 1`
 * numbers a row. Once a row is eliminated its diagonal holds one over the sum of its conductances.
 */
export interface Mesh {
  readonly size: number;
  readonly eliminated: number;
  readonly siemens: Float64Array;
  /** The rows left, as a mesh of their own. */
  readonly schur: Float64Array;
  /** Siemens of the companion of one farad. */
  readonly perSecond: number;
  /** The circuit's revision at which it was made. */
  revision: number;
  /** Whether a solution in time reads it still: it must then not be stamped over. */
  kept: boolean;
}

/** A mesh without conductances, of which `eliminated` rows are to be eliminated. */
export function makeMesh(size: number, eliminated: number, perSecond = 0): Mesh {
  const left = size - eliminated;
  const whole = new Float64Array(size * (size + 1) + left * (left + 1));
  const siemens = whole.subarray(0, size * (size + 1));
  return {
    size,
    eliminated,
    perSecond,
    siemens,
    schur: whole.subarray(siemens.length),
    revision: -1,
    kept: false,
  };
}

/** Join two rows of a mesh of `size` rows by a conductance; ground is row `size`. */
export function join(siemens: Float64Array, size: number, a: number, b: number, value: number): void {
  if (a < b) siemens[a * (size + 1) + b]! += value;
  else if (b < a) siemens[b * (size + 1) + a]! += value;
}

/** Work space: the columns of the neighbours of the row that is eliminated, few even in a large mesh. */
let neighbours = new Int32Array(64);

/** Eliminate the first `count` rows. */
export function eliminate(siemens: Float64Array, size: number, count: number): void {
  const width = size + 1;
  if (neighbours.length < width) neighbours = new Int32Array(2 * width);
  for (let out = 0; out < count; out++) {
    const row = out * width;
    let sum = 0;
    let found = 0;
    for (let at = out + 1; at <= size; at++) {
      const to = siemens[row + at]!;
      if (to === 0) continue;
      sum += to;
      neighbours[found++] = at;
    }
    const inverse = 1 / sum;
    siemens[row + out] = inverse;
    for (let one = 0; one < found - 1; one++) {
      const into = neighbours[one]! * width;
      const share = siemens[row + neighbours[one]!]! * inverse;
      for (let other = one + 1; other < found; other++)
        siemens[into + neighbours[other]!]! += share * siemens[row + neighbours[other]!]!;
    }
  }
}

/** Eliminate a mesh as far as it is to be, and copy what is left. */
export function eliminateMesh({ siemens, size, eliminated, schur }: Mesh): void {
  eliminate(siemens, size, eliminated);
  const left = size - eliminated;
  for (let row = 0; row < left; row++) {
    const from = (row + eliminated) * (size + 1) + eliminated;
    for (let at = row + 1; at <= left; at++) schur[row * (left + 1) + at] = siemens[from + at]!;
  }
}

/** Take the currents into the rows, amperes, through the elimination of the first `count`. */
export function reduceSide(siemens: Float64Array, size: number, count: number, side: Float64Array): void {
  for (let out = 0; out < count; out++) {
    if (side[out] === 0) continue;
    const row = out * (size + 1);
    const share = side[out]! * siemens[row + out]!;
    for (let at = out + 1; at < size; at++) side[at]! += siemens[row + at]! * share;
  }
}

/** Take what the conductances carry between rows at these volts, ground's the last, out of the currents into them, branch by branch. */
export function subtractFlow(
  siemens: Float64Array,
  size: number,
  volts: Float64Array,
  side: Float64Array,
): void {
  for (let row = 0; row < size; row++) {
    for (let at = row + 1; at <= size; at++) {
      const between = siemens[row * (size + 1) + at]!;
      if (between === 0) continue;
      const amperes = between * (volts[row]! - volts[at]!);
      side[row]! -= amperes;
      side[at]! += amperes;
    }
  }
}

/** Back substitution: turn the reduced currents of the first `count` rows into volts, given the volts of the rows after them. */
export function backSubstitute(siemens: Float64Array, size: number, count: number, side: Float64Array): void {
  for (let out = count - 1; out >= 0; out--) {
    const row = out * (size + 1);
    let sum = side[out]!;
    for (let at = out + 1; at < size; at++) sum += siemens[row + at]! * side[at]!;
    side[out] = sum * siemens[row + out]!;
  }
}
