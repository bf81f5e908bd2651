/**
 * A jack as it looks on a panel, to scale: what a player compares with the device in front of them.
 * DIN after `din.ts`. Phone jacks: the hole has the diameter of its plug; the nut round it is for drawing only.
 */
import type { Connector } from '../core/wiring/index.ts';
import { diameterOf } from '../core/wiring/index.ts';
import { drawDin } from './din.ts';
import type { Outline } from './face.ts';
import { circlePath } from './geometry.ts';

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
