/** All that a page shows of the jack finder after each reading, as plain data that can be handed from a worker to a page. */
import { settleJack } from '../wiring/index.ts';
import type { Jack } from '../wiring/index.ts';
import { nameOf } from './evidence.ts';
import type { Evidence } from './evidence.ts';
import { findJack } from './finder.ts';
import type { Finding } from './finder.ts';
import { sayFinding, sayProbability } from './finder-words.ts';
import { nextReading, rankReadings } from './next-reading.ts';
import type { Advice } from './next-reading.ts';
import type { JackUnderTest } from './subjects.ts';
import type { TakenReading } from './taken.ts';
import { sayJackReading, sayName, sayUnderTest } from './words.ts';

/** How the answer stands for a reader: 'cannot-tell' is 'not sure' with no reading left that would tell more. */
export type AnswerState = Finding['state'] | 'cannot-tell';

/** From these probabilities on a name is called likely or possible (our choice of words). */
const LIKELY = 0.5;
const POSSIBLE = 0.05;

/** One line of the ranking. `probability` from 0 to 1, `likelihood` the same in a word. */
interface AnswerRow {
  readonly name: string;
  readonly words: string;
  readonly bestWords: string;
  readonly probability: number;
  readonly percent: string;
  readonly likelihood: 'sure' | 'likely' | 'possible' | 'unlikely';
}

/** The whole answer. `jack` is there only when the finder is sure and the jack is a control jack. */
export interface FinderAnswer {
  readonly state: AnswerState;
  readonly sentence: string;
  readonly rows: readonly AnswerRow[];
  /** Probability that the jack is in no catalogue, and the same in words. */
  readonly none: number;
  readonly nonePercent: string;
  readonly advice: Advice | undefined;
  readonly jack: Jack | undefined;
  /** Numbers of the readings that were set aside. */
  readonly doubtful: readonly number[];
  /** Where a meter cannot tell: every reading that was considered, with the bits it would tell. */
  readonly considered: readonly { readonly words: string; readonly bits: number }[];
}

/** Weigh the readings, rank the names, and propose the next reading where one would tell more. */
export function answerFinder(evidence: Evidence, taken: readonly TakenReading[]): FinderAnswer {
  const finding = findJack(evidence, taken);
  const { ranked, none, doubtful } = finding;
  const advice = finding.state === 'not-sure' ? nextReading(evidence, finding, taken) : undefined;
  const state = finding.state === 'not-sure' && !advice ? 'cannot-tell' : finding.state;
  const best = ranked[0]?.best;
  return {
    state,
    sentence: sayFinding(finding, advice !== undefined),
    rows: ranked.map(({ name, probability, best: under }, at) => ({
      name,
      words: sayName(name),
      bestWords: sayUnderTest(under),
      probability,
      percent: sayProbability(probability),
      likelihood: state === 'sure' && at === 0 ? 'sure' : likelihoodOf(probability),
    })),
    none,
    nonePercent: sayProbability(none),
    advice,
    jack: state === 'sure' && best ? jackOf(best, evidence) : undefined,
    doubtful,
    considered:
      state === 'cannot-tell'
        ? rankReadings(evidence, finding, taken).map(({ at, bits }) => ({ words: sayJackReading(at), bits }))
        : [],
  };
}

/** The jack to wire, its part not known, as no meter tells it. What may as well be a footswitch input is one only where IN is printed beside it. */
function jackOf(best: JackUnderTest, { marked }: Evidence): Jack | undefined {
  if (best.kind !== 'control' || (nameOf(best) === 'in tip-signal' && marked !== 'in')) return undefined;
  return settleJack({ ...best.jack, part: 'unknown' });
}

/** 'Sure' is never said on probability alone: the finder's own checks must be done too. */
function likelihoodOf(probability: number): AnswerRow['likelihood'] {
  if (probability >= LIKELY) return 'likely';
  return probability >= POSSIBLE ? 'possible' : 'unlikely';
}
