/**
 * Lays the conductors of one lead between two blocks: ways out, fans, lanes, labels, arrowheads.
 */
import { sayAmperes } from '../core/verdict/index.ts';
import { CURRENT_TO_SPEAK_OF, conductorWords } from '../core/wiring/index.ts';
import { chooseEscapes, placeLanes } from './channel.ts';
import type { Choice } from './channel.ts';
import type { Block } from './face.ts';
import type { Box, Point } from './geometry.ts';
import { boundsOf, roundedPath } from './geometry.ts';
import type { ConductorInput, DrawnConductor } from './lead-shape.ts';
import { arrowhead, weightOf } from './stroke.ts';
import type { TextLine } from './text.ts';
import { TEXT_SIZES, textBox, textWidth } from './text.ts';

/** Pixels: from lane to lane in a row (a label stands over each), least and most in a stack, from the edge to the outer lane of a stack. */
export const LABEL_ROOM = { row: 31, stackLeast: 36, stackMost: 84, side: 32 } as const;

const CORNER_RADIUS = 12;

/** Pixels: a fan is as long as its steepest conductor needs, within these bounds. */
const FAN = { least: 44, most: 150, slope: 0.75 } as const;

/** Room for an arrowhead on a lane, and between a label and its own conductor. */
const ARROW_ROOM = 26;
/** From the corner of a lane to the middle of its arrowhead: clear of the rounding. */
const ARROW_INSET = 16;
const LABEL_GAP = 7;
/** Ends this near to one another across the channel count as level. */
const LEVEL = 24;
const LINE_HEIGHT = 15;
/** Along a stack, labels that would touch stand this far before and behind the middle, pixels. */
const STAGGER = 23;

/** One segment of a chain, with the blocks at its ends and the bounds, pixels, between which its conductors may run; `row` from left to right, otherwise from top to bottom. */
interface ChannelInput {
  readonly segment: number;
  readonly conductors: readonly ConductorInput[];
  readonly before: Block;
  readonly after: Block;
  readonly row: boolean;
  /** Bounds for lanes across the channel. */
  readonly low: number;
  readonly high: number;
}

/** A conductor between the ends of its ways out of the two blocks; `start` and `end` are these ways. */
interface Strand {
  readonly index: number;
  readonly conductor: ConductorInput;
  readonly start: readonly Point[];
  readonly end: readonly Point[];
  readonly first: Point;
  readonly last: Point;
}

/** What the lanes of a channel share: where they begin and end along it, and whether neighbouring labels make room for each other. */
interface Lanes {
  readonly row: boolean;
  readonly from: number;
  readonly to: number;
  readonly staggered: boolean;
  /** A place along the channel and across it. */
  readonly place: (along: number, across: number) => Point;
}

/** The conductors of a segment as drawn, in the order of their lanes, and how many pairs of them cross. */
export function layChannel(input: ChannelInput): {
  conductors: readonly DrawnConductor[];
  crossings: number;
} {
  const { conductors, before, after, row } = input;
  if (conductors.length === 0) return { conductors: [], crossings: 0 };
  const choice = chooseEscapes(conductors, before, after, row ? 'y' : 'x');
  const strands = strandsOf(conductors, choice);
  const pitch = pitchOf(input, strands.length);
  const places = lanesOf(input, strands, pitch);
  const labels = strands.map(({ conductor }) => labelLines(conductor, row));
  const lanes = stretchOf(row, strands, places, labels, pitch);
  const drawn = strands.map((strand, at): DrawnConductor => {
    const { index, conductor } = strand;
    const { from, to, line = 'untold', amperes = null } = conductor;
    const shift = lanes.staggered ? (at % 2 === 0 ? -STAGGER : STAGGER) : 0;
    return {
      segment: input.segment,
      index,
      from,
      to,
      line,
      amperes,
      ...laneOf(lanes, strand, places[at] ?? 0, labels[at] ?? [], shift),
      dots: dotsOf(strand, strands),
    };
  });
  return { conductors: drawn, crossings: choice.crossings };
}

function strandsOf(conductors: readonly ConductorInput[], choice: Choice): readonly Strand[] {
  return choice.order.flatMap((index) => {
    const conductor = conductors[index];
    const start = conductor && choice.before.routes[conductor.from];
    const end = conductor && choice.after.routes[conductor.to];
    const first = start?.at(-1);
    const last = end?.at(-1);
    return conductor && start && end && first && last ? [{ index, conductor, start, end, first, last }] : [];
  });
}

/** From lane to lane, pixels. */
function pitchOf({ row, low, high }: ChannelInput, count: number): number {
  const { row: fixed, stackLeast, stackMost } = LABEL_ROOM;
  return row ? fixed : Math.max(stackLeast, Math.min(stackMost, (high - low) / Math.max(1, count - 1)));
}

/** Where each lane lies across the channel: half way between its ends, but a conductor whose ends are nearly level bends once, not twice. */
function lanesOf(
  { row, low, high }: ChannelInput,
  strands: readonly Strand[],
  pitch: number,
): readonly number[] {
  const across = row ? 'y' : 'x';
  const wished = strands.map(({ first: { [across]: first }, last: { [across]: last } }) =>
    Math.abs(first - last) < LEVEL ? last : (first + last) / 2,
  );
  return placeLanes(wished, pitch, low, high);
}

