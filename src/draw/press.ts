/** One press in time: a row for each device, a span for each message that passes by, a mark where its last one is there. */
import { straightAxis } from './axis.ts';
import { textWidth } from './text.ts';

/** A message on its way past a device. `own` when it is meant for it; `text` is its number in the press. */
interface PressSpan {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly own: boolean;
  readonly text: string;
}

/** A device: what passes by, and when it has the last message meant for it (undefined for none, or the sender). */
export interface PressRow {
  readonly name: string;
  readonly spans: readonly PressSpan[];
  readonly arrivesSeconds: number | undefined;
  /** Said at the right end of the row's heading. */
  readonly words: string;
}

/** Everything to draw on `width` pixels. */
export interface PressInput {
  readonly width: number;
  readonly rows: readonly PressRow[];
  readonly limitSeconds: number;
}

/** A span as drawn; `text` is empty where it has no room. */
interface DrawnSpan {
  readonly x: number;
  readonly width: number;
  readonly own: boolean;
  readonly text: string;
}

/** A row as drawn: its heading stands on `headingY`, its band reaches from `top` down by `height`. */
interface DrawnRow {
  readonly name: string;
  readonly words: string;
  readonly headingY: number;
  readonly top: number;
  readonly height: number;
  readonly spans: readonly DrawnSpan[];
  readonly arrivesX: number | undefined;
}

/** The drawing, in pixels from the left top corner. */
interface PressDrawing {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly rows: readonly DrawnRow[];
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  /** Where the ticks end and their numbers stand. */
  readonly axisY: number;
  /** The reader's limit, where it lies inside the stretch drawn. */
  readonly limitX: number | undefined;
}

/** Sizes, pixels. */
const SIDE = 10;
const HEADING = 20;
const BAND = 20;
const GAP = 8;
const AXIS = 38;
/** Room of one digit in a span, pixels. */
const DIGIT = 8;
/** Size of the writing, and least room between a name and what stands at the right, pixels. */
const WRITING = 13;
const APART = 12;
const PIXELS_A_TICK = 80;
/** The limit is drawn when it is at most so many times as late as the last message; otherwise all else would shrink. */
const LIMIT_IN_SIGHT = 1.6;

/** Draw a press. Throws RangeError when there is nothing to draw. */
export function drawPress({ width, rows, limitSeconds }: PressInput): PressDrawing {
  const last = Math.max(
    0,
    ...rows.flatMap(({ spans, arrivesSeconds }) => [
      ...spans.map(({ toSeconds }) => toSeconds),
      arrivesSeconds ?? 0,
    ]),
  );
  if (!(last > 0)) throw new RangeError('press drawing: needs a message that ends after 0 s, got none');
  const limitShown = limitSeconds <= last * LIMIT_IN_SIGHT;
  const end = limitShown ? Math.max(last, limitSeconds) : last;
  const axis = straightAxis([0, end], [SIDE, width - SIDE]);
  const x = axis.at;
  const drawn = rows.map((row, at): DrawnRow => {
    const y = at * (HEADING + BAND + GAP);
    return {
      name: shortened(row.name, width - 2 * SIDE - APART - textWidth(row.words, WRITING)),
      words: row.words,
      headingY: y + HEADING - 6,
      top: y + HEADING,
      height: BAND,
      spans: row.spans.map((span) => {
        const from = x(span.fromSeconds);
        const wide = x(span.toSeconds) - from;
        const fits = wide >= span.text.length * DIGIT + 4;
        return { x: from, width: wide, own: span.own, text: fits ? span.text : '' };
      }),
      arrivesX: row.arrivesSeconds === undefined ? undefined : x(row.arrivesSeconds),
    };
  });
  const bottom = rows.length * (HEADING + BAND + GAP);
  return {
    width,
    height: bottom + AXIS,
    left: SIDE,
    right: width - SIDE,
    rows: drawn,
    ticks: axis.ticks(Math.max(2, Math.floor(width / PIXELS_A_TICK))).map((seconds) => ({
      x: x(seconds),
      text: String(Number((seconds * 1e3).toPrecision(6))),
    })),
    axisY: bottom + 14,
    limitX: limitShown ? x(limitSeconds) : undefined,
  };
}

/** A name that fits into `room` pixels, an ellipsis where letters were left out. */
function shortened(name: string, room: number): string {
  if (textWidth(name, WRITING) <= room) return name;
  let short = name;
  while (short.length > 1 && textWidth(`${short}…`, WRITING) > room) short = short.slice(0, -1);
  return `${short.trimEnd()}…`;
}
