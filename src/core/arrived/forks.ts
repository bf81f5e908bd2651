/** Bytes that are read one way or another by where in a sample each begins: a log is followed through every way at once. */
import { BEFORE_EDGES, stepLine } from '../signal/index.ts';
import type { LineStep, Waveform } from '../signal/index.ts';
import type { LineCandidate } from './causes.ts';
import { SURE, oddsOf, patienceOf } from './compare.ts';
import type { Patience } from './compare.ts';
import { shownAs } from './log.ts';
import type { Code, View } from './log.ts';

/** Where a start bit may fall in a sample, as a share of one. */
const PHASES = [0.1, 0.4, 0.7, 0.95] as const;

/** One way on from a falling edge: the code shown, or undefined for none, the edge that is looked at next, and how likely that is. */
interface Way {
  readonly code: Code | undefined;
  readonly next: number;
  readonly log: number;
}

/** How well a log is explained by a line, whatever the phase of each byte; -Infinity where no phase matters. */
type Forks = (view: View, seen: readonly Code[], floor: number) => number;

/** Ways of one view that come to the same are one, as likely as all of them. */
function merged(ways: readonly Omit<Way, 'log'>[]): readonly Way[] {
  const kinds: (Omit<Way, 'log'> & { count: number })[] = [];
  for (const { code, next } of ways) {
    const known = kinds.find((one) => one.code === code && one.next === next);
    if (known) known.count += 1;
    else kinds.push({ code, next, count: 1 });
  }
  return kinds.map(({ code, next, count }) => ({ code, next, log: Math.log(count / ways.length) }));
}

/** How far a way may fall behind bytes at random, as a logarithm (our choice). */
const BEHIND = 16;

/** What a way of reading costs by itself: a byte as foretold, another, none, or one more, as logarithms. */
const MISTAKES = oddsOf([0], SURE);
const [SAME, OTHER] = [MISTAKES.pair(0, 0), MISTAKES.pair(0, 1)];
const [LOST, EXTRA] = [MISTAKES.lost(0), MISTAKES.extra(0, 0)];

/** Of one edge: the chance of the best way to it that has shown so many bytes of the log, as a logarithm. */
interface Reached {
  readonly best: Float64Array;
  least: number;
  most: number;
}

/** What is known of a log while it is followed, by edge, and what is too unlikely to be followed further. */
function follower(shown: number, { floor, perByte, behind }: Patience) {
  const reached = new Map<number, Reached>();
  // Lists of edges that are done are used again: there is one for each edge, and few at a time.
  const spare: Float64Array[] = [];
  const better = (edge: number, at: number, log: number): void => {
    if (at > shown || log < floor || log < perByte * at - behind) return;
    let one = reached.get(edge);
    if (!one) {
      const best = spare.pop() ?? new Float64Array(shown + 1).fill(-Infinity);
      reached.set(edge, (one = { best, least: at, most: at }));
    }
    if (log <= one.best[at]!) return;
    one.best[at] = log;
    if (at < one.least) one.least = at;
    if (at > one.most) one.most = at;
  };
  const done = (edge: number, { best, least, most }: Reached): void => {
    reached.delete(edge);
    spare.push(best.fill(-Infinity, least, most + 1));
  };
  return { reached, better, done };
}

/**
 * Every way in which a receiver may read a line. A way is left where it has become less likely than `floor`, or far less so than
 * bytes at random, so that a line that explains nothing costs little.
 */
export function forksOf(candidate: LineCandidate, line: Waveform): Forks {
  const wave = candidate.change(line);
  const end = wave.edges.length;
  const steppers = PHASES.map((phase) => stepLine(wave, { ...candidate.receiver, phase }));
  const steps = new Map<number, readonly LineStep[]>();
  const waysAt = (edge: number, view: View): readonly Way[] => {
    const known = steps.get(edge) ?? steppers.map((step) => step(edge));
    steps.set(edge, known);
    return merged(known.map(({ read, next }) => ({ code: read && shownAs(view, [read])[0], next })));
  };
  return (view, seen, floor) => {
    const { reached, better, done } = follower(seen.length, patienceOf(floor, BEHIND));
    better(BEFORE_EDGES, 0, 0);
    let forked = false;
    for (let edge = BEFORE_EDGES; edge <= end && reached.size > 0; edge += 1) {
      const one = reached.get(edge);
      if (!one) continue;
      const ways = edge < end ? waysAt(edge, view) : [];
      forked ||= ways.length > 1;
      for (let at = one.least; at <= one.most; at += 1) {
        const log = one.best[at]!;
        if (log === -Infinity) continue;
        better(edge, at + 1, log + EXTRA);
        for (const { code, next, log: chance } of ways) {
          better(next, at, log + chance + (code === undefined ? 0 : LOST));
          if (code !== undefined) better(next, at + 1, log + chance + (code === seen[at] ? SAME : OTHER));
        }
      }
      if (edge < end) done(edge, one);
    }
    return forked ? (reached.get(end)?.best[seen.length] ?? -Infinity) : -Infinity;
  };
}
