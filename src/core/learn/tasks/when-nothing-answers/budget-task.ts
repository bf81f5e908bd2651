/** A hunt with so many minutes: which checks are sure to find the fault in time. Every choice of checks is tried. */
import { taughtTable } from '../../../faults/index.ts';
import type { BenchBoard } from '../../../faults/index.ts';
import { splitBy } from '../../hunt.ts';
import type { Pile } from '../../suspects.ts';
import { HUNT_CAUTION } from '../cautions.ts';
import { drawUntil, someOf } from '../chance.ts';
import { AS_THEY_STAND, eachOf } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import {
  BOARD_WORDS,
  checkWords,
  frequencyOf,
  listed,
  numberedSuspects,
  pileOf,
  quoted,
  silencesAt,
  worstOf,
  type Silence,
} from './piles.ts';

/** Minutes that a check takes, by its effort: to look, to swap, to measure. Invented. */
const MINUTES = [1, 4, 6] as const;

/** Suspects and checks of a hunt with a budget, by level. */
const BUDGET_SUSPECTS = [3, 3, 4, 4] as const;
const BUDGET_CHECKS = [4, 4, 5, 6] as const;

function minutesOf(board: BenchBoard, id: string): number {
  const effort = taughtTable(board).observations.find((one) => one.id === id)?.effort ?? 3;
  return MINUTES[effort - 1] ?? 0;
}

/** Every choice of checks, as bits. */
const choicesOf = (count: number): readonly number[] => [...Array(2 ** count).keys()];
const takes = (choice: number, look: number): boolean => ((choice >> look) & 1) === 1;

/** Two suspects that show the same at every check of a choice, or undefined where all differ. */
function twoAlike(pile: Pile, choice: number): readonly [number, number] | undefined {
  const columns = pile.suspects.map((_, at) =>
    pile.looks.map(({ seen }, look) => (takes(choice, look) ? seen[at] : '')).join('|'),
  );
  const second = columns.findIndex((one, at) => columns.indexOf(one) < at);
  return second < 0 ? undefined : [columns.indexOf(columns[second] as string), second];
}

interface Budget {
  readonly pile: Pile;
  readonly minutes: readonly number[];
  readonly most: number;
  /** The one choice of checks that is sure and within the budget. */
  readonly choice: number;
}

/** A hunt in which one choice of checks alone is sure to find the fault in time. */
function budgetFor(silence: Silence, first: string, level: Level, chance: Chance): Budget | undefined {
  const others = silence.names.filter((one) => one !== first);
  const suspects = [first, ...someOf(others, BUDGET_SUSPECTS[level] - 1, chance)];
  const every = pileOf(silence.board, suspects);
  const tells = (look: number): boolean => worstOf(every, look) < suspects.length;
  const telling = someOf(
    [...every.looks.keys()].filter((look) => tells(look)),
    BUDGET_CHECKS[level] - 1,
    chance,
  );
  // The rest tell nothing of these suspects.
  const idle = someOf(
    [...every.looks.keys()].filter((look) => !tells(look)),
    BUDGET_CHECKS[level] - telling.length,
    chance,
  );
  const checks = [...telling, ...idle].map((look) => every.looks[look]?.id ?? '');
  const pile = pileOf(silence.board, suspects, checks);
  const minutes = checks.map((id) => minutesOf(silence.board, id));
  const cost = (choice: number): number =>
    minutes.reduce((sum, one, look) => sum + (takes(choice, look) ? one : 0), 0);
  const sure = choicesOf(checks.length).filter((choice) => twoAlike(pile, choice) === undefined);
  const most = Math.min(...sure.map(cost));
  const [choice, another] = sure.filter((one) => cost(one) <= most);
  return choice === undefined || another !== undefined || choice === 2 ** checks.length - 1
    ? undefined
    : { pile, minutes, most, choice };
}

