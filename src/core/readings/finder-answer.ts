/** All that a page shows of the jack finder after each reading, as plain data that can be handed from a worker to a page. */
import type { Jack } from '../wiring/index.ts';
import type { Evidence } from './evidence.ts';
import { SURE, findJack } from './finder.ts';
import type { FinderState, TakenReading } from './finder.ts';
import { sayFinding, sayProbability } from './finder-words.ts';
import { nextReading } from './next-reading.ts';
import { partingsOf } from './partings.ts';
import type { Advice } from './next-reading.ts';
import { sayJackReading, sayName, sayUnderTest } from './words.ts';

/** How the answer stands for a reader: 'cannot-tell' is 'not sure' with no reading left that would tell more. */
export type AnswerState = FinderState | 'cannot-tell';

/** How likely one name is, in a word. */
type Likelihood = 'sure' | 'likely' | 'possible' | 'unlikely';

/** From these probabilities on a name is called likely or possible (our choice of words). */
const LIKELY = 0.5;
const POSSIBLE = 0.05;

/** One line of the ranking. `probability` from 0 to 1. */
interface AnswerRow {
  readonly name: string;
  readonly words: string;
  readonly bestWords: string;
  readonly probability: number;
  readonly percent: string;
  readonly likelihood: Likelihood;
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
  /** Where a meter cannot tell: every reading that was considered, and by how many units of noise it would part what is left. */
  readonly considered: readonly Considered[];
}

/** A reading that was considered and would not help. */
interface Considered {
  readonly words: string;
  readonly steps: number;
}

/** Score the readings, rank the names, and propose the next reading where one would tell more. */
export function answerFinder(evidence: Evidence, taken: readonly TakenReading[]): FinderAnswer {
  const finding = findJack(evidence, taken);
  const places = taken.map(({ at }) => at);
  const advice = finding.state === 'not-sure' ? nextReading(evidence, finding, places) : undefined;
  const state = finding.state === 'not-sure' && !advice ? 'cannot-tell' : finding.state;
  const best = finding.ranked[0]?.best;
  return {
    state,
    sentence: sayFinding(finding, advice !== undefined),
    rows: finding.ranked.map(({ name, probability, best: under }, at) => ({
      name,
      words: sayName(name),
      bestWords: sayUnderTest(under),
      probability,
      percent: sayProbability(probability),
      likelihood: likelihoodOf(probability, state === 'sure' && at === 0),
    })),
    none: finding.none,
    nonePercent: sayProbability(finding.none),
    advice,
    jack: state === 'sure' && best?.kind === 'control' ? best.jack : undefined,
    considered:
      state === 'cannot-tell'
        ? partingsOf(evidence, finding, places).map(({ at, steps }) => ({ words: sayJackReading(at), steps }))
        : [],
  };
}

/** 'Sure' is never said on probability alone: the finder's own checks must be done too. */
function likelihoodOf(probability: number, sure: boolean): Likelihood {
  if (sure && probability >= SURE) return 'sure';
  if (probability >= LIKELY) return 'likely';
  return probability >= POSSIBLE ? 'possible' : 'unlikely';
}
