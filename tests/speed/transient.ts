/**
 * A byte, a message, builds and chains in time, ours beside the SPICE engine's, same circuit, one run.
 * Errors of both are printed against the engine itself run with a step of 10 ns and reltol=1e-6: the root of the mean square
 * over the whole byte, edges and rests alike, each trace read as it would be drawn. Times are the least of many rounds: whatever
 * else the machine does only adds.
 */
import { Simulation } from 'eecircuit-engine';
import { sendBytes } from '../../src/core/signal/frames.ts';
import { timeDeck } from '../../src/core/signal/link-deck.ts';
import { driveLine } from '../../src/core/signal/line.ts';
import { sendThrough } from '../../src/core/signal/send.ts';
import { prepareTimeLink } from '../../src/core/signal/time-link.ts';
import type { TimeLink } from '../../src/core/signal/time-link.ts';
import type { Waveform } from '../../src/core/signal/waveform.ts';
import { drawAllBuilds } from '../core/verdict/build.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/link.ts';
import type { Link } from '../../src/core/wiring/link.ts';
import type { Part } from '../../src/core/wiring/parts.ts';
import type { Figure } from './figures.ts';

const link = (part: Part): Link => ({
  output: makeJack('out', 'din5', 'din'),
  branches: [
    {
      input: makeJack('in', 'din5', 'din', { part }),
      leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { lengthMetres: 5 })],
    },
  ],
});
const LINK = link('6N138');
const START_SECONDS = 20e-6;
const byte = sendBytes([0x55], { startSeconds: START_SECONDS }).wave;
const MESSAGE = [
  0xb0, 0x00, 0x01, 0xb0, 0x20, 0x02, 0xc0, 0x05, 0x90, 0x3c, 0x64, 0x80, 0x3c, 0x00, 0xf8, 0xfe,
];
const message = sendBytes(MESSAGE, { startSeconds: START_SECONDS }).wave;
/** What a program that has a byte to look at would take: the engine's steps are then ruled by its own error control. */
const ENGINE_STEP = '10u';
const ON_AMPERES = 1.6e-3;
const LINE = 'in0 resistor';

/** Loose enough to come near the engine's error from below: the figures printed beside show it. */
const EQUAL_ERROR = { volts: 25e-3, share: 6e-3 };

interface Trace {
  readonly seconds: readonly number[];
  readonly amperes: readonly number[];
}

function deckFor(
  wave: Waveform,
  step: string,
  options: string,
): { netlist: string; from: string; to: string } {
  const toSeconds = (wave.edges.at(-1)?.seconds ?? 0) + 40e-6;
  const deck = timeDeck(LINK, 'separate', wave, toSeconds);
  const lines = deck.text
    .split('\n')
    .map((line) => (line.startsWith('.tran') ? `.tran ${step} ${toSeconds} 0 ${step}` : line));
  lines.splice(1, 0, ...(options === '' ? [] : [options]));
  return {
    netlist: lines.join('\n'),
    from: deck.nodes.get('in0 4') ?? '',
    to: deck.nodes.get('in0 entry') ?? '',
  };
}

async function engineTrace(engine: Simulation, deck: ReturnType<typeof deckFor>): Promise<Trace> {
  engine.setNetList(deck.netlist);
  const result = await engine.runSim();
  if (result.dataType !== 'real') throw new Error('bench: the engine gave complex numbers');
  const column = (name: string): readonly number[] => {
    const found = result.data.find((one) => one.name.toLowerCase() === name);
    if (!found) throw new Error(`bench: the engine gave no ${name}`);
    return found.values;
  };
  const from = column(`v(${deck.from})`);
  const to = column(`v(${deck.to})`);
  return { seconds: column('time'), amperes: from.map((one, at) => (one - (to[at] ?? NaN)) / 220) };
}

async function engineMicroseconds(
  engine: Simulation,
  deck: ReturnType<typeof deckFor>,
  runs: number,
): Promise<number> {
  let least = Infinity;
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    engine.setNetList(deck.netlist);
    await engine.runSim();
    least = Math.min(least, (performance.now() - start) * 1e3);
  }
  return least;
}

/** Read a trace straight between its points, as a figure of it would. */
function reader({ seconds, amperes }: Trace): (when: number) => number {
  let at = 1;
  return (when) => {
    if (when < (seconds[at - 1] ?? 0)) at = 1;
    while (at < seconds.length - 1 && (seconds[at] ?? Infinity) < when) at++;
    const from = seconds[at - 1] ?? NaN;
    const share = (when - from) / ((seconds[at] ?? NaN) - from);
    return (amperes[at - 1] ?? NaN) * (1 - share) + (amperes[at] ?? NaN) * share;
  };
}

/** Root of the mean square of the error over the byte, per cent of the swing, and the greatest error of an edge, nanoseconds. */
function errors(
  read: (when: number) => number,
  tight: (when: number) => number,
): { whole: number; edge: number } {
  const swing = tight(START_SECONDS + 31e-6) - tight(START_SECONDS - 1e-6);
  let sum = 0;
  let count = 0;
  for (let when = START_SECONDS - 1e-6; when < START_SECONDS + 320e-6; when += 4e-9) {
    sum += ((read(when) - tight(when)) / swing) ** 2;
    count++;
  }
  const late = byte.edges.map(({ seconds }) => Math.abs(passes(read, seconds) - passes(tight, seconds)));
  return { whole: Math.sqrt(sum / count) * 100, edge: Math.max(...late) * 1e9 };
}

