/** Tasks on what a symptom and a check leave and clear. Who shows what is asked of the faults. */
import { BENCH_BOARDS, taughtTable, faultName, saySymptoms } from '../../../faults/index.ts';
import type { BenchBoard, Symptom } from '../../../faults/index.ts';
import { splitBy } from '../../hunt.ts';
import type { Suspect } from '../../suspects.ts';
import { HUNT_CAUTION } from '../cautions.ts';
import { drawUntil, someOf } from '../chance.ts';
import { eachOf } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';
import { huntBudget } from './budget-task.ts';
import { comesAndGoes } from './cold-joint-task.ts';
import { finishHunt, nextCheck } from './hunt-tasks.ts';
import { BOARD_WORDS, frequencyOf, listed, pileOf, quoted, silencesAt, type Silence } from './piles.ts';
import { capital } from '../../../verdict/index.ts';

/** Symptoms in a player's own words. */
const SAID: Readonly<Record<Symptom, readonly string[]>> = {
  'the right preset': ['does what it should', 'calls up just what I want'],
  nothing: ['does not react at all', 'stays as it is, whatever I press'],
  'comes and goes when leads are moved': [
    'works until somebody treads on a lead',
    'works for a while, and then not',
  ],
  'the preset next to it': ['always lands one preset beside the right one', 'is one number off, every time'],
  'the right number in the wrong bank': [
    'finds the right number, but in another bank',
    'goes to the right number of the wrong bank',
  ],
};

/** Every symptom of a board, with the names of the faults that show it. */
interface Shown {
  readonly board: BenchBoard;
  readonly symptoms: readonly Symptom[];
  readonly names: readonly string[];
}

function shownOn(board: BenchBoard): readonly Shown[] {
  const { faults, symptoms } = taughtTable(board);
  const groups = Map.groupBy(faults.keys(), (at) => saySymptoms(symptoms[at] ?? []));
  return [...groups.values()].map((numbers) => ({
    board,
    symptoms: symptoms[numbers[0] as number] ?? [],
    names: [...new Set(numbers.map((at) => faultName(faults[at] as (typeof faults)[number])))],
  }));
}

/** Suspects offered for a sentence, and how many of them at most are right, by level. */
const OFFERED = [5, 5, 6, 7] as const;
const RIGHT_AT_MOST = 4;

const isLead = ({ words }: Suspect): boolean => words.startsWith('lead ');

/** What is said to known mistakes in what a sentence leaves: all, the leads alone, and the usual one alone. */
const SAID_TO_SENTENCE = {
  'cleared boxes forgotten': 'Not all of them. What does answer, or answers wrongly, clears some of these.',
  'blames the lead':
    'Not the leads alone, or not at all. Supplies, jacks and menus can do the same, and a lead cannot count.',
  'favourite first': 'That is one of them, and often met. Go on: others here show just the same.',
};

function findSuspects(level: Level, chance: Chance): Drawn {
  const shown = chance.turn(BENCH_BOARDS.filter((board) => level >= 2 || board === 'link').flatMap(shownOn));
  const { board, symptoms, names } = shown;
  const others = shownOn(board)
    .filter((one) => one.symptoms.join() !== symptoms.join())
    .flatMap((one) => one.names.map((name) => ({ name, told: saySymptoms(one.symptoms) })));
  const right = suspectsOf(board, someOf(names, RIGHT_AT_MOST, chance));
  const wrong = someOf(others, Math.max(2, OFFERED[level] - right.length), chance);
  const usual = right.toSorted((a, b) => frequencyOf(b) - frequencyOf(a))[0];
  const said = symptoms.map((one, at) => `pedal ${at + 1} ${chance.pick(SAID[one])}`).join(', and ');
  return {
    ask: `${BOARD_WORDS[board]} One thing is wrong. The player says: '${capital(said)}.' Which of these can it be?`,
    ...eachOf(
      [
        ...right,
        ...suspectsOf(
          board,
          wrong.map(({ name }) => name),
        ),
      ],
      chance,
      {
        text: ({ words }) => words,
        right: (one) => right.includes(one),
        ticks: {
          'cleared boxes forgotten': () => true,
          'blames the lead': isLead,
          'favourite first': (one) => one === usual,
        },
        said: SAID_TO_SENTENCE,
      },
    ),
    hints: [
      'A symptom is a check that you get for nothing.',
      'Ask of each suspect: would the player see just this, at each pedal?',
      'A pedal that answers clears the whole way to it. A pedal that does nothing leaves leads, jacks, supplies and menus.',
    ],
    caution: HUNT_CAUTION,
    steps: [
      ...wrong.map(
        ({ name, told }) => `Not this: ${suspectsOf(board, [name])[0]?.words ?? ''}. With it, ${told}.`,
      ),
      `It can be: ${listed(right.map(({ words }) => words))}.`,
    ],
  };
}

