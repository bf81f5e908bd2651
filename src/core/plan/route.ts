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

/** Ways round the devices of one board; made once, asked often. */
interface Ways {
  /** The shortest way between two points, as points from first to last. */
  readonly between: (from: Point, to: Point) => readonly Point[];
  /** Length of the shortest way to each of many points, centimetres. */
  readonly lengths: (from: Point, to: readonly Point[]) => readonly number[];
}

/** Lay out the ways round these devices: corners that see one another, and the shortest way along them. */
export function waysRound(devices: readonly WholeDevice[]): Ways {
  const boxes = devices.filter(isPlaced).map(boxOf);
  const corners = boxes.flatMap(cornersOf).filter((corner) => !boxes.some((box) => inside(box, corner)));
  const open = (a: Point, b: Point): boolean => {
    for (const box of boxes) if (crosses(box, a, b)) return false;
    return true;
  };
  const count = corners.length;
  let seen: Float64Array | undefined;
  const sight = (): Float64Array => {
    if (seen) return seen;
    seen = new Float64Array(count * count).fill(Infinity);
    for (let a = 0; a < count; a++)
      for (let b = a + 1; b < count; b++) {
        const [first, second] = [corners[a] as Point, corners[b] as Point];
        if (!open(first, second)) continue;
        seen[a * count + b] = seen[b * count + a] = distance(first, second);
      }
    return seen;
  };
  const search = (from: Point): Search =>
    shortest(
      Float64Array.from(corners, (corner) => (open(from, corner) ? distance(from, corner) : Infinity)),
      sight(),
    );
  const lastCorner = (lengths: Float64Array, to: Point): { corner: number; length: number } => {
    let best = { corner: -1, length: Infinity };
    for (let at = 0; at < count; at++) {
      const corner = corners[at] as Point;
      const length = lengths[at]! + distance(corner, to);
      if (length < best.length && open(corner, to)) best = { corner: at, length };
    }
    return best;
  };
  return {
    between: (from, to) => {
      if (open(from, to)) return [from, to];
      const { lengths, before } = search(from);
      let { corner } = lastCorner(lengths, to);
      const way: Point[] = [to];
      for (; corner >= 0; corner = before[corner]!) way.unshift(corners[corner] as Point);
      return [from, ...way];
    },
    lengths: (from, to) => {
      let found: Float64Array | undefined;
      return to.map((point) => {
        if (open(from, point)) return distance(from, point);
        found ??= search(from).lengths;
        const { length } = lastCorner(found, point);
        return length < Infinity ? length : distance(from, point);
      });
    },
  };
}

/** The shortest way to each corner, centimetres, and the corner before it, -1 for none. */
interface Search {
  readonly lengths: Float64Array;
  readonly before: Int32Array;
}

/** Dijkstra's search from the lengths of first steps, over a square table of the lengths between corners that see one another. */
function shortest(lengths: Float64Array, sees: Float64Array): Search {
  const count = lengths.length;
  const before = new Int32Array(count).fill(-1);
  const done = new Uint8Array(count);
  for (;;) {
    let here = -1;
    for (let at = 0; at < count; at++)
      if (done[at] === 0 && lengths[at]! < Infinity && (here < 0 || lengths[at]! < lengths[here]!)) here = at;
    if (here < 0) return { lengths, before };
    done[here] = 1;
    for (let at = 0; at < count; at++) {
      const through = lengths[here]! + sees[here * count + at]!;
      if (through >= lengths[at]!) continue;
      lengths[at] = through;
      before[at] = here;
    }
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
