/** Silent boards for tasks on finding a fault: who is under suspicion, and which checks there are. All of it is asked of the faults. */
import { USUAL_FREQUENCIES, taughtTable, faultName } from '../../../faults/index.ts';
import type { BenchBoard } from '../../../faults/index.ts';
import { splitBy } from '../../hunt.ts';
import { pileFrom, symptomGroups, type Pile, type Suspect } from '../../suspects.ts';
import { remembered } from '../chance.ts';
import { inRows } from '../forms.ts';
import type { Level } from '../task.ts';

/** The boards, as a task tells them. */
export const BOARD_WORDS: Readonly<Record<BenchBoard, string>> = {
  link: 'A sender feeds pedal 1 over lead 1. The output of the sender has a switch for Type A or Type B.',
  chain:
    'A sender feeds pedal 1 over lead 1, and the THRU of pedal 1 feeds pedal 2 over lead 2. The output of the sender has a switch for Type A or Type B.',
};

/**
 * Checks left out: of numbers where nothing is shown, and of volts that have to be compared with what another box of the same
 * make would show.
 */
const LEFT_OUT: readonly string[] = ['numbers', 'diode pedal 1', 'diode pedal 2', 'volts clock lead 2'];

/** Checks that show one thing for each name: what a reader can tell without knowing which wire of a lead is broken. */
export const checksOf = remembered((board: BenchBoard): readonly string[] => {
  const { faults, observations, seen } = taughtTable(board);
  const names = Map.groupBy(faults.keys(), (at) => faultName(faults[at] as (typeof faults)[number]));
  return observations.flatMap(({ id }, look) =>
    !LEFT_OUT.includes(id) &&
    [...names.values()].every((variants) => new Set(variants.map((at) => seen[look]?.[at])).size === 1)
      ? [id]
      : [],
  );
});

/** Suspects of a board that show a player the same. */
export interface Silence {
  readonly board: BenchBoard;
  readonly symptom: string;
  readonly names: readonly string[];
}

/** Suspects in a group that is worth hunting in. */
const ENOUGH = 6;

const silencesOf = remembered((board: BenchBoard): readonly Silence[] =>
  symptomGroups(board).flatMap(({ symptom, suspects }): readonly Silence[] => {
    const { suspects: all, looks } = pileOf(
      board,
      suspects.map(({ name }) => name),
    );
    // Of suspects that no check tells apart the first is kept.
    const columns = all.map((_, at) => looks.map(({ seen }) => seen[at]).join('|'));
    const names = all.flatMap(({ name }, at) =>
      columns.indexOf(columns[at] as string) === at ? [name] : [],
    );
    return names.length < ENOUGH ? [] : [{ board, symptom, names }];
  }),
);

/** How often a suspect is met, against the others: invented, as on the page of faults. */
export function frequencyOf({ name }: Suspect): number {
  return USUAL_FREQUENCIES[name.replace(/^.*: /, '') as keyof typeof USUAL_FREQUENCIES];
}

/** Silences to hunt in: one pedal, and from level 2 on a chain of two as well. */
export function silencesAt(level: Level): readonly Silence[] {
  return level < 2 ? silencesOf('link') : [...silencesOf('link'), ...silencesOf('chain')];
}

/** Every suspect and check of a board: draws take many piles out of it. */
const wholePile = remembered((board: BenchBoard): Pile => {
  const suspects = [...new Set(taughtTable(board).faults.map(faultName))];
  return pileFrom({ board, suspects, looks: checksOf(board) });
});

/** The pile of some suspects and checks of a board, both by name. */
export function pileOf(
  board: BenchBoard,
  suspects: readonly string[],
  checks: readonly string[] = checksOf(board),
): Pile {
  const whole = wholePile(board);
  const at = suspects.map((name) => whole.suspects.findIndex((one) => one.name === name));
  return {
    suspects: at.map((place) => whole.suspects[place] as Suspect),
    looks: checks.map((id) => {
      const { words, seen } = whole.looks.find((one) => one.id === id) as Pile['looks'][number];
      return { id, words, seen: at.map((place) => seen[place] as string) };
    }),
  };
}

/** How many suspects a check leaves at worst. */
export function worstOf(pile: Pile, look: number): number {
  return Math.max(...splitBy(pile, look).map(({ suspects }) => suspects.length));
}

/** How many suspects a check leaves on average, where each is as likely as the next. */
export function meanOf(pile: Pile, look: number): number {
  const squares = splitBy(pile, look).reduce((sum, { suspects }) => sum + suspects.length ** 2, 0);
  return squares / pile.suspects.length;
}

/** Whether every answer of a check leaves at least two suspects of a silence: no check of one suspect alone. */
export function splitsWell(silence: Silence, check: string): boolean {
  const groups = splitBy(pileOf(silence.board, silence.names, [check]), 0);
  return groups.length > 1 && groups.every(({ suspects }) => suspects.length > 1);
}

/** The suspects of a pile as rows with a number each. */
export function numberedSuspects({ suspects }: Pile): ReturnType<typeof inRows> {
  return inRows(suspects.map(({ words }, at) => [`suspect ${at + 1}`, words]));
}

/** Items as a list in a sentence, parted by semicolons: they hold commas. */
export function listed(items: readonly string[]): string {
  return items.join('; ');
}

/** What a check shows, as a quotation. */
export function quoted(text: string): string {
  return `‘${text}’`;
}

/** A check without the full stop at its end, to be built into a sentence. */
export function checkWords(pile: Pile, look: number): string {
  return (pile.looks[look]?.words ?? '').replace(/\.$/, '');
}