function suspectsOf(board: BenchBoard, names: readonly string[]): readonly Suspect[] {
  return pileOf(board, names, []).suspects;
}

/** A check and what it showed. */
interface Result {
  readonly silence: Silence;
  readonly check: string;
  readonly answer: string;
  /** Names that would have shown something else. */
  readonly cleared: readonly string[];
}

/** Every check of a silence with each thing it may show, but for those that name one suspect or clear none. */
function resultsOf(silence: Silence): readonly Result[] {
  const pile = pileOf(silence.board, silence.names);
  return pile.looks.flatMap(({ id }, look) =>
    splitBy(pile, look).flatMap(({ answer, suspects }) => {
      const cleared = silence.names.filter((_, at) => !suspects.includes(at));
      return cleared.length === 0 || suspects.length < 2 ? [] : [{ silence, check: id, answer, cleared }];
    }),
  );
}

/** Suspects in a list of which some are cleared. */
const TO_CLEAR = [5, 5, 6, 7] as const;

/** Most of a list that may be cleared: some are always left. */
const LEFT_AT_LEAST = 2;

/** What is said to known mistakes in what a result clears. */
const SAID_TO_CLEARED = {
  'ticks who is left': 'These are the ones that are still under suspicion. Asked for is who is cleared.',
  'cleared boxes forgotten':
    'It does clear some. With which of them would this check have shown something else?',
  'light dark means lead bad':
    'That leaves the leads alone. Others can do the same: a supply, a jack, or a switch.',
  'clears the leads alone': 'Not the leads and nothing else. Ask the same of jacks, supplies and menus.',
};

function whatIsCleared(level: Level, chance: Chance): Drawn {
  // A check that clears one suspect alone is left to level 2.
  const cases = silencesAt(level)
    .flatMap(resultsOf)
    .filter(({ cleared }) => level >= 2 || cleared.length > 1);
  const { silence, check, answer, cleared } = chance.turn(cases);
  const names = drawUntil(() => {
    const some = someOf(silence.names, TO_CLEAR[level], chance);
    const gone = some.filter((one) => cleared.includes(one)).length;
    return gone > 0 && some.length - gone >= LEFT_AT_LEAST ? some : undefined;
  });
  const pile = pileOf(silence.board, names, [check]);
  const isCleared = ({ name }: Suspect): boolean => cleared.includes(name);
  return {
    ask: `${BOARD_WORDS[silence.board]} What the player sees: ${silence.symptom}. Then one check. ${pile.looks[0]?.words ?? ''} It shows ${quoted(answer)}. Which of these suspects does that clear?`,
    ...eachOf(pile.suspects, chance, {
      text: ({ words }) => words,
      right: isCleared,
      ticks: {
        'ticks who is left': (one) => !isCleared(one),
        'cleared boxes forgotten': () => false,
        'light dark means lead bad': (one) => !isLead(one),
        'clears the leads alone': isLead,
      },
      said: SAID_TO_CLEARED,
    }),
    hints: [
      'Cleared is who would have shown something else.',
      'Take the suspects one by one: what would this check show with it?',
      'What comes before the place of the check, and would stop what was seen there, is cleared by a good result.',
    ],
    caution: HUNT_CAUTION,
    steps: [
      ...splitBy(pile, 0).map(
        (group) =>
          `${quoted(group.answer)} would be seen with: ${listed(group.suspects.map((at) => pile.suspects[at]?.words ?? ''))}.`,
      ),
      `Cleared by ${quoted(answer)}: ${listed(pile.suspects.filter(isCleared).map(({ words }) => words))}.`,
    ],
  };
}

/** The tasks of the lesson. */
export const NOTHING_TASKS: readonly TaskKind[] = [
  { kind: 'find-suspects', title: 'What can it be?', draw: findSuspects },
  { kind: 'next-check', title: 'Which check next?', draw: nextCheck },
  { kind: 'finish-hunt', title: 'Finish the hunt', draw: finishHunt },
  { kind: 'hunt-budget', title: 'A hunt in so many minutes', draw: huntBudget },
  { kind: 'what-is-cleared', title: 'What is cleared?', draw: whatIsCleared },
  { kind: 'comes-and-goes', title: 'It comes and goes', draw: comesAndGoes },
];
