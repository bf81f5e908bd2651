/** From a log to its causes: every candidate foretells the log, and those that foretell it well share the belief. */
import { BAUD, BITS_PER_FRAME, readLine } from '../signal/index.ts';
import type { ReceivedByte, Waveform } from '../signal/index.ts';
import { CAUSES } from './causes.ts';
import type { Candidate, Cause, LineCandidate } from './causes.ts';
import { chanceCandidates } from './chance-causes.ts';
import { likeness, patientTo } from './compare.ts';
import { forksOf } from './forks.ts';
import { lineCandidates } from './line-causes.ts';
import { shownAs } from './log.ts';
import type { Log, View } from './log.ts';
import { readerCandidates } from './reader-causes.ts';
import { Scorer, sentAsRead, sumOfLogs } from './scorer.ts';
import { FEWER_SPACINGS, SPACINGS, USUAL_SPACINGS, headOf, layOut } from './spacing.ts';
import type { Head, Spacing } from './spacing.ts';

/** Every candidate, made when the first log is looked at. */
let candidates: readonly Candidate[] | undefined;
/** Every candidate of every cause. */
export function allCandidates(): readonly Candidate[] {
  return (candidates ??= [...lineCandidates(), ...readerCandidates(), ...chanceCandidates()]);
}

/** One way to explain a log: a candidate, how bytes followed each other, how the monitor shows them, and how well it fits. */
export interface Fit {
  readonly candidate: Candidate;
  readonly spacing: Spacing;
  readonly view: View;
  /** Natural logarithm of the chance of what was seen. */
  readonly likeness: number;
}

/** A cause with its share of the belief, the fit that suits it best, and the amounts that suit it about as well. */
export interface RankedCause {
  readonly cause: Cause;
  readonly probability: number;
  readonly best: Fit;
  readonly amounts: readonly [least: number, most: number];
}

/** What a log says: whether all arrived as it was sent, the causes by belief, and the belief that none of them did it. */
export interface Ranking {
  readonly ranked: readonly RankedCause[];
  readonly asSent: boolean;
  readonly other: number;
}

/** Natural logarithm: an amount that fits by less than this worse than the best is as good (about one in seven). */
const AS_GOOD = 2;

/** Bytes of a log that are looked at: more of them tell nothing new, and take long. */
export const MOST_BYTES = 480;

/** What a line or a reader makes of bytes sent; for a cause of chance see its `run`. */
export function foretell(
  candidate: Exclude<Candidate, { kind: 'chance' }>,
  bytes: readonly number[],
  line: Waveform,
): readonly ReceivedByte[] {
  if (candidate.kind === 'line') return readLine(candidate.change(line), candidate.receiver);
  return sentAsRead(candidate.understood(bytes));
}

/** Causes whose bytes are read one way or another by where in a sample each begins. */
const FORKING: readonly Cause[] = ['clock off', 'wrong speed'];

/** How many of the spacings are tried: pauses decide what is read of a line upside down or by a slow clock. */
function spacingsOf({ cause, receiver }: LineCandidate): number {
  // A frame of the receiver that is longer than a byte holds the pause after it.
  const slow = cause === 'wrong speed' && (receiver?.baud ?? BAUD) < BAUD;
  if (cause === 'upside down' || slow) return SPACINGS.length;
  return cause === 'swapped and lit' ? FEWER_SPACINGS : USUAL_SPACINGS.length;
}

/** A line of the bytes sent, and its beginning where it is long. */
interface Laid {
  readonly line: Waveform;
  readonly head: Head | undefined;
}

/** Whether the beginning of a line leaves a candidate possible: what cannot begin as the log does is not simulated to its end. */
function mayFit({ change, receiver }: LineCandidate, head: Head | undefined, scorer: Scorer): boolean {
  if (!head) return true;
  const frame = BITS_PER_FRAME / (receiver?.baud ?? BAUD) / (1 + (receiver?.clockError ?? 0));
  const read = readLine(change(head.wave), receiver);
  return scorer.mayBegin(read.filter(({ seconds }) => seconds + frame <= head.untilSeconds));
}

