/**
 * The matrix work, once for every kind of solution: the linear part of a circuit is eliminated once, down to the
 * unknowns that junctions touch; each Newton step then solves only that small rest.
 */

/** Pivots below this count as nothing: far under the tie of a floating part (1e-9 S), above the rounding of 1e3 S. */
const LEAST_PIVOT = 1e-12;

/** A linear part with its first `pivots` unknowns eliminated. Row-major, `size` by `size`, rows and columns permuted. */
export interface Factor {
  readonly size: number;
  pivots: number;
  /** The circuit's revision at which it was made. */
  revision: number;
  readonly entries: Float64Array;
  readonly rowOrder: Int32Array;
  readonly columnOrder: Int32Array;
  /** Place of each equation and each unknown among the `size - pivots` that remain; negative when eliminated. */
  readonly rowPlace: Int32Array;
  readonly columnPlace: Int32Array;
  /** Work space: right-hand side in row order, solution in column order, and the rest to be solved. */
  readonly side: Float64Array;
  readonly answer: Float64Array;
  rest: Float64Array;
  readonly restSide: Float64Array;
  /** For each node the floating part it belongs to, or -1 when it has a way to ground. */
  readonly floating: Int32Array;
  /** Numbers of the switches that are part closed; they are not among the entries. */
  readonly ramps: Int32Array;
  /** Row among the rest of each junction's anode, then of each cathode; negative at ground. Columns likewise. */
  readonly endRows: Int32Array;
  readonly endColumns: Int32Array;
  /** Row among the rest of each such switch's first end, then of each second end; negative at ground. */
  readonly rampRows: Int32Array;
  /** The entries that are not zero, for a factor that serves many right-hand sides; undefined else. */
  sparse: Sparse | undefined;
}

/** Entries below the diagonal column by column, and right of it row by row, of the pivots; `starts` has one more than pivots. */
export interface Sparse {
  readonly lowerStarts: Int32Array;
  readonly lowerRows: Int32Array;
  readonly lowerShares: Float64Array;
  readonly upperStarts: Int32Array;
  readonly upperColumns: Int32Array;
  readonly upperEntries: Float64Array;
  /** One over each pivot. */
  readonly inverses: Float64Array;
}

/**
 * A factor with nothing in it yet; `ends` is twice the number of junctions. All its arrays share two blocks of memory:
 * a search makes thousands, and each block costs more than what is in it.
 */
export function makeFactor(size: number, floating: Int32Array, ramps: Int32Array, ends: number): Factor {
  const square = size * size;
  const reals = new Float64Array(square + 3 * size);
  const wholes = new Int32Array(4 * size + 2 * ends + 2 * ramps.length);
  return {
    endRows: wholes.subarray(4 * size, 4 * size + ends),
    endColumns: wholes.subarray(4 * size + ends, 4 * size + 2 * ends),
    rampRows: wholes.subarray(4 * size + 2 * ends),
    sparse: undefined,
    size,
    pivots: 0,
    revision: -1,
    entries: reals.subarray(0, square),
    rowOrder: wholes.subarray(0, size),
    columnOrder: wholes.subarray(size, 2 * size),
    rowPlace: wholes.subarray(2 * size, 3 * size),
    columnPlace: wholes.subarray(3 * size, 4 * size),
    side: reals.subarray(square, square + size),
    answer: reals.subarray(square + size, square + 2 * size),
    rest: NOTHING,
    restSide: reals.subarray(square + 2 * size),
    floating,
    ramps,
  };
}

const NOTHING = new Float64Array(0);

/**
 * Eliminate the first `linearCount` unknowns, with row pivoting among themselves. Those that cannot be eliminated
 * (say, the current of a source between two junction nodes) stay with the rest. The entries must be stamped in the order
 * that `rowOrder` and `columnOrder` tell.
 */
export function factorLinear(factor: Factor, linearCount: number): void {
  const { size, entries, rowOrder, columnOrder, rowPlace, columnPlace } = factor;
  let pivots = 0;
  for (; pivots < linearCount; pivots++) {
    if (!bringPivot(entries, size, pivots, linearCount, rowOrder, columnOrder)) break;
    eliminate(entries, size, pivots);
  }
  for (let at = 0; at < size; at++) {
    rowPlace[rowOrder[at] as number] = at - pivots;
    columnPlace[columnOrder[at] as number] = at - pivots;
  }
  factor.pivots = pivots;
  const left = size - pivots;
  if (factor.rest.length < left * left) factor.rest = new Float64Array(left * left);
}

