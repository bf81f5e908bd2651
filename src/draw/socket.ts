/**
 * A jack as it looks on a panel, to scale: what a player compares with the device in front of them.
 * DIN after `din.ts`. Phone jacks: the hole has the diameter of its plug; the nut round it is for drawing only.
 */
import type { Connector } from '../core/wiring/index.ts';
import { contactsOf, diameterOf, dinAngle } from '../core/wiring/index.ts';
import { DIN_MILLIMETRES, drawDin } from './din.ts';
import type { Outline } from './face.ts';
import { circlePath, polygonPath } from './geometry.ts';

/** Pixels a millimetre: the smallest jack is still seen, and the largest holds its pins apart. */
const SOCKET_SCALE = 4;

/** Width of the nut round the hole of a phone jack, millimetres, for drawing only. */
const NUT_MILLIMETRES = 2;

/** A panel jack as outlines about the middle of a square of `size` pixels. */
interface SocketDrawing {
  readonly size: number;
  readonly outlines: readonly Outline[];
}

/** Side of the square that holds any of the jacks, pixels: a DIN jack with a little room. */
const SIZE = 60;

/** Draw a jack from the front. */
export function drawSocket(connector: Connector): SocketDrawing {
  const centre = { x: SIZE / 2, y: SIZE / 2 };
  const diameter = diameterOf(connector);
  if (diameter === undefined) {
    const { outlines, contacts } = drawDin({ connector, form: 'jack', view: 'mating' }, centre, SOCKET_SCALE);
    const holes = contacts.filter(({ contact }) => contact !== 'shell');
    return { size: SIZE, outlines: [...outlines, ...holes.map(({ d }): Outline => ({ d, kind: 'fill' }))] };
  }
  const hole = (diameter / 2) * SOCKET_SCALE;
  return {
    size: SIZE,
    outlines: [
      { d: circlePath(centre, hole + NUT_MILLIMETRES * SOCKET_SCALE), kind: 'hairline' },
      { d: circlePath(centre, hole), kind: 'fill' },
    ],
  };
}

/** A jack in few strokes, for a board where it is small: its body, and the holes in it, as paths about the point (0, 0). */
export interface JackFace {
  readonly radius: number;
  readonly body: string;
  readonly holes: string;
}

/** Room round a pin in its hole, millimetres, for drawing only: where the face is small, holes must be seen. */
const HOLE_ROOM = 0.2;

/** Draw a jack small, from the front, to scale. @param scale pixels a millimetre. */
export function drawJackFace(connector: Connector, scale: number): JackFace {
  const centre = { x: 0, y: 0 };
  const diameter = diameterOf(connector);
  if (diameter !== undefined) {
    const hole = (diameter / 2) * scale;
    const radius = hole + NUT_MILLIMETRES * scale;
    return { radius, body: circlePath(centre, radius), holes: circlePath(centre, hole) };
  }
  const { shellRadius, pitchRadius, pinRadius, keyHalfWidth, keyDepth } = DIN_MILLIMETRES;
  const pins = contactsOf(connector).filter((contact) => contact !== 'shell');
  const holes = pins.map((contact) => {
    const angle = (dinAngle({ connector, form: 'jack', view: 'mating' }, contact) * Math.PI) / 180;
    const pin = { x: pitchRadius * scale * Math.cos(angle), y: -pitchRadius * scale * Math.sin(angle) };
    return circlePath(pin, (pinRadius + HOLE_ROOM) * scale);
  });
  const key = [
    [-keyHalfWidth, shellRadius - 2 * keyDepth],
    [keyHalfWidth, shellRadius - 2 * keyDepth],
    [keyHalfWidth, shellRadius],
    [-keyHalfWidth, shellRadius],
  ].map(([x = 0, y = 0]) => ({ x: x * scale, y: y * scale }));
  const radius = shellRadius * scale;
  return { radius, body: circlePath(centre, radius), holes: [...holes, polygonPath(key)].join('') };
}
