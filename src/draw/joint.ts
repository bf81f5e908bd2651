/**
 * The joint of two leads in series, drawn as a strip of terminals: what each contact of the first lead touches in the second.
 */
import type { Connector, Contact } from '../core/wiring/index.ts';
import { contactsOf } from '../core/wiring/index.ts';
import type { Block, Escape, FaceContact, Outline, Route } from './face.ts';
import type { Exit, Point } from './geometry.ts';
import { boxPath, linePath } from './geometry.ts';
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

/** Both sides of a joint, its middle at `origin`. `across` is true where leads run from top to bottom. */
export function drawJoint(
  input: JointInput,
  origin: Point,
  across: boolean,
  room: number,
): { before: Block; after: Block } {
  const rows = Math.max(contactsOf(input.before).length, contactsOf(input.after).length);
  const width = across ? Math.min(TERMINAL.width, (room - 16) / rows - 5) : TERMINAL.width;
  const pitch = across ? Math.min(TERMINAL.width + 14, (room - 16) / rows) : TERMINAL.pitch;
  const apart = across ? TERMINAL.gap / 2 + TERMINAL.height / 2 : TERMINAL.gap / 2 + width / 2;
  const place = (along: number, aside: number): Point =>
    across ? { x: origin.x + aside, y: origin.y + along } : { x: origin.x + along, y: origin.y + aside };
  const terminals = (connector: Connector, side: 1 | -1): FaceContact[] =>
    contactsOf(connector).map((contact, index) => {
      const centre = place(side * apart, (index - (contactsOf(connector).length - 1) / 2) * pitch);
      const box = {
        x: centre.x - width / 2,
        y: centre.y - TERMINAL.height / 2,
        width,
        height: TERMINAL.height,
      };
      const exit = exitOf(side, across);
      const reach = across ? TERMINAL.height / 2 : width / 2;
      const out = place(side * (apart + reach), (index - (contactsOf(connector).length - 1) / 2) * pitch);
      return {
        contact,
        ...centre,
        d: boxPath(box, 4),
        touch: boxPath(
          across
            ? { ...box, y: box.y - 9, height: box.height + 18 }
            : { ...box, y: box.y - 5, height: box.height + 10 },
        ),
        box,
        label: centredText(contact, centre, TEXT_SIZES.contact),
        port: { ...out, direction: HEADINGS[exit] },
      };
    });
  const before = terminals(input.before, -1);
  const after = terminals(input.after, 1);
  const links = input.touches.flatMap((touch): Outline[] => {
    const from = before.find(({ contact }) => contact === touch.before);
    const to = after.find(({ contact }) => contact === touch.after);
    if (from === undefined || to === undefined) return [];
    const inner = (contact: FaceContact, side: 1 | -1): Point =>
      across
        ? { x: contact.x, y: contact.y + (side * TERMINAL.height) / 2 }
        : { x: contact.x + (side * width) / 2, y: contact.y };
    return [{ d: linePath([inner(from, 1), inner(to, -1)]), kind: 'outline' }];
  });
  const aside = (rows * pitch) / 2 + (across ? 0 : TERMINAL.rim / 2);
  const frame = {
    from: place(-TERMINAL.gap / 2 - 6 - (across ? TERMINAL.height : width), -aside),
    to: place(TERMINAL.gap / 2 + 6 + (across ? TERMINAL.height : width), aside),
  };
  const box = {
    x: frame.from.x,
    y: frame.from.y,
    width: frame.to.x - frame.from.x,
    height: frame.to.y - frame.from.y,
  };
  const slot = across
    ? { x: box.x, y: origin.y - TERMINAL.gap / 2 + 4, width: box.width, height: TERMINAL.gap - 8 }
    : { x: origin.x - TERMINAL.gap / 2 + 4, y: box.y, width: TERMINAL.gap - 8, height: box.height };
  const outlines: Outline[] = [
    { d: boxPath(box, 3), kind: 'hairline' },
    { d: boxPath(slot), kind: 'ghost' },
    ...links,
  ];
  return {
    before: blockOf(before, outlines, exitOf(-1, across), box),
    after: blockOf(after, [], exitOf(1, across), box),
  };
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
