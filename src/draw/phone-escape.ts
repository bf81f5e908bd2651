/**
 * Ways out of a phone plug, its lugs or a jack: straight, or over or under the handle on a track of its own.
 */
import type { Contact, FaceInput } from '../core/wiring/index.ts';
import type { Escape, FaceContact, FaceDrawing, Route } from './face.ts';
import type { Exit, Point } from './geometry.ts';

/** Pixels between two tracks, between the first one and metal, and from the drawing to the edge of its block. */
const TRACK = { pitch: 14, first: 12, edge: 16 } as const;

/** Nearest the handle first: the sleeve's track runs under the ring's, and that under the tip's. */
const NEAREST_FIRST: readonly Contact[] = ['sleeve', 'ring', 'tip'];

/** A way under the plug, in crossings: names read better with nothing beneath, but a crossing reads worse. */
const UNDER_COST = 0.25;

/** All escapes of a drawn phone connector, in pixels. */
export function phoneEscapes(input: FaceInput, face: FaceDrawing, exit: Exit): readonly Escape[] {
  if (exit === 'up' || exit === 'down' || (input.form === 'plug' && input.view === 'solder')) {
    return [{ routes: straightRoutes(face, exit), costs: {} }];
  }
  if (input.form === 'jack') return [{ routes: overRoutes(face, exit, face.contacts, new Set()), costs: {} }];
  return subsets(face.contacts.map(({ contact }) => contact)).map((under) => ({
    routes: overRoutes(face, exit, face.contacts, under),
    costs: Object.fromEntries([...under].map((contact) => [contact, UNDER_COST])),
  }));
}

function straightRoutes(face: FaceDrawing, exit: Exit): Partial<Record<Contact, Route>> {
  const routes: Partial<Record<Contact, Route>> = {};
  for (const { contact, port } of face.contacts) routes[contact] = [port, onEdge(face, exit, port)];
  return routes;
}

function onEdge(face: FaceDrawing, exit: Exit, from: Point): Point {
  switch (exit) {
    case 'right':
      return { x: face.x + face.width + TRACK.edge, y: from.y };
    case 'left':
      return { x: face.x - TRACK.edge, y: from.y };
    case 'down':
      return { x: from.x, y: face.y + face.height + TRACK.edge };
    case 'up':
      return { x: from.x, y: face.y - TRACK.edge };
  }
}

function overRoutes(
  face: FaceDrawing,
  exit: Exit,
  contacts: readonly FaceContact[],
  under: ReadonlySet<Contact>,
): Partial<Record<Contact, Route>> {
  const routes: Partial<Record<Contact, Route>> = {};
  const lugsOnly = contacts.every(({ port, box }) => Math.abs(port.y - box.y) < 0.01 && box.height < 30);
  const order = lugsOnly ? [...NEAREST_FIRST].reverse() : NEAREST_FIRST;
  const present = order.filter((contact) => contacts.some((c) => c.contact === contact));
  present.forEach((contact, index) => {
    const drawn = contacts.find((c) => c.contact === contact);
    if (drawn === undefined) return;
    const below = under.has(contact);
    const from = below ? { x: drawn.port.x, y: 2 * (face.y + face.height / 2) - drawn.port.y } : drawn.port;
    const offset = TRACK.first + index * TRACK.pitch;
    const corner = { x: from.x, y: below ? face.y + face.height + offset : face.y - offset };
    routes[contact] = [from, corner, onEdge(face, exit, corner)];
  });
  return routes;
}

function subsets(contacts: readonly Contact[]): ReadonlySet<Contact>[] {
  return contacts.reduce<ReadonlySet<Contact>[]>(
    (sets, contact) => [...sets, ...sets.map((set) => new Set([...set, contact]))],
    [new Set()],
  );
}
