/**
 * Phone plugs and jacks in side view: not to scale.
 */
import type { Connector, FaceInput } from '../core/wiring/index.ts';
import { contactsOf, diameterOf, familyOf, words } from '../core/wiring/index.ts';
import type { FaceContact, FaceDrawing, Outline } from './face.ts';
import type { Box, Exit, Point } from './geometry.ts';
import { boundsOf, boxPath, linePath, polygonPath } from './geometry.ts';
import { jackParts } from './phone-jack.ts';
import { lugParts } from './phone-lugs.ts';
import type { Parts, Place, Span } from './phone-shape.ts';
import { NOSE, phoneScale, rect, shankOf, spansOf } from './phone-shape.ts';
import { TEXT_SIZES, centredText } from './text.ts';

/** Where a phone connector stands and which way it looks. */
interface PhonePlacement {
  /** Side on which its conductors leave. */
  readonly exit: Exit;
  readonly origin: Point;
}

/** Half width of a handle, and of the stub that shows in the solder view, in radii. */
const BODY_RADII = 1.4;

const BODY_MILLIMETRES = 4.5;

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

/** 'side view, not to scale'. */
function phoneCaption({ form, view }: FaceInput): string {
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
