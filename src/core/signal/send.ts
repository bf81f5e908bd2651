/** Bytes sent through links and the optocouplers at their ends: what arrives, and why it differs. */
import type { Stretch, Transient, Unsolved } from '../circuit/index.ts';
import { outputStage } from '../wiring/index.ts';
import { compareBytes } from './difference.ts';
import type { ByteOutcome } from './difference.ts';
import type { FrameOptions, SentFrames } from './frames.ts';
import { sendBytes } from './frames.ts';
import { throughHop } from './hop.ts';
import type { Hop } from './hop.ts';
import { driveLine, restAmperes } from './line.ts';
import { receive } from './receiver.ts';
import type { Reception, ReceiverOptions } from './receiver.ts';
import type { TimeLink } from './time-link.ts';
import type { Waveform } from './waveform.ts';
import { runThrough } from './run-through.ts';

/** One link of a chain, the input looked at, and what stands behind it. */
export interface Leg {
  readonly time: TimeLink;
  /** Number of the input that the signal goes on from; 0 when left out. */
  readonly input?: number;
  /** What passes the signal on; the input's own optocoupler when left out. */
  readonly hop?: Hop;
  /** Whether a 6N138 has its base resistor; true when left out. */
  readonly baseResistor?: boolean;
}

/** What happened on one leg. */
export interface LegRun {
  /** What the driver was told to send. */
  readonly driven: Waveform;
  /** What the transient is read from. */
  readonly stretches: readonly Stretch[];
  readonly transient: Transient;
  /** The LED, or the level, at the input looked at: level false while it is on. */
  readonly led: Waveform;
  /** What came out behind it. */
  readonly output: Waveform;
}

/**
 * Everything about one message on its way. Where `unsolved` is given, a link has no solution, or none from a moment on: reception and
 * outcomes then hold what was read before that, and nothing after it.
 */
export interface Sending {
  readonly sent: SentFrames;
  readonly legs: readonly LegRun[];
  readonly arrived: Waveform;
  readonly reception: Reception;
  readonly outcomes: readonly ByteOutcome[];
  readonly unsolved: Unsolved | undefined;
}

/** How to send and receive; everything may be left out. */
interface SendOptions {
  readonly sender?: FrameOptions;
  readonly receiver?: ReceiverOptions;
  readonly lateAfterSeconds?: number;
}

/** The hop that an input makes by itself: its optocoupler as the link lights it; nothing for a logic input. */
export function ownHop(time: TimeLink, input = 0, baseResistor?: boolean): Hop {
  const jack = time.link.branches[input]?.input;
  if (!jack) throw new Error(`link: has no input ${input}`);
  const stage = outputStage(jack, baseResistor);
  if ('toOnSeconds' in stage) return { kind: 'optocoupler', ...stage };
  return { kind: 'optocoupler', stage, lit: restAmperes(time, input) };
}

/**
 * Send bytes through a chain of legs: each leg's driver is told what came out of the one before.
 * @throws when there is no leg, or for bytes, clocks or delays that cannot be.
 */
export function sendThrough(
  legs: readonly Leg[],
  bytes: readonly number[],
  options: SendOptions = {},
): Sending {
  return runThrough(sendSteps(legs, bytes, options));
}

/** As `sendThrough`, leg by leg: yields how many are done, so that whoever asks may stop after any of them. */
export function* sendSteps(
  legs: readonly Leg[],
  bytes: readonly number[],
  options: SendOptions = {},
): Generator<number, Sending> {
  if (legs.length === 0) throw new Error('chain: needs at least one link, got none');
  const sent = sendBytes(bytes, options.sender);
  const runs: LegRun[] = [];
  let driven = sent.wave;
  let unsolved: Unsolved | undefined;
  for (const { time, input = 0, hop, baseResistor } of legs) {
    const line = driveLine(time, driven);
    const led = line.inputs[input];
    if (!led) throw new Error(`link: has no input ${input}`);
    const output = throughHop(led, hop ?? ownHop(time, input, baseResistor));
    runs.push({ driven, stretches: line.stretches, transient: line.transient, led, output });
    driven = output;
    unsolved ??= line.unsolved;
    yield runs.length;
  }
  const reception = upTo(unsolved, receive(driven, options.receiver));
  const outcomes = compareBytes({
    sent,
    arrived: driven,
    heard: reception.heard,
    ...(options.lateAfterSeconds === undefined ? {} : { lateAfterSeconds: options.lateAfterSeconds }),
  });
  // What was not heard by then may yet arrive.
  const known = unsolved ? outcomes.filter(({ heardIndex }) => heardIndex !== null) : outcomes;
  return { sent, legs: runs, arrived: driven, reception, outcomes: known, unsolved };
}

/** What was read before a circuit could no longer be followed. */
function upTo(unsolved: Unsolved | undefined, reception: Reception): Reception {
  if (!unsolved) return reception;
  const { seconds = -Infinity } = unsolved;
  const heard = reception.heard.filter(({ readySeconds }) => readySeconds < seconds);
  return { ...reception, heard, bytes: heard.flatMap((one) => (one.kind === 'byte' ? [one.value] : [])) };
}
