/**
 * A phone jack cut open, its springs on the contacts of a plug. Housing, springs and lugs are for drawing only.
 */
import type { Connector, Contact } from '../core/wiring/index.ts';
import { diameterOf } from '../core/wiring/index.ts';
import type { FaceContact, Outline } from './face.ts';
import type { Exit, Point } from './geometry.ts';
import { boundsOf, boxPath, linePath, polygonPath } from './geometry.ts';
import type { Parts, Place, Span } from './phone-shape.ts';
import { NOSE, phoneScale, rect, shankOf, spansOf } from './phone-shape.ts';
import { TEXT_SIZES, centredText } from './text.ts';

/** Sizes of a jack in millimetres, and where its places lie on the sheet; `lugSide` is -1 where the lugs are below. */
interface Cut {
  readonly connector: Connector;
  readonly place: Place;
  /** Pixels a millimetre. */
  readonly scale: number;
  readonly lugSide: 1 | -1;
  readonly radius: number;
  readonly shank: number;
  readonly depth: number;
  /** From the axis to the outside of the housing, and to the feet of the lugs. */
  readonly wall: number;
  readonly foot: number;
}

/** How far the bushing stands out of the housing, millimetres. */
const BUSHING = 1.2;

/** Height of a lug, pixels. */
const LUG_PIXELS = 26;

/** A jack cut open: bushing at the mouth, springs that ride on a plug shown by a thin line, lugs outside. */
export function jackParts(connector: Connector, exit: Exit, origin: Point): Parts {
  const cut = cutOf(connector, exit, origin);
  const { place, scale, depth, wall, foot } = cut;
  const lugs = spansOf(connector).map((span) => ({ span, along: lugAlong(cut, span) }));
  return {
    bounds: boundsOf([place(-BUSHING, wall), place(depth, -foot - LUG_PIXELS / scale)]),
    outlines: [
      ...housingOutlines(cut),
      ...lugs.flatMap(({ span, along }) => springOutlines(cut, span.contact, along)),
    ],
    contacts: lugs.map(({ span, along }) => lugOf(cut, span.contact, along)),
  };
}

function cutOf(connector: Connector, exit: Exit, origin: Point): Cut {
  const scale = phoneScale(connector);
  const radius = (diameterOf(connector) ?? 0) / 2;
  const shank = shankOf(connector);
  const depth = shank + 1.2;
  const turn = exit === 'right' ? 1 : -1;
  const lugSide = exit === 'down' ? -1 : 1;
  const place: Place = (along, across) => ({
    x: origin.x + turn * (along - depth / 2) * scale,
    y: origin.y + lugSide * across * scale,
  });
  const wall = 2.1 * radius;
  return { connector, place, scale, lugSide, radius, shank, depth, wall, foot: wall + 7 / scale };
}

/** Housing, bushing and back wall, cut through, with the plug in them. */
function housingOutlines({ connector, place, scale, radius, shank, depth, wall }: Cut): readonly Outline[] {
  const thick = 5 / scale;
  const mouth = Math.min(3.2, 0.24 * depth);
  const side = (sign: 1 | -1): string =>
    polygonPath([
      place(-BUSHING, sign * wall),
      place(depth, sign * wall),
      place(depth, sign * (wall - thick)),
      place(mouth, sign * (wall - thick)),
      place(mouth, sign * radius * 1.06),
      place(-BUSHING, sign * radius * 1.06),
    ]);
  const cutThrough = [side(-1), side(1), rect(place, depth - thick, depth, wall - thick)];
  return [
    { d: rect(place, 0, depth, wall), kind: 'sheet' },
    ...cutThrough.flatMap((d): Outline[] => [
      { d, kind: 'hatch' },
      { d, kind: 'outline' },
    ]),
    { d: ghostPath(connector, place, shank, radius), kind: 'ghost' },
  ];
}

/** Where the lug of a contact stands: at its middle, but the plug's sleeve is deepest in the mouth and is measured from there. */
function lugAlong({ scale, shank }: Cut, { contact, from, to }: Span): number {
  const middle = shank - (from + to) / 2;
  return contact === 'sleeve' ? Math.max(BUSHING + 12 / scale, middle) : middle;
}

function lugOf({ place, scale, lugSide, foot }: Cut, contact: Contact, along: number): FaceContact {
  const half = (contact === 'sleeve' ? 25 : 19) / scale;
  const top = foot + LUG_PIXELS / scale;
  const box = boundsOf([place(along - half, -top), place(along + half, -foot)]);
  const centre = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  return {
    contact,
    ...centre,
    d: boxPath(box, 5),
    touch: boxPath({ x: box.x - 3, y: box.y - 9, width: box.width + 6, height: box.height + 18 }),
    box,
    label: centredText(contact, centre, TEXT_SIZES.contact),
    port: { ...place(along, -top), direction: (-lugSide * Math.PI) / 2 },
  };
}

/** From a lug to the plug: straight through the wall to its sleeve, by a bent spring to the others. */
function springOutlines(
  { place, scale, radius, wall, foot }: Cut,
  contact: Contact,
  along: number,
): readonly Outline[] {
  if (contact === 'sleeve')
    return [{ d: linePath([place(along, -foot), place(along, -wall)]), kind: 'outline' }];
  const bend = 8 / scale;
  const surface = contact === 'tip' ? 0.95 * radius : radius;
  const spring = [
    place(along, -foot),
    place(along, -wall + 9 / scale),
    place(along - 1.6 * bend, -surface - bend),
    place(along - 0.4 * bend, -surface),
    place(along + 0.8 * bend, -surface - 0.8 * bend),
  ];
  return [{ d: linePath(spring), kind: 'outline' }];
}

/** The plug that would sit in a jack, nose inward. */
function ghostPath(connector: Connector, place: Place, shank: number, radius: number): string {
  const tip = spansOf(connector)[0]?.to ?? 0;
  const nose = NOSE.map(([l, r]): readonly [number, number] => [shank - l * tip, r * radius]);
  const outline = [
    place(-BUSHING, radius),
    ...[...nose].reverse().map(([x, y]) => place(x, y)),
    ...nose.map(([x, y]) => place(x, -y)),
    place(-BUSHING, -radius),
  ];
  const gaps = spansOf(connector)
    .slice(1)
    .flatMap(({ from }) => [linePath([place(shank - from, -radius), place(shank - from, radius)])]);
  const tips = spansOf(connector)
    .slice(0, -1)
    .map(({ to }) => linePath([place(shank - to, -radius), place(shank - to, radius)]));
  return [linePath(outline), ...gaps, ...tips].join('');
}
