/** Names and jack labels inside a drawn device: beside the jacks where there is room, on end where it is tight, left out where neither fits. */
import type { Edge } from '../core/plan/index.ts';
import type { Box, Point } from './geometry.ts';
import { textWidth } from './text.ts';

/** Sizes of text on the board, pixels. */
export const BOARD_TEXT = { name: 13, jack: 11, number: 13 } as const;

/** Room between a jack's mark and its label, and between labels, pixels. */
const BESIDE = 4;
const BETWEEN = 4;

/** A label; `turned` reads from bottom to top. `x` and `y` are its centre, and `box` is what it covers. */
export interface BoardLabel {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly turned: boolean;
  readonly box: Box;
}

/** A jack to be labelled: its point, the side of the device that it sits on, and the radius of its mark, pixels. */
interface LabelledJack {
  readonly label: string;
  readonly point: Point;
  readonly edge: Edge;
  readonly radius: number;
}

/** A label centred on a point. */
export function labelAt(text: string, centre: Point, size: number, turned = false): BoardLabel {
  const [width, height] = turned ? [1.1 * size, textWidth(text, size)] : [textWidth(text, size), 1.1 * size];
  const box = { x: centre.x - width / 2, y: centre.y - height / 2, width, height };
  return { text, ...centre, size, turned, box };
}

/** The labels of the jacks on one edge, all lying or all on end; none where neither way fits. */
export function edgeLabels(box: Box, jacks: readonly LabelledJack[]): readonly (BoardLabel | undefined)[] {
  const size = BOARD_TEXT.jack;
  const across = jacks[0]?.edge === 'back' || jacks[0]?.edge === 'front';
  for (const turned of [false, true]) {
    const labels = jacks.map(({ label, point, edge, radius }) => {
      const width = textWidth(label, size);
      const deep = across === turned ? width : 1.1 * size;
      const inwards = radius + BESIDE + deep / 2;
      return labelAt(label, inside(point, edge, inwards), size, turned);
    });
    const fit = labels.every((one, at) => {
      const within =
        one.box.x >= box.x + 2 &&
        one.box.y >= box.y + 2 &&
        one.box.x + one.box.width <= box.x + box.width - 2 &&
        one.box.y + one.box.height <= box.y + box.height - 2;
      return within && labels.slice(at + 1).every((other) => apart(one.box, other.box));
    });
    if (fit) return labels;
  }
  return jacks.map(() => undefined);
}

function inside({ x, y }: Point, edge: Edge, by: number): Point {
  switch (edge) {
    case 'back':
      return { x, y: y + by };
    case 'front':
      return { x, y: y - by };
    case 'left':
      return { x: x + by, y };
    case 'right':
      return { x: x - by, y };
  }
}

function apart(a: Box, b: Box): boolean {
  return (
    a.x + a.width + BETWEEN <= b.x ||
    b.x + b.width + BETWEEN <= a.x ||
    a.y + a.height + 1 <= b.y ||
    b.y + b.height + 1 <= a.y
  );
}

/** A name in as few lines as fit into the room that the jack labels leave; undefined where it does not fit. */
export function nameLabels(room: Box, name: string, more: string): readonly BoardLabel[] | undefined {
  const size = BOARD_TEXT.name;
  const lines = wrapped(name, size, room.width - 8);
  if (!lines) return undefined;
  const all = more === '' ? lines : [...lines, more];
  const step = 1.2 * size;
  const fits = (count: number): boolean => count * step <= room.height - 4;
  const shown = fits(all.length) && textWidth(more, BOARD_TEXT.jack) <= room.width - 8 ? all : lines;
  if (!fits(shown.length)) return undefined;
  const top = room.y + room.height / 2 - ((shown.length - 1) * step) / 2;
  return shown.map((text, at) =>
    labelAt(
      text,
      { x: room.x + room.width / 2, y: top + at * step },
      at >= lines.length ? BOARD_TEXT.jack : size,
    ),
  );
}

function wrapped(text: string, size: number, width: number): readonly string[] | undefined {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter((one) => one !== '')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (textWidth(word, size) > width) return undefined;
    if (last !== undefined && textWidth(longer, size) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
