/**
 * Points, boxes and paths. Everything in pixels, x to the right, y down, unless a name says otherwise.
 */
import { pathRound } from 'd3';

/** A place on the sheet. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A rectangle on the sheet; `x` and `y` are its upper left corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where a conductor leaves a connector: towards the other end of its lead. */
export type Exit = 'right' | 'left' | 'down' | 'up';

/** A line through `points` with corners rounded to `radius` pixels or half the shorter side, as an SVG path string. */
export function roundedPath(points: readonly Point[], radius: number): string {
  const pen = pathRound(1);
  points.forEach((point, index) => {
    const before = points[index - 1];
    const after = points[index + 1];
    if (before === undefined) pen.moveTo(point.x, point.y);
    else if (after === undefined) pen.lineTo(point.x, point.y);
    else pen.arcTo(point.x, point.y, after.x, after.y, cornerRadius(before, point, after, radius));
  });
  return pen.toString();
}

/** The greatest radius that leaves half of either side straight: arcs use up `radius * tan(turn / 2)` of each side. */
function cornerRadius(before: Point, corner: Point, after: Point, radius: number): number {
  const room = Math.min(distance(before, corner), distance(corner, after)) / 2;
  const turn = Math.abs(turnAt(before, corner, after));
  const used = Math.tan(turn / 2);
  return used < 1e-6 ? 0 : Math.min(radius, room / used);
}

function turnAt(before: Point, corner: Point, after: Point): number {
  const incoming = Math.atan2(corner.y - before.y, corner.x - before.x);
  const outgoing = Math.atan2(after.y - corner.y, after.x - corner.x);
  const turn = outgoing - incoming;
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

/** A closed polygon through `points`, as an SVG path string. */
export function polygonPath(points: readonly Point[]): string {
  const pen = pathRound(2);
  points.forEach(({ x, y }, index) => (index === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
  pen.closePath();
  return pen.toString();
}

/** An open line through `points` with sharp corners, as an SVG path string. */
export function linePath(points: readonly Point[]): string {
  const pen = pathRound(2);
  points.forEach(({ x, y }, index) => (index === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)));
  return pen.toString();
}

/** A full circle, as an SVG path string. */
export function circlePath(centre: Point, radius: number): string {
  const pen = pathRound(2);
  pen.moveTo(centre.x + radius, centre.y);
  pen.arc(centre.x, centre.y, radius, 0, 2 * Math.PI);
  pen.closePath();
  return pen.toString();
}

/** A ring between two circles, to be filled by the even-odd rule. */
export function ringPath(centre: Point, inner: number, outer: number): string {
  return circlePath(centre, outer) + circlePath(centre, inner);
}

/** A rectangle with corners of `radius` pixels, as an SVG path string. */
export function boxPath(box: Box, radius = 0): string {
  const pen = pathRound(2);
  const { x, y, width, height } = box;
  if (radius === 0) {
    pen.rect(x, y, width, height);
    return pen.toString();
  }
  pen.moveTo(x + radius, y);
  pen.arcTo(x + width, y, x + width, y + height, radius);
  pen.arcTo(x + width, y + height, x, y + height, radius);
  pen.arcTo(x, y + height, x, y, radius);
  pen.arcTo(x, y, x + width, y, radius);
  pen.closePath();
  return pen.toString();
}

/** The length of the straight line between two points. */
export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** The point `length` pixels from `from` on the way to `to`. */
export function towards(from: Point, to: Point, length: number): Point {
  const whole = distance(from, to);
  if (whole === 0) return from;
  return { x: from.x + ((to.x - from.x) * length) / whole, y: from.y + ((to.y - from.y) * length) / whole };
}

/** The smallest box that holds all of `points`; `points` must not be empty. */
export function boundsOf(points: readonly Point[]): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const x = Math.min(...xs);
  const y = Math.min(...ys);
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}
