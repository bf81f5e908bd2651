/** The whole answer to a log: what arrived, why, what would tell the first two apart, and where to look. */
import { CAUSES } from './causes.ts';
import type { Cause } from './causes.ts';
import type { Complaint } from './complaints.ts';
import { MOST_BYTES, rank } from './fit.ts';
import type { RankedCause, Ranking } from './fit.ts';
import type { Log, SeenByte } from './log.ts';
import { complaintLikeness, traitLikeness } from './population.ts';
import { givenBy, traceOf } from './simulate.ts';
import type { Trace } from './simulate.ts';
import { tellApart } from './tell-apart.ts';
import { CAUSE_WORDS, sayStrength } from './words.ts';
import type { CauseWords } from './words.ts';

/** What is asked: a log, which may be empty, and what the reader says. */
export interface Question extends Log {
  readonly complaints: readonly Complaint[];
}

/** A cause as it is shown. `gives` and `trace` only where the bytes sent are known. */
export interface ShownCause {
  readonly cause: Cause;
  readonly probability: number;
  readonly words: CauseWords;
  readonly strength: string;
  readonly gives?: readonly SeenByte[];
  readonly spacing?: string;
  readonly trace?: Trace;
}

/** The answer. `state`: all arrived as sent; no cause fits; nothing to go by; or causes, the likeliest first. */
export interface Answer {
  readonly state: 'as sent' | 'fits nothing' | 'nothing given' | 'nothing arrived' | 'causes';
  readonly causes: readonly ShownCause[];
  /** What would tell the first two apart, in a sentence; empty where there is one cause only. */
  readonly apart: string;
}

/** A cause less likely than this is not listed. */
const LEAST_SHOWN = 0.02;
/** So many are listed as long as they are not next to impossible. */
const ALWAYS_SHOWN = 3;
const FAINT = 1e-4;
/** Causes listed at most. */
const MOST_SHOWN = 5;
/** Chance of a cause of which nothing is known but that it is on the list; all start alike. */
const EVEN = 1 / CAUSES.length;

function shared(weights: ReadonlyMap<Cause, number>): ReadonlyMap<Cause, number> {
  const most = Math.max(...weights.values());
  const total = [...weights.values()].reduce((sum, one) => sum + Math.exp(one - most), 0);
  return new Map([...weights].map(([cause, one]) => [cause, Math.exp(one - most) / total]));
}

function shown(one: RankedCause, log: Log & { readonly sent: readonly number[] }): ShownCause {
  const { cause, probability, best, amounts } = one;
  return {
    cause,
    probability,
    words: CAUSE_WORDS[cause],
    strength: sayStrength(best.candidate, amounts),
    gives: givenBy(best, log.sent, log.seen),
    spacing: best.spacing.words,
    trace: traceOf(best, log.sent),
  };
}

/** Causes in order with what was said counted in, too. */
function withWords(ranking: Ranking, complaints: readonly Complaint[]): readonly RankedCause[] {
  if (complaints.length === 0) return ranking.ranked;
  const weights = new Map(
    ranking.ranked.map(({ cause, probability }) => [
      cause,
      Math.log(probability) + complaintLikeness(cause, complaints),
    ]),
  );
  const shares = shared(weights);
  return ranking.ranked
    .map((one) => ({ ...one, probability: shares.get(one.cause) ?? 0 }))
    .sort((one, other) => other.probability - one.probability);
}

const nothing = (state: Answer['state']): Answer => ({ state, causes: [], apart: '' });

/** Where the bytes sent are known. */
function* fromBytes(
  log: Log & { readonly sent: readonly number[] },
  complaints: readonly Complaint[],
): Generator<number, Answer> {
  const ranking = yield* rank(log);
  if (ranking.asSent) return nothing('as sent');
  const ranked = withWords(ranking, complaints);
  const [first, second] = ranked;
  if (!first || ranking.other > (ranking.ranked[0]?.probability ?? 0)) return nothing('fits nothing');
  const causes = ranked
    .filter(({ probability }, at) => at === 0 || probability >= (at < ALWAYS_SHOWN ? FAINT : LEAST_SHOWN))
    .slice(0, MOST_SHOWN)
    .map((one) => shown(one, log));
  const apart = second && causes.length > 1 ? tellApart(first.best, second.best) : '';
  return { state: 'causes', causes, apart };
}

/** Where only the bytes seen, or only words, are known. */
function fromTraits({ seen, complaints }: Question): Answer {
  const weights = new Map(
    CAUSES.map((cause) => [
      cause,
      Math.log(EVEN) +
        complaintLikeness(cause, complaints) +
        (seen.length > 0 ? traitLikeness(cause, seen) : 0),
    ]),
  );
  const causes = [...shared(weights)]
    .map(([cause, probability]) => ({ cause, probability, words: CAUSE_WORDS[cause], strength: '' }))
    .sort((one, other) => other.probability - one.probability)
    .filter(({ probability }) => probability >= LEAST_SHOWN)
    .slice(0, MOST_SHOWN);
  return {
    state: 'causes',
    causes,
    apart:
      'Send a few messages whose bytes you know, and enter them as well: then each cause can be simulated on them.',
  };
}

/**
 * Answer a question. Yields the share that is done, from 0 to 1. What was sent and what was seen is compared by simulation; where what
 * was sent is not known, and for words alone, by what each cause makes of usual phrases.
 */
export function* answerArrived(question: Question): Generator<number, Answer> {
  const { sent, seen, complaints } = question;
  if (sent !== undefined && sent.length > 0) {
    if (seen.length === 0) return nothing('nothing arrived');
    return yield* fromBytes({ sent: sent.slice(0, MOST_BYTES), seen: seen.slice(0, MOST_BYTES) }, complaints);
  }
  yield 0;
  return seen.length === 0 && complaints.length === 0 ? nothing('nothing given') : fromTraits(question);
}
