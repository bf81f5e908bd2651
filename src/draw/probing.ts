/**
 * A meter under the plugs that it is held to: faces, two probes with their leads, and the room of the meter itself.
 */
import type { Connector, Contact, Side, View } from '../core/wiring/index.ts';
import type { LeadContact } from '../core/readings/index.ts';
import { familyOf } from '../core/wiring/index.ts';
import { samePlace } from '../core/readings/index.ts';
import { drawFace } from './block.ts';
import type { FaceContact, FaceDrawing, Outline } from './face.ts';
import type { Box, Point } from './geometry.ts';
import { linePath, roundedPath } from './geometry.ts';
import type { TextLine } from './text.ts';
import { TEXT_SIZES } from './text.ts';

/** The two probes, red first. */
export const PROBES = ['red', 'black'] as const;

/** One of the two probes. */
export type Probe = (typeof PROBES)[number];

/** A plug whose contacts are probed; `name` is printed over it. */
interface ProbedEnd {
  readonly side: Side;
  readonly connector: Connector;
  readonly view: View;
  readonly name: string;
}

/** What to draw on `width` pixels: one plug or two, and where each probe is. */
interface ProbingInput {
  readonly width: number;
  readonly ends: readonly ProbedEnd[];
  readonly at: Readonly<Record<Probe, LeadContact>>;
}

/** A plug as drawn. */
interface DrawnProbedEnd {
  readonly side: Side;
  readonly outlines: readonly Outline[];
  readonly contacts: readonly FaceContact[];
  readonly text: readonly TextLine[];
  readonly textAlternative: string;
}

/** A probe as drawn: its needle, the middle of its handle, and its lead down to the meter. */
interface DrawnProbe {
  readonly probe: Probe;
  readonly needle: string;
  readonly handle: Point;
  readonly lead: string;
}

/** Everything there is to see, in pixels from the left top corner. `sockets` are on the upper edge of the meter. */
export interface ProbingDrawing {
  readonly width: number;
  readonly height: number;
  readonly ends: readonly DrawnProbedEnd[];
  readonly probes: readonly DrawnProbe[];
  readonly meter: Box;
  readonly sockets: Readonly<Record<Probe, Point>>;
}

/** Pixels: room of one plug with its probes, of its two lines of text; least width of two plugs side by side; size of the meter. */
const CELL = { width: 330, text: 44, below: 14 };
const LEAST_WIDTH = 330;
const LEAST_ROW = 2 * CELL.width;
const METER = { width: 300, height: 190, socketApart: 84, over: 44 };
/** Pixels: from a phone contact to the middle of the handle; radius on which the handles at a DIN face lie; lane beside it. */
const REACH = { phone: 44, din: 118, lane: 141 };
/** Half the size of a socket, pixels. */
const SOCKET = 6;
/** Pixels between the lanes of the two leads. */
const APART = 12;
/** Middle of the ring of a DIN shell, pixels, and where it is touched, radians: at the lower right, clear of its label. */
const SHELL = { radius: 87, angle: Math.PI / 3 };

interface Placed extends ProbedEnd {
  readonly face: FaceDrawing;
  readonly centre: Point;
  /** Where a lead may run to the side below the plug. */
  readonly under: number;
  /** True for a plug that has another one under it. */
  readonly high: boolean;
}

/** Draws one plug or two, side by side where `width` allows it, the meter under them. @throws when a probe is on no contact. */
export function drawProbing({ width: asked, ends, at }: ProbingInput): ProbingDrawing {
  const width = Math.max(asked, LEAST_WIDTH);
  const row = ends.length < 2 || width >= LEAST_ROW;
  let top = 0;
  const placed = ends.map((end, place): Placed => {
    const { over, under } = heightsOf(end);
    const across = row ? (width * (place + 0.5)) / ends.length : width / 2;
    const y = top + CELL.text + over;
    const centre = { x: across - middleOf(end), y };
    if (!row) top = y + under + 2 * APART;
    const face = drawFace({ ...end, form: 'plug' }, 'right', centre);
    return { ...end, face, centre, under: y + under, high: !row && place < ends.length - 1 };
  });
  const bus = Math.max(...placed.map(({ under }) => under));
  const meter = {
    x: (width - METER.width) / 2,
    y: bus + METER.over,
    width: METER.width,
    height: METER.height,
  };
  const socket = (way: number): Point => ({ x: width / 2 + (way * METER.socketApart) / 2, y: meter.y + 20 });
  const sockets = { red: socket(-1), black: socket(1) };
  return {
    width,
    height: meter.y + meter.height + 4,
    ends: placed.map((end) => drawnEnd(end, row ? undefined : width / 2)),
    probes: PROBES.map((probe) => drawProbe(probe, at[probe], placed, bus, sockets[probe], width)),
    meter,
    sockets,
  };
}

