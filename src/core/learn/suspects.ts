/** The faults that a lesson on fault finding names, with what each would show: asked of the core when the site is built. */
import { taughtTable, faultName, remedyFor, sayBoardFault, saySymptoms } from '../faults/index.ts';
import type { BenchBoard, BenchTable } from '../faults/index.ts';

/** A fault, and what it is called. */
export interface Suspect {
  readonly name: string;
  readonly words: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** A pile of suspects and how it can be split. */
export interface Pile {
  readonly suspects: readonly Suspect[];
  /** Things to look at, swap or measure; `seen` is what each suspect would show, in their order. */
  readonly looks: readonly {
    readonly id: string;
    readonly words: string;
    readonly seen: readonly string[];
  }[];
}

/** Suspects of a board by name ('lead 1: swapped'), and observations by identifier ('light pedal 1'). */
export interface AuthoredPile {
  readonly board: BenchBoard;
  readonly suspects: readonly string[];
  readonly looks: readonly string[];
}

/** The piles of a lesson by name. */
export type LessonPiles = Readonly<Record<string, AuthoredPile>>;

/** The pile, worked out. Of variants with one name the first is taken. @throws when the board has no such fault or observation. */
export function pileFrom({ board, suspects, looks }: AuthoredPile): Pile {
  const table = taughtTable(board);
  const at = suspects.map((name) =>
    found(
      table.faults.findIndex((fault) => faultName(fault) === name),
      board,
      `fault '${name}'`,
    ),
  );
  return {
    suspects: at.map((place) => suspectAt(table, place)),
    looks: looks.map((id) => {
      const look = found(
        table.observations.findIndex((one) => one.id === id),
        board,
        `observation '${id}'`,
      );
      return {
        id,
        words: table.observations[look]?.words ?? '',
        seen: at.map((place) => table.seen[look]?.[place] ?? ''),
      };
    }),
  };
}

/** What the player sees, with every fault of those that lessons name that shows it: the symptom with the most faults first. */
export function symptomGroups(
  board: BenchBoard,
): readonly { readonly symptom: string; readonly suspects: readonly Suspect[] }[] {
  const table = taughtTable(board);
  const groups = new Map<string, Suspect[]>();
  table.symptoms.forEach((symptoms, at) => {
    const symptom = saySymptoms(symptoms);
    const group = groups.get(symptom) ?? [];
    const suspect = suspectAt(table, at);
    if (!group.some(({ name }) => name === suspect.name)) group.push(suspect);
    groups.set(symptom, group);
  });
  return [...groups]
    .map(([symptom, suspects]) => ({ symptom, suspects }))
    .sort((a, b) => b.suspects.length - a.suspects.length);
}

function suspectAt({ faults }: BenchTable, place: number): Suspect {
  const fault = faults[place];
  if (fault === undefined)
    throw new Error(`lesson suspects: needs a fault with the number ${place}, got none`);
  return { name: faultName(fault), words: sayBoardFault(fault), remedy: remedyFor(fault.kind) };
}

function found(place: number, board: BenchBoard, what: string): number {
  if (place < 0) throw new Error(`lesson suspects: the board '${board}' has no ${what}`);
  return place;
}
