/**
 * Sizes and shapes that all drawings of phone plugs and jacks share.
 * 6.35 mm segments: an open drawing profile, not the standard (c). 3.5 mm shank: a secondary page (c); its segments and all of
 * the 2.5 mm plug are from memory, for drawing only (M). Bodies, lugs and springs are drawn to look right: not to scale.
 */
import type { Connector, Contact } from '../core/wiring/index.ts';
import { contactsOf, diameterOf } from '../core/wiring/index.ts';
import type { FaceContact, Outline } from './face.ts';
import type { Box, Exit, Point } from './geometry.ts';
import { polygonPath } from './geometry.ts';

/** Segment lengths from the nose, millimetres. */
interface Segments {
  readonly tip: number;
  readonly ring: number;
  readonly sleeve: number;
  readonly gap: number;
}

const SEGMENTS: Readonly<Record<string, Segments>> = {
  'trs-6.35': { tip: 6, ring: 6.4, sleeve: 15, gap: 1.8 },
  'ts-6.35': { tip: 7, ring: 0, sleeve: 22.2, gap: 1.8 },
  'trs-3.5': { tip: 4, ring: 3, sleeve: 5, gap: 1 },
  'ts-3.5': { tip: 4, ring: 0, sleeve: 9, gap: 1 },
  'trs-2.5': { tip: 3, ring: 2.4, sleeve: 4, gap: 0.8 },
};

/** Pixels a millimetre: smaller plugs are drawn larger so that every segment holds its name, yet the order of sizes stays. */
const SCALES: Readonly<Record<string, number>> = { '6.35': 7.6, '3.5': 12, '2.5': 14.5 };

/** Pixels a millimetre at which a phone plug of this diameter is drawn. */
export function phoneScale(connector: Connector): number {
  const scale = SCALES[String(diameterOf(connector))];
  if (scale === undefined)
    throw new RangeError(`phone plug: connector must be TRS or TS, got '${connector}'`);
  return scale;
}

/** The stretch of the shank that a contact takes, millimetres from the nose. */
export interface Span {
  readonly contact: Contact;
  readonly from: number;
  readonly to: number;
}

/** Segments of a plug from its nose on, millimetres along the axis. */
export function spansOf(connector: Connector): readonly Span[] {
  const lengths = SEGMENTS[connector];
  if (lengths === undefined)
    throw new RangeError(`phone plug: connector must be TRS or TS, got '${connector}'`);
  const spans: Span[] = [];
  let from = 0;
  for (const contact of ['tip', 'ring', 'sleeve'] as const) {
    if (!contactsOf(connector).includes(contact)) continue;
    spans.push({ contact, from, to: from + lengths[contact] });
    from += lengths[contact] + lengths.gap;
  }
  return spans;
}

/**
 * Length of the shank from the nose to the end of the last contact, millimetres.
 * @throws RangeError for a connector that is no phone plug.
 */
export function shankOf(connector: Connector): number {
  return Math.max(...spansOf(connector).map(({ to }) => to));
}

/** The nose, as shares of length and of radius: rounded point, bulb, groove, neck. */
export const NOSE: readonly (readonly [number, number])[] = [
  [0, 0.2],
  [0.05, 0.36],
  [0.34, 0.93],
  [0.42, 0.99],
  [0.5, 0.97],
  [0.68, 0.68],
  [0.78, 0.68],
  [0.88, 1],
  [1, 1],
];

/** Takes millimetres along the axis and across it (down positive), gives pixels. */
export type Place = (along: number, across: number) => Point;

/** A part of a drawing: what it covers, its shapes and its contacts, in pixels. */
export interface Parts {
  readonly bounds: Box;
  readonly outlines: readonly Outline[];
  readonly contacts: readonly FaceContact[];
}

/** A rectangle about the axis, `from` and `to` along it and `half` to each side, millimetres, as an SVG path string. */
export function rect(place: Place, from: number, to: number, half: number): string {
  return polygonPath([place(from, -half), place(to, -half), place(to, half), place(from, half)]);
}

/** Headings of the four ways out, radians. */
export const HEADINGS: Readonly<Record<Exit, number>> = {
  right: 0,
  down: Math.PI / 2,
  left: Math.PI,
  up: -Math.PI / 2,
};
