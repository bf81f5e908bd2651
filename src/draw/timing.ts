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
  readonly thresholds: readonly { readonly amount: number; readonly text: string }[];
  readonly output: TimedLevel;
  readonly samples: readonly TimedSample[];
  readonly reports: readonly TimedReport[];
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
  readonly current: string;
  readonly thresholds: readonly TimingText[];
  readonly amountTicks: readonly TimingText[];
  readonly output: string;
  readonly samples: readonly { readonly x: number; readonly y: number; readonly level: boolean }[];
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

/** Ticks of the time axis: about one in so many pixels. */
const PIXELS_A_TICK = 90;

/** Draw a stretch of a signal. Throws RangeError when it is empty. */
export function drawTiming(input: TimingInput): TimingDrawing {
  const { width, fromSeconds, toSeconds } = input;
  if (!(toSeconds > fromSeconds)) {
    throw new RangeError(`timing drawing: must end after ${fromSeconds} s, got ${toSeconds} s`);
  }
  const time = straightAxis([fromSeconds, toSeconds], [LEFT, width - RIGHT]);
  const held = (place: number): number => Math.max(LEFT, Math.min(width - RIGHT, place));
  const x = (seconds: number): number => held(time.at(seconds));
  const tops = { sent: NAME, current: 0, output: 0, heard: 0 };
  tops.current = tops.sent + ROW.sent + GAP + NAME;
  tops.output = tops.current + ROW.current + GAP + NAME;
  tops.heard = tops.output + ROW.output + GAP + NAME;
  const bottom = tops.heard + ROW.heard;
  const inside = (seconds: number): boolean => seconds >= fromSeconds && seconds <= toSeconds;
  const box = (
    from: number,
    to: number,
    text: string,
    good: boolean,
    least: number,
  ): readonly TimingBox[] => {
    if (to <= fromSeconds || from >= toSeconds) return [];
    const start = x(Math.max(from, fromSeconds));
    const wide = x(Math.min(to, toSeconds)) - start;
    return [{ x: start, width: wide, text: wide >= least ? text : '', good }];
  };
  const level =
    (top: number, height: number) =>
    (high: boolean): number =>
      high ? top + 6 : top + height - 6;
  const sentLevel = level(tops.sent, ROW.sent);
  const outputLevel = level(tops.output, ROW.output);
  const most = Math.max(
    ...input.amounts.map(([, amount]) => amount),
    ...input.thresholds.map(({ amount }) => amount),
    1e-9,
  );
  const least = Math.min(0, ...input.amounts.map(([, amount]) => amount));
  const scale = straightAxis([least, most * 1.08], [tops.current + ROW.current, tops.current]);
  const y = scale.at;
  const shown = input.unit === 'mA' ? 1e3 : 1;
  const ticks = time.ticks(Math.max(2, Math.floor((width - LEFT) / PIXELS_A_TICK)));
  return {
    width,
    height: bottom + AXIS,
    left: LEFT,
    right: width - RIGHT,
    rows: [
      { name: 'bits sent', top: tops.sent, height: ROW.sent },
      {
        name: input.unit === 'mA' ? 'current in the LED, mA' : 'at the input, V',
        top: tops.current,
        height: ROW.current,
      },
      { name: 'output of the receiver, and its votes', top: tops.output, height: ROW.output },
      { name: 'bytes heard', top: tops.heard, height: ROW.heard },
    ],
    sent: stepPath(levelOfBits(input.bits), fromSeconds, toSeconds, x, sentLevel),
    cells: input.bits.flatMap((bit) =>
      box(bit.fromSeconds, bit.toSeconds, cellWords(bit), bit.level, CELL_WITH_WORDS),
    ),
    current:
      line<readonly [number, number]>(
        ([seconds]) => x(seconds),
        ([, amount]) => y(amount),
      )(input.amounts.filter(([seconds]) => inside(seconds))) ?? '',
    thresholds: input.thresholds.map(({ amount, text }) => ({ x: width - RIGHT, y: y(amount), text })),
    amountTicks: scale.ticks(4).map((one) => ({
      x: LEFT - 6,
      y: y(one),
      text: String(Number((one * shown).toPrecision(3))),
    })),
    output: stepPath(input.output, fromSeconds, toSeconds, x, outputLevel),
    samples: input.samples
      .filter(({ seconds }) => inside(seconds))
      .map(({ seconds, level: high }) => ({ x: x(seconds), y: outputLevel(high), level: high })),
    reports: input.reports.flatMap((one) =>
      box(one.fromSeconds, one.toSeconds, one.text, one.good, one.text.length * 7),
    ),
    ticks: ticks.map((seconds) => ({
      x: x(seconds),
      y: bottom + 18,
      text: String(Math.round(seconds * 1e6)),
    })),
    secondsAt: (place) => time.back(held(place)),
    xOf: x,
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
  fromSeconds: number,
  toSeconds: number,
  x: (seconds: number) => number,
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
