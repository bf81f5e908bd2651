/**
 * Meshes of conductances and their elimination. With supernodes for its sources, a circuit with companion models is conductances
 * between nodes and to ground, all of them positive. Taking a node out joins its neighbours by the star-mesh transform, which only
 * adds and multiplies: no pivot is searched for, none can vanish, and each conductance keeps its digits however far the others lie
 * from it. (Gaussian elimination of an M-matrix without subtraction: Grassmann, Taksar and Heyman, Operations Research 33, 1985.)
 * What is left when some nodes are out is the Schur complement of the rest.
 *
 * Sources go with the branches they drive: a flow holds the amperes that each drives from one row to another, and elimination hands
 * them to the branches it makes. What a part takes in and gives back by branches within it then sums to nothing by itself, where sums
 * by row would leave a last digit of all the amperes that go round: over a blocked junction, which is all that holds some parts, that
 * digit is volts.
 */
import { takeIndices, takeNumbers } from './room.ts';
import type { Room } from './room.ts';

/**
 * Conductances between rows, siemens. Row `i` holds those to the rows after it, column by column, ground the last; `size + 1`
 * numbers a row. Once a row is eliminated its diagonal holds one over the sum of its conductances.
 */
export interface Mesh {
  readonly size: number;
  readonly eliminated: number;
  readonly siemens: Float64Array;
  /** Columns that each eliminated row was joined to, ground last of all whether it was or not, and where those of each row start. */
  readonly joined: Int32Array;
  readonly starts: Int32Array;
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
export function makeMesh(room: Room, size: number, eliminated: number, perSecond = 0): Mesh {
  const left = size - eliminated;
  return {
    size,
    eliminated,
    perSecond,
    siemens: takeNumbers(room, size * (size + 1)),
    joined: takeIndices(room, (eliminated * (size + 1 + left)) / 2),
    starts: takeIndices(room, eliminated + 1),
    schur: takeNumbers(room, left * (left + 1)),
    revision: -1,
    kept: false,
  };
}

/** A mesh all of whose rows are to be eliminated, and of which none is passed over. */
export function makeSolidMesh(room: Room, size: number): Mesh {
  const mesh = makeMesh(room, size, size);
  let end = 0;
  for (let out = 0; out < size; out++) {
    for (let at = out + 1; at <= size; at++) mesh.joined[end++] = at;
    mesh.starts[out + 1] = end;
  }
  return mesh;
}

/** Join two rows of a mesh of `size` rows by a conductance; ground is row `size`. */
export function join(siemens: Float64Array, size: number, a: number, b: number, value: number): void {
  if (a < b) siemens[a * (size + 1) + b]! += value;
  else if (b < a) siemens[b * (size + 1) + a]! += value;
}

/** Eliminate a mesh as far as it is to be, and copy what is left. */
export function eliminateMesh({ siemens, size, eliminated, joined, starts, schur }: Mesh): void {
  const width = size + 1;
  let end = 0;
  for (let out = 0; out < eliminated; out++) {
    const row = out * width;
    const start = end;
    let sum = 0;
    for (let at = out + 1; at <= size; at++) {
      const to = siemens[row + at]!;
      sum += to;
      if (to !== 0 || at === size) joined[end++] = at;
    }
    const inverse = 1 / sum;
    siemens[row + out] = inverse;
    starts[out + 1] = end;
    for (let one = start; one < end - 1; one++) {
      const into = joined[one]! * width;
      const share = siemens[row + joined[one]!]! * inverse;
      for (let other = one + 1; other < end; other++)
        siemens[into + joined[other]!]! += share * siemens[row + joined[other]!]!;
    }
  }
  restOf(siemens, size, eliminated, schur);
}

/**
 * Take a flow, amperes, through the elimination of a mesh: what drives current out of an eliminated row drives it over the branches
 * that took the row's place. The currents into those rows are written into `side`. Rows that no conductance joins must be driven by
 * way of ground.
 */
export function reduceFlow(mesh: Mesh, flow: Float64Array, side: Float64Array): void {
  const { siemens, size, eliminated, joined, starts } = mesh;
  const width = size + 1;
  for (let out = 0; out < eliminated; out++) {
    const row = out * width;
    const end = starts[out + 1]!;
    let sum = 0;
    let driven = false;
    for (let at = starts[out]!; at < end; at++) {
      const amperes = flow[row + joined[at]!]!;
      sum += amperes;
      driven ||= amperes !== 0;
    }
    side[out] = -sum;
    if (!driven) continue;
    const inverse = siemens[row + out]!;
    for (let one = starts[out]!; one < end - 1; one++) {
      const a = joined[one]!;
      const share = siemens[row + a]! * inverse;
      const part = flow[row + a]! * inverse;
      for (let other = one + 1; other < end; other++) {
        const b = joined[other]!;
        flow[a * width + b]! += share * flow[row + b]! - part * siemens[row + b]!;
      }
    }
  }
}

/**
 * Solve a mesh all of whose rows are to be eliminated with a flow in it: as `eliminateMesh`, `reduceFlow` and `backSubstitute` do one
 * after the other, for a solid mesh that serves one flow only.
 * @param side the volts of every row on return.
 */
export function solveFlow({ siemens, size }: Mesh, flow: Float64Array, side: Float64Array): void {
  const width = size + 1;
  for (let out = 0; out < size; out++) {
    const row = out * width;
    let sum = 0;
    let amperes = 0;
    for (let at = row + out + 1; at < row + width; at++) {
      sum += siemens[at]!;
      amperes += flow[at]!;
    }
    const inverse = 1 / sum;
    siemens[row + out] = inverse;
    side[out] = -amperes;
    for (let one = out + 1; one < size; one++) {
      const share = siemens[row + one]! * inverse;
      const part = flow[row + one]! * inverse;
      if (share === 0 && part === 0) continue;
      const into = one * width;
      for (let other = one + 1; other <= size; other++) {
        const to = siemens[row + other]!;
        siemens[into + other]! += share * to;
        flow[into + other]! += share * flow[row + other]! - part * to;
      }
    }
  }
  for (let out = size - 1; out >= 0; out--) {
    const row = out * width;
    let sum = side[out]!;
    for (let at = out + 1; at < size; at++) sum += siemens[row + at]! * side[at]!;
    side[out] = sum * siemens[row + out]!;
  }
}

/** Copy what lies between the rows from `count` on, conductances or a flow, as that of a mesh of these alone. */
export function restOf(all: Float64Array, size: number, count: number, into: Float64Array): void {
  const left = size - count;
  for (let row = 0; row < left; row++) {
    const from = (row + count) * (size + 1) + count;
    for (let at = row + 1; at <= left; at++) into[row * (left + 1) + at] = all[from + at]!;
  }
}

/** Take the currents into the rows, amperes, through the elimination of a mesh. */
export function reduceSide({ siemens, size, eliminated }: Mesh, side: Float64Array): void {
  for (let out = 0; out < eliminated; out++) {
    if (side[out] === 0) continue;
    const row = out * (size + 1);
    const share = side[out]! * siemens[row + out]!;
    for (let at = out + 1; at < size; at++) side[at]! += siemens[row + at]! * share;
  }
}

/** Back substitution: turn the reduced currents of the eliminated rows into volts, given the volts of the rows after them. */
export function backSubstitute({ siemens, size, eliminated }: Mesh, side: Float64Array): void {
  for (let out = eliminated - 1; out >= 0; out--) {
    const row = out * (size + 1);
    let sum = side[out]!;
    for (let at = out + 1; at < size; at++) sum += siemens[row + at]! * side[at]!;
    side[out] = sum * siemens[row + out]!;
  }
}
