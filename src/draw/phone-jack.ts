/**
 * A phone jack cut open, its springs on the contacts of a plug. Housing, springs and lugs are for drawing only.
 */
import type { Connector, Contact } from '../core/wiring/index.ts';
import { diameterOf } from '../core/wiring/index.ts';
import type { FaceContact, Outline } from './face.ts';
import type { Exit, Point } from './geometry.ts';
import { boundsOf, boxPath, linePath, polygonPath } from './geometry.ts';
import type { Parts, Place } from './phone-shape.ts';
import { NOSE, phoneScale, rect, shankOf, spansOf } from './phone-shape.ts';
import { TEXT_SIZES, centredText } from './text.ts';

/** A jack cut open: bushing at the mouth, springs that ride on a plug shown by a thin line, lugs outside. */
export function jackParts(connector: Connector, exit: Exit, origin: Point): Parts {
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
  const thick = 5 / scale;
  const mouth = Math.min(3.2, 0.24 * depth);
  const outlines: Outline[] = [
    { d: rect(place, 0, depth, wall), kind: 'sheet' },
    ...[-1, 1].flatMap((side): Outline[] => {
      const strip = [
        place(-1.2, side * wall),
        place(depth, side * wall),
        place(depth, side * (wall - thick)),
        place(mouth, side * (wall - thick)),
        place(mouth, side * radius * 1.06),
        place(-1.2, side * radius * 1.06),
      ];
      return [
        { d: polygonPath(strip), kind: 'hatch' },
        { d: polygonPath(strip), kind: 'outline' },
      ];
    }),
    { d: rect(place, depth - thick, depth, wall - thick), kind: 'hatch' },
    { d: rect(place, depth - thick, depth, wall - thick), kind: 'outline' },
    { d: ghostPath(connector, place, shank, radius), kind: 'ghost' },
  ];
  const lugHeight = 26 / scale;
  const foot = wall + 7 / scale;
  const contacts = spansOf(connector).map((span): FaceContact => {
    // The plug's sleeve is deepest in the mouth: measure from there.
    const along =
      span.contact === 'sleeve'
        ? Math.max(1.2 + 12 / scale, shank - (span.from + span.to) / 2)
        : shank - (span.from + span.to) / 2;
    const half = (span.contact === 'sleeve' ? 25 : 19) / scale;
    const box = boundsOf([place(along - half, -foot - lugHeight), place(along + half, -foot)]);
    outlines.push(...springOutlines(place, span.contact, along, radius, wall, foot, scale));
    return {
      contact: span.contact,
      x: box.x + box.width / 2,
      y: box.y + box.height / 2,
      d: boxPath(box, 5),
      touch: boxPath({ x: box.x - 3, y: box.y - 9, width: box.width + 6, height: box.height + 18 }),
      box,
      label: centredText(
        span.contact,
        { x: box.x + box.width / 2, y: box.y + box.height / 2 },
        TEXT_SIZES.contact,
      ),
      port: { ...place(along, -foot - lugHeight), direction: (-lugSide * Math.PI) / 2 },
    };
  });
  const bounds = boundsOf([place(-1.2, wall), place(depth, -foot - lugHeight)]);
  return { bounds, outlines, contacts };
}

function springOutlines(
  place: Place,
  contact: Contact,
  along: number,
  radius: number,
  wall: number,
  foot: number,
  scale: number,
): Outline[] {
  if (contact === 'sleeve')
    return [{ d: linePath([place(along, -foot), place(along, -wall)]), kind: 'outline' }];
  const bend = 8 / scale;
  const surface = contact === 'tip' ? 0.95 * radius : radius;
  return [
    {
      d: linePath([
        place(along, -foot),
        place(along, -wall + 9 / scale),
        place(along - 1.6 * bend, -surface - bend),
        place(along - 0.4 * bend, -surface),
        place(along + 0.8 * bend, -surface - 0.8 * bend),
      ]),
      kind: 'outline',
    },
  ];
}

/** The plug that would sit in a jack, nose inward. */
function ghostPath(connector: Connector, place: Place, shank: number, radius: number): string {
  const tip = spansOf(connector)[0]?.to ?? 0;
  const nose = NOSE.map(([l, r]): readonly [number, number] => [shank - l * tip, r * radius]);
  const outline = [
    place(-1.2, radius),
    ...[...nose].reverse().map(([x, y]) => place(x, y)),
    ...nose.map(([x, y]) => place(x, -y)),
    place(-1.2, -radius),
  ];
  const gaps = spansOf(connector)
    .slice(1)
    .flatMap(({ from }) => [linePath([place(shank - from, -radius), place(shank - from, radius)])]);
  const tips = spansOf(connector)
    .slice(0, -1)
    .map(({ to }) => linePath([place(shank - to, -radius), place(shank - to, radius)]));
  return [linePath(outline), ...gaps, ...tips].join('');
}
