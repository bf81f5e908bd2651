/**
 * How a line of the loop is drawn: its kind, its weight, the words beside it.
 */
import type { Point } from './geometry.ts';
import { polygonPath } from './geometry.ts';

/** What a conductor carries. 'spare' is a conductor between contacts that are no line of the loop; 'untold' one whose line is asked. */
export type LineKind = 'source' | 'sink' | 'shield' | 'spare' | 'untold';

/** Weight of a conductor without current, and of one whose current is not known, pixels. */
const THIN_WEIGHT = 2;
const PLAIN_WEIGHT = 3;

/** The current drawn at the plain weight: the loop's own five milliamperes. */
const PLAIN_AMPERES = 5e-3;

/** Heaviest stroke, pixels: more would fill the gap between neighbouring conductors. */
const HEAVIEST_WEIGHT = 5;

/** Stroke weight in pixels for a current in amperes (sign ignored), growing with its root so that 5 mA and 20 mA differ; null is 'not known'. */
export function weightOf(amperes: number | null): number {
  if (amperes === null) return PLAIN_WEIGHT;
  const share = Math.sqrt(Math.abs(amperes) / PLAIN_AMPERES);
  return Math.min(HEAVIEST_WEIGHT, THIN_WEIGHT + (PLAIN_WEIGHT - THIN_WEIGHT) * share);
}

/** An arrowhead with its middle at `at` that points to `heading` (radians, 0 to the right, quarter turn down), as a closed path. */
export function arrowhead(at: Point, heading: number, weight: number): string {
  const length = 7 + 1.6 * weight;
  const half = 2.8 + 1.05 * weight;
  const along = { x: Math.cos(heading), y: Math.sin(heading) };
  const point = (forward: number, aside: number): Point => ({
    x: at.x + along.x * forward - along.y * aside,
    y: at.y + along.y * forward + along.x * aside,
  });
  return polygonPath([
    point(length / 2, 0),
    point(-length / 2, half),
    point(-length * 0.3, 0),
    point(-length / 2, -half),
  ]);
}
