/**
 * Names of what can be touched in a figure of a lead.
 */
import { sayAmperes } from '../../src/core/verdict/index.ts';
import type { Contact, Side } from '../../src/core/wiring/index.ts';
import { SIDES, contactWords, conductorWords } from '../../src/core/wiring/index.ts';
import type { FaceContact } from '../../src/draw/face.ts';
import type { DrawnConductor, DrawnEnd, LeadDrawing } from '../../src/draw/lead-shape.ts';
import { contactAt } from './pointer.ts';

/** A contact of an end of a lead. */
export interface ContactRef {
  readonly segment: number;
  readonly side: Side;
  readonly contact: Contact;
}

/** A conductor, by its place in its segment's list. */
export interface ConductorRef {
  readonly segment: number;
  readonly index: number;
}

/** What is touched on a figure of one lead: a plug of it, or a contact. */
export type LeadSpot = `${Side} plug` | `${Side} ${Contact}`;

/** A pair of contacts to be joined. */
export interface JoinRequest {
  readonly segment: number;
  readonly from: Contact;
  readonly to: Contact;
}

/** A contact as what is touched. */
export function spotOf({ side, contact }: ContactRef): LeadSpot {
  return `${side} ${contact}`;
}

/** A conductor, there or asked for, as what is touched: its two contacts. */
export function spotsOf({ from, to }: Pick<JoinRequest, 'from' | 'to'>): readonly LeadSpot[] {
  return [`from ${from}`, `to ${to}`];
}

/** The name of a contact in the page. */
export function nameOf({ segment, side, contact }: ContactRef): string {
  return `${segment}.${side}.${contact}`;
}

/** The contact that an event or a point of the page is on, by its name there. */
export function refAt(target: EventTarget | null): ContactRef | undefined {
  const [segment, name, contact] = contactAt(target)?.split('.') ?? [];
  const side = SIDES.find((one) => one === name);
  return segment === undefined || side === undefined
    ? undefined
    : { segment: Number(segment), side, contact: contact as Contact };
}

/** Whether two contacts are the same one; none is the same as nothing. */
export function sameContact(a: ContactRef | null, b: ContactRef | null): boolean {
  return a !== null && b !== null && nameOf(a) === nameOf(b);
}

/** All contacts of a drawing in reading order. */
function contactsIn(
  drawing: LeadDrawing,
): readonly (ContactRef & { readonly x: number; readonly y: number })[] {
  return drawing.ends.flatMap(({ segment, side, contacts }) =>
    contacts.map(({ contact, x, y }) => ({ segment, side, contact, x, y })),
  );
}

/** A contact as it is drawn, or undefined where the drawing has none of that name. */
export function drawnAt(drawing: LeadDrawing, ref: ContactRef): FaceContact | undefined {
  return drawing.ends
    .find(({ segment, side }) => segment === ref.segment && side === ref.side)
    ?.contacts.find(({ contact }) => contact === ref.contact);
}

/** The request that two contacts make, or undefined when they are not the two ends of one lead. */
export function joinOf(a: ContactRef, b: ContactRef): JoinRequest | undefined {
  if (a.segment !== b.segment || a.side === b.side) return undefined;
  const [from, to] = a.side === 'from' ? [a, b] : [b, a];
  return { segment: a.segment, from: from.contact, to: to.contact };
}

/** Arrow keys as directions. */
const HEADINGS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The nearest contact in the direction of an arrow key, those straight ahead before those aside; undefined when there is none or for another key. */
export function neighbourOf(drawing: LeadDrawing, from: ContactRef, key: string): ContactRef | undefined {
  const heading = HEADINGS[key];
  const all = contactsIn(drawing);
  const here = all.find((contact) => sameContact(contact, from));
  if (heading === undefined || here === undefined) return undefined;
  const [dx, dy] = heading;
  let best: ContactRef | undefined;
  let least = Infinity;
  for (const other of all) {
    const ahead = (other.x - here.x) * dx + (other.y - here.y) * dy;
    const aside = Math.abs((other.x - here.x) * dy) + Math.abs((other.y - here.y) * dx);
    if (ahead < 1 || aside > 4 * ahead) continue;
    const cost = ahead + 2 * aside;
    if (cost < least) {
      least = cost;
      best = { segment: other.segment, side: other.side, contact: other.contact };
    }
  }
  return best;
}

/** 'left plug, pin 4, joined to ring'. `reading` is put between: 'source line, 5.00 V'. */
export function contactLabel(
  drawing: LeadDrawing,
  end: DrawnEnd,
  contact: Contact,
  reading?: string,
): string {
  const joined = drawing.conductors
    .filter(
      ({ segment, from, to }) => segment === end.segment && (end.side === 'from' ? from : to) === contact,
    )
    .map(({ from, to }) => contactWords(end.side === 'from' ? to : from));
  const join = joined.length === 0 ? 'not joined' : `joined to ${joined.join(' and ')}`;
  return [end.name, contactWords(contact), reading, join]
    .filter((part) => part !== undefined && part !== '')
    .join(', ');
}

/** 'conductor from pin 4 to ring, source, 5.38 mA from left to right'. */
export function conductorLabel(conductor: DrawnConductor): string {
  const { line, amperes } = conductor;
  const current = amperes === null ? undefined : currentWords(amperes);
  const told = line === 'untold' ? undefined : line;
  return [`conductor from ${conductorWords(conductor)}`, told, current]
    .filter((part) => part !== undefined)
    .join(', ');
}

function currentWords(amperes: number): string {
  const amount = sayAmperes(Math.abs(amperes));
  return amount === '0 mA'
    ? 'no current'
    : `${amount} ${amperes > 0 ? 'from left to right' : 'from right to left'}`;
}
