/** Where leads run on the drawn board: out of the jack, round the devices with room to spare, each beside the others. Centimetres. */
import { linkNumber } from '../core/board/index.ts';
import { boardGraph, isPlaced, jackPoint } from '../core/plan/index.ts';
import type { Edge, Plan, WholeDevice, WholeJack } from '../core/plan/index.ts';
import { piecesOf, wayAtRightAngles } from './board-lanes.ts';
import type { Axis, Piece } from './board-lanes.ts';
import type { Box, Point } from './geometry.ts';

/** A lead's way from jack to jack. `link` is the place of its link in the plan, `number` what the link is called, `input` numbers its input. */
interface RoutedLead {
  readonly link: number;
  readonly number: number;
  readonly input: number;
  readonly points: readonly Point[];
}

/** A device where it is drawn: one without a place stands in front of the others, at a size of its own. */
interface ShownDevice {
  readonly device: WholeDevice;
  readonly placed: boolean;
}

/** Devices and leads of a board. */
export interface BoardRoutes {
  readonly devices: readonly ShownDevice[];
  readonly leads: readonly RoutedLead[];
}

/** Size of a device without a place, and the room round it, centimetres. */
const UNPLACED = { width: 12, depth: 9, gap: 4 } as const;

/** Half the distance between the two halves of an in-and-out jack, centimetres. */
const HALF_HOLE = 1.2;

/** Room between a lead and the devices: of the first lane, from lane to lane, and how many lanes there are, centimetres. */
const LANES = { first: 1.2, step: 0.55, count: 7 } as const;

/** Pixels from lane to lane that the eye tells apart where a board is drawn small, and the most centimetres that it may cost. */
const LANE_PIXELS = 4;
const MOST_STEP = 1.6;

/** Where there is too little room for a lane, it is drawn in, until the lead fits. */
const SQUEEZES = [1, 0.6, 0.3, 0.1, 0.02] as const;

/** Outwards from each edge. */
const OUTWARDS: Readonly<Record<Edge, Point>> = {
  back: { x: 0, y: -1 },
  front: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
};

/** Devices where they are drawn. Those without a place stand in a row in front. */
function shownDevices(devices: readonly WholeDevice[]): readonly ShownDevice[] {
  const front = Math.max(
    0,
    ...devices.filter(isPlaced).map((one) => one.yCentimetres + one.depthCentimetres),
  );
  let x = 0;
  return devices.map((device) => {
    if (isPlaced(device)) return { device, placed: true };
    const shown = spread({
      ...device,
      xCentimetres: x,
      yCentimetres: front + 2 * UNPLACED.gap,
      widthCentimetres: Math.max(UNPLACED.width, 3 * device.jacks.length),
      depthCentimetres: UNPLACED.depth,
    });
    x += shown.widthCentimetres + UNPLACED.gap;
    return { device: shown, placed: false };
  });
}

/** Jacks of a device without a place, side by side along its back. */
function spread(device: WholeDevice): WholeDevice {
  const step = device.widthCentimetres / (device.jacks.length + 1);
  const jacks = device.jacks.map((jack, at): WholeJack => ({
    ...jack,
    edge: 'back',
    alongCentimetres: step * (at + 1),
  }));
  return { ...device, jacks };
}

/** Where a jack is drawn; the halves of an in-and-out jack stand side by side, both on the edge. */
export function drawnJackPoint(device: WholeDevice, jack: WholeJack): Point {
  if (jack.sharesHole === '') return jackPoint(device, jack);
  const across = jack.edge === 'back' || jack.edge === 'front';
  const length = across ? device.widthCentimetres : device.depthCentimetres;
  const middle = Math.max(2 * HALF_HOLE, Math.min(length - 2 * HALF_HOLE, jack.alongCentimetres));
  const alongCentimetres = Math.max(0, middle + (jack.direction === 'in' ? -HALF_HOLE : HALF_HOLE));
  return jackPoint(device, { ...jack, alongCentimetres });
}

/** From this scale on, pixels a centimetre, lanes lie as near to one another as they ever do. */
export const NEAREST_LANES = LANE_PIXELS / LANES.step;

