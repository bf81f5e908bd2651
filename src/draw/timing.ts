/** A signal in time: bits sent, line current, receiver output and bytes heard on one axis, as plain data. */
import { curveStepAfter, line } from 'd3';
import { straightAxis } from './axis.ts';

/** One bit of a frame as sent. `bit` 0 is the start bit, 1 to 8 the data bits, 9 the stop bit. */
interface TimedBit {
  readonly bit: number;
  readonly level: boolean;
  readonly fromSeconds: number;
  readonly toSeconds: number;
}

/** A level that changes at edges; `before` holds until the first. */
interface TimedLevel {
  readonly before: boolean;
  readonly edges: readonly { readonly seconds: number; readonly level: boolean }[];
}

/** A vote of the receiver. */
interface TimedSample {
  readonly seconds: number;
  readonly level: boolean;
}

/** What the receiver made of a stretch of time; `good` false for anything but the byte that was sent. */
interface TimedReport {
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly text: string;
  readonly good: boolean;
}

/** Everything to draw on `width` pixels, from `fromSeconds` to `toSeconds`. Amounts are amperes or volts, as `unit` says. */
interface TimingInput {
  readonly width: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly bits: readonly TimedBit[];
  readonly amounts: readonly (readonly [seconds: number, amount: number])[];
  readonly unit: 'mA' | 'V';
  /** What the amounts are, where they are not those of the input. */
  readonly amountName?: string;
  readonly thresholds: readonly { readonly amount: number; readonly text: string }[];
  readonly output: TimedLevel;
  readonly samples: readonly TimedSample[];
  readonly reports: readonly TimedReport[];
  /** What was sent and heard is asked: the amounts alone are drawn, bit by bit. */
  readonly asked?: boolean;
}

/** A line of words in the drawing, its left end or middle at `x`. */
interface TimingText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

/** A box with words, or without where they would not fit. */
interface TimingBox {
  readonly x: number;
  readonly width: number;
  readonly text: string;
  readonly good: boolean;
}

/** The drawing, in pixels from the left top corner. */
export interface TimingDrawing {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly rows: readonly { readonly name: string; readonly top: number; readonly height: number }[];
  readonly sent: string;
  readonly cells: readonly TimingBox[];
  /** The outlines of all cells: one path, for a figure of many bits is drawn again and again. */
  readonly grid: string;
  readonly current: string;
  readonly thresholds: readonly TimingText[];
  readonly amountTicks: readonly TimingText[];
  readonly output: string;
  /** A dot for each vote of the receiver: those for 1 and those for 0, a path each. */
  readonly votes: { readonly high: string; readonly low: string };
  readonly reports: readonly TimingBox[];
  readonly ticks: readonly TimingText[];
  /** Moment under a place across the drawing, seconds, held inside the stretch shown; and the reverse. */
  readonly secondsAt: (x: number) => number;
  readonly xOf: (seconds: number) => number;
}

/** Heights and gaps, pixels. */
const LEFT = 46;
const RIGHT = 8;
const NAME = 18;
const ROW = { sent: 58, current: 110, output: 58, heard: 30 } as const;
const GAP = 14;
const AXIS = 34;

/** Least width of a cell that has room for its words, pixels. */
const CELL_WITH_WORDS = 20;

/** Room for a letter of a report, pixels. */
const LETTER = 7;

/** Half the width of a vote's dot, pixels. */
const DOT = 3;

/** Ticks of the time axis: about one in so many pixels. */
const PIXELS_A_TICK = 90;

type Row = keyof typeof ROW;

/** Rows from top to bottom, with the top of each and the bottom of the last, pixels. A row that is not among them has no height. */
interface Rows {
  readonly shown: readonly Row[];
  readonly top: Readonly<Record<Row, number>>;
  readonly bottom: number;
}

const WHOLE = stacked(['sent', 'current', 'output', 'heard']);
const AMOUNTS_ALONE = stacked(['current']);

