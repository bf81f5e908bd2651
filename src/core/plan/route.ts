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
  const open = (a: Point, b: Point): boolean => !boxes.some((box) => crosses(box, a, b));
  const sight = new Sight(corners, open);
  return (from, to) => {
    sight.standAt(from);
    return to.map((point) => {
      const straight = distance(from, point);
      if (open(from, point)) return straight;
      const length = byCorners(sight, point, (corner) => open(corner, point));
      return length < Infinity ? length : straight;
    });
  };
}

/** Which points of a board see one another: its corners, and where a way starts, which stands last. Looked at when it is first asked. */
class Sight {
  readonly points: Point[];
  /** By number of the later point and of the earlier: 0 not looked at, 1 seen, 2 hidden. */
  readonly #known: Uint8Array;
  readonly #open: (a: Point, b: Point) => boolean;

  constructor(corners: readonly Point[], open: (a: Point, b: Point) => boolean) {
    this.points = [...corners, { x: 0, y: 0 }];
    this.#known = new Uint8Array(this.points.length ** 2);
    this.#open = open;
  }

  standAt(start: Point): void {
    const last = this.points.length - 1;
    this.points[last] = start;
    this.#known.fill(0, last * this.points.length);
  }

  sees(a: number, b: number): boolean {
    const place = this.#place(a, b);
    if (this.#known[place] === 0) this.#known[place] = this.#open(this.points[a]!, this.points[b]!) ? 1 : 2;
    return this.#known[place] === 1;
  }

  isHidden(a: number, b: number): boolean {
    return this.#known[this.#place(a, b)] === 2;
  }

  #place(a: number, b: number): number {
    return Math.max(a, b) * this.points.length + Math.min(a, b);
  }
}

/**
 * The length of the shortest way by corners, Infinity where there is none. Corners are taken in order of the way over them at its
 * shortest, straight on from there, until that is longer than a way found (Hart, Nilsson and Raphael, IEEE Transactions on Systems
 * Science and Cybernetics 4, 1968); whether the last step to one is open is looked at when its turn comes, since most never have one.
 * @param ends whether the end is seen from a corner.
 */
function byCorners(sight: Sight, end: Point, ends: (corner: Point) => boolean): number {
  const { points } = sight;
  const start = points.length - 1;
  const onward = points.map((point) => distance(point, end));
  const lengths = new Float64Array(points.length).fill(Infinity);
  const before = new Int32Array(points.length);
  const done = new Uint8Array(points.length);
  const reached: number[] = [];
  const stepFrom = (from: number, at: number): void => {
    const length = lengths[from]! + distance(points[from]!, points[at]!);
    if (!(length < lengths[at]!) || sight.isHidden(from, at)) return;
    lengths[at] = length;
    before[at] = from;
  };
  const reach = (here: number): void => {
    done[here] = 1;
    reached.push(here);
    for (let at = 0; at < start; at++) if (done[at] === 0) stepFrom(here, at);
  };
  lengths[start] = 0;
  reach(start);
  let best = Infinity;
  for (;;) {
    let here = -1;
    let least = best;
    for (let at = 0; at < start; at++) {
      if (done[at] === 1 || !(lengths[at]! + onward[at]! < least)) continue;
      here = at;
      least = lengths[at]! + onward[at]!;
    }
    if (here < 0) return best;
    if (sight.sees(before[here]!, here)) {
      reach(here);
      if (ends(points[here]!)) best = least;
      continue;
    }
    lengths[here] = Infinity;
    for (const from of reached) stepFrom(from, here);
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
