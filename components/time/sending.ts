/** From a link and a list of bytes to what the timing figure shows. */
import {
  bitCells,
  delaysOf,
  hexOf,
  inputAmountAt,
  inputTrace,
  levelAt,
  outputFacts,
  outputShapeOf,
  outputTrace,
  sayMicroseconds,
} from '../../src/core/signal/index.ts';
import { sayAmperesFinely, sayVolts } from '../../src/core/verdict/index.ts';
import { hasLed, outputModel, partEntry } from '../../src/core/wiring/index.ts';
import type { Heard, Journey, Sending, Sent } from '../../src/core/signal/index.ts';
import type { Link } from '../../src/core/wiring/index.ts';
import { drawTiming } from '../../src/draw/timing.ts';
import type { TimingDrawing } from '../../src/draw/timing.ts';
import { STATUS_WORDS } from '../parts/status-words.ts';

type Run = Sending['legs'][number];

/** What each kind of THRU does, in words. */
export const THRU_WORDS: Readonly<Record<Journey['thru'], string>> = {
  'hardware thru': 'hardware: drives the next link itself',
  'software thru': 'software: whole bytes, sent again',
};

/** The delays of the optocoupler behind an input, in words. */
export function opticalWords(link: Link, baseResistor: boolean): string {
  const jack = link.branches[0]?.input;
  if (!jack || !hasLed(jack.circuit)) return 'no optocoupler: the level is read as it is';
  const { toOnSeconds, toOffSeconds } = delaysOf(jack, baseResistor);
  const shape = outputShapeOf(jack, baseResistor);
  const words = shape
    ? `; the output falls to ${sayVolts(shape.lowVolts)} in ${sayMicroseconds(shape.fallSeconds)} and rises in ${sayMicroseconds(shape.riseSeconds)}`
    : '';
  return `${partEntry(jack.part).label}: ${sayMicroseconds(toOnSeconds)} to on, ${sayMicroseconds(toOffSeconds)} to off${words} (${STATUS_WORDS[outputModel(jack.part).status]})`;
}

/** The stretch to show: everything, or one byte with a little before and after. */
export function stretchOf({ sending }: Sent, byte: number): readonly [number, number] {
  const { bytes, bitSeconds } = sending.sent;
  const one = bytes[byte];
  const first = bytes[0];
  const last = bytes[bytes.length - 1];
  if (one) return [one.startSeconds - bitSeconds / 2, one.endSeconds + bitSeconds];
  const heard = sending.reception.heard.at(-1)?.readySeconds ?? 0;
  return [(first?.startSeconds ?? 0) - bitSeconds / 2, Math.max(last?.endSeconds ?? 0, heard) + bitSeconds];
}

/** The row of amounts: what is at the input of a leg, or what comes out of its optocoupler. */
type AmountRow = 'input' | 'output';

/** Draw one leg of a sending; `asked` leaves out what was sent and heard. */
export function drawSending(
  shown: Sent,
  leg: number,
  byte: number,
  width: number,
  { row = 'input', asked = false }: { readonly row?: AmountRow; readonly asked?: boolean } = {},
): TimingDrawing {
  const { sending } = shown;
  const [fromSeconds, toSeconds] = stretchOf(shown, byte);
  const run = sending.legs[leg];
  if (!run) throw new Error(`timing: has no leg ${leg}`);
  const last = leg === sending.legs.length - 1;
  return drawTiming({
    width,
    fromSeconds,
    toSeconds,
    asked,
    bits: sending.sent.bytes.flatMap(bitCells),
    ...(row === 'input'
      ? inputRow(shown, run, fromSeconds, toSeconds)
      : outputRow(shown, run, fromSeconds, toSeconds)),
    output: run.output,
    samples: last ? sending.reception.heard.flatMap(({ samples }) => samples) : [],
    reports: last ? sending.reception.heard.map((one, index) => reportOf(sending, one, index)) : [],
  });
}

type Amounts = Pick<Parameters<typeof drawTiming>[0], 'amounts' | 'unit' | 'thresholds' | 'amountName'>;