/** A hunt in so many minutes. */
export function huntBudget(level: Level, chance: Chance): Drawn {
  const cases = silencesAt(level).flatMap((silence) => silence.names.map((first) => ({ silence, first })));
  const { silence, first } = chance.turn(cases);
  const { pile, minutes, most, choice } = drawUntil(() => budgetFor(silence, first, level, chance));
  const text = (look: number): string =>
    `${checkWords(pile, look)} (${minutes[look] ?? 0} ${minutes[look] === 1 ? 'minute' : 'minutes'})`;
  const texts = pile.looks.map((_, look) => text(look));
  const whole = minutes.reduce((sum, one) => sum + one, 0);
  const chosen = texts.filter((_, look) => takes(choice, look));
  return {
    ask: `${BOARD_WORDS[silence.board]} What the player sees: ${silence.symptom}. One of these suspects is the fault. You have ${most} minutes; the minutes of each check are invented. Choose before you begin: which checks are sure to tell which suspect it is, in that time?`,
    shows: numberedSuspects(pile),
    ...budgetAnswer(pile, texts, choice, whole, chance),
    hints: [
      'The checks are sure when no two suspects show the same at all of them.',
      'Write what each suspect would show at each check.',
      'A check that takes long has to tell more than two that are short.',
    ],
    caution: HUNT_CAUTION,
    steps: [
      ...pile.looks.map((_, look) => `${text(look)}: ${saySplit(pile, look)}.`),
      `Sure, and ${most} minutes in all: ${listed(chosen)}.`,
    ],
  };
}

const saySplit = (pile: Pile, look: number): string =>
  splitBy(pile, look)
    .map(
      ({ answer, suspects }) => `${quoted(answer)} with suspect ${suspects.map((at) => at + 1).join(', ')}`,
    )
    .join('; ');

/** The checks to tick, and the known mistakes: one check left out, all of them, and the check of the usual suspect alone. */
function budgetAnswer(
  pile: Pile,
  texts: readonly string[],
  choice: number,
  whole: number,
  chance: Chance,
): ReturnType<typeof eachOf> {
  const shown = chance.shuffled([...texts.keys()]);
  const ask = <S extends string>(
    said: Readonly<Record<S, string>>,
    ticks: Readonly<Record<S, ((look: number) => boolean) | false>>,
  ) =>
    eachOf(shown, AS_THEY_STAND, {
      text: (look) => texts[look] ?? '',
      right: (look) => takes(choice, look),
      said,
      ticks,
    });
  const oneShort = [...texts.keys()].flatMap((look) => {
    const left = choice & ~(1 << look);
    const [a = 0, b = 0] = twoAlike(pile, left) ?? [];
    const says = `Not sure yet: suspects ${a + 1} and ${b + 1} show the same at all that you ticked.`;
    const ticks = takes(choice, look) && left !== 0 && ((one: number) => takes(left, one));
    return ask({ 'leaves two together': says }, { 'leaves two together': ticks }).slips;
  });
  const usual = favouriteOf(pile);
  const own = pile.looks.findIndex((_, look) =>
    splitBy(pile, look).some(({ suspects }) => suspects.length === 1 && suspects[0] === usual),
  );
  const others = ask(
    {
      'all of them': `That is sure to find it, and takes ${whole} minutes. Leave out what tells you nothing new.`,
      'favourite first': `That asks about suspect ${usual + 1} alone. If it is another one, you are left with the rest.`,
    },
    { 'all of them': () => true, 'favourite first': own >= 0 && ((look) => look === own) },
  );
  const named = new Set(oneShort.map(({ answer }) => answer));
  return { ...others, slips: [...oneShort, ...others.slips.filter(({ answer }) => !named.has(answer))] };
}

/** The suspect of a pile that is met most often, by its number. */
function favouriteOf({ suspects }: Pile): number {
  const often = suspects.map(frequencyOf);
  return often.indexOf(Math.max(...often));
}