/** Where lanes begin and end: fans at both ends leave room for labels and arrowheads. */
function stretchOf(
  row: boolean,
  strands: readonly Strand[],
  places: readonly number[],
  labels: readonly (readonly string[])[],
  pitch: number,
): Lanes {
  const [along, across] = row ? (['x', 'y'] as const) : (['y', 'x'] as const);
  const from = Math.max(...strands.map(({ first }) => first[along]));
  const to = Math.min(...strands.map(({ last }) => last[along]));
  const staggered = !row && labels.some((label) => widest(label) + 10 > pitch);
  const words = row ? Math.max(...labels.map(widest)) : (staggered ? 2 : 1) * 2 * STAGGER;
  const room = (to - from - words - 2 * ARROW_ROOM) / 2;
  const fan = (end: 'first' | 'last'): number =>
    fanLength(
      strands.map((strand, at) => (places[at] ?? 0) - strand[end][across]),
      room,
    );
  return {
    row,
    from: from + fan('first'),
    to: to - fan('last'),
    staggered,
    place: (u, v) => (row ? { x: u, y: v } : { x: v, y: u }),
  };
}

/** One conductor on its lane, with its label and arrowheads; in a stack the label stands in a gap of the line. */
function laneOf(
  { row, from, to, place }: Lanes,
  { conductor: { amperes = null }, start, end }: Strand,
  lane: number,
  lines: readonly string[],
  shift: number,
): Pick<DrawnConductor, 'd' | 'weight' | 'arrows' | 'label' | 'labelBox'> {
  const lead = [...start, place(from, lane)];
  const tail = [place(to, lane), ...[...end].reverse()];
  const middle = place((from + to) / 2 + shift, lane);
  const label = row ? labelOver(lines, middle) : labelOn(lines, middle);
  const labelBox = boundingBox(label);
  const gap = (y: number): Point => place(y, lane);
  const parts = row
    ? [[...lead, ...tail]]
    : [
        [...lead, gap(labelBox.y - LABEL_GAP)],
        [gap(labelBox.y + labelBox.height + LABEL_GAP), ...tail],
      ];
  const weight = weightOf(amperes);
  const arrows = arrowsOf(amperes, weight, row, [
    place(from + ARROW_INSET, lane),
    place(to - ARROW_INSET, lane),
  ]);
  return {
    d: parts.map((points) => roundedPath(points, CORNER_RADIUS)).join(''),
    weight,
    arrows,
    label,
    labelBox,
  };
}

function fanLength(shifts: readonly number[], room: number): number {
  const most = Math.max(...shifts.map(Math.abs));
  return Math.min(room, FAN.most, Math.max(FAN.least, FAN.slope * most));
}

function labelLines(conductor: ConductorInput, row: boolean): readonly string[] {
  const { line = 'untold', amperes = null } = conductor;
  const named = line === 'untold' ? conductorWords(conductor) : undefined;
  const label = conductor.label ?? named;
  if (label !== undefined) return [label];
  if (amperes === null || line === 'spare') return [line];
  return row ? [`${line} ${sayAmperes(Math.abs(amperes))}`] : [line, sayAmperes(Math.abs(amperes))];
}

function widest(lines: readonly string[]): number {
  return Math.max(...lines.map((line) => textWidth(line, TEXT_SIZES.label)));
}

/** One line that stands over a lane of a row. */
function labelOver(lines: readonly string[], at: Point): readonly TextLine[] {
  return lines.map((text) => ({
    text,
    x: at.x,
    y: at.y - LABEL_GAP - 1.5,
    anchor: 'middle',
    size: TEXT_SIZES.label,
  }));
}

/** Lines that stand in a gap of a lane of a stack, like the figure of a dimension line. */
function labelOn(lines: readonly string[], at: Point): readonly TextLine[] {
  const first = at.y - ((lines.length - 1) * LINE_HEIGHT) / 2 + 0.35 * TEXT_SIZES.label;
  return lines.map((text, index) => ({
    text,
    x: at.x,
    y: first + index * LINE_HEIGHT,
    anchor: 'middle',
    size: TEXT_SIZES.label,
  }));
}

function boundingBox(lines: readonly TextLine[]): Box {
  return boundsOf(
    lines.map(textBox).flatMap((box) => [box, { x: box.x + box.width, y: box.y + box.height }]),
  );
}

function arrowsOf(
  amperes: number | null,
  weight: number,
  row: boolean,
  places: readonly Point[],
): readonly string[] {
  if (amperes === null || Math.abs(amperes) < CURRENT_TO_SPEAK_OF) return [];
  const forward = row ? 0 : Math.PI / 2;
  return places.map((at) => arrowhead(at, amperes > 0 ? forward : forward + Math.PI, weight));
}

/** Dots at both joints, and where conductors of one contact part. */
function dotsOf(strand: Strand, all: readonly Strand[]): readonly Point[] {
  const dots = [strand.start[0], strand.end[0]];
  if (all.filter(({ conductor }) => conductor.from === strand.conductor.from).length > 1)
    dots.push(strand.first);
  if (all.filter(({ conductor }) => conductor.to === strand.conductor.to).length > 1) dots.push(strand.last);
  return dots.filter((dot) => dot !== undefined);
}
