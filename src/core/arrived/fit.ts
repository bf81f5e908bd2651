/** From a log to its causes: every candidate foretells the log, and those that foretell it well share the belief. */
import { BAUD, readLine } from '../signal/index.ts';
import type { ReceivedByte, Waveform } from '../signal/index.ts';
import { CAUSES } from './causes.ts';
import type { Candidate, Cause } from './causes.ts';
import { chanceCandidates } from './chance-causes.ts';
import { SURE, USUAL_BYTES, likeness, oddsOf } from './compare.ts';
import type { Shares } from './compare.ts';
import { forksOf } from './forks.ts';
import { lineCandidates } from './line-causes.ts';
import { codeOf, shownAs, viewsOf } from './log.ts';
import type { Code, Log, View } from './log.ts';
import { readerCandidates } from './reader-causes.ts';
import { FEWER_SPACINGS, SPACINGS, USUAL_SPACINGS, layOut } from './spacing.ts';
import type { Spacing } from './spacing.ts';

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

/** What a log may be that no cause of the list made: bytes that keep much, or little, of what was sent, and no rule (our choice). */
const ANYTHING: readonly Shares[] = [
  { changed: 0.25, lost: 0.1, extra: 0.1 },
  { changed: 0.5, lost: 0.15, extra: 0.15 },
];
/** Or nothing of it: each byte seen is a usual one, or one of those sent in any order; natural logarithm: how many is anybody's guess. */
const ANY_LENGTH = 5;
/** How likely the list lacks a cause, against any one of the list (our choice). */
const OTHER_WEIGHT = 0.015;
/** Natural logarithm: what is so much less likely than that no cause did it is not followed to its end. */
const HOPELESS = 12;

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
  return candidate.understood(bytes).map((value) => ({ value, kind: 'byte', seconds: 0 }));
}

/** Sum of chances that are given as logarithms. */
function sumOfLogs(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most === -Infinity
    ? most
    : most + Math.log(logs.reduce((sum, one) => sum + Math.exp(one - most), 0));
}

/** Scores foretold lists against one log, each list once. */
class Scorer {
  readonly seen: readonly Code[];
  readonly views: readonly View[];
  readonly marked: boolean;
  /** The belief that no cause of the list did it, as a natural logarithm. */
  readonly other: number;
  /** What every view shows of bytes that arrive as they were sent. */
  readonly #plain: readonly string[];
  readonly #known = new Map<string, number>();

  constructor({ seen }: Log, sent: readonly number[]) {
    this.seen = seen.map(codeOf);
    this.views = viewsOf(seen);
    this.marked = this.views.includes('marked');
    this.#plain = this.views.map((view) => nameOf(shownAs(view, sentAsRead(sent))));
    const kept = ANYTHING.map((shares) => likeness(sent.length, this.seen, oddsOf(sent, shares)));
    const own = new Set(sent);
    const [usual, mixed] = [Math.log(USUAL_BYTES), Math.log(2 * own.size)];
    const cost = this.seen.reduce((sum, code) => sum + (own.has(code) ? Math.min(usual, mixed) : usual), 0);
    const none = -cost - ANY_LENGTH;
    this.other = sumOfLogs([...kept, none]) + Math.log(OTHER_WEIGHT / (kept.length + 1));
  }

  /** How well a list foretells what was seen. One that changes nothing explains nothing, for something did. */
  score(view: View, foretold: readonly Code[]): number {
    const name = nameOf(foretold);
    if (name === this.#plain[this.views.indexOf(view)]) return -Infinity;
    const known = this.#known.get(name);
    if (known !== undefined) return known;
    const odds = oddsOf(foretold, SURE);
    const found = likeness(foretold.length, this.seen, odds, this.other - HOPELESS);
    this.#known.set(name, found);
    return found;
  }

  /** Whether a view shows what was seen of bytes that arrive as they were sent. */
  asSent(): boolean {
    return this.#plain.includes(nameOf(this.seen));
  }
}

const nameOf = (codes: readonly Code[]): string => String.fromCharCode(...codes);

/** Causes whose bytes are read one way or another by where in a sample each begins. */
const FORKING: readonly Cause[] = ['upside down', 'swapped and lit', 'clock off', 'wrong speed'];

/** How many of the spacings are tried: pauses decide what is read of a line upside down or by a slow clock, and nothing of what a reader does. */
function spacingsOf(candidate: Candidate): number {
  if (candidate.kind !== 'line') return 1;
  const { cause, receiver } = candidate;
  // A frame of the receiver that is longer than a byte holds the pause after it.
  const slow = cause === 'wrong speed' && (receiver?.baud ?? BAUD) < BAUD;
  if (cause === 'upside down' || slow) return SPACINGS.length;
  return cause === 'swapped and lit' ? FEWER_SPACINGS : USUAL_SPACINGS.length;
}

/** Everything that is tried for one candidate: each spacing and each view. */
function fitsOf(candidate: Candidate, bytes: readonly number[], lines: readonly Waveform[], scorer: Scorer) {
  const fits: Fit[] = [];
  const add = (spacing: number, view: View, found: number): void =>
    void fits.push({ candidate, spacing: SPACINGS[spacing]!, view, likeness: found });
  if (candidate.kind === 'chance') {
    for (const view of scorer.views) {
      if (view === 'good bytes only') continue;
      const sent = shownAs(view, sentAsRead(bytes));
      const odds = candidate.odds(sent, scorer.marked);
      add(0, view, likeness(sent.length, scorer.seen, odds, scorer.other - HOPELESS));
    }
    return fits;
  }
  lines.forEach((line, spacing) => {
    if (spacing >= spacingsOf(candidate)) return;
    const read = foretell(candidate, bytes, line);
    const forks =
      candidate.kind === 'line' && FORKING.includes(candidate.cause) ? forksOf(candidate, line) : undefined;
    for (const view of scorer.views) {
      const whole = scorer.score(view, shownAs(view, read));
      const forked =
        view === 'whole messages' ? undefined : forks?.(view, scorer.seen, scorer.other - HOPELESS);
      add(spacing, view, Math.max(whole, forked ?? -Infinity));
    }
  });
  return fits;
}

const sentAsRead = (bytes: readonly number[]): readonly ReceivedByte[] =>
  bytes.map((value) => ({ value, kind: 'byte', seconds: 0 }));

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
  const lines = SPACINGS.map((spacing) => layOut(bytes, spacing).wave);
  const fits = new Map<Cause, Fit[]>(CAUSES.map((cause) => [cause, []]));
  const all = allCandidates();
  for (const [at, candidate] of all.entries()) {
    fits.get(candidate.cause)?.push(...fitsOf(candidate, bytes, lines, scorer));
    if (at % 20 === 0) yield at / all.length;
  }
  const weighed = CAUSES.map((cause) => weigh(cause, fits.get(cause) ?? []));
  const total = sumOfLogs([...weighed.map((one) => one.log), scorer.other]);
  const ranked = weighed
    .map(({ log: found, ranked: one }) => ({ ...one, probability: Math.exp(found - total) }))
    .sort((one, two) => two.probability - one.probability);
  return { ranked, asSent: scorer.asSent(), other: Math.exp(scorer.other - total) };
}
