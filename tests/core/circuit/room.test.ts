import { expect, test } from 'vitest';
import { makeRoom, takeIndices, takeNumbers } from '../../../src/core/circuit/room.ts';
import { seededRandom } from '../../support/random.ts';

test('Pieces of a room come empty and keep what is written into them, one longer than any block too', () => {
  const random = seededRandom(1);
  const room = makeRoom();
  const counts = [...Array.from({ length: 400 }, () => random.integer(0, 300)), 20_000, 3];
  const pieces = counts.map((count, at) => {
    const both = [takeNumbers(room, count), takeIndices(room, count)] as const;
    for (const piece of both) {
      expect(piece.length).toBe(count);
      expect(piece.every((one) => one === 0)).toBe(true);
      piece.fill(at + 1);
    }
    return both;
  });
  pieces.forEach((both, at) => {
    for (const piece of both) expect(piece.every((one) => one === at + 1)).toBe(true);
  });
});