function inputRow({ time }: Sent, run: Run, fromSeconds: number, toSeconds: number): Amounts {
  const sense = time.model.senses[0];
  if (!sense) throw new Error('timing: has no input');
  const span = run.transient.moments();
  const start = Math.max(fromSeconds, span[0] ?? fromSeconds);
  const end = Math.min(toSeconds, span.at(-1) ?? toSeconds);
  const current = sense.kind === 'current';
  return {
    amounts: end > start ? inputTrace(time, run, 0, start, end) : [],
    unit: current ? 'mA' : 'V',
    thresholds: current
      ? [{ amount: sense.onAmperes, text: `on from ${sayAmperesFinely(sense.onAmperes)}` }]
      : [
          { amount: sense.lowVolts, text: `low below ${sayVolts(sense.lowVolts)}` },
          { amount: sense.highVolts, text: `high above ${sayVolts(sense.highVolts)}` },
        ],
  };
}

function outputRow({ time }: Sent, run: Run, fromSeconds: number, toSeconds: number): Amounts {
  const { readVolts } = outputFacts(time);
  return {
    amounts: outputTrace(time, run, fromSeconds, toSeconds),
    unit: 'V',
    amountName: 'output of the optocoupler, V',
    thresholds: [{ amount: readVolts, text: `a 0 below ${sayVolts(readVolts)}` }],
  };
}

function reportOf(
  sending: Sending,
  heard: Heard,
  index: number,
): { fromSeconds: number; toSeconds: number; text: string; good: boolean } {
  const outcome = sending.outcomes.find(({ heardIndex }) => heardIndex === index)?.outcome;
  return {
    fromSeconds: heard.startSeconds,
    toSeconds: heard.readySeconds,
    text: heard.kind === 'byte' ? hexOf(heard.value) : heard.kind,
    good: outcome === 'same',
  };
}

/** What is read at a moment, in words. */
export function readingAt({ time, sending }: Sent, leg: number, seconds: number): string {
  const run = sending.legs[leg];
  if (!run) return '';
  const cell = sending.sent.bytes
    .flatMap((byte, at) => bitCells(byte).map((bit) => ({ ...bit, at })))
    .find((bit) => seconds >= bit.fromSeconds && seconds < bit.toSeconds);
  const bit = !cell
    ? 'line at rest'
    : `byte ${cell.at + 1}, ${cell.bit === 0 ? 'start bit' : cell.bit === 9 ? 'stop bit' : `data bit ${cell.bit - 1}: ${cell.level ? 1 : 0}`}`;
  return `${sayMicroseconds(seconds)}: ${bit}; ${amountAt(time, run, seconds)}; output ${levelAt(run.output, seconds) ? 'high (1)' : 'low (0)'}`;
}

/** What the input has at a moment, in words, and nothing of what was sent or heard. */
export function askedAt({ time, sending }: Sent, leg: number, seconds: number): string {
  const run = sending.legs[leg];
  return run ? `${sayMicroseconds(seconds)}: ${amountAt(time, run, seconds)}` : '';
}

function amountAt(time: Sent['time'], run: Run, seconds: number): string {
  const span = run.transient.moments();
  const held = Math.min(Math.max(seconds, span[0] ?? seconds), span.at(-1) ?? seconds);
  const say = time.model.senses[0]?.kind === 'level' ? sayVolts : sayAmperesFinely;
  return `${say(inputAmountAt(time, run, 0, held))} at the input`;
}

/** Where a cursor stands at first: in the middle of the first start bit, seconds. */
export const FIRST_CURSOR = 16e-6;

/** The next moment to go to: the next bit boundary, the next edge of the output, or an end of the stretch. */
export function nextMoment(
  shown: Sent,
  leg: number,
  byte: number,
  from: number,
  by: 'bit' | 'edge' | 'end',
  way: 1 | -1,
): number {
  const [start, end] = stretchOf(shown, byte);
  if (by === 'end') return way === 1 ? end : start;
  const moments =
    by === 'bit'
      ? shown.sending.sent.bytes
          .flatMap(bitCells)
          .map(({ fromSeconds, toSeconds }) => (fromSeconds + toSeconds) / 2)
      : (shown.sending.legs[leg]?.output.edges ?? []).map(({ seconds }) => seconds);
  const ahead = moments.filter((one) => (one - from) * way > 1e-9 && one >= start && one <= end);
  return way === 1 ? Math.min(end, ...ahead) : Math.max(start, ...ahead);
}