/** List the entries that are not zero: worth it for a factor that is used again and again. */
export function sparseOf(factor: Factor): Sparse {
  const { size, pivots, entries } = factor;
  const inverses = new Float64Array(pivots);
  for (let at = 0; at < pivots; at++) inverses[at] = 1 / (entries[at * size + at] as number);
  const lowerStarts = new Int32Array(pivots + 1);
  const upperStarts = new Int32Array(pivots + 1);
  const lowerRows: number[] = [];
  const lowerShares: number[] = [];
  const upperColumns: number[] = [];
  const upperEntries: number[] = [];
  for (let at = 0; at < pivots; at++) {
    for (let other = at + 1; other < size; other++) {
      const below = entries[other * size + at] as number;
      if (below !== 0) {
        lowerRows.push(other);
        lowerShares.push(below);
      }
      const right = entries[at * size + other] as number;
      if (right !== 0) {
        upperColumns.push(other);
        upperEntries.push(right);
      }
    }
    lowerStarts[at + 1] = lowerRows.length;
    upperStarts[at + 1] = upperColumns.length;
  }
  return {
    lowerStarts,
    lowerRows: Int32Array.from(lowerRows),
    lowerShares: Float64Array.from(lowerShares),
    upperStarts,
    upperColumns: Int32Array.from(upperColumns),
    upperEntries: Float64Array.from(upperEntries),
    inverses,
  };
}

/** Bring the largest entry of the next usable column to the pivot's place; columns nothing holds are left for the rest. */
function bringPivot(
  entries: Float64Array,
  size: number,
  at: number,
  end: number,
  rowOrder: Int32Array,
  columnOrder: Int32Array,
): boolean {
  for (let column = at; column < end; column++) {
    let best = LEAST_PIVOT;
    let bestRow = -1;
    for (let row = at; row < end; row++) {
      const weight = Math.abs(entries[row * size + column] as number);
      if (weight > best) {
        best = weight;
        bestRow = row;
      }
    }
    if (bestRow < 0) continue;
    if (bestRow !== at) {
      for (let one = 0; one < size; one++) swap(entries, at * size + one, bestRow * size + one);
      swap(rowOrder, at, bestRow);
    }
    if (column !== at) {
      for (let row = 0; row < size; row++) swap(entries, row * size + at, row * size + column);
      swap(columnOrder, at, column);
    }
    return true;
  }
  return false;
}

function swap(list: Float64Array | Int32Array, a: number, b: number): void {
  const kept = list[a] as number;
  list[a] = list[b] as number;
  list[b] = kept;
}

function eliminate(entries: Float64Array, size: number, at: number): void {
  const pivotRow = at * size;
  const pivot = entries[pivotRow + at] as number;
  for (let row = at + 1; row < size; row++) {
    const start = row * size;
    const lead = entries[start + at] as number;
    if (lead === 0) continue;
    const share = lead / pivot;
    entries[start + at] = share;
    for (let column = at + 1; column < size; column++) {
      entries[start + column] =
        (entries[start + column] as number) - share * (entries[pivotRow + column] as number);
    }
  }
}

/** Take a right-hand side (in the circuit's own order) through the elimination; leaves it in `factor.side`. */
export function reduceSide(factor: Factor, side: Float64Array): void {
  const { size, pivots, entries, rowOrder, sparse } = factor;
  const work = factor.side;
  for (let at = 0; at < size; at++) work[at] = side[rowOrder[at] as number] as number;
  if (sparse) {
    const { lowerStarts, lowerRows, lowerShares } = sparse;
    for (let at = 0; at < pivots; at++) {
      const value = work[at] as number;
      if (value === 0) continue;
      const end = lowerStarts[at + 1] as number;
      for (let one = lowerStarts[at] as number; one < end; one++) {
        const row = lowerRows[one] as number;
        work[row] = (work[row] as number) - (lowerShares[one] as number) * value;
      }
    }
    return;
  }
  for (let at = 0; at < pivots; at++) {
    const value = work[at] as number;
    if (value === 0) continue;
    for (let row = at + 1; row < size; row++) {
      const share = entries[row * size + at] as number;
      if (share !== 0) work[row] = (work[row] as number) - share * value;
    }
  }
}

