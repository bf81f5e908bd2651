/**
 * Memory of one circuit, handed out piece by piece. The engine keeps each typed array of over 64 bytes outside its heap, and to make
 * one takes a microsecond, a third of what solving a link's circuit takes; a piece of a block takes a fifteenth of that.
 */

/** Numbers and indices of a room's first blocks; each next block is twice as long, up to the greatest. */
const FIRST_BLOCK = 1024;
const GREATEST_BLOCK = 8192;

/** Blocks of one kind of number: the last one, which alone is held on to, and how much of it is given away. */
interface Blocks<Kind extends Float64Array | Int32Array> {
  readonly make: (count: number) => Kind;
  last: Kind;
  taken: number;
}

/** Where the numbers and the indices of one circuit are cut from. */
export interface Room {
  readonly numbers: Blocks<Float64Array>;
  readonly indices: Blocks<Int32Array>;
}

/** A room that holds nothing yet. */
export function makeRoom(): Room {
  return { numbers: blocksOf(makeNumbers), indices: blocksOf(makeIndices) };
}

/** A piece of so many numbers, all of them 0. */
export function takeNumbers({ numbers }: Room, count: number): Float64Array {
  const start = placeFor(numbers, count);
  return numbers.last.subarray(start, start + count);
}

/** A piece of so many indices, all of them 0. */
export function takeIndices({ indices }: Room, count: number): Int32Array {
  const start = placeFor(indices, count);
  return indices.last.subarray(start, start + count);
}

const makeNumbers = (count: number): Float64Array => new Float64Array(count);
const makeIndices = (count: number): Int32Array => new Int32Array(count);

function blocksOf<Kind extends Float64Array | Int32Array>(make: (count: number) => Kind): Blocks<Kind> {
  return { make, last: make(0), taken: 0 };
}

/** Where in the last block a piece begins; a new block is made where the last has no room for it. */
function placeFor<Kind extends Float64Array | Int32Array>(blocks: Blocks<Kind>, count: number): number {
  const before = blocks.last.length;
  if (blocks.taken + count > before) {
    blocks.last = blocks.make(Math.max(FIRST_BLOCK, Math.min(2 * before, GREATEST_BLOCK), count));
    blocks.taken = 0;
  }
  const start = blocks.taken;
  blocks.taken += count;
  return start;
}
