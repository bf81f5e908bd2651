/** The way a lead takes from jack to jack round the devices, seen from above. */
import type { WholeDevice, WholeJack } from './whole.ts';

/** A point on the board, centimetres from its back left corner. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

interface Box {
  readonly left: number;
  readonly back: number;
  readonly right: number;
  readonly front: number;
}

/** Room for the two plugs and a little give, metres on top of the way (our choice). */
const SLACK_METRES = 0.1;

/** Boxes are drawn in by this much, so that a lead may run along an edge and between two that touch, centimetres. */
const SKIN = 1e-6;

/** Where a jack is. */
export function jackPoint(device: WholeDevice, jack: WholeJack): Point {
  const { xCentimetres: x, yCentimetres: y, widthCentimetres: width, depthCentimetres: depth } = device;
  const along = Math.min(
    jack.alongCentimetres,
    jack.edge === 'back' || jack.edge === 'front' ? width : depth,
  );
  switch (jack.edge) {
    case 'back':
      return { x: x + along, y };
    case 'front':
      return { x: x + along, y: y + depth };
    case 'left':
      return { x, y: y + along };
    case 'right':
      return { x: x + width, y: y + along };
  }
}

/** Whether a device has a place on the board. */
export function isPlaced(device: WholeDevice): boolean {
  return device.widthCentimetres > 0 && device.depthCentimetres > 0;
}

/** The lengths of the shortest ways from one point to each of many, centimetres. */
type Ways = (from: Point, to: readonly Point[]) => readonly number[];

/** The shortest ways round these devices: along corners that see one another. Made once for a board, asked often. */
export function waysRound(devices: readonly WholeDevice[]): Ways {
  const boxes = devices.filter(isPlaced).map(boxOf);
  const corners = boxes.flatMap(cornersOf).filter((corner) => !boxes.some((box) => inside(box, corner)));
  const step = (a: Point, b: Point): number =>
    boxes.some((box) => crosses(box, a, b)) ? Infinity : distance(a, b);
  let sight: Float64Array | undefined;
  return (from, to) => {
    let fromCorners: Float64Array | undefined;
    return to.map((point) => {
      const straight = step(from, point);
      if (straight < Infinity) return straight;
      fromCorners ??= shortest(
        Float64Array.from(corners, (corner) => step(from, corner)),
        (sight ??= stepsBetween(corners, step)),
      );
      const length = byLastCorner(fromCorners, corners, point, step);
      return length < Infinity ? length : distance(from, point);
    });
  };
}

/** The steps between every two corners, as a square table. */
function stepsBetween(corners: readonly Point[], step: (a: Point, b: Point) => number): Float64Array {
  const count = corners.length;
  const steps = new Float64Array(count * count).fill(Infinity);
  for (let a = 0; a < count; a++)
    for (let b = a + 1; b < count; b++)
      steps[a * count + b] = steps[b * count + a] = step(corners[a]!, corners[b]!);
  return steps;
}

/** The length of the shortest way by a corner that sees its end; corners too far away are not looked at. */
function byLastCorner(
  lengths: Float64Array,
  corners: readonly Point[],
  to: Point,
  step: (a: Point, b: Point) => number,
): number {
  let best = Infinity;
  corners.forEach((corner, at) => {
    if (lengths[at]! + distance(corner, to) < best) best = Math.min(best, lengths[at]! + step(corner, to));
  });
  return best;
}

/** Dijkstra's search: the lengths of first steps become those of shortest ways, over a square table of steps. */
function shortest(lengths: Float64Array, steps: Float64Array): Float64Array {
  const count = lengths.length;
  const done = new Uint8Array(count);
  for (;;) {
    let here = -1;
    for (let at = 0; at < count; at++)
      if (done[at] === 0 && lengths[at]! < Infinity && (here < 0 || lengths[at]! < lengths[here]!)) here = at;
    if (here < 0) return lengths;
    done[here] = 1;
    for (let at = 0; at < count; at++)
      lengths[at] = Math.min(lengths[at]!, lengths[here]! + steps[here * count + at]!);
  }
}

/** The least length of a lead along a way of so many centimetres, metres. */
export function leadMetres(wayCentimetres: number): number {
  return wayCentimetres / 100 + SLACK_METRES;
}

function boxOf({ xCentimetres, yCentimetres, widthCentimetres, depthCentimetres }: WholeDevice): Box {
  return {
    left: xCentimetres + SKIN,
    back: yCentimetres + SKIN,
    right: xCentimetres + widthCentimetres - SKIN,
    front: yCentimetres + depthCentimetres - SKIN,
  };
}

function cornersOf({ left, back, right, front }: Box): readonly Point[] {
  const [x0, y0, x1, y1] = [left - SKIN, back - SKIN, right + SKIN, front + SKIN];
  return [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
}

function inside({ left, back, right, front }: Box, { x, y }: Point): boolean {
  return x > left && x < right && y > back && y < front;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** Whether a straight line enters the inside of a box: clip the line to the box, and see whether any of it is left. */
function crosses({ left, back, right, front }: Box, a: Point, b: Point): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  // Most boxes lie wholly to one side; this is asked thousands of times, so those are turned away first.
  if ((a.x <= left && b.x <= left) || (a.x >= right && b.x >= right)) return false;
  if ((a.y <= back && b.y <= back) || (a.y >= front && b.y >= front)) return false;
  let from = 0;
  let to = 1;
  if (dx !== 0) {
    const [first, second] = [(left - a.x) / dx, (right - a.x) / dx];
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  if (dy !== 0) {
    const [first, second] = [(back - a.y) / dy, (front - a.y) / dy];
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
  }
  return from < to;
}
