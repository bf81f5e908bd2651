/**
 * Reads path strings back as points, so that tests judge what will be seen and not what was meant.
 * Knows the commands that figures use: M, L, A with a round radius, Z, h, v.
 */
import type { Box, Point } from '../../src/draw/geometry.ts';

/** Points along a path, at most `step` pixels apart; a gap between two parts stays a gap. */
export function pointsAlong(d: string, step = 2): Point[] {
  const points: Point[] = [];
  let at: Point = { x: 0, y: 0 };
  for (const [, command, list] of d.matchAll(/([MLA])([^MLAZhvH]*)/g)) {
    const numbers = (list ?? '')
      .split(/[\s,]+/)
      .filter(Boolean)
      .map(Number);
    const to = { x: numbers.at(-2) ?? NaN, y: numbers.at(-1) ?? NaN };
    if (command === 'M') points.push(to);
    else if (command === 'L') points.push(...along(at, to, step));
    else points.push(...aroundArc(at, to, numbers[0] ?? NaN, numbers[4] === 1, step));
    at = to;
  }
  return points;
}

function along(from: Point, to: Point, step: number): Point[] {
  const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / step));
  return Array.from({ length: count }, (_, i) => mix(from, to, (i + 1) / count));
}

function mix(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

/** Points on the short arc of a circle between two points. */
function aroundArc(from: Point, to: Point, radius: number, sweep: boolean, step: number): Point[] {
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  const height = Math.sqrt(Math.max(0, radius ** 2 - half ** 2));
  const middle = mix(from, to, 0.5);
  const side = sweep ? 1 : -1;
  const centre = {
    x: middle.x - (side * height * (to.y - from.y)) / (2 * half),
    y: middle.y + (side * height * (to.x - from.x)) / (2 * half),
  };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const end = Math.atan2(to.y - centre.y, to.x - centre.x);
  const turn = Math.atan2(Math.sin(end - start), Math.cos(end - start));
  const count = Math.max(1, Math.ceil((Math.abs(turn) * radius) / step));
  return Array.from({ length: count }, (_, i) => {
    const angle = start + (turn * (i + 1)) / count;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

/** Distance from a point to a box; 0 inside it. */
export function distanceToBox({ x, y }: Point, box: Box): number {
  const dx = Math.max(box.x - x, 0, x - box.x - box.width);
  const dy = Math.max(box.y - y, 0, y - box.y - box.height);
  return Math.hypot(dx, dy);
}

/** True when two boxes share any area. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}
