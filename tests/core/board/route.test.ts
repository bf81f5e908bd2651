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

/** Whether a line enters a box: they overlap along both axes, and corners of the box lie on both sides of the line. */
function enters(one: WholeDevice, a: Point, b: Point): boolean {
  const [x0, y0] = [one.xCentimetres + 1e-3, one.yCentimetres + 1e-3];
  const [x1, y1] = [x0 + one.widthCentimetres - 2e-3, y0 + one.depthCentimetres - 2e-3];
  if (Math.max(a.x, b.x) <= x0 || Math.min(a.x, b.x) >= x1) return false;
  if (Math.max(a.y, b.y) <= y0 || Math.min(a.y, b.y) >= y1) return false;
  const sides = [x0, x1].flatMap((x) =>
    [y0, y1].map((y) => (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x)),
  );
  return Math.min(...sides) < 0 && Math.max(...sides) > 0;
}

/** The shortest way, the long way: Floyd and Warshall's table over both ends and all corners. */
function shortest(boxes: readonly WholeDevice[], from: Point, to: Point): number {
  const corners = boxes.flatMap(({ xCentimetres: x, yCentimetres: y, widthCentimetres, depthCentimetres }) =>
    [x, x + widthCentimetres].flatMap((left) =>
      [y, y + depthCentimetres].map((back) => ({ x: left, y: back })),
    ),
  );
  const points = [from, to, ...corners];
  const table = points.map((a) =>
    points.map((b) => (boxes.some((one) => enters(one, a, b)) ? Infinity : Math.hypot(a.x - b.x, a.y - b.y))),
  );
  table.forEach((through, middle) => {
    for (const row of table) {
      const here = row[middle] ?? NaN;
      through.forEach((there, at) => (row[at] = Math.min(row[at] ?? NaN, here + there)));
    }
  });
  return table[0]?.[1] ?? NaN;
}

describe('The way round the devices', () => {
  test('is straight where nothing stands between, also along an edge', () => {
    const ways = waysRound([box(10, 10, 10, 10)]);
    expect(ways({ x: 0, y: 0 }, [{ x: 30, y: 0 }])).toEqual([30]);
    expect(ways({ x: 10, y: 0 }, [{ x: 10, y: 30 }])).toEqual([30]);
  });

  test('goes round the nearer corners: a 3-4-5 triangle on each side', () => {
    // Box 6 wide and 6 deep, the line through its middle: 4 along and 3 across to a corner, 6 along its side, and the same again.
    const ways = waysRound([box(4, 0, 6, 6)]);
    expect(ways({ x: 0, y: 3 }, [{ x: 14, y: 3 }])[0]).toBeCloseTo(5 + 6 + 5, 9);
  });

  test('is the shortest of all that enter no device, and as long both ways, on 200 seeded boards', () => {
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
      expect(ways(a, [b])[0]).toBeCloseTo(shortest(boxes, a, b), 6);
      expect(ways(b, [a])[0]).toBeCloseTo(shortest(boxes, a, b), 6);
    }
  });
});
