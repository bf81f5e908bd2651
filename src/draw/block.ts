/**
 * A connector with all ways out of it, at its place in a drawing.
 */
import { familyOf } from '../core/wiring/index.ts';
import type { DinView, FaceInput } from '../core/wiring/index.ts';
import { DIN_EDGE, DIN_REACH, dinEscapes } from './din-escape.ts';
import { DIN_MILLIMETRES, DIN_SCALE, drawDin } from './din.ts';
import type { Block, FaceDrawing } from './face.ts';
import type { Box, Exit, Point } from './geometry.ts';
import { boundsOf } from './geometry.ts';
import { phoneEscapes } from './phone-escape.ts';
import { drawPhone } from './phone.ts';

/** The drawing of any connector in pixels, its middle at `origin`, for conductors that leave by `exit`. */
export function drawFace(input: DinView, exit: Exit = 'right', origin: Point = { x: 0, y: 0 }): FaceDrawing {
  return familyOf(input.connector) === 'din'
    ? drawDin(input, origin, DIN_SCALE, exit)
    : drawPhone(input, { exit, origin });
}

/** The block of a connector: its drawing, its ways out and the room that all of them take. */
export function blockOf(input: FaceInput, exit: Exit, origin: Point): Block {
  const face = drawFace(input, exit, origin);
  const din = familyOf(input.connector) === 'din';
  const escapes = din ? dinEscapes(input, exit, origin, DIN_SCALE) : phoneEscapes(input, face, exit);
  const bounds = din ? dinBounds(exit, origin) : phoneBounds(face, escapes);
  const { outlines, contacts, caption, textAlternative } = face;
  return { exit, outlines, contacts, bounds, escapes, caption, textAlternative };
}

const BOUNDS = new Map<string, Box>();

/** The room that a block takes round its middle; remembered, for there are few and every drawing asks. */
export function boundsAround(input: FaceInput, exit: Exit): Box {
  const key = `${input.connector} ${input.form} ${input.view} ${exit}`;
  let bounds = BOUNDS.get(key);
  if (bounds === undefined) {
    bounds = blockOf(input, exit, { x: 0, y: 0 }).bounds;
    BOUNDS.set(key, bounds);
  }
  return bounds;
}

/** Fixed whatever the conductors are, so that a drawing does not jump while a lead is wired. */
function dinBounds(exit: Exit, { x, y }: Point): Box {
  const rim = (DIN_MILLIMETRES.shellRadius + 0.4) * DIN_SCALE;
  const edge = DIN_EDGE * DIN_SCALE;
  const { over, under, aside } = DIN_REACH;
  switch (exit) {
    case 'right':
    case 'left': {
      const far = aside * DIN_SCALE;
      const box = { y: y - over * DIN_SCALE, height: (over + under) * DIN_SCALE, width: far + edge };
      return { x: exit === 'right' ? x - far : x - edge, ...box };
    }
    case 'down':
      return { x: x - aside * DIN_SCALE, y: y - rim, width: 2 * aside * DIN_SCALE, height: rim + edge };
    case 'up':
      return { x: x - aside * DIN_SCALE, y: y - edge, width: 2 * aside * DIN_SCALE, height: rim + edge };
  }
}

function phoneBounds(face: FaceDrawing, escapes: Block['escapes']): Box {
  const ends = escapes.flatMap(({ routes }) => Object.values(routes).flat());
  return boundsOf([{ x: face.x, y: face.y }, { x: face.x + face.width, y: face.y + face.height }, ...ends]);
}
