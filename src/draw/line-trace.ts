/** A simulated line beside what was sent: bits sent, the line as the receiver has it with its votes, and the bytes read. */
import { hexOf, levelAt } from '../core/signal/index.ts';
import type { Trace } from '../core/arrived/index.ts';
import { straightAxis } from './axis.ts';

/** A word with its place; `good` false for a byte that ended badly. */
interface TraceText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly good: boolean;
}

/** The drawing, in pixels from the left top corner. */
interface TraceDrawing {
  readonly width: number;
  readonly height: number;
  readonly rows: readonly { readonly name: string; readonly y: number }[];
  readonly sent: string;
  readonly line: string;
  readonly votes: readonly { readonly x: number; readonly y: number; readonly level: boolean }[];
  readonly bytes: readonly TraceText[];
}

const LEFT = 8;
const ROW = 44;
const NAME = 18;
const [SENT, LINE, BYTES] = [NAME, 2 * NAME + ROW + 8, 3 * NAME + 2 * ROW + 16];

type Line = Trace['output'];

/** A line as a path between two moments, high at the top of its row. */
function stepsOf(line: Line, trace: Trace, x: (seconds: number) => number, top: number): string {
  const y = (level: boolean): number => top + (level ? 6 : ROW - 6);
  const { fromSeconds, toSeconds } = trace;
  const inside = line.edges.filter(({ seconds }) => seconds > fromSeconds && seconds < toSeconds);
  const start = `M${x(fromSeconds).toFixed(1)},${y(levelAt(line, fromSeconds))}`;
  const steps = inside.map(({ seconds, level }) => `H${x(seconds).toFixed(1)}V${y(level)}`);
  return `${start}${steps.join('')}H${x(toSeconds).toFixed(1)}`;
}

/** The line that bits sent make. */
function lineOfBits(bits: Trace['bits']): Line {
  let level = true;
  const edges = bits.flatMap((bit, at) => {
    const free = (bits[at - 1]?.toSeconds ?? -Infinity) < bit.fromSeconds - 1e-9;
    const rest = free && !level ? [{ seconds: bits[at - 1]?.toSeconds ?? 0, level: true }] : [];
    const before = free || level;
    level = bit.level;
    return before === bit.level ? rest : [...rest, { seconds: bit.fromSeconds, level: bit.level }];
  });
  return { before: true, edges };
}

/** Draw a trace on `width` pixels. */
export function drawTrace(trace: Trace, width: number): TraceDrawing {
  const time = straightAxis([trace.fromSeconds, trace.toSeconds], [LEFT, width - LEFT]);
  const x = (seconds: number): number => Math.min(width - LEFT, Math.max(LEFT, time.at(seconds)));
  const votes = trace.heard.flatMap(({ samples }) => samples);
  return {
    width,
    height: BYTES + NAME + 8,
    rows: [
      { name: 'sent', y: SENT - 5 },
      { name: 'as the reader has it, with its votes', y: LINE - 5 },
      { name: 'bytes read', y: BYTES - 5 },
    ],
    sent: stepsOf(lineOfBits(trace.bits), trace, x, SENT),
    line: stepsOf(trace.output, trace, x, LINE),
    votes: votes
      .filter(({ seconds }) => seconds >= trace.fromSeconds && seconds <= trace.toSeconds)
      .map(({ seconds, level }) => ({ x: x(seconds), y: LINE + (level ? 6 : ROW - 6), level })),
    bytes: trace.heard.flatMap((one) => {
      if (one.kind === 'glitch') return [];
      const text = `${one.kind === 'break' ? '00' : hexOf(one.value)}${one.kind === 'byte' ? '' : '*'}`;
      return [{ x: x(one.startSeconds), y: BYTES + NAME - 6, text, good: one.kind === 'byte' }];
    }),
  };
}
