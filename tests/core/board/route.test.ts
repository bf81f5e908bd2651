import { describe, expect, test } from 'vitest';
import { wholeDevice } from '../../../src/core/plan/whole.ts';
import type { WholeDevice } from '../../../src/core/plan/whole.ts';
import { waysRound } from '../../../src/core/plan/route.ts';
import type { Point } from '../../../src/core/plan/route.ts';
import { seededRandom } from '../../support/random.ts';

const box = (x: number, y: number, width: number, depth: number): WholeDevice =>
  wholeDevice({
    name: `${x} ${y}`,
    jacks: [],
    xCentimetres: x,
    yCentimetres: y,
    widthCentimetres: width,
    depthCentimetres: depth,
  });

const lengthOf = (way: readonly Point[]): number =>
  way
    .slice(1)
    .reduce((sum, to, at) => sum + Math.hypot(to.x - (way[at]?.x ?? 0), to.y - (way[at]?.y ?? 0)), 0);

describe('The way round the devices', () => {
  test('is straight where nothing stands between, also along an edge', () => {
    const ways = waysRound([box(10, 10, 10, 10)]);
    expect(ways.between({ x: 0, y: 0 }, { x: 30, y: 0 })).toHaveLength(2);
    expect(ways.lengths({ x: 10, y: 0 }, [{ x: 10, y: 30 }])).toEqual([30]);
  });

  test('goes round the nearer corners: a 3-4-5 triangle on each side', () => {
    // Box 6 wide and 6 deep, the line through its middle: 4 along and 3 across to a corner, 6 along its side, and the same again.
    const ways = waysRound([box(4, 0, 6, 6)]);
    const way = ways.between({ x: 0, y: 3 }, { x: 14, y: 3 });
    expect(way).toHaveLength(4);
    expect(lengthOf(way)).toBeCloseTo(5 + 6 + 5, 9);
    expect(ways.lengths({ x: 0, y: 3 }, [{ x: 14, y: 3 }])[0]).toBeCloseTo(16, 9);
  });

  test('is never shorter than the straight line, is as long both ways, and enters no device, on 200 seeded boards', () => {
    const random = seededRandom(21);
    for (let round = 0; round < 200; round++) {
      const boxes = Array.from({ length: random.integer(1, 8) }, (_, at) =>
        box(
          20 * (at % 4) + random.integer(0, 5),
          20 * Math.floor(at / 4) + random.integer(0, 5),
          random.integer(3, 14),
          random.integer(3, 14),
        ),
      );
      const ways = waysRound(boxes);
      const outside = (): Point => {
        const one = random.pick(boxes);
        return { x: one.xCentimetres + random.next() * one.widthCentimetres, y: one.yCentimetres };
      };
      const [a, b] = [outside(), outside()];
      const way = ways.between(a, b);
      const length = lengthOf(way);
      expect(length).toBeGreaterThanOrEqual(Math.hypot(a.x - b.x, a.y - b.y) - 1e-9);
      expect(ways.lengths(b, [a])[0]).toBeCloseTo(length, 6);
      for (let at = 1; at < way.length; at++) {
        const [from, to] = [way[at - 1] as Point, way[at] as Point];
        for (let part = 1; part < 50; part++) {
          const x = from.x + ((to.x - from.x) * part) / 50;
          const y = from.y + ((to.y - from.y) * part) / 50;
          const inside = boxes.some(
            (one) =>
              x > one.xCentimetres + 1e-3 &&
              x < one.xCentimetres + one.widthCentimetres - 1e-3 &&
              y > one.yCentimetres + 1e-3 &&
              y < one.yCentimetres + one.depthCentimetres - 1e-3,
          );
          expect(inside).toBe(false);
        }
      }
    }
  });
});
