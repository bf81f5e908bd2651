/** The drawn board at a scale: devices true to size, jacks on their edges, leads round the devices, a mark on each lead. Pixels. */
import { onlyCarries } from '../core/plan/index.ts';
import { linkWords } from '../core/verdict/index.ts';
import { words } from '../core/wiring/index.ts';
import type { Edge, Plan, WholeDevice, WholeJack } from '../core/plan/index.ts';
import type { Grade, LinkOutcome } from '../core/verdict/index.ts';
import { BOARD_TEXT, edgeLabels, labelAt, nameLabels } from './board-labels.ts';
import type { BoardLabel } from './board-labels.ts';
import { placeMarks } from './board-marks.ts';
import type { BoardRoutes } from './board-routes.ts';
import { boardBodies, drawnJackPoint } from './board-routes.ts';
import { roundedPath } from './geometry.ts';
import type { Box, Point } from './geometry.ts';
import { drawJackFace } from './socket.ts';
import type { JackFace } from './socket.ts';

export { NEAREST_LANES, routeBoard } from './board-routes.ts';

/** A jack as drawn: its face about its point. */
export interface DrawnJack {
  readonly name: string;
  readonly direction: 'in' | 'out';
  readonly point: Point;
  readonly radius: number;
  readonly face: JackFace;
  readonly label: BoardLabel | undefined;
  /** What a listener hears of it, without its links. */
  readonly says: string;
}

/** A device as drawn; `labels` are its name, or its number where the name does not fit. */
export interface DrawnDevice {
  readonly name: string;
  readonly number: number;
  readonly box: Box;
  readonly placed: boolean;
  readonly labels: readonly BoardLabel[];
  readonly named: boolean;
  readonly jacks: readonly DrawnJack[];
  /** Whether each jack can be hit on its own, 24 pixels from the next. */
  readonly touchable: boolean;
}

/** A lead run as drawn; `hop` is its place in the chain from the sender, undefined where no message goes along it. */
export interface DrawnRun {
  readonly link: number;
  /** What the link is called, on screen and on paper. */
  readonly number: number;
  readonly input: number;
  readonly path: string;
  readonly points: readonly Point[];
  readonly mark: Box;
  /** The point of the lead that the mark stands for; outside the mark where the lead itself has no room for it. */
  readonly anchor: Point;
  readonly hop: number | undefined;
  /** What its link does, and the same in a word; neither where that is asked. */
  readonly grade: Grade | undefined;
  readonly label: string;
}

/** The whole drawing. The board's own measures are in centimetres, everything else in pixels. */
export interface BoardDrawing {
  readonly width: number;
  readonly height: number;
  readonly devices: readonly DrawnDevice[];
  readonly runs: readonly DrawnRun[];
  /** Pixels to add to a length in centimetres times the scale. */
  readonly origin: Point;
  readonly scale: number;
}

/** Distance of two targets that can be told apart by a finger, pixels (WCAG 2.2, 2.5.8). */
export const TARGET = 24;

/** Room round the board, centimetres and pixels: whichever is more. */
const MARGIN_CENTIMETRES = 2;
const MARGIN_PIXELS = 14;

/** Pixels a millimetre of a jack's face: true to the board, but never so small that its holes are lost nor so large that names have no room. */
const FACE_SCALE = { least: 0.75, most: 1.6 } as const;
/** Millimetres in a centimetre. */
const MILLIMETRES = 10;
const BEND_CENTIMETRES = 0.8;
/** Pixels a centimetre: no board is drawn smaller, however little room it has while a page is laid out. */
const LEAST_SCALE = 0.5;
const MOST_SCALE = 16;

/** The size of a board in centimetres: what the devices and leads take, with room round it. */
export function boardExtent({ devices, leads }: BoardRoutes): Box {
  const points = [
    ...devices.flatMap(({ device: one }) => [
      { x: one.xCentimetres, y: one.yCentimetres },
      { x: one.xCentimetres + one.widthCentimetres, y: one.yCentimetres + one.depthCentimetres },
    ]),
    ...leads.flatMap((lead) => lead.points),
  ];
  if (points.length === 0) return { x: 0, y: 0, width: 60, height: 30 };
  const x = Math.min(...points.map((one) => one.x)) - MARGIN_CENTIMETRES;
  const y = Math.min(...points.map((one) => one.y)) - MARGIN_CENTIMETRES;
  return {
    x,
    y,
    width: Math.max(...points.map((one) => one.x)) + MARGIN_CENTIMETRES - x,
    height: Math.max(...points.map((one) => one.y)) + MARGIN_CENTIMETRES - y,
  };
}

/** The scale at which a whole board fits into the room it has, pixels a centimetre: small boards are not blown up, and it is never less than nothing, as it would be in a window without room. */
export function fitScale(routes: BoardRoutes, width: number, height = Infinity): number {
  return scaleInto(boardExtent(routes), width, height);
}

/** About the scale at which a board will fit, before its leads are laid: lanes are laid once, as far apart as this scale asks for. */
export function scaleAhead(plan: Plan, width: number, height: number): number {
  const { routes, roundCentimetres: round } = boardBodies(plan);
  const bare = boardExtent(routes);
  return scaleInto(
    { ...bare, width: bare.width + 2 * round, height: bare.height + 2 * round },
    width,
    height,
  );
}

function scaleInto(extent: Box, width: number, height: number): number {
  const room = 2 * MARGIN_PIXELS;
  const scale = Math.min(MOST_SCALE, (width - room) / extent.width, (height - room) / extent.height);
  return Math.max(LEAST_SCALE, scale);
}

