/**
 * Puts connectors and conductors of a chain of leads on the sheet: in a row from left to right, or in a stack from top to bottom.
 * Both work along a chain ('along') and at right angles to it ('across').
 */
import { contactsOf, words } from '../core/wiring/index.ts';
import type { Side } from '../core/wiring/index.ts';
import { blockOf, boundsAround } from './block.ts';
import { LABEL_ROOM, layChannel } from './lanes.ts';
import type { Block } from './face.ts';
import type { Box, Exit, Point } from './geometry.ts';
import { drawJoint } from './joint.ts';
import type {
  ChainInput,
  DrawnConductor,
  DrawnEnd,
  LeadDrawing,
  LeadEnd,
  LeadSegment,
} from './lead-shape.ts';
import type { TextLine } from './text.ts';
import { TEXT_SIZES, textWidth } from './text.ts';

/** Pixels: margin round a drawing, widest stack, least and best channel between two connectors, line of caption. */
const MARGIN = 10;
const WIDEST_STACK = 560;
const LEAST_CHANNEL = 205;
const CAPTION_LINE = 18;

interface Flow {
  readonly row: boolean;
  readonly width: number;
}

/** A pair of blocks that conductors of one segment run between. */
interface Stretch {
  readonly before: Block;
  readonly after: Block;
}

/**
 * A chain of leads as drawn, in a row where the sheet is wide enough and in a stack elsewhere.
 * @throws RangeError for a conductor on a contact that its connector does not have.
 */
export function drawAlong(chain: ChainInput): Omit<LeadDrawing, 'textAlternative'> {
  chain.segments.forEach(checkContacts);
  const row = rowRoom(chain) >= LEAST_CHANNEL;
  return row ? drawRow(chain) : drawStack(chain);
}

function checkContacts(segment: LeadSegment): void {
  for (const { from, to } of segment.conductors) {
    for (const [end, contact] of [
      [segment.from, from],
      [segment.to, to],
    ] as const) {
      if (!contactsOf(end.connector).includes(contact)) {
        throw new RangeError(
          `lead drawing: ${end.name} must have the contact that is joined, got '${contact}' on a ${words(end.connector)} ${end.form}`,
        );
      }
    }
  }
}

/** Width of each channel if everything stood in a row. */
function rowRoom(chain: ChainInput): number {
  const { first, last, joints } = measure(chain, true);
  const taken = first.width + last.width + joints.reduce((sum, box) => sum + box.width, 0);
  return (chain.width - 2 * MARGIN - taken) / chain.segments.length;
}

/** Bounds of every block of a chain with its middle at 0, 0. */
function measure(chain: ChainInput, row: boolean): { first: Box; last: Box; joints: readonly Box[] } {
  const zero = { x: 0, y: 0 };
  const { first, last } = outerEnds(chain);
  return {
    first: boundsAround(first, row ? 'right' : 'down'),
    last: boundsAround(last, row ? 'left' : 'up'),
    joints: chain.joints.map((_, index) => jointAt(chain, index, zero, row).before.bounds),
  };
}

function outerEnds(chain: ChainInput): { first: LeadEnd; last: LeadEnd } {
  const first = chain.segments[0]?.from;
  const last = chain.segments.at(-1)?.to;
  if (first === undefined || last === undefined)
    throw new RangeError('lead drawing: a chain must have at least one segment, got none');
  return { first, last };
}

function jointAt(
  chain: ChainInput,
  index: number,
  origin: Point,
  row: boolean,
): { before: Block; after: Block } {
  const before = chain.segments[index]?.to;
  const after = chain.segments[index + 1]?.from;
  const joint = chain.joints[index];
  if (before === undefined || after === undefined || joint === undefined)
    throw new RangeError(`lead drawing: joint ${index} must stand between two segments`);
  return drawJoint(
    { before: before.connector, after: after.connector, touches: joint.touches },
    origin,
    !row,
    stackWidth(chain),
  );
}

function stackWidth(chain: ChainInput): number {
  return Math.min(chain.width, WIDEST_STACK);
}

function drawRow(chain: ChainInput): Omit<LeadDrawing, 'textAlternative'> {
  const room = rowRoom(chain);
  const sizes = measure(chain, true);
  const boxes = [sizes.first, ...sizes.joints, sizes.last];
  const most = Math.max(1, ...chain.segments.map(({ conductors }) => conductors.length));
  const half = ((most - 1) * LABEL_ROOM.row) / 2;
  const top = Math.min(-half - 24, ...boxes.map((box) => box.y));
  const bottom = Math.max(half + 10, ...boxes.map((box) => box.y + box.height));
  const axis = MARGIN - top;
  const origins: Point[] = [];
  let at = MARGIN;
  for (const box of boxes) {
    origins.push({ x: at - box.x, y: axis });
    at += box.width + room;
  }
  const blocks = placeBlocks(chain, origins, true);
  const stretches = stretchesOf(blocks);
  const laid = layAll(chain, stretches, { row: true, width: chain.width }, [
    axis + top + 24,
    axis + bottom - 10,
  ]);
  const captionTop = axis + bottom + 6;
  return {
    width: chain.width,
    height: captionTop + 3 * CAPTION_LINE + MARGIN,
    layout: 'row',
    ends: endsOf(chain, blocks, (_, box) => rowCaption(box, captionTop)),
    joints: chain.joints.map(({ name }, index) => ({
      text: jointText(name, blocks[index + 1]?.before.bounds, captionTop),
    })),
    ...laid,
  };
}