/** Put the linear rest and its right-hand side into the work space, ready for the junctions to be added. */
export function loadRest(factor: Factor): void {
  const { size, pivots, entries, rest, restSide, side } = factor;
  const left = size - pivots;
  for (let row = 0; row < left; row++) {
    const from = (row + pivots) * size + pivots;
    for (let column = 0; column < left; column++)
      rest[row * left + column] = entries[from + column] as number;
    restSide[row] = side[row + pivots] as number;
  }
}

/**
 * How much smaller than the largest of its column the diagonal may be and still serve as the pivot. The diagonal of a node is
 * the sum of its own conductances: to pass it over for the one conductance that ties a blocked junction to the rest would
 * work out a node of nanosiemens as the difference of two large sums. (The usual choice of SPICE programs.)
 */
const DIAGONAL_SHARE = 1e-3;

/**
 * Solve the rest in place, by elimination, the diagonal first; the answer is left in `factor.restSide`.
 * @returns -1, or the place among the rest of the unknown that nothing holds.
 */
export function solveRest(factor: Factor): number {
  const { rest, restSide } = factor;
  const left = factor.size - factor.pivots;
  for (let at = 0; at < left; at++) {
    let bestRow = at;
    const diagonal = Math.abs(rest[at * left + at] as number);
    let best = diagonal;
    for (let row = at + 1; row < left; row++) {
      const weight = Math.abs(rest[row * left + at] as number);
      if (weight > best) {
        best = weight;
        bestRow = row;
      }
    }
    if (!(best > 1e-18)) return at;
    if (bestRow !== at && diagonal < DIAGONAL_SHARE * best) {
      for (let column = at; column < left; column++) swap(rest, at * left + column, bestRow * left + column);
      swap(restSide, at, bestRow);
    }
    const pivot = rest[at * left + at] as number;
    for (let row = at + 1; row < left; row++) {
      const lead = rest[row * left + at] as number;
      if (lead === 0) continue;
      const share = lead / pivot;
      for (let column = at + 1; column < left; column++) {
        rest[row * left + column] =
          (rest[row * left + column] as number) - share * (rest[at * left + column] as number);
      }
      restSide[row] = (restSide[row] as number) - share * (restSide[at] as number);
    }
  }
  for (let at = left - 1; at >= 0; at--) {
    let sum = restSide[at] as number;
    for (let column = at + 1; column < left; column++)
      sum -= (rest[at * left + column] as number) * (restSide[column] as number);
    restSide[at] = sum / (rest[at * left + at] as number);
  }
  return -1;
}

/** Work back from the solved rest to every unknown, in the factor's own order. */
export function unfold(factor: Factor, into: Float64Array): void {
  const { size, pivots, columnOrder, answer, restSide } = factor;
  for (let at = pivots; at < size; at++) answer[at] = restSide[at - pivots] as number;
  workBack(factor);
  for (let at = 0; at < size; at++) into[columnOrder[at] as number] = answer[at] as number;
}

/** Find the eliminated unknowns from those that remain, all in `factor.answer`, in column order. */
export function workBack({ size, pivots, entries, side, answer, sparse }: Factor): void {
  if (sparse) {
    const { upperStarts, upperColumns, upperEntries, inverses } = sparse;
    for (let at = pivots - 1; at >= 0; at--) {
      let sum = side[at] as number;
      const end = upperStarts[at + 1] as number;
      for (let one = upperStarts[at] as number; one < end; one++)
        sum -= (upperEntries[one] as number) * (answer[upperColumns[one] as number] as number);
      answer[at] = sum * (inverses[at] as number);
    }
    return;
  }
  for (let at = pivots - 1; at >= 0; at--) {
    let sum = side[at] as number;
    const start = at * size;
    for (let column = at + 1; column < size; column++) {
      const entry = entries[start + column] as number;
      if (entry !== 0) sum -= entry * (answer[column] as number);
    }
    answer[at] = sum / (entries[start + at] as number);
  }
}
