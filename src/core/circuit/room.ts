/**
 * Memory of one circuit, handed out piece by piece. The engine keeps each typed array of over 64 bytes outside its heap, and to make
 * one takes a microsecond, a third of what solving a link's circuit takes; a piece of a block takes a fifteenth of that.
 */

/** Numbers and indices of a room's first blocks; each next block is twice as long, up to the greatest. */
const FIRST_BLOCK = 1024;
const GREATEST_BLOCK = 8192;

/** Blocks from which pieces are cut, and how much of each is given away. Only the last block of each kind is held on to. */
export interface Room {
  numbers: Float64Array;
  numbersTaken: number;
  indices: Int32Array;
  indicesTaken: number;
}

/** A room that holds nothing yet. */
export function makeRoom(): Room {
  return { numbers: new Float64Array(0), numbersTaken: 0, indices: new Int32Array(0), indicesTaken: 0 };
}

/** A piece of so many numbers, all of them 0. */
export function takeNumbers(room: Room, count: number): Float64Array {
  if (room.numbersTaken + count > room.numbers.length) {
    room.numbers = new Float64Array(nextBlock(room.numbers.length, count));
    room.numbersTaken = 0;
  }
  const start = room.numbersTaken;
  return room.numbers.subarray(start, (room.numbersTaken = start + count));
}

/** A piece of so many indices, all of them 0. */
export function takeIndices(room: Room, count: number): Int32Array {
  if (room.indicesTaken + count > room.indices.length) {
    room.indices = new Int32Array(nextBlock(room.indices.length, count));
    room.indicesTaken = 0;
  }
  const start = room.indicesTaken;
  return room.indices.subarray(start, (room.indicesTaken = start + count));
}

function nextBlock(before: number, needed: number): number {
  return Math.max(FIRST_BLOCK, Math.min(2 * before, GREATEST_BLOCK), needed);
}