function drawStack(chain: ChainInput): Omit<LeadDrawing, 'textAlternative'> {
  const sizes = measure(chain, false);
  const boxes = [sizes.first, ...sizes.joints, sizes.last];
  const width = stackWidth(chain);
  const middle = chain.width / 2;
  const origins: Point[] = [];
  let at = MARGIN + 2 * CAPTION_LINE + 8;
  boxes.forEach((box, index) => {
    if (index > 0) at += stackChannel(chain.segments[index - 1]?.conductors.length ?? 0);
    origins.push({ x: middle - (box.x + box.width / 2), y: at - box.y });
    at += box.height;
  });
  const blocks = placeBlocks(chain, origins, false);
  const low = middle - width / 2 + LABEL_ROOM.side;
  const laid = layAll(chain, stretchesOf(blocks), { row: false, width }, [low, 2 * middle - low]);
  const bottom = at;
  return {
    width: chain.width,
    height: bottom + 2 * CAPTION_LINE + 8 + MARGIN,
    layout: 'stack',
    ends: endsOf(chain, blocks, (side, box) =>
      side === 'first'
        ? stackCaption(middle, MARGIN)
        : side === 'last'
          ? stackCaption(middle, bottom + 8)
          : rowCaption(box, bottom),
    ),
    joints: chain.joints.map(() => ({ text: [] })),
    ...laid,
  };
}

/** Length of a channel of a stack: longer where labels need two rows. */
function stackChannel(conductors: number): number {
  return conductors > 4 ? 300 : 230;
}

interface PlacedBlocks {
  readonly before: Block;
  readonly after: Block;
}

/** Blocks in order: the outer ones stand for both sides of themselves. */
function placeBlocks(chain: ChainInput, origins: readonly Point[], row: boolean): readonly PlacedBlocks[] {
  const { first, last } = outerEnds(chain);
  return origins.map((origin, index) => {
    if (index > 0 && index < origins.length - 1) return jointAt(chain, index - 1, origin, row);
    const exit: Exit = index === 0 ? (row ? 'right' : 'down') : row ? 'left' : 'up';
    const block = blockOf(index === 0 ? first : last, exit, origin);
    return { before: block, after: block };
  });
}

function stretchesOf(blocks: readonly PlacedBlocks[]): readonly Stretch[] {
  return blocks.slice(1).flatMap((block, index) => {
    const previous = blocks[index];
    return previous === undefined ? [] : [{ before: previous.after, after: block.before }];
  });
}

function layAll(
  chain: ChainInput,
  stretches: readonly Stretch[],
  flow: Flow,
  [low, high]: readonly [number, number],
): { conductors: readonly DrawnConductor[]; crossings: number } {
  const laid = stretches.map(({ before, after }, segment) =>
    layChannel({
      segment,
      conductors: chain.segments[segment]?.conductors ?? [],
      before,
      after,
      row: flow.row,
      low,
      high,
    }),
  );
  return {
    // The heaviest is drawn last: where conductors share the way to a contact, it is the one to be seen.
    conductors: laid.flatMap(({ conductors }) => conductors.toSorted((a, b) => a.weight - b.weight)),
    crossings: laid.reduce((sum, { crossings }) => sum + crossings, 0),
  };
}

type CaptionLines = (end: LeadEnd, caption: string) => readonly TextLine[];

function endsOf(
  chain: ChainInput,
  blocks: readonly PlacedBlocks[],
  captions: (place: 'first' | 'joint' | 'last', box: Box) => CaptionLines,
): readonly DrawnEnd[] {
  return chain.segments.flatMap((segment, index) => {
    const at = (end: LeadEnd, side: Side, block: Block | undefined): DrawnEnd[] => {
      if (block === undefined) return [];
      const outer = side === 'from' ? index === 0 : index === chain.segments.length - 1;
      const place = !outer ? 'joint' : side === 'from' ? 'first' : 'last';
      return [
        {
          segment: index,
          side,
          connector: end.connector,
          form: end.form,
          name: end.name,
          caption: block.caption,
          outlines: block.outlines,
          contacts: block.contacts,
          text: outer ? captions(place, block.bounds)(end, block.caption) : [],
          textAlternative: block.textAlternative,
        },
      ];
    };
    return [
      ...at(segment.from, 'from', blocks[index]?.after),
      ...at(segment.to, 'to', blocks[index + 1]?.before),
    ];
  });
}

function rowCaption(box: Box, top: number): CaptionLines {
  const x = box.x + box.width / 2;
  return (end, caption) => [
    { text: end.name, x, y: top + 14, anchor: 'middle', size: TEXT_SIZES.name },
    {
      text: `${words(end.connector)} ${end.form}`,
      x,
      y: top + 14 + CAPTION_LINE,
      anchor: 'middle',
      size: TEXT_SIZES.caption,
    },
    { text: caption, x, y: top + 14 + 2 * CAPTION_LINE, anchor: 'middle', size: TEXT_SIZES.caption },
  ];
}

function stackCaption(x: number, top: number): CaptionLines {
  return (end, caption) => [
    { text: end.name, x, y: top + 14, anchor: 'middle', size: TEXT_SIZES.name },
    {
      text: `${words(end.connector)} ${end.form}: ${caption}`,
      x,
      y: top + 14 + CAPTION_LINE,
      anchor: 'middle',
      size: TEXT_SIZES.caption,
    },
  ];
}

function jointText(name: string, box: Box | undefined, top: number): readonly TextLine[] {
  if (box === undefined || textWidth(name, TEXT_SIZES.caption) > box.width + 120) return [];
  return [{ text: name, x: box.x + box.width / 2, y: top + 14, anchor: 'middle', size: TEXT_SIZES.caption }];
}