/** How well each view of a line explains the log, by the one reading of it and by every way in which it may be read. */
function lineFits(candidate: LineCandidate, { line, head }: Laid, scorer: Scorer): readonly number[] {
  const read = mayFit(candidate, head, scorer)
    ? readLine(candidate.change(line), candidate.receiver)
    : undefined;
  const forks = FORKING.includes(candidate.cause) ? forksOf(candidate, line) : undefined;
  return scorer.views.map((view) => {
    const whole = read ? scorer.score(view, shownAs(view, read)) : -Infinity;
    const forked = view === 'whole messages' ? undefined : forks?.(view, scorer.seen, scorer.hopeless);
    return Math.max(whole, forked ?? -Infinity);
  });
}

/** Everything that is tried for one candidate: each spacing and each view. */
function fitsOf(
  candidate: Candidate,
  bytes: readonly number[],
  laid: readonly Laid[],
  scorer: Scorer,
): readonly Fit[] {
  const fit = (spacing: number, view: View, found: number): Fit => ({
    candidate,
    spacing: SPACINGS[spacing]!,
    view,
    likeness: found,
  });
  switch (candidate.kind) {
    case 'line':
      return laid.slice(0, spacingsOf(candidate)).flatMap((one, spacing) => {
        const found = lineFits(candidate, one, scorer);
        return scorer.views.map((view, at) => fit(spacing, view, found[at]!));
      });
    case 'reader': {
      const read = sentAsRead(candidate.understood(bytes));
      return scorer.views.map((view) => fit(0, view, scorer.score(view, shownAs(view, read))));
    }
    case 'chance':
      return scorer.views.flatMap((view) => {
        if (view === 'good bytes only') return [];
        const sent = shownAs(view, sentAsRead(bytes));
        const odds = candidate.odds(sent, scorer.marked);
        return fit(0, view, likeness(sent.length, scorer.seen, odds, patientTo(scorer.hopeless)));
      });
  }
}

/** Causes that suit many a log a little: believed half as soon as the others, so that a short log is not theirs by default (our choice). */
const BROAD: readonly Cause[] = ['two senders', 'ground missing'];

/** A cause's share of the belief before all are made to sum to 1, and what suits it best. */
function weigh(cause: Cause, fits: readonly Fit[]): { readonly log: number; readonly ranked: RankedCause } {
  const best = fits.reduce((one, other) => (other.likeness > one.likeness ? other : one));
  const alike = fits
    .filter(
      ({ likeness: found, candidate, spacing, view }) =>
        found > best.likeness - AS_GOOD &&
        Math.sign(candidate.amount) === Math.sign(best.candidate.amount) &&
        spacing === best.spacing &&
        view === best.view,
    )
    .map(({ candidate }) => candidate.amount);
  const broad = BROAD.includes(cause) ? Math.LN2 : 0;
  const log = sumOfLogs(fits.map((fit) => fit.likeness)) - Math.log(fits.length) - broad;
  const amounts = [Math.min(...alike), Math.max(...alike)] as const;
  return { log, ranked: { cause, probability: 0, best, amounts } };
}

/**
 * The causes of a log whose bytes sent are known, by belief; every cause is as likely as any other before the log is read. Yields the
 * share that is done, from 0 to 1. Throws RangeError for a number that is no byte.
 */
export function* rank(log: Log & { readonly sent: readonly number[] }): Generator<number, Ranking> {
  const bytes = log.sent;
  const scorer = new Scorer(log, bytes);
  const laid = SPACINGS.map((spacing): Laid => {
    const frames = layOut(bytes, spacing);
    return { line: frames.wave, head: headOf(frames) };
  });
  const fits = new Map<Cause, Fit[]>(CAUSES.map((cause) => [cause, []]));
  const all = allCandidates();
  for (const [at, candidate] of all.entries()) {
    fits.get(candidate.cause)?.push(...fitsOf(candidate, bytes, laid, scorer));
    if (at % 20 === 0) yield at / all.length;
  }
  const weighed = CAUSES.map((cause) => weigh(cause, fits.get(cause) ?? []));
  const total = sumOfLogs([...weighed.map((one) => one.log), scorer.other]);
  const ranked = weighed
    .map(({ log: found, ranked: one }) => ({ ...one, probability: Math.exp(found - total) }))
    .sort((one, two) => two.probability - one.probability);
  return { ranked, asSent: scorer.asSent(), other: Math.exp(scorer.other - total) };
}
