import { compareBytes } from './difference.ts';
import type { Clocks } from './bit-budget.ts';
import { sendBytes } from './frames.ts';
import type { FrameOptions, SentFrames } from './frames.ts';
import { halve } from './halving.ts';
import { straightLink, throughChain } from './hop.ts';
import type { Hop, LinkStage } from './hop.ts';
import { receive, tickSecondsOf } from './receiver.ts';
import type { Reception, ReceiverOptions } from './receiver.ts';
import type { Waveform } from './waveform.ts';
import { bitName } from './why.ts';
import type { Cause } from './why.ts';

/** What a trial asks for: bytes that are right, or also votes that all agree (what published error budgets ask for). */
type Need = 'right bytes' | 'no doubt';

/** One set-up to try: a sender, hops in order (the last one at the receiver), a receiver, and bytes to send. */
interface Trial {
  readonly sender?: FrameOptions;
  readonly hops?: readonly Hop[];
  readonly receiver?: ReceiverOptions;
  readonly bytes?: readonly number[];
  readonly need?: Need;
  readonly link?: LinkStage;
}

/** What gave way first: the cause, the sentence, and the start phase of the receiver's clock at which it did. */
interface GaveWay {
  readonly cause: Cause | 'doubtful vote';
  readonly why: string;
  readonly phase: number;
}

/**
 * Bytes sent back to back in a trial (our own choice). 00 is the hardest: nine bits of 0, then a stop bit between two
 * falling edges, with the next start right behind it; the others change at every bit, at pairs of bits, or never.
 */
const TRIAL_BYTES: readonly number[] = [0x00, 0x7f, 0x00, 0x55, 0x2a, 0xff, 0x00];

/**
 * Where the first start edge may fall between two samples, as a fraction of one. The worst cases are the two ends, just
 * seen and just missed; a millionth keeps both on the proper side of rounding.
 */
const PHASES: readonly number[] = [1e-6, 0.25, 0.5, 0.75, 1 - 1e-6];

function doubt(reception: Reception): string | null {
  const index = reception.heard.findIndex(({ doubtfulBits }) => doubtfulBits.length > 0);
  const bit = reception.heard[index]?.doubtfulBits[0];
  return bit === undefined ? null : `the votes on the ${bitName(bit)} of byte ${index + 1} disagree`;
}

/**
 * What gives way in a trial, or null when every byte arrives at every start phase of the receiver's clock.
 * Throws RangeError for impossible clocks or delays.
 */
export function tryLink(trial: Trial): GaveWay | null {
  const { sender = {}, hops = [], receiver = {}, bytes = TRIAL_BYTES, link = straightLink } = trial;
  const sent = sendBytes(bytes, sender);
  const arrived = throughChain(sent.wave, hops, link).at(-1)?.output ?? sent.wave;
  return gaveWayAt({ sent, arrived, receiver }, trial.need);
}

/** Trial bytes on their way: as they were sent, as they have arrived so far, and who is to read them. */
interface TrialLine {
  readonly sent: SentFrames;
  readonly arrived: Waveform;
  readonly receiver: ReceiverOptions;
}

/** The trial bytes as they leave a sender. */
export function trialLine({ sender = {}, receiver = {} }: Clocks): TrialLine {
  const sent = sendBytes(TRIAL_BYTES, sender);
  return { sent, arrived: sent.wave, receiver };
}

/** What gives way when a line is read at every start phase of the receiver's clock, or null. */
export function gaveWayAt({ sent, arrived, receiver }: TrialLine, need?: Need): GaveWay | null {
  const firstFall = arrived.edges.find(({ level }) => !level)?.seconds ?? 0;
  const tick = tickSecondsOf(receiver);
  for (const phase of PHASES) {
    // The first sample at or after the edge comes `phase` of a sample after it; listening begins a few samples before.
    const listensFromSeconds = firstFall + (phase - 4) * tick;
    const reception = receive(arrived, { ...receiver, phase: 0, listensFromSeconds });
    const outcomes = compareBytes({ sent, arrived, heard: reception.heard, lateAfterSeconds: Infinity });
    const trouble = outcomes.find(({ outcome }) => outcome !== 'same');
    if (trouble) return { cause: trouble.cause, why: trouble.why, phase };
    const doubtful = need === 'no doubt' ? doubt(reception) : null;
    if (doubtful) return { cause: 'doubtful vote', why: doubtful, phase };
  }
  return null;
}

/** A widest value found by search: the last that works, and what gives way just beyond it (null if nothing did). */
export interface Limit {
  readonly value: number;
  readonly gaveWay: GaveWay | null;
}

/** Widest clock error looked at; far beyond any serial receiver. */
const MOST_CLOCK_ERROR = 0.3;
/** Steps of halving: 0.3 / 2^24 is below 2e-8, far finer than any published figure. */
const HALVINGS = 24;

/** Which way the sender's clock is off against the receiver's. */
type ClockSide = 'slow' | 'fast';

/**
 * Widest mismatch of the two clocks at which a trial still works, as a fraction of the receiver's clock, found by halving
 * on the simulation; `value` is 0 when even equal clocks fail. The whole mismatch is put on the sender and adds to
 * whatever error the trial gives the receiver.
 */
export function widestClockError(side: ClockSide, trial: Trial = {}): Limit {
  const base = 1 + (trial.receiver?.clockError ?? 0);
  const attempt = (mismatch: number): GaveWay | null => {
    const clockError = base * (side === 'slow' ? 1 - mismatch : 1 + mismatch) - 1;
    return tryLink({ ...trial, sender: { ...trial.sender, clockError } });
  };
  const atOnce = attempt(0);
  if (atOnce) return { value: 0, gaveWay: atOnce };
  const gaveWay = attempt(MOST_CLOCK_ERROR);
  if (!gaveWay) return { value: MOST_CLOCK_ERROR, gaveWay: null };
  const { good, why } = halve([0, MOST_CLOCK_ERROR], gaveWay, attempt, HALVINGS);
  return { value: good, gaveWay: why };
}

/** Longest chain looked at; a chain that still works there is reported with nothing that gave way. */
export const MOST_HOPS = 1024;

/**
 * Most hops of one kind that still deliver every byte, the receiver's own optocoupler counted; found by doubling, then
 * halving, on the simulation. `value` is 0 when not even one hop works. Hops given in the trial come before the repeated
 * one. Throws RangeError for impossible clocks or delays.
 */
export function mostHops(hop: Hop, trial: Trial = {}): Limit {
  const attempt = (count: number): GaveWay | null =>
    tryLink({ ...trial, hops: [...(trial.hops ?? []), ...Array.from({ length: count }, () => hop)] });
  let good = 0;
  let bad = 1;
  let gaveWay = attempt(bad);
  while (!gaveWay) {
    good = bad;
    if (good >= MOST_HOPS) return { value: good, gaveWay: null };
    bad = Math.min(MOST_HOPS, bad * 2);
    gaveWay = attempt(bad);
  }
  const last = halve([good, bad], gaveWay, attempt, MOST_HOPS, (a, b) => (a + b) >> 1);
  return { value: last.good, gaveWay: last.why };
}