function drawnEnd({ side, face, name, centre, ...end }: Placed, across?: number): DrawnProbedEnd {
  const x = across ?? centre.x + middleOf(end);
  const y = centre.y - heightsOf(end).over - CELL.text;
  const line = (text: string, down: number, size: number): TextLine => ({
    text,
    x,
    y: y + down,
    anchor: 'middle',
    size,
  });
  return {
    side,
    outlines: face.outlines,
    contacts: face.contacts,
    text: [line(name, 14, TEXT_SIZES.name), line(face.caption, 31, TEXT_SIZES.caption)],
    textAlternative: face.textAlternative,
  };
}

/** Room over and under the middle of a plug, its probes included, pixels. */
function heightsOf({ connector, view }: Pick<ProbedEnd, 'connector' | 'view'>): {
  over: number;
  under: number;
} {
  if (familyOf(connector) === 'din') return { over: REACH.din + 16, under: REACH.din + 16 };
  return view === 'mating' ? { over: 44, under: 36 + REACH.phone } : { over: 58, under: 66 };
}

/** How far the middle of what is drawn lies to the right of the plug's own middle, pixels. */
function middleOf({ connector, view }: Pick<ProbedEnd, 'connector' | 'view'>): number {
  return familyOf(connector) !== 'din' && view === 'solder' ? 46 : 0;
}

function drawProbe(
  probe: Probe,
  at: LeadContact,
  ends: readonly Placed[],
  bus: number,
  socket: Point,
  width: number,
): DrawnProbe {
  const end = ends.find(({ side }) => side === at.side);
  const contact = end?.face.contacts.find((one) => samePlace({ side: end.side, contact: one.contact }, at));
  if (!end || !contact)
    throw new RangeError(
      `probe '${probe}': needs a contact of a drawn plug, got '${at.contact}' at '${at.side}'`,
    );
  const aside = probe === 'red' ? 0 : APART;
  const { touch, handle, lane } = reach(end, contact, aside);
  const points: Point[] = [handle];
  if (lane !== handle.x) points.push({ x: lane, y: handle.y });
  if (end.high) {
    const outer = probe === 'red' ? 5 : width - 5;
    points.push({ x: lane, y: end.under + aside }, { x: outer, y: end.under + aside });
    points.push({ x: outer, y: bus + aside });
  } else points.push({ x: lane, y: bus + aside });
  points.push({ x: socket.x, y: bus + aside }, { x: socket.x, y: socket.y - SOCKET });
  return { probe, needle: linePath([touch, handle]), handle, lead: roundedPath(points, 8) };
}

/** Where a probe touches, where it is held, and on which x its lead goes down. */
function reach(
  { connector, view, centre }: Placed,
  { contact, x, y, radius, box }: FaceContact,
  aside: number,
): { touch: Point; handle: Point; lane: number } {
  if (familyOf(connector) === 'din') {
    const angle = contact === 'shell' ? SHELL.angle : Math.atan2(y - centre.y, x - centre.x);
    const from = (far: number): Point => ({
      x: centre.x + far * Math.cos(angle),
      y: centre.y + far * Math.sin(angle),
    });
    const near = contact === 'shell' ? SHELL.radius : Math.hypot(x - centre.x, y - centre.y);
    // Pin 2 is in the middle: its lead goes down on the side of its own socket.
    const side = Math.abs(Math.cos(angle)) < 0.01 ? (aside === 0 ? -1 : 1) : Math.sign(Math.cos(angle));
    const handle = from(REACH.din);
    return {
      touch: from(near + (radius ?? 0) - 1),
      handle,
      lane: centre.x + side * (REACH.lane + aside),
    };
  }
  if (view === 'mating') {
    const handle = { x, y: centre.y + 24 + REACH.phone };
    return { touch: { x, y: box.y + box.height - 2 }, handle, lane: x };
  }
  const handle = { x: centre.x + 136, y };
  return { touch: { x: box.x + box.width - 2, y }, handle, lane: handle.x + 20 + aside };
}

/** Name by which a page finds a contact of a drawn plug: 'from.tip'. */
export function placeName({ side, contact }: LeadContact): string {
  return `${side}.${contact}`;
}

/** The place that `placeName` named. */
export function placeOf(name: string): LeadContact {
  const [side, contact] = name.split('.') as [Side, Contact];
  return { side, contact };
}