/** Draw a board at so many pixels a centimetre. A lead whose link has no outcome is drawn without any. */
export function drawBoard(
  routes: BoardRoutes,
  outcomes: readonly LinkOutcome[],
  hops: readonly (readonly (number | undefined)[])[],
  scale: number,
): BoardDrawing {
  const extent = boardExtent(routes);
  const origin = { x: MARGIN_PIXELS - extent.x * scale, y: MARGIN_PIXELS - extent.y * scale };
  const at = ({ x, y }: Point): Point => ({ x: origin.x + x * scale, y: origin.y + y * scale });
  const devices = routes.devices.map(({ device, placed }, number) =>
    drawDevice(device, placed, number + 1, at, scale),
  );
  const lines = routes.leads.map(({ points }) => points.map(at));
  const size = {
    width: extent.width * scale + 2 * MARGIN_PIXELS,
    height: extent.height * scale + 2 * MARGIN_PIXELS,
  };
  const taken = [...devices.map(({ box }) => box), ...devices.flatMap(({ jacks }) => jacks.map(markBox))];
  const marks = placeMarks(lines, taken, size);
  const runs = routes.leads.map(({ link, number: called, input }, number): DrawnRun => {
    const outcome = outcomes[link];
    const { grade, label } = outcome ? linkWords(outcome) : { grade: undefined, label: '' };
    const points = lines[number] ?? [];
    return {
      link,
      number: called,
      input,
      points,
      path: roundedPath(points, BEND_CENTIMETRES * scale),
      mark: marks[number]?.box ?? { x: 0, y: 0, width: 0, height: 0 },
      anchor: marks[number]?.anchor ?? { x: 0, y: 0 },
      hop: hops[link]?.[input],
      grade,
      label,
    };
  });
  return {
    ...size,
    devices,
    runs,
    origin,
    scale,
  };
}

function markBox({ point, radius }: DrawnJack): Box {
  return { x: point.x - radius, y: point.y - radius, width: 2 * radius, height: 2 * radius };
}

function drawDevice(
  device: WholeDevice,
  placed: boolean,
  number: number,
  at: (point: Point) => Point,
  scale: number,
): DrawnDevice {
  const corner = at({ x: device.xCentimetres, y: device.yCentimetres });
  const box = { ...corner, width: device.widthCentimetres * scale, height: device.depthCentimetres * scale };
  const bare = device.jacks.map((jack) => {
    const face = drawJackFace(
      jack.connector,
      Math.min(FACE_SCALE.most, Math.max(FACE_SCALE.least, scale / MILLIMETRES)),
    );
    return { jack, point: at(drawnJackPoint(device, jack)), face, radius: face.radius };
  });
  const touchable = bare.every((one, place) =>
    bare.slice(place + 1).every(({ point }) => near(one.point, point) >= TARGET - 1e-6),
  );
  const labels = new Map<WholeJack, BoardLabel | undefined>();
  for (const edge of ['back', 'right', 'front', 'left'] as const) {
    const here = bare.filter(({ jack }) => jack.edge === edge);
    const made = edgeLabels(
      box,
      here.map(({ jack, point, radius }) => ({ label: shortName(jack), point, edge, radius })),
    );
    here.forEach(({ jack }, place) => labels.set(jack, touchable ? made[place] : undefined));
  }
  const channel = onlyCarries(device) || device.channel === 0 ? '' : `channel ${device.channel}`;
  const room = roomFor(
    box,
    bare.map(({ jack, point, radius }) => ({ edge: jack.edge, point, radius, label: labels.get(jack) })),
  );
  const name = nameLabels(room, device.name, channel);
  const centre = { x: room.x + room.width / 2, y: room.y + room.height / 2 };
  return {
    name: device.name,
    number,
    box,
    placed,
    labels: name ?? [labelAt(String(number), centre, BOARD_TEXT.number)],
    named: name !== undefined,
    touchable,
    jacks: bare.map(({ jack, point, radius, face }): DrawnJack => ({
      name: jack.name,
      direction: jack.direction,
      point,
      radius,
      face,
      label: labels.get(jack),
      says: `${jack.name} of ${device.name}, ${jack.direction === 'out' ? 'output' : 'input'}, ${words(jack.connector)}`,
    })),
  };
}

/** The halves of an in-and-out jack stand too close for their whole names. */
function shortName(jack: WholeJack): string {
  return jack.sharesHole === '' ? jack.name : jack.direction;
}

function near(a: Point, b: Point): number {
  return Math.max(Math.abs(a.x - b.x), Math.abs(a.y - b.y));
}

/** What the jacks and their labels leave of a device, for its name. */
function roomFor(
  box: Box,
  jacks: readonly { edge: Edge; point: Point; radius: number; label: BoardLabel | undefined }[],
): Box {
  let [left, top, right, bottom] = [box.x, box.y, box.x + box.width, box.y + box.height];
  for (const { edge, point, radius, label } of jacks) {
    const taken = label?.box ?? {
      x: point.x - radius,
      y: point.y - radius,
      width: 2 * radius,
      height: 2 * radius,
    };
    if (edge === 'back') top = Math.max(top, taken.y + taken.height);
    if (edge === 'front') bottom = Math.min(bottom, taken.y);
    if (edge === 'left') left = Math.max(left, taken.x + taken.width);
    if (edge === 'right') right = Math.min(right, taken.x);
  }
  return { x: left, y: top, width: right - left, height: bottom - top };
}
