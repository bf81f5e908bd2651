/** One lead's way at right angles: along the sides of the devices, with few bends, beside other leads and seldom across them. Centimetres. */
import { crossesBox } from './board-marks.ts';
import type { Box, Point } from './geometry.ts';

/** What a way costs besides its length, centimetres: a bend, a lead crossed, and each centimetre on top of another lead (our choice). */
const COST = { bend: 3, crossing: 2, onTop: 8 } as const;

/** Leads nearer than this are on top of one another, centimetres. */
const NEAR = 0.4;

/** Devices farther than this from both ends are tried only where the way needs them, centimetres. */
const AROUND = 25;

/** A straight piece of a lead that is laid. */
export type Piece = readonly [Point, Point];

/** Which way a lead leaves its jack. */
export type Axis = 'across' | 'along';

/** One end of a way: where it is free of its device, and the axis on which it comes there. */
interface FreeEnd {
  readonly point: Point;
  readonly axis: Axis;
}

/** The cheapest way between two points round the boxes, as points; undefined where there is none. */
export function wayAtRightAngles(
  from: FreeEnd,
  to: FreeEnd,
  boxes: readonly Box[],
  laid: readonly Piece[],
): readonly Point[] | undefined {
  const near = boxes.filter((box) => isNear(box, from.point, to.point));
  const quick = search(from, to, near, laid);
  const clear =
    quick !== undefined && piecesOf(quick).every(([a, b]) => !boxes.some((box) => crossesBox(box, a, b)));
  return clear ? quick : near.length < boxes.length ? search(from, to, boxes, laid) : undefined;
}

/** The straight pieces of a way. */
export function piecesOf(points: readonly Point[]): readonly Piece[] {
  return points.slice(1).map((point, at) => [points[at] as Point, point] as const);
}

function isNear({ x, y, width, height }: Box, a: Point, b: Point): boolean {
  return (
    x < Math.max(a.x, b.x) + AROUND &&
    x + width > Math.min(a.x, b.x) - AROUND &&
    y < Math.max(a.y, b.y) + AROUND &&
    y + height > Math.min(a.y, b.y) - AROUND
  );
}

/** Dijkstra over the lines of the boxes' sides and of the two ends; a state is a crossing of lines and the axis of arrival. */
function search(
  from: FreeEnd,
  to: FreeEnd,
  boxes: readonly Box[],
  laid: readonly Piece[],
): readonly Point[] | undefined {
  const xs = sorted([from.point.x, to.point.x, ...boxes.flatMap(({ x, width }) => [x, x + width])]);
  const ys = sorted([from.point.y, to.point.y, ...boxes.flatMap(({ y, height }) => [y, y + height])]);
  const stateOf = ({ x, y }: Point, axis: Axis): number =>
    2 * (ys.indexOf(y) * xs.length + xs.indexOf(x)) + (axis === 'across' ? 0 : 1);
  const pointOf = (state: number): Point => {
    const place = state >> 1;
    return { x: xs[place % xs.length] as number, y: ys[Math.floor(place / xs.length)] as number };
  };
  const count = 2 * xs.length * ys.length;
  const cost = new Float64Array(count).fill(Infinity);
  const before = new Int32Array(count).fill(-1);
  const shut = shutSteps(xs, ys, boxes);
  const pieces = {
    flat: laid.filter(([a, b]) => a.y === b.y),
    upright: laid.filter(([a, b]) => a.y !== b.y),
  };
  const queue = new Queue();
  const start = stateOf(from.point, from.axis);
  cost[start] = 0;
  queue.add(start, 0);
  const ends = [stateOf(to.point, 'across'), stateOf(to.point, 'along')] as const;
  const arrival = (state: number): number =>
    cost[state]! + ((state & 1) === (to.axis === 'across' ? 0 : 1) ? 0 : COST.bend);
  for (let state = queue.take(); state !== undefined; state = queue.take()) {
    if (queue.last > Math.min(...ends.map(arrival))) break;
    if (queue.last > cost[state]!) continue;
    const here = pointOf(state);
    const [column, row] = [(state >> 1) % xs.length, Math.floor((state >> 1) / xs.length)];
    for (const [dx, dy] of STEPS) {
      const [x, y] = [xs[column + dx], ys[row + dy]];
      if (x === undefined || y === undefined) continue;
      const there = { x, y };
      const axis = dx === 0 ? 1 : 0;
      const first = (row + Math.min(0, dy)) * xs.length + column + Math.min(0, dx);
      if ((axis === 0 ? shut.across : shut.along)[first] === 1) continue;
      const next = 2 * ((row + dy) * xs.length + column + dx) + axis;
      const bend = axis === (state & 1) ? 0 : COST.bend;
      const length = Math.abs(there.x - here.x) + Math.abs(there.y - here.y);
      const sum = cost[state]! + bend + length + among(here, there, pieces);
      if (sum >= cost[next]!) continue;
      cost[next] = sum;
      before[next] = state;
      queue.add(next, sum);
    }
  }
  const end = arrival(ends[0]) <= arrival(ends[1]) ? ends[0] : ends[1];
  if (cost[end] === Infinity) return undefined;
  const way: Point[] = [];
  for (let state = end; state >= 0; state = before[state]!) way.unshift(pointOf(state));
  return withoutMiddles(way);
}

