/**
 * Lays the conductors of one lead between two blocks: ways out, fans, lanes, labels, arrowheads.
 */
import { chooseEscapes, placeLanes } from './channel.ts';
import type { Block } from './face.ts';
import type { Box, Point } from './geometry.ts';
import { boundsOf, roundedPath } from './geometry.ts';
import type { ConductorInput, DrawnConductor } from './lead-shape.ts';
import { LEAST_ARROW_AMPERES, arrowhead, milliampereWords, weightOf } from './stroke.ts';
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

/** The conductors of a segment as drawn, in the order of the input, and how many pairs of them cross. */
export function layChannel(input: ChannelInput): {
  conductors: readonly DrawnConductor[];
  crossings: number;
} {
  const { conductors, before, after, row } = input;
  if (conductors.length === 0) return { conductors: [], crossings: 0 };
  const across = row ? 'y' : 'x';
  const along = row ? 'x' : 'y';
  const choice = chooseEscapes(conductors, before, after, across);
  const strands = choice.order.flatMap((index) => {
    const conductor = conductors[index];
    const start = conductor && choice.before.routes[conductor.from];
    const end = conductor && choice.after.routes[conductor.to];
    const first = start?.at(-1);
    const last = end?.at(-1);
    return conductor && start && end && first && last ? [{ index, conductor, start, end, first, last }] : [];
  });
  const pitch = row
    ? LABEL_ROOM.row
    : Math.max(
        LABEL_ROOM.stackLeast,
        Math.min(LABEL_ROOM.stackMost, (input.high - input.low) / Math.max(1, strands.length - 1)),
      );
  const lanes = placeLanes(
    // A conductor whose ends are nearly level bends once, not twice.
    strands.map(({ first, last }) =>
      Math.abs(first[across] - last[across]) < LEVEL ? last[across] : (first[across] + last[across]) / 2,
    ),
    pitch,
    input.low,
    input.high,
  );
  const from = Math.max(...strands.map(({ first }) => first[along]));
  const to = Math.min(...strands.map(({ last }) => last[along]));
  const labels = strands.map(({ conductor }) => labelLines(conductor, row));
  const staggered = !row && labels.some((label) => widest(label) + 10 > pitch);
  const zone = row
    ? Math.max(...labels.map(widest)) + 2 * ARROW_ROOM
    : 2 * ARROW_ROOM + (staggered ? 2 : 1) * 46;
  const fanRoom = (to - from - zone) / 2;
  const startFan = fanLength(
    strands.map(({ first }, k) => (lanes[k] ?? 0) - first[across]),
    fanRoom,
  );
  const endFan = fanLength(
    strands.map(({ last }, k) => (lanes[k] ?? 0) - last[across]),
    fanRoom,
  );
  const place = (u: number, v: number): Point => (row ? { x: u, y: v } : { x: v, y: u });
  const laneFrom = from + startFan;
  const laneTo = to - endFan;
  const drawn = strands.map((strand, k): DrawnConductor => {
    const lane = lanes[k] ?? 0;
    const { conductor, index, start, end } = strand;
    const lead = [...start, place(laneFrom, lane)];
    const tail = [place(laneTo, lane), ...[...end].reverse()];
    const middle = (laneFrom + laneTo) / 2 + (staggered ? (k % 2 === 0 ? -23 : 23) : 0);
    const label = row
      ? labelOver(labels[k] ?? [], place(middle, lane))
      : labelOn(labels[k] ?? [], place(middle, lane));
    const labelBox = boundingBox(label);
    const d = row
      ? roundedPath([...lead, ...tail], CORNER_RADIUS)
      : roundedPath([...lead, place(labelBox.y - LABEL_GAP, lane)], CORNER_RADIUS) +
        roundedPath([place(labelBox.y + labelBox.height + LABEL_GAP, lane), ...tail], CORNER_RADIUS);
    const weight = weightOf(conductor.amperes);
    return {
      segment: input.segment,
      index,
      from: conductor.from,
      to: conductor.to,
      line: conductor.line,
      amperes: conductor.amperes,
      d,
      weight,
      arrows: arrowsOf(conductor.amperes, weight, row, [
        place(laneFrom + ARROW_INSET, lane),
        place(laneTo - ARROW_INSET, lane),
      ]),
      dots: dotsOf(strand, strands),
      label,
      labelBox,
    };
  });
  return { conductors: drawn, crossings: choice.crossings };
}

function fanLength(shifts: readonly number[], room: number): number {
  const most = Math.max(...shifts.map(Math.abs));
  return Math.min(room, FAN.most, Math.max(FAN.least, FAN.slope * most));
}

function labelLines(conductor: ConductorInput, row: boolean): readonly string[] {
  if (conductor.label !== undefined) return row ? [conductor.label] : conductor.label.split('\n');
  const { line, amperes } = conductor;
  if (amperes === null || line === 'spare') return [line];
  return row ? [`${line} ${milliampereWords(amperes)}`] : [line, milliampereWords(amperes)];
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
  if (amperes === null || Math.abs(amperes) < LEAST_ARROW_AMPERES) return [];
  const forward = row ? 0 : Math.PI / 2;
  return places.map((at) => arrowhead(at, amperes > 0 ? forward : forward + Math.PI, weight));
}

interface Laid {
  readonly conductor: ConductorInput;
  readonly start: readonly Point[];
  readonly end: readonly Point[];
  readonly first: Point;
  readonly last: Point;
}

/** Dots at both joints, and where conductors of one contact part. */
function dotsOf(strand: Laid, all: readonly Laid[]): readonly Point[] {
  const dots = [strand.start[0], strand.end[0]];
  if (all.filter(({ conductor }) => conductor.from === strand.conductor.from).length > 1)
    dots.push(strand.first);
  if (all.filter(({ conductor }) => conductor.to === strand.conductor.to).length > 1) dots.push(strand.last);
  return dots.filter((dot) => dot !== undefined);
}
