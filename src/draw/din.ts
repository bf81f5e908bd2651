/**
 * Faces of the 5-pin and 7-pin DIN connectors, drawn to scale.
 * Pitch circle, pin and shell: a museum's reference page on the DIN connectors, secondary (c). Where the key is: same page.
 * The depth of key and shell, the holes and the solder cups are for drawing only.
 */
import type { Contact, DinView } from '../core/wiring/index.ts';
import { dinAngle, dinReadingOrder, pinsOf, words } from '../core/wiring/index.ts';
import type { FaceContact, FaceDrawing, Outline } from './face.ts';
import type { Exit, Point } from './geometry.ts';
import { circlePath, linePath, polygonPath, ringPath, towards } from './geometry.ts';
import { TEXT_SIZES, centredText } from './text.ts';

/** Millimetres. `shellRadius` is half of 13.2; `shellInner` and the key are for drawing only. */
export const DIN_MILLIMETRES = {
  pitchRadius: 3.5,
  pinRadius: 1.45 / 2,
  shellRadius: 13.2 / 2,
  shellInner: 5.85,
  keyHalfWidth: 0.6,
  keyDepth: 0.75,
} as const;

/** Pixels a millimetre at which a pin holds its number and two neighbours are 37 px apart. */
export const DIN_SCALE = 14;

/** The middle of a pin in millimetres from the middle of the face, x to the right, y up. */
export function dinPin(input: DinView, contact: Contact): Point {
  const radians = (dinAngle(input, contact) * Math.PI) / 180;
  return {
    x: DIN_MILLIMETRES.pitchRadius * Math.cos(radians),
    y: DIN_MILLIMETRES.pitchRadius * Math.sin(radians),
  };
}

/** 'solder side, key down'. */
function dinCaption({ view, turned }: DinView): string {
  return `${view === 'solder' ? 'solder side' : 'mating face'}, key ${turned === true ? 'up' : 'down'}`;
}

/** The face as a drawing in pixels with the middle of the face at `centre`, at `scale` pixels a millimetre. */
export function drawDin(
  input: DinView,
  centre: Point = { x: 0, y: 0 },
  scale: number = DIN_SCALE,
  exit: Exit = 'right',
): FaceDrawing {
  const radius = DIN_MILLIMETRES.shellRadius * scale;
  const contacts = [
    shellContact(centre, scale, exit),
    ...pinsOf(input.connector).map((pin) => pinContact(input, pin, centre, scale)),
  ];
  return {
    x: centre.x - radius,
    y: centre.y - radius,
    width: 2 * radius,
    height: 2 * radius,
    outlines: dinOutlines(input, centre, scale),
    contacts,
    caption: dinCaption(input),
    textAlternative: dinWords(input),
  };
}

function pinContact(input: DinView, contact: Contact, centre: Point, scale: number): FaceContact {
  const pin = dinPin(input, contact);
  const at = { x: centre.x + pin.x * scale, y: centre.y - pin.y * scale };
  const radius = DIN_MILLIMETRES.pinRadius * scale;
  // Half the distance to the next pin, so that no two touch shapes overlap.
  const reach = DIN_MILLIMETRES.pitchRadius * Math.sin(Math.PI / 8) * scale;
  const rim = towards(at, centre, -radius);
  return {
    contact,
    x: at.x,
    y: at.y,
    d: circlePath(at, radius),
    touch: circlePath(at, reach),
    box: { x: at.x - radius, y: at.y - radius, width: 2 * radius, height: 2 * radius },
    radius,
    label: centredText(contact, at, TEXT_SIZES.contact),
    port: { ...rim, direction: Math.atan2(at.y - centre.y, at.x - centre.x) },
  };
}

/** The shell's name stands on the side that conductors do not take. */
function shellContact(centre: Point, scale: number, exit: Exit): FaceContact {
  const { shellRadius, shellInner } = DIN_MILLIMETRES;
  const outer = shellRadius * scale;
  const corner = Math.SQRT1_2 * outer;
  const aside = exit === 'left' ? 1 : -1;
  return {
    contact: 'shell',
    x: centre.x,
    y: centre.y + ((shellRadius + shellInner) / 2) * scale,
    d: ringPath(centre, shellInner * scale, outer),
    touch: ringPath(centre, (shellInner - 0.85) * scale, (shellRadius + 0.4) * scale),
    box: { x: centre.x - outer, y: centre.y - outer, width: 2 * outer, height: 2 * outer },
    label: {
      x: centre.x + aside * (corner + 3),
      y: exit === 'down' ? centre.y - corner - 3 : centre.y + corner + 12,
      text: 'shell',
      anchor: aside === 1 ? 'start' : 'end',
      size: TEXT_SIZES.contact,
    },
    port: { x: centre.x + corner, y: centre.y + corner, direction: Math.PI / 4 },
  };
}

function dinOutlines(input: DinView, centre: Point, scale: number): Outline[] {
  const { shellInner, keyHalfWidth, keyDepth } = DIN_MILLIMETRES;
  const down = input.turned === true ? -1 : 1;
  const half = keyHalfWidth * scale;
  const foot = {
    x: centre.x - half,
    y: centre.y + down * Math.sqrt(shellInner ** 2 - keyHalfWidth ** 2) * scale,
  };
  const head = foot.y - down * keyDepth * scale;
  const dent = [
    foot,
    { x: foot.x, y: head },
    { x: foot.x + 2 * half, y: head },
    { x: foot.x + 2 * half, y: foot.y },
  ];
  const key: Outline[] = [
    { d: polygonPath(dent), kind: input.form === 'plug' ? 'hatch' : 'sheet' },
    { d: linePath(dent), kind: 'outline' },
  ];
  // The socket's pins stand in an insert; a plug shows the rim of its own smaller one.
  const insert = (input.form === 'jack' ? shellInner - 0.35 : 5.0) * scale;
  const surroundings: Outline[] =
    input.view === 'solder' || input.form === 'jack'
      ? [{ d: circlePath(centre, insert), kind: 'hairline' }]
      : [];
  return [
    ...surroundings,
    ...key,
    ...pinsOf(input.connector).flatMap((pin) => pinSurrounds(input, pin, centre, scale)),
  ];
}

/** What tells a pin from a hole and from a solder cup: a hole has a chamfer, a cup is open to one side. */
function pinSurrounds(input: DinView, contact: Contact, centre: Point, scale: number): Outline[] {
  const pin = dinPin(input, contact);
  const at = { x: centre.x + pin.x * scale, y: centre.y - pin.y * scale };
  const rim = (DIN_MILLIMETRES.pinRadius + 0.2) * scale;
  if (input.view === 'solder') return [];
  return input.form === 'jack' ? [{ d: circlePath(at, rim), kind: 'hairline' }] : [];
}

function dinWords(input: DinView): string {
  const order = dinReadingOrder(input);
  const row = order.map((pin) => `pin ${pin}`).join(', ');
  return `${words(input.connector)} ${input.form}, ${dinCaption(input)}. From left to right: ${row}. The shell runs round them.`;
}
