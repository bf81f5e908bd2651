/** How a board hangs together, as a small picture: the sender on top, under each device those that it feeds. */
import type { Plan } from '../core/plan/index.ts';
import type { Box } from './geometry.ts';

/** A device of the picture. */
interface ShapeBox extends Box {
  readonly name: string;
}

/** The picture in pixels; one path from each device to one that it feeds. */
interface BoardShape {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly ShapeBox[];
  readonly leads: readonly string[];
}

/** Pixels: a device, and the room between two beside and below each other. */
const BOX = { width: 56, height: 26 };
const GAP = { across: 4, down: 16 };
/** Pixels that a letter takes at most on average, and the room beside a name: seven devices in a row stay readable on a phone. */
const LETTER = 6.8;
const BESIDE = 8;

/** Draws a plan whose links make a tree, or several; a device that is fed twice stands under the first that feeds it. */
export function drawBoardShape({ devices, links }: Plan): BoardShape {
  const feeds = links.flatMap(({ output, inputs }) =>
    inputs.map((input): readonly [string, string] => [output.device, input.device]),
  );
  const under = new Map<string, string[]>();
  const placed = new Set<string>();
  for (const [from, to] of feeds) {
    if (placed.has(to)) continue;
    placed.add(to);
    under.set(from, [...(under.get(from) ?? []), to]);
  }
  const tops = devices.map(({ name }) => name).filter((name) => !placed.has(name));
  const widthOf = (name: string): number => Math.max(BOX.width, name.length * LETTER + BESIDE);
  const below = (name: string): number =>
    (under.get(name) ?? []).reduce((sum, one) => sum + roomOf(one) + GAP.across, -GAP.across);
  const roomOf = (name: string): number => Math.max(widthOf(name), below(name));
  const boxes = new Map<string, ShapeBox>();
  const place = (name: string, left: number, depth: number): void => {
    const [room, width] = [roomOf(name), widthOf(name)];
    const y = depth * (BOX.height + GAP.down) + 1;
    boxes.set(name, { name, x: left + (room - width) / 2, y, width, height: BOX.height });
    let next = left + (room - below(name)) / 2;
    for (const one of under.get(name) ?? []) {
      place(one, next, depth + 1);
      next += roomOf(one) + GAP.across;
    }
  };
  let left = 1;
  for (const top of tops) {
    place(top, left, 0);
    left += roomOf(top) + GAP.across;
  }
  const all = [...boxes.values()];
  const leads = feeds.flatMap(([from, to]) => {
    const [one, other] = [boxes.get(from), boxes.get(to)];
    if (!one || !other) return [];
    const [x1, y1, x2, y2] = [one.x + one.width / 2, one.y + one.height, other.x + other.width / 2, other.y];
    const half = (y1 + y2) / 2;
    return [Math.abs(x1 - x2) < 0.5 ? `M${x1} ${y1}V${y2}` : `M${x1} ${y1}V${half}H${x2}V${y2}`];
  });
  return {
    width: Math.max(...all.map(({ x, width }) => x + width)) + 1,
    height: Math.max(...all.map(({ y, height }) => y + height)) + 1,
    boxes: all,
    leads,
  };
}