const STEPS = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

function sorted(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

/** Steps to the next line that enter a box, by the crossing of lines that they begin at: to the right, and down. */
function shutSteps(
  xs: readonly number[],
  ys: readonly number[],
  boxes: readonly Box[],
): { readonly across: Uint8Array; readonly along: Uint8Array } {
  const across = new Uint8Array(xs.length * ys.length);
  const along = new Uint8Array(xs.length * ys.length);
  for (const { x, y, width, height } of boxes) {
    const [left, right] = [xs.indexOf(x), xs.indexOf(x + width)];
    const [top, bottom] = [ys.indexOf(y), ys.indexOf(y + height)];
    for (let row = top + 1; row < bottom; row++)
      across.fill(1, row * xs.length + left, row * xs.length + right);
    for (let row = top; row < bottom; row++)
      along.fill(1, row * xs.length + left + 1, row * xs.length + right);
  }
  return { across, along };
}

/** Pieces that are laid, by their axis. */
interface Pieces {
  readonly flat: readonly Piece[];
  readonly upright: readonly Piece[];
}

/** What a step costs for the leads that are laid already: on top of one, or across it. */
function among(a: Point, b: Point, { flat, upright }: Pieces): number {
  let sum = 0;
  if (a.y === b.y) {
    for (const [c, d] of flat) if (Math.abs(a.y - c.y) < NEAR) sum += COST.onTop * shared(a.x, b.x, c.x, d.x);
    for (const [c, d] of upright) if (between(c.x, a.x, b.x) && between(a.y, c.y, d.y)) sum += COST.crossing;
  } else {
    for (const [c, d] of upright)
      if (Math.abs(a.x - c.x) < NEAR) sum += COST.onTop * shared(a.y, b.y, c.y, d.y);
    for (const [c, d] of flat) if (between(a.x, c.x, d.x) && between(c.y, a.y, b.y)) sum += COST.crossing;
  }
  return sum;
}

function shared(a: number, b: number, c: number, d: number): number {
  return Math.max(0, Math.min(Math.max(a, b), Math.max(c, d)) - Math.max(Math.min(a, b), Math.min(c, d)));
}

/** Half open, so that a lead crossed at the end of a step counts once. */
function between(value: number, a: number, b: number): boolean {
  return value > Math.min(a, b) && value <= Math.max(a, b);
}

/** Corners only. */
function withoutMiddles(points: readonly Point[]): readonly Point[] {
  return points.filter((point, at) => {
    const [last, next] = [points[at - 1], points[at + 1]];
    if (!last || !next) return true;
    return !((last.x === point.x && point.x === next.x) || (last.y === point.y && point.y === next.y));
  });
}

/** States by cost, the least first: a binary heap. */
class Queue {
  readonly #heap: (readonly [cost: number, state: number])[] = [];
  /** Cost of the state taken last. */
  last = 0;

  add(state: number, cost: number): void {
    const heap = this.#heap;
    let at = heap.push([cost, state]) - 1;
    for (let up = (at - 1) >> 1; at > 0 && heap[up]![0] > cost; up = (at - 1) >> 1) {
      heap[at] = heap[up]!;
      at = up;
    }
    heap[at] = [cost, state];
  }

  take(): number | undefined {
    const heap = this.#heap;
    const [first] = heap;
    const end = heap.pop();
    if (!first || !end) return undefined;
    this.last = first[0];
    if (heap.length === 0) return first[1];
    let at = 0;
    for (let down = 1; down < heap.length; down = 2 * at + 1) {
      if (down + 1 < heap.length && heap[down + 1]![0] < heap[down]![0]) down++;
      if (heap[down]![0] >= end[0]) break;
      heap[at] = heap[down]!;
      at = down;
    }
    heap[at] = end;
    return first[1];
  }
}
