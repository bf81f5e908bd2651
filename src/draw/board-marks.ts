/** Where the mark of each lead stands: on its own lead, as clear as can be of other leads, devices, jacks and marks. */
import { distance } from './geometry.ts';
import type { Box, Point } from './geometry.ts';

/** Size of a mark, pixels: a hop number and a sign side by side. */
const MARK = { width: 34, height: 18 } as const;

/** Room that a mark keeps from the edge of the drawing, pixels: half its line, where it is chosen. */
const EDGE = 2;

/** Steps along a lead at which a mark is tried, pixels; and how far from a neighbour it is clear enough. */
const STEP = 6;
const CLEAR = 10;

/** A mark's box, and the point of its lead that it stands for: inside the box, or beside it where the lead itself has no room. */
interface PlacedMark {
  readonly box: Box;
  readonly anchor: Point;
}

/** How far beside its lead a mark is tried where the lead itself is crowded, pixels. */
const BESIDE = [18, 30, 44] as const;

/** A place for each lead's mark, all of it inside the drawing, whose size is `room`. */
export function placeMarks(
  lines: readonly (readonly Point[])[],
  taken: readonly Box[],
  room: { readonly width: number; readonly height: number },
): readonly PlacedMark[] {
  const marks: PlacedMark[] = [];
  // Short leads have the fewest places to choose from.
  const order = lines.map((_, at) => at).sort((a, b) => lengthOf(lines[a]) - lengthOf(lines[b]));
  for (const number of order) {
    const line = lines[number] as readonly Point[];
    const others = lines.filter((_, at) => at !== number);
    const boxes = [...taken, ...order.flatMap((at) => marks[at]?.box ?? [])];
    let best: (PlacedMark & { score: number }) | undefined;
    const attempt = (anchor: Point, centre: Point, lead: readonly (readonly Point[])[]): void => {
      const box = {
        x: held(centre.x - MARK.width / 2, room.width - MARK.width),
        y: held(centre.y - MARK.height / 2, room.height - MARK.height),
        width: MARK.width,
        height: MARK.height,
      };
      let score = CLEAR;
      for (const one of boxes) score = Math.min(score, gap(box, one));
      if (best && score <= best.score) return;
      for (const other of lead)
        for (let at = 1; at < other.length; at++)
          score = Math.min(score, lineGap(box, other[at - 1] as Point, other[at] as Point));
      if (!best || score > best.score) best = { box, anchor, score };
    };
    const points = pointsAlong(line);
    for (const point of points) attempt(point, point, others);
    for (const by of BESIDE) {
      if (best && best.score >= 0) break;
      for (const point of points)
        for (const [x, y] of [
          [0, -by],
          [0, by],
          [-1.6 * by, 0],
          [1.6 * by, 0],
        ] as const)
          attempt(point, { x: point.x + x, y: point.y + y }, lines);
    }
    marks[number] = best ?? { box: { x: 0, y: 0, width: 0, height: 0 }, anchor: { x: 0, y: 0 } };
  }
  return marks;
}

/** A corner of a mark, brought back to where the whole mark can be seen. */
function held(corner: number, most: number): number {
  return Math.min(Math.max(most - EDGE, EDGE), Math.max(EDGE, corner));
}

function lengthOf(line: readonly Point[] = []): number {
  return line.slice(1).reduce((sum, point, at) => sum + distance(line[at] as Point, point), 0);
}

/** Points along a line from its middle outwards, so that of places equally clear the middle one is taken. */
function pointsAlong(line: readonly Point[]): readonly Point[] {
  const whole = lengthOf(line);
  const count = Math.max(1, Math.floor(whole / STEP));
  const lengths = Array.from({ length: count }, (_, at) => ((at + 0.5) * whole) / count);
  lengths.sort((a, b) => Math.abs(a - whole / 2) - Math.abs(b - whole / 2));
  return lengths.map((length) => pointAt(line, length));
}

/** The point so far along a line. */
function pointAt(line: readonly Point[], length: number): Point {
  let left = length;
  for (let at = 1; at < line.length; at++) {
    const [from, to] = [line[at - 1] as Point, line[at] as Point];
    const step = distance(from, to);
    if (left <= step && step > 0)
      return { x: from.x + ((to.x - from.x) * left) / step, y: from.y + ((to.y - from.y) * left) / step };
    left -= step;
  }
  return line.at(-1) ?? { x: 0, y: 0 };
}

/** Distance between two boxes, negative where they overlap. */
function gap(a: Box, b: Box): number {
  const across = Math.max(b.x - a.x - a.width, a.x - b.x - b.width);
  const down = Math.max(b.y - a.y - a.height, a.y - b.y - b.height);
  return Math.max(across, down);
}

/** Distance from a box to a straight line, by clipping: negative where the line enters the box. */
function lineGap(box: Box, a: Point, b: Point): number {
  const away = gap(box, {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  });
  if (away >= CLEAR) return away;
  for (let room = CLEAR; room >= 0; room -= 2) if (!crossesBox(grow(box, room), a, b)) return room;
  return -1;
}

function grow({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by };
}

/** Whether a straight line enters a box. */
export function crossesBox({ x, y, width, height }: Box, a: Point, b: Point): boolean {
  let [from, to] = [0, 1];
  for (const [start, delta, low, high] of [
    [a.x, b.x - a.x, x, x + width],
    [a.y, b.y - a.y, y, y + height],
  ] as const) {
    if (delta === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [first, second] = [(low - start) / delta, (high - start) / delta];
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  return from < to;
}