function passes(read: (when: number) => number, from: number): number {
  const rising = read(from) < ON_AMPERES;
  let when = from;
  while (read(when) < ON_AMPERES === rising && when < from + 5e-6) when += 0.2e-9;
  return when;
}

/** Least time of one call, microseconds, after a round to warm up. */
function leastMicroseconds(work: () => void, calls: number, rounds: number): number {
  let least = Infinity;
  for (let round = 0; round <= rounds; round++) {
    const start = performance.now();
    for (let call = 0; call < calls; call++) work();
    if (round > 0) least = Math.min(least, ((performance.now() - start) * 1e3) / calls);
  }
  return least;
}

function forget(time: TimeLink): void {
  time.work.known.length = 0;
}

/** How much more each of 64 costs than each of 8: 1 is linear. */
function growth(costOf: (count: number) => number): { each: number; ratio: number } {
  const each = costOf(64) / 64;
  return { each, ratio: each / (costOf(8) / 8) };
}

export async function figures(): Promise<readonly Figure[]> {
  const engine = new Simulation();
  await engine.start();
  const tight = reader(await engineTrace(engine, deckFor(byte, '0.01u', '.options reltol=1e-6')));
  const theirDeck = deckFor(byte, ENGINE_STEP, '');
  const theirs = errors(reader(await engineTrace(engine, theirDeck)), tight);
  const time = prepareTimeLink(LINK, { tolerance: EQUAL_ERROR, reuse: false });
  const run = driveLine(time, byte);
  const ours = errors((when) => run.transient.amperes(LINE, when), tight);
  const usual = prepareTimeLink(LINK, { reuse: false });
  const usualRun = driveLine(usual, byte);
  const usualErrors = errors((when) => usualRun.transient.amperes(LINE, when), tight);

  const theirByte = await engineMicroseconds(engine, theirDeck, 60);
  const ourByte = leastMicroseconds(() => driveLine(time, byte), 5, 200);
  const usualByte = leastMicroseconds(() => driveLine(usual, byte), 5, 200);
  const coldByte = leastMicroseconds(
    () => driveLine(prepareTimeLink(LINK, { tolerance: EQUAL_ERROR, reuse: false }), byte),
    2,
    100,
  );
  const theirMessage = await engineMicroseconds(engine, deckFor(message, ENGINE_STEP, ''), 20);
  const reusing = prepareTimeLink(LINK, { tolerance: EQUAL_ERROR });
  const ourMessage = leastMicroseconds(
    () => {
      forget(reusing);
      driveLine(reusing, message);
    },
    5,
    100,
  );
  const builds = leastMicroseconds(() => drawAllBuilds(LINK), 1, 9) / 1e3;

  const fast = prepareTimeLink(link('H11L1'));
  const bytes = growth((count) => {
    const many = Array.from({ length: count }, (_, at) => MESSAGE[at % MESSAGE.length] ?? 0);
    return leastMicroseconds(() => sendThrough([{ time: fast }], many), 2, 40);
  });
  const hops = growth((count) =>
    leastMicroseconds(
      () => {
        forget(fast);
        sendThrough(
          Array.from({ length: count }, () => ({ time: fast })),
          [0xc0, 0x05],
        );
      },
      1,
      40,
    ),
  );
  return [
    { name: 'a byte: error of ours', value: ours.whole, unit: '%', atMost: theirs.whole },
    { name: 'a byte: error of the engine', value: theirs.whole, unit: '%' },
    { name: 'a byte: error of ours at edges', value: ours.edge, unit: 'ns' },
    { name: 'a byte: error of the engine at edges', value: theirs.edge, unit: 'ns' },
    { name: 'a byte, every edge fresh: ours', value: ourByte, unit: 'us', atMost: 320 },
    { name: 'a byte: engine', value: theirByte, unit: 'us' },
    { name: 'a byte, every edge fresh: times faster', value: theirByte / ourByte, unit: 'x', atLeast: 10 },
    { name: 'the same, circuit compiled anew as well', value: theirByte / coldByte, unit: 'x' },
    { name: 'a byte at the accuracy the workbook uses', value: usualByte, unit: 'us' },
    { name: 'error at that accuracy', value: usualErrors.whole, unit: '%' },
    { name: 'error at edges at that accuracy', value: usualErrors.edge, unit: 'ns' },
    { name: '16 bytes, edges reused within the message: ours', value: ourMessage, unit: 'us' },
    { name: '16 bytes: engine', value: theirMessage, unit: 'us' },
    { name: '16 bytes: times faster', value: theirMessage / ourMessage, unit: 'x', atLeast: 50 },
    { name: '10 000 builds, both states', value: builds, unit: 'ms', atMost: 150 },
    { name: 'bytes 8 to 64: each costs, of 64', value: bytes.each, unit: 'us' },
    { name: 'bytes 8 to 64: cost of each grows by', value: bytes.ratio, unit: 'x', atMost: 1.5 },
    { name: 'hops 8 to 64, two bytes: each costs, of 64', value: hops.each, unit: 'us' },
    { name: 'hops 8 to 64: cost of each grows by', value: hops.ratio, unit: 'x', atMost: 1.5 },
  ];
}