function stacked(shown: readonly Row[]): Rows {
  const top = { sent: 0, current: 0, output: 0, heard: 0 };
  let bottom = -GAP;
  for (const row of shown) {
    top[row] = bottom + GAP + NAME;
    bottom = top[row] + ROW[row];
  }
  return { shown, top, bottom };
}

/** Where a level lies in its row, clear of the row's rims by 6 pixels. */
const levelIn =
  ({ top }: Rows, row: 'sent' | 'output') =>
  (high: boolean): number =>
    high ? top[row] + 6 : top[row] + ROW[row] - 6;

/** The stretch that is shown, on its axis; `x` holds what lies outside at the rim. */
interface Stretch {
  readonly rows: Rows;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly x: (seconds: number) => number;
}

/** Draw a stretch of a signal. Throws RangeError when it is empty. */
export function drawTiming(input: TimingInput): TimingDrawing {
  const { width, fromSeconds, toSeconds, asked = false } = input;
  if (!(toSeconds > fromSeconds)) {
    throw new RangeError(`timing drawing: must end after ${fromSeconds} s, got ${toSeconds} s`);
  }
  const right = width - RIGHT;
  const time = straightAxis([fromSeconds, toSeconds], [LEFT, right]);
  const held = (place: number): number => Math.max(LEFT, Math.min(right, place));
  const x = (seconds: number): number => held(time.at(seconds));
  const rows = asked ? AMOUNTS_ALONE : WHOLE;
  const stretch = { rows, fromSeconds, toSeconds, x };
  const inside = (seconds: number): boolean => seconds >= fromSeconds && seconds <= toSeconds;
  const heardAt = levelIn(rows, 'output');
  const cells = input.bits.flatMap((bit) =>
    box(stretch, bit, asked ? '' : cellWords(bit), bit.level, CELL_WITH_WORDS),
  );
  const dots = (high: boolean): string =>
    (asked ? [] : input.samples)
      .filter(({ seconds, level }) => level === high && inside(seconds))
      .map(({ seconds }) => dotPath(x(seconds), heardAt(high)))
      .join('');
  const reports = asked ? [] : input.reports;
  return {
    width,
    height: rows.bottom + AXIS,
    left: LEFT,
    right,
    rows: rowsOf(input, rows),
    sent: asked ? '' : stepPath(levelOfBits(input.bits), stretch, levelIn(rows, 'sent')),
    cells,
    grid: cells.map((cell) => cellPath(cell, rows)).join(''),
    ...amountsOf(input, stretch, right, inside),
    output: asked ? '' : stepPath(input.output, stretch, heardAt),
    votes: { high: dots(true), low: dots(false) },
    reports: reports.flatMap((one) => box(stretch, one, one.text, one.good, one.text.length * LETTER)),
    ticks: time.ticks(Math.max(2, Math.floor((width - LEFT) / PIXELS_A_TICK))).map((seconds) => ({
      x: x(seconds),
      y: rows.bottom + 18,
      text: String(Math.round(seconds * 1e6)),
    })),
    secondsAt: (place) => time.back(held(place)),
    xOf: x,
  };
}

function rowsOf(
  { unit, amountName }: Pick<TimingInput, 'unit' | 'amountName'>,
  { shown, top }: Rows,
): TimingDrawing['rows'] {
  const names = {
    sent: 'bits sent',
    current: amountName ?? (unit === 'mA' ? 'current in the LED, mA' : 'at the input, V'),
    output: 'output of the receiver, and its votes',
    heard: 'bytes heard',
  };
  return shown.map((row) => ({
    name: names[row],
    top: top[row],
    height: ROW[row],
  }));
}

/** Pixels of a path to a hundredth. */
const hundredth = (pixels: number): number => Math.round(pixels * 100) / 100;

