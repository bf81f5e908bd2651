/**
 * Circuit symbols after the usual drawing standard (IEC 60617 shapes, from memory): box resistor, diode, light-emitting diode,
 * switch, ground. Each is laid between two points of the page and returned as outlines.
 */
import type { Outline } from './face.ts';
import type { Point } from './geometry.ts';
import { circlePath, linePath, polygonPath } from './geometry.ts';

/** Pixels: a resistor's box, a diode's triangle, a contact's ring. */
const SYMBOL = { resistorLength: 46, resistorWidth: 17, diode: 20, contact: 5, throw: 3 } as const;

interface Axis {
  readonly at: (along: number, aside: number) => Point;
}

/** Coordinates round the middle of a line: along it from `from` to `to`, and aside to its right hand. */
function axisOf(from: Point, to: Point): Axis {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  return {
    at: (along, aside) => ({ x: middle.x + dx * along - dy * aside, y: middle.y + dy * along + dx * aside }),
  };
}

/** A resistor in the middle of the line between two points. */
export function resistorSymbol(from: Point, to: Point): Outline[] {
  const { at } = axisOf(from, to);
  const [l, w] = [SYMBOL.resistorLength / 2, SYMBOL.resistorWidth / 2];
  const box = polygonPath([at(-l, -w), at(l, -w), at(l, w), at(-l, w)]);
  return [
    { d: box, kind: 'sheet' },
    { d: box, kind: 'outline' },
  ];
}

/** A diode from anode to cathode; `light` adds the two arrows of a light-emitting one. */
export function diodeSymbol(anode: Point, cathode: Point, light: boolean): Outline[] {
  const { at } = axisOf(anode, cathode);
  const half = SYMBOL.diode / 2;
  const triangle = polygonPath([at(-half, -half), at(-half, half), at(half, 0)]);
  const outlines: Outline[] = [
    { d: triangle, kind: 'sheet' },
    { d: triangle, kind: 'outline' },
    { d: linePath([at(half, -half), at(half, half)]), kind: 'outline' },
  ];
  if (!light) return outlines;
  for (const shift of [-3, 5]) {
    const [tail, head] = [at(shift, -half - 2), at(shift + 7, -half - 11)];
    const arrow = axisOf(tail, head);
    outlines.push({ d: linePath([tail, head]), kind: 'outline' });
    outlines.push({ d: polygonPath([head, arrow.at(1.5, 3), arrow.at(1.5, -3)]), kind: 'fill' });
  }
  return outlines;
}

/** Three bars that always hang under `at`. */
export function groundSymbol(at: Point): Outline[] {
  const bar = (half: number, down: number): Outline => ({
    d: linePath([
      { x: at.x - half, y: at.y + down },
      { x: at.x + half, y: at.y + down },
    ]),
    kind: 'outline',
  });
  return [bar(11, 0), bar(7, 4.5), bar(3, 9)];
}

/** The blade of a switch from its pole to `tip`, and the rings of its pole and throws. */
export function switchSymbol(pole: Point, tip: Point, throws: readonly Point[]): Outline[] {
  const rings = [pole, ...throws].flatMap((point): Outline[] => [
    { d: circlePath(point, SYMBOL.throw), kind: 'sheet' },
    { d: circlePath(point, SYMBOL.throw), kind: 'outline' },
  ]);
  return [{ d: linePath([pole, tip]), kind: 'outline' }, ...rings];
}

/** The ring of a contact. */
export function contactSymbol(at: Point): Outline[] {
  const ring = circlePath(at, SYMBOL.contact);
  return [
    { d: ring, kind: 'sheet' },
    { d: ring, kind: 'outline' },
  ];
}