/** The devices of a board without its leads, and the room that these take round them at most, centimetres. */
export function boardBodies(plan: Plan): { readonly routes: BoardRoutes; readonly roundCentimetres: number } {
  const { devices, feeds } = boardGraph(plan);
  const lanes = Math.min(feeds.length, LANES.count);
  const roundCentimetres = lanes === 0 ? 0 : LANES.first + LANES.step * (lanes - 1);
  return { routes: { devices: shownDevices(devices), leads: [] }, roundCentimetres };
}

/**
 * Lay every lead of a plan at right angles; short leads take the inner lanes, so that a long one passes outside them.
 * @param scale pixels a centimetre that the board is drawn at: on a small drawing the lanes lie farther apart.
 */
export function routeBoard(plan: Plan, scale = Infinity): BoardRoutes {
  const step = Math.min(MOST_STEP, Math.max(LANES.step, LANE_PIXELS / scale));
  const graph = boardGraph(plan);
  const devices = shownDevices(graph.devices);
  const ends = graph.feeds.flatMap((feed) => {
    const from = endAt(devices[feed.fromDevice], feed.from.jack);
    const to = endAt(devices[feed.toDevice], feed.to.jack);
    return from && to ? [{ feed, from, to }] : [];
  });
  const length = ({ from, to }: (typeof ends)[number]): number =>
    Math.hypot(from.point.x - to.point.x, from.point.y - to.point.y);
  const laid: Piece[] = [];
  const order = [...ends].sort((a, b) => length(a) - length(b));
  const ways = new Map(
    order.map((one, at) => {
      const lane = LANES.first + step * (at % LANES.count);
      const points = leadWay(one.from, one.to, lane, devices, laid);
      laid.push(...piecesOf(points));
      return [one, points] as const;
    }),
  );
  const leads = ends.map((one): RoutedLead => {
    const { link, input } = one.feed;
    return { link, number: linkNumber(plan, link), input, points: ways.get(one) as readonly Point[] };
  });
  return { devices, leads };
}

/** From jack to jack in a lane; straight only where no lane is left, between devices that lie on one another. */
function leadWay(
  from: LeadEndAt,
  to: LeadEndAt,
  lane: number,
  devices: readonly ShownDevice[],
  laid: readonly Piece[],
): readonly Point[] {
  for (const squeeze of SQUEEZES) {
    const margin = lane * squeeze;
    const [start, stop] = [outOf(from, margin), outOf(to, margin)];
    if ([start, stop].some((point) => devices.some(({ device }) => holds(device, margin, point)))) continue;
    const boxes = devices.map(({ device }) => boxOf(device, margin));
    const way = wayAtRightAngles(
      { point: start, axis: axisOf(from) },
      { point: stop, axis: axisOf(to) },
      boxes,
      laid,
    );
    if (way) return [from.point, ...way, to.point];
  }
  return [from.point, to.point];
}

function axisOf({ edge }: LeadEndAt): Axis {
  return edge === 'left' || edge === 'right' ? 'across' : 'along';
}

interface LeadEndAt {
  readonly point: Point;
  readonly edge: Edge;
}

function endAt(shown: ShownDevice | undefined, name: string): LeadEndAt | undefined {
  const jack = shown?.device.jacks.find((one) => one.name === name);
  return shown && jack && { point: drawnJackPoint(shown.device, jack), edge: jack.edge };
}

function outOf({ point, edge }: LeadEndAt, by: number): Point {
  return { x: point.x + OUTWARDS[edge].x * by, y: point.y + OUTWARDS[edge].y * by };
}

/** A device with room round it; a lead may run along its sides. */
function boxOf(device: WholeDevice, by: number): Box {
  return {
    x: device.xCentimetres - by,
    y: device.yCentimetres - by,
    width: device.widthCentimetres + 2 * by,
    height: device.depthCentimetres + 2 * by,
  };
}

function holds(device: WholeDevice, margin: number, { x, y }: Point): boolean {
  const near = margin - 1e-3;
  return (
    x > device.xCentimetres - near &&
    x < device.xCentimetres + device.widthCentimetres + near &&
    y > device.yCentimetres - near &&
    y < device.yCentimetres + device.depthCentimetres + near
  );
}
