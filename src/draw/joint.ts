/**
 * The joint of two leads in series, drawn as a strip of terminals: what each contact of the first lead touches in the second.
 */
import type { Connector, Contact } from '../core/wiring/index.ts';
import { contactsOf } from '../core/wiring/index.ts';
import type { Block, Escape, FaceContact, Outline, Route } from './face.ts';
import type { Box, Exit, Point } from './geometry.ts';
import { boundsOf, boxPath, linePath } from './geometry.ts';
import { HEADINGS } from './phone-shape.ts';
import { TEXT_SIZES, centredText } from './text.ts';

/** Which contact of the lead before touches which contact of the lead after. */
export interface JointTouch {
  readonly before: Contact;
  readonly after: Contact;
}

/** A joint to draw: the connectors of both leads, and which of their contacts touch. */
interface JointInput {
  readonly before: Connector;
  readonly after: Connector;
  readonly touches: readonly JointTouch[];
}

/** Pixels: terminals in a row or a stack, the strip that holds them, the room between the two sides. */
const TERMINAL = { width: 48, height: 26, pitch: 36, narrow: 37, gap: 34, rim: 8, edge: 14 } as const;

/** A joint on the sheet: its middle, sizes of a terminal, and a place from the middle along the leads and aside of them. */
interface Strip {
  readonly across: boolean;
  readonly origin: Point;
  readonly rows: number;
  readonly width: number;
  readonly pitch: number;
  readonly place: (along: number, aside: number) => Point;
}

/** Both sides of a joint, its middle at `origin`. `across` is true where leads run from top to bottom. */
export function drawJoint(
  input: JointInput,
  origin: Point,
  across: boolean,
  room: number,
): { before: Block; after: Block } {
  const rows = Math.max(contactsOf(input.before).length, contactsOf(input.after).length);
  const strip: Strip = {
    across,
    origin,
    rows,
    width: across ? Math.min(TERMINAL.width, (room - 16) / rows - 5) : TERMINAL.width,
    pitch: across ? Math.min(TERMINAL.width + 14, (room - 16) / rows) : TERMINAL.pitch,
    place: (along, aside) =>
      across ? { x: origin.x + aside, y: origin.y + along } : { x: origin.x + along, y: origin.y + aside },
  };
  const before = terminalsOf(strip, input.before, -1);
  const after = terminalsOf(strip, input.after, 1);
  const box = frameOf(strip);
  const outlines: Outline[] = [
    { d: boxPath(box, 3), kind: 'hairline' },
    { d: boxPath(slotOf(strip, box)), kind: 'ghost' },
    ...touchesOf(strip, input.touches, before, after),
  ];
  return {
    before: blockOf(before, outlines, exitOf(-1, across), box),
    after: blockOf(after, [], exitOf(1, across), box),
  };
}

/** The terminals of one side of a joint: -1 before its middle, 1 behind it. */
function terminalsOf(strip: Strip, connector: Connector, side: 1 | -1): readonly FaceContact[] {
  const { across, width, pitch, place } = strip;
  const { height, gap } = TERMINAL;
  const reach = across ? height / 2 : width / 2;
  const apart = gap / 2 + reach;
  const contacts = contactsOf(connector);
  return contacts.map((contact, index) => {
    const aside = (index - (contacts.length - 1) / 2) * pitch;
    const centre = place(side * apart, aside);
    const box = { x: centre.x - width / 2, y: centre.y - height / 2, width, height };
    const margin = across ? 9 : 5;
    return {
      contact,
      ...centre,
      d: boxPath(box, 4),
      touch: boxPath({ ...box, y: box.y - margin, height: box.height + 2 * margin }),
      box,
      label: centredText(contact, centre, TEXT_SIZES.contact),
      port: { ...place(side * (apart + reach), aside), direction: HEADINGS[exitOf(side, across)] },
    };
  });
}

/** Lines between the terminals that touch, from rim to rim. */
function touchesOf(
  { across, width }: Strip,
  touches: readonly JointTouch[],
  before: readonly FaceContact[],
  after: readonly FaceContact[],
): readonly Outline[] {
  const inner = ({ x, y }: FaceContact, side: 1 | -1): Point =>
    across ? { x, y: y + (side * TERMINAL.height) / 2 } : { x: x + (side * width) / 2, y };
  return touches.flatMap((touch): Outline[] => {
    const from = before.find(({ contact }) => contact === touch.before);
    const to = after.find(({ contact }) => contact === touch.after);
    return from && to ? [{ d: linePath([inner(from, 1), inner(to, -1)]), kind: 'outline' }] : [];
  });
}

/** The strip round all terminals. */
function frameOf({ across, rows, pitch, width, place }: Strip): Box {
  const along = TERMINAL.gap / 2 + 6 + (across ? TERMINAL.height : width);
  const aside = (rows * pitch) / 2 + (across ? 0 : TERMINAL.rim / 2);
  return boundsOf([place(-along, -aside), place(along, aside)]);
}

/** The seam between the two sides. */
function slotOf({ across, origin }: Strip, box: Box): Box {
  const narrow = TERMINAL.gap - 8;
  return across
    ? { ...box, y: origin.y - narrow / 2, height: narrow }
    : { ...box, x: origin.x - narrow / 2, width: narrow };
}

function exitOf(side: 1 | -1, across: boolean): Exit {
  if (across) return side === 1 ? 'down' : 'up';
  return side === 1 ? 'right' : 'left';
}

function blockOf(
  contacts: readonly FaceContact[],
  outlines: readonly Outline[],
  exit: Exit,
  box: Block['bounds'],
): Block {
  const routes: Partial<Record<Contact, Route>> = {};
  const heading = { x: Math.round(Math.cos(HEADINGS[exit])), y: Math.round(Math.sin(HEADINGS[exit])) };
  for (const { contact, port } of contacts) {
    const length = TERMINAL.edge + 6;
    routes[contact] = [port, { x: port.x + heading.x * length, y: port.y + heading.y * length }];
  }
  const escapes: readonly Escape[] = [{ routes, costs: {} }];
  const edge = TERMINAL.edge;
  const bounds =
    exit === 'right' || exit === 'left'
      ? { ...box, x: box.x - edge, width: box.width + 2 * edge }
      : { ...box, y: box.y - edge, height: box.height + 2 * edge };
  return { exit, outlines, contacts, bounds, escapes, caption: 'joint', textAlternative: '' };
}