const dotPath = (x: number, y: number): string =>
  `M${hundredth(x - DOT)},${y}a${DOT},${DOT} 0 1 0 ${2 * DOT},0a${DOT},${DOT} 0 1 0 ${-2 * DOT},0z`;

function cellPath({ x, width }: TimingBox, { shown: [first = 'sent'], top }: Rows): string {
  const right = hundredth(x + width);
  return `M${hundredth(x)},${top[first]}H${right}v${ROW[first]}H${hundredth(x)}z`;
}

/** The box of a part of the time, as far as it is shown; its words only where it has `least` pixels for them. */
function box(
  { fromSeconds, toSeconds, x }: Stretch,
  part: { readonly fromSeconds: number; readonly toSeconds: number },
  text: string,
  good: boolean,
  least: number,
): readonly TimingBox[] {
  if (part.toSeconds <= fromSeconds || part.fromSeconds >= toSeconds) return [];
  const start = x(Math.max(part.fromSeconds, fromSeconds));
  const width = x(Math.min(part.toSeconds, toSeconds)) - start;
  return [{ x: start, width, text: width >= least ? text : '', good }];
}

/** The row of amounts: their line, the thresholds they need, and its axis from nothing to a little over the most. */
function amountsOf(
  { amounts, thresholds, unit }: TimingInput,
  { x, rows: { top } }: Stretch,
  right: number,
  inside: (seconds: number) => boolean,
): Pick<TimingDrawing, 'current' | 'thresholds' | 'amountTicks'> {
  const all = amounts.map(([, amount]) => amount);
  const most = Math.max(...all, ...thresholds.map(({ amount }) => amount), 1e-9);
  const bottom = top.current + ROW.current;
  const scale = straightAxis([Math.min(0, ...all), most * 1.08], [bottom, top.current]);
  const drawn = line<readonly [number, number]>(
    ([seconds]) => x(seconds),
    ([, amount]) => scale.at(amount),
  );
  const shown = unit === 'mA' ? 1e3 : 1;
  return {
    current: drawn(amounts.filter(([seconds]) => inside(seconds))) ?? '',
    thresholds: thresholds.map(({ amount, text }) => ({ x: right, y: scale.at(amount), text })),
    amountTicks: scale.ticks(4).map((one) => ({
      x: LEFT - 6,
      y: scale.at(one),
      text: String(Number((one * shown).toPrecision(3))),
    })),
  };
}

/** A bit's name in its cell: 'start', 0 or 1, 'stop'. */
function cellWords({ bit, level }: TimedBit): string {
  if (bit === 0) return 'S';
  return bit === 9 ? 'E' : level ? '1' : '0';
}

function levelOfBits(bits: readonly TimedBit[]): TimedLevel {
  const edges: { seconds: number; level: boolean }[] = [];
  let now = true;
  let end = 0;
  for (const { level, fromSeconds, toSeconds } of bits) {
    if (fromSeconds > end + 1e-9 && !now) edges.push({ seconds: end, level: true });
    if (level !== now || (fromSeconds > end + 1e-9 && !now)) edges.push({ seconds: fromSeconds, level });
    now = level;
    end = toSeconds;
  }
  return { before: true, edges };
}

function stepPath(
  wave: TimedLevel,
  { fromSeconds, toSeconds, x }: Stretch,
  y: (level: boolean) => number,
): string {
  let now = wave.before;
  const points: [number, boolean][] = [];
  for (const { seconds, level } of wave.edges) {
    if (seconds > fromSeconds && points.length === 0) points.push([fromSeconds, now]);
    if (seconds > toSeconds) break;
    if (seconds > fromSeconds) points.push([seconds, level]);
    now = level;
  }
  if (points.length === 0) points.push([fromSeconds, now]);
  points.push([toSeconds, now]);
  return (
    line<[number, boolean]>(
      ([seconds]) => x(seconds),
      ([, level]) => y(level),
    ).curve(curveStepAfter)(points) ?? ''
  );
}
