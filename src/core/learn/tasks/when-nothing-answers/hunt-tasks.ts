/** Tasks on hunting a fault: the best next check, and a hunt to finish. What each check shows is asked of the faults. */
import { seenAt } from '../../hunt.ts';
import type { Pile } from '../../suspects.ts';
import { HUNT_CAUTION } from '../cautions.ts';
import { drawUntil, someOf } from '../chance.ts';
import { inRows, met, whichOf, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import {
  BOARD_WORDS,
  checkWords,
  checksOf,
  listed,
  meanOf,
  numberedSuspects,
  pileOf,
  quoted,
  silencesAt,
  splitsWell,
  worstOf,
  type Silence,
} from './piles.ts';

/** Checks to choose from. */
const CHECKS_OFFERED = 4;

/** Suspects in a list that a check has to split, by level. */
const IN_THE_PILE = [5, 5, 6, 7] as const;

/** The check that splits a list of suspects best. */
export function nextCheck(level: Level, chance: Chance): Drawn {
  const cases = silencesAt(level).flatMap((silence) =>
    checksOf(silence.board).flatMap((check) => (splitsWell(silence, check) ? [{ silence, check }] : [])),
  );
  const { silence, check } = chance.turn(cases);
  const pile = drawUntil(() => pileFor(silence, check, level, chance));
  const best = worstOf(pile, 0);
  return {
    ask: `${BOARD_WORDS[silence.board]} What the player sees: ${silence.symptom}. One of these suspects is the fault, each as likely as the next. All checks are equally easy. Which one leaves the fewest suspects at worst?`,
    shows: numberedSuspects(pile),
    ...whichOf(
      [...pile.looks.keys()],
      0,
      (look) => pile.looks[look]?.words ?? '',
      (look) => saidToCheck(pile, look, best),
      chance,
    ),
    hints: [
      'A good check cuts the list in two halves, whatever it shows.',
      'For each check, say of each suspect what you would see.',
      'Count the suspects that show the same. The largest such group is what is left at worst.',
    ],
    caution: HUNT_CAUTION,
    steps: [
      ...pile.looks
        .map(
          (_, at) =>
            `${quoted(checkWords(pile, at))}: at worst ${worstOf(pile, at)} of ${pile.suspects.length} are left.`,
        )
        .toSorted(),
      `The fewest are left by this one: ${pile.looks[0]?.words ?? ''}`,
    ],
  };
}

/** A pile that one check splits better than three others, at worst and on average; that check comes first. */
function pileFor(silence: Silence, check: string, level: Level, chance: Chance): Pile | undefined {
  const suspects = someOf(silence.names, IN_THE_PILE[level], chance);
  const others = checksOf(silence.board).filter((one) => one !== check);
  const pile = pileOf(silence.board, suspects, [check, ...someOf(others, CHECKS_OFFERED - 1, chance)]);
  const isBest = pile.looks.every(
    (_, at) => at === 0 || (worstOf(pile, at) > worstOf(pile, 0) && meanOf(pile, at) > meanOf(pile, 0)),
  );
  // The best one is not the longest to say, but for the one that always is.
  const longest = pile.looks.every(
    ({ words }, at) => at === 0 || words.length < (pile.looks[0]?.words.length ?? 0),
  );
  // Checks that tell nothing are easy to see through: one of them at most, and none at level 3.
  const idle = pile.looks.filter((_, at) => worstOf(pile, at) === suspects.length).length;
  return isBest && (!longest || check.startsWith('volts')) && idle <= (level === 3 ? 0 : 1)
    ? pile
    : undefined;
}

/** What is said to a check that splits a pile worse than the best one, which leaves `best` at worst. */
function saidToCheck(pile: Pile, look: number, best: number): Mistake {
  const worst = worstOf(pile, look);
  const all = pile.suspects.length;
  const said = {
    'cleared boxes forgotten':
      'Every suspect in the list shows the same there. You would know no more than before.',
    'favourite first': `It asks about one suspect only. As a rule it is not that one, and ${worst} are left.`,
    'splits less well': `It splits the list, but may leave ${worst}. One of these checks never leaves more than ${best}.`,
  };
  if (worst === all) return met(said, 'cleared boxes forgotten');
  return met(said, worst === all - 1 ? 'favourite first' : 'splits less well');
}

/** Suspects that a hunt is finished among. */
const AT_THE_END = 4;

/** Checks that a worked hunt shows at most. */
const MOST_CHECKS_SHOWN = 4;

/** The suspect that is left after some checks. */
export function finishHunt(level: Level, chance: Chance): Drawn {
  const cases = silencesAt(level).flatMap((silence) => silence.names.map((hidden) => ({ silence, hidden })));
  const { silence, hidden } = chance.turn(cases);
  const pile = drawUntil(() => workedHunt(silence, hidden, level, chance));
  const seen = (look: number): string => seenAt(pile, look, 0);
  const clearedBy = (suspect: number): number =>
    pile.looks.findIndex((_, look) => seenAt(pile, look, suspect) !== seen(look));
  return {
    ask: `${BOARD_WORDS[silence.board]} What the player sees: ${silence.symptom}. One thing is wrong. These checks were made. Which of these suspects is left?`,
    shows: inRows(pile.looks.map(({ words }, look) => [words, seen(look)])),
    material: {
      on: 'fault page',
      board: silence.board,
      fault: hidden,
      made: pile.looks.map(({ id }) => id),
    },
    ...whichOf(
      [...pile.suspects.keys()],
      0,
      (suspect) => pile.suspects[suspect]?.words ?? '',
      (suspect) => {
        const look = clearedBy(suspect);
        return [
          'cleared boxes forgotten',
          `That one is cleared. With it, the check ${quoted(checkWords(pile, look))} would have shown ${quoted(seenAt(pile, look, suspect))}.`,
        ];
      },
      chance,
    ),
    hints: [
      'Each check clears every suspect that would have shown something else.',
      'Take the checks one by one, and cross out what each of them clears.',
      `Begin with this one: ${pile.looks[0]?.words ?? ''} It showed ${quoted(seen(0))}.`,
    ],
    caution: HUNT_CAUTION,
    steps: [
      ...pile.looks.map(({ words }, look) => {
        const gone = pile.suspects.filter((_, at) => clearedBy(at) === look).map((one) => one.words);
        return `${words} It showed ${quoted(seen(look))}. Cleared by that: ${gone.length === 0 ? 'no other one' : listed(gone)}.`;
      }),
      `Left is: ${pile.suspects[0]?.words ?? ''}.`,
    ],
  };
}

/** A hunt for a hidden suspect, the first of the pile, that ends with it alone; no single check does all the work. */
function workedHunt(silence: Silence, hidden: string, level: Level, chance: Chance): Pile | undefined {
  const others = someOf(
    silence.names.filter((one) => one !== hidden),
    AT_THE_END - 1,
    chance,
  );
  const all = pileOf(silence.board, [hidden, ...others]);
  const checks: number[] = [];
  let left = [1, 2, 3];
  for (const look of chance.shuffled([...all.looks.keys()])) {
    const still = left.filter((at) => seenAt(all, look, at) === seenAt(all, look, 0));
    // From level 2 on no check names the fault outright.
    const names = others.every((_, at) => seenAt(all, look, at + 1) !== seenAt(all, look, 0));
    if (still.length === left.length || names) continue;
    checks.push(look);
    left = still;
    if (left.length === 0) break;
  }
  // A check that tells nothing new stands among them at level 3.
  const idle = all.looks.findIndex((_, look) => !checks.includes(look) && worstOf(all, look) === AT_THE_END);
  const shown = level === 3 && idle >= 0 ? chance.shuffled([...checks, idle]) : checks;
  if (left.length > 0 || checks.length < 2 || shown.length > MOST_CHECKS_SHOWN) return undefined;
  return pileOf(
    silence.board,
    [hidden, ...others],
    shown.map((look) => all.looks[look]?.id ?? ''),
  );
}
