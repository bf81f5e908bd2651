/**
 * Phone plugs and jacks in side view.
 * 6.35 mm segments: an open drawing profile, not the standard (c). 3.5 mm shank: a secondary page (c); its segments and all of
 * the 2.5 mm plug are from memory, for drawing only (M). Bodies, lugs and springs are drawn to look right: not to scale.
 */
import type { Connector, Contact } from '../core/wiring/connectors.ts';
import { contactsOf, diameterOf, familyOf, words } from '../core/wiring/connectors.ts';
import type { FaceContact, FaceDrawing, FaceInput, Outline } from './face.ts';
import type { Box, Exit, Point } from './geometry.ts';
import { boundsOf, boxPath, linePath, polygonPath } from './geometry.ts';
import { TEXT_SIZES, centredText } from './text.ts';

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

interface Span {
  readonly contact: Contact;
  readonly from: number;
  readonly to: number;
}

/** Segments of a plug from its nose on, millimetres along the axis. */
function spansOf(connector: Connector): readonly Span[] {
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

function shankOf(connector: Connector): number {
  return Math.max(...spansOf(connector).map(({ to }) => to));
}

/** The nose, as shares of length and of radius: rounded point, bulb, groove, neck. */
const NOSE: readonly (readonly [number, number])[] = [
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
type Place = (along: number, across: number) => Point;

/** Where a phone connector stands and which way it looks. */
export interface PhonePlacement {
  /** Side on which its conductors leave. */
  readonly exit: Exit;
  readonly origin: Point;
}

/** Half width of a handle, and of the stub that shows in the solder view, in radii. */
const BODY_RADII = 1.4;
const BODY_MILLIMETRES = 4.5;

/** Pixels of lugs: [length along, width across, distance between]. Stacked lugs are wider, for their names stand upright. */
const LUGS = { row: { width: 24, pitch: 32 }, stack: { width: 50, pitch: 60 } } as const;

/**
 * A plug or jack from the side in pixels, the middle of its drawing at `origin`.
 * A plug points away from where its conductors go ('right' and 'down' and 'up': to the left); a jack opens the same way, but to the
 * right where conductors leave upward or downward, so that its contacts come in the order of the plug above or below it.
 */
export function drawPhone(
  input: FaceInput,
  { exit, origin }: PhonePlacement = { exit: 'right', origin: { x: 0, y: 0 } },
): FaceDrawing {
  const parts =
    input.form === 'jack'
      ? jackParts(input.connector, exit, origin)
      : input.view === 'solder'
        ? lugParts(input.connector, exit, origin)
        : plugParts(input.connector, exit, origin);
  return {
    ...parts.bounds,
    outlines: parts.outlines,
    contacts: parts.contacts,
    caption: phoneCaption(input),
    textAlternative: phoneWords(input),
  };
}

interface Parts {
  readonly bounds: Box;
  readonly outlines: readonly Outline[];
  readonly contacts: readonly FaceContact[];
}

function plugParts(connector: Connector, exit: Exit, origin: Point): Parts {
  const scale = phoneScale(connector);
  const radius = (diameterOf(connector) ?? 0) / 2;
  const shank = shankOf(connector);
  const middle = (shank + BODY_MILLIMETRES) / 2;
  const turn = exit === 'left' ? -1 : 1;
  const place: Place = (along, across) => ({
    x: origin.x + turn * (along - middle) * scale,
    y: origin.y + across * scale,
  });
  const spans = spansOf(connector);
  const body = bodyOutlines(place, shank, radius);
  const gaps: Outline[] = spans.slice(1).map(({ from }, index) => ({
    d: rect(place, spans[index]?.to ?? 0, from, 0.9 * radius),
    kind: 'fill',
  }));
  const above = exit === 'down' ? 1 : -1;
  const contacts = spans.map((span) => segmentContact(span, place, radius, scale, above));
  return {
    bounds: boundsOf([place(0, -BODY_RADII * radius), place(shank + BODY_MILLIMETRES, BODY_RADII * radius)]),
    outlines: [...gaps, ...body],
    contacts,
  };
}

function bodyOutlines(place: Place, from: number, radius: number): Outline[] {
  const half = BODY_RADII * radius;
  const to = from + BODY_MILLIMETRES;
  const rim = 0.35;
  const break_ = [0, 1, 2, 3, 4].map((step) =>
    place(to + (step % 2 === 0 ? 0 : 0.45), -half + (step * half) / 2),
  );
  const edge = [
    place(from + rim, half),
    place(from, half - rim),
    place(from, -half + rim),
    place(from + rim, -half),
  ];
  return [
    { d: polygonPath([...edge, ...break_]), kind: 'hatch' },
    { d: linePath([break_[4] ?? place(to, half), ...edge, break_[0] ?? place(to, -half)]), kind: 'outline' },
    { d: linePath(break_), kind: 'hairline' },
  ];
}

function segmentContact(span: Span, place: Place, radius: number, scale: number, above: 1 | -1): FaceContact {
  const length = span.to - span.from;
  const middle = span.contact === 'tip' ? span.from + 0.46 * length : (span.from + span.to) / 2;
  const at = place(middle, 0);
  const shape =
    span.contact === 'tip'
      ? [
          ...NOSE.map(([l, r]) => place(l * length, r * radius)),
          ...[...NOSE].reverse().map(([l, r]) => place(l * length, -r * radius)),
        ]
      : [
          place(span.from, radius),
          place(span.to, radius),
          place(span.to, -radius),
          place(span.from, -radius),
        ];
  const box = boundsOf(shape);
  const label = place(span.contact === 'tip' ? 0.44 * length : middle, 0);
  return {
    contact: span.contact,
    ...at,
    d: polygonPath(shape),
    touch: touchBox(box, scale),
    box,
    label: centredText(span.contact, label, TEXT_SIZES.contact),
    port: {
      ...place(middle, above * radius * (span.contact === 'tip' ? 0.97 : 1)),
      direction: (above * Math.PI) / 2,
    },
  };
}

/** The touch shape of a segment: half an insulator wider on each side, and tall enough for a finger. */
function touchBox(box: Box, scale: number): string {
  const wider = 0.35 * scale;
  const taller = Math.max(0, (44 - box.height) / 2);
  return boxPath({
    x: box.x - wider,
    y: box.y - taller,
    width: box.width + 2 * wider,
    height: box.height + 2 * taller,
  });
}

function rect(place: Place, from: number, to: number, half: number): string {
  return polygonPath([place(from, -half), place(to, -half), place(to, half), place(from, half)]);
}

/** Behind the plug with its handle off: the stub of the shank, the collar, the lugs. Ring on top, tip in the middle, sleeve longest. */
function lugParts(connector: Connector, exit: Exit, origin: Point): Parts {
  const lugs = exit === 'left' || exit === 'right' ? LUGS.row : LUGS.stack;
  const place = lugPlace(exit, origin);
  const names = (['ring', 'tip', 'sleeve'] as const).filter((contact) =>
    contactsOf(connector).includes(contact),
  );
  const half = (names.length * lugs.pitch) / 2 + 2;
  const radius = ((diameterOf(connector) ?? 0) / 2) * phoneScale(connector);
  const collar = { from: -52, to: -38 };
  const wave = [0, 1, 2, 3, 4].map((step) =>
    place(-108 + (step % 2 === 0 ? 0 : 6), -radius + (step * radius) / 2),
  );
  const outlines: Outline[] = [
    { d: linePath([place(collar.from, -radius), wave[0] ?? origin]), kind: 'outline' },
    { d: linePath([place(collar.from, radius), wave[4] ?? origin]), kind: 'outline' },
    { d: linePath(wave), kind: 'hairline' },
    { d: rect(place, collar.from, collar.to, half), kind: 'hatch' },
    { d: rect(place, collar.from, collar.to, half), kind: 'outline' },
  ];
  const lengths: Readonly<Partial<Record<Contact, number>>> =
    lugs === LUGS.row ? { ring: 54, tip: 62, sleeve: 92 } : { ring: 34, tip: 42, sleeve: 58 };
  const contacts = names.map((contact, index): FaceContact => {
    const across = (index - (names.length - 1) / 2) * lugs.pitch;
    const end = collar.to + (lengths[contact] ?? 0);
    const shape = [
      place(collar.to, across - lugs.width / 2),
      place(end, across - lugs.width / 2),
      place(end, across + lugs.width / 2),
      place(collar.to, across + lugs.width / 2),
    ];
    const box = boundsOf(shape);
    const port = place(end, across);
    return {
      contact,
      x: box.x + box.width / 2,
      y: box.y + box.height / 2,
      d: boxPath(box, 5),
      touch: boxPath({ x: box.x - 3, y: box.y - 3.5, width: box.width + 6, height: box.height + 7 }),
      box,
      label: centredText(
        contact,
        { x: box.x + box.width / 2, y: box.y + box.height / 2 },
        TEXT_SIZES.contact,
      ),
      port: { ...port, direction: HEADINGS[exit] },
    };
  });
  return {
    bounds: boundsOf([place(-108, -half), place(56, half), place(-108, half), place(56, -half)]),
    outlines,
    contacts,
  };
}

/** Headings of the four ways out, radians. */
export const HEADINGS: Readonly<Record<Exit, number>> = {
  right: 0,
  down: Math.PI / 2,
  left: Math.PI,
  up: -Math.PI / 2,
};

function lugPlace(exit: Exit, origin: Point): Place {
  switch (exit) {
    case 'right':
      return (along, across) => ({ x: origin.x + along + 26, y: origin.y + across });
    case 'left':
      return (along, across) => ({ x: origin.x - along - 26, y: origin.y + across });
    case 'down':
      return (along, across) => ({ x: origin.x + across, y: origin.y + along + 26 });
    case 'up':
      return (along, across) => ({ x: origin.x + across, y: origin.y - along - 26 });
  }
}

/** A jack cut open: bushing at the mouth, springs that ride on a plug shown by a thin line, lugs outside. */
function jackParts(connector: Connector, exit: Exit, origin: Point): Parts {
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

/** 'side view, not to scale'. */
export function phoneCaption({ form, view }: FaceInput): string {
  if (form === 'jack') return 'cut open, not to scale';
  return view === 'solder' ? 'solder lugs, not to scale' : 'side view, not to scale';
}

function phoneWords(input: FaceInput): string {
  const names = contactsOf(input.connector).join(', ');
  const family = familyOf(input.connector) === 'ts' ? 'two contacts' : 'three contacts';
  const how =
    input.form === 'jack'
      ? `${family}, from the bottom of the hole to its mouth: ${names}`
      : `${family}, from the nose to the handle: ${names}`;
  return `${words(input.connector)} ${input.form}, ${phoneCaption(input)}; ${how}.`;
}
