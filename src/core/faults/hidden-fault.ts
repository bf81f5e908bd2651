/** A fault to be found: hidden by number, observed, and named; a name is graded by what was observed. */
import { USUAL_FREQUENCIES, benchTable, suspectsLeft, weigh } from './bench-table.ts';
import type { BenchTable, Frequencies, Seen } from './bench-table.ts';
import { faultName, sayBoardFault } from './board-faults.ts';
import type { BenchBoard, BoardFault } from './board-faults.ts';
import type { Symptom } from './board-symptoms.ts';
import { alikeNames, fewestExpected } from './decision.ts';
import type { Suspects } from './decision.ts';

/** A hidden fault: plain data, so that a page can keep it. */
export interface HiddenFault {
  readonly board: BenchBoard;
  readonly fault: BoardFault;
  readonly symptoms: readonly Symptom[];
}

/** Hide a fault. `draw` is a number from 0 to less than 1, by seed; faults are as likely as their frequencies. */
export function hideFault(
  board: BenchBoard,
  draw: number,
  frequencies: Frequencies = USUAL_FREQUENCIES,
): HiddenFault {
  const table = benchTable(board);
  const { weights } = weigh(table, frequencies);
  let rest = draw * weights.reduce((sum, weight) => sum + weight, 0);
  const found = weights.findIndex((weight) => (rest -= weight) < 0);
  const at = found < 0 ? weights.length - 1 : found;
  return { board, fault: table.faults[at] as BoardFault, symptoms: table.symptoms[at] as readonly Symptom[] };
}

/** Highest number that a hidden fault may have, so that it can be said aloud in a class. */
export const MOST_FAULT_NUMBER = 9999;

/** Fractional part of the golden ratio: its multiples, less their whole part, fall evenly and far from the one before. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * The fault with a number, the same for everybody: drawn by the usual frequencies, so that over many numbers each fault
 * comes as often as those say. @throws when the number is not whole or out of bounds.
 */
export function hideNumberedFault(board: BenchBoard, number: number): HiddenFault {
  if (!Number.isInteger(number) || number < 1 || number > MOST_FAULT_NUMBER)
    throw new Error(`hidden fault: number must be whole, from 1 to ${MOST_FAULT_NUMBER}, got ${number}`);
  return hideFault(board, (number * GOLDEN) % 1);
}

/** The fault of a name, the first where it has several forms. @throws when the board has none of that name. */
export function hideNamedFault(board: BenchBoard, name: string): HiddenFault {
  const { faults, symptoms } = benchTable(board);
  const at = faults.findIndex((fault) => faultName(fault) === name);
  if (at < 0) throw new Error(`hidden fault: a '${board}' has no fault '${name}'`);
  return { board, fault: faults[at] as BoardFault, symptoms: symptoms[at] as readonly Symptom[] };
}

/** What an observation shows on a board with a hidden fault. @throws when the board has no such observation. */
export function observe({ board, fault }: HiddenFault, id: string): Seen {
  const table = benchTable(board);
  const at = table.observations.findIndex((one) => one.id === id);
  if (at < 0) throw new Error(`hidden fault: a '${board}' has no observation '${id}'`);
  return { id, seen: table.seen[at]?.[table.faults.findIndex((one) => sameFault(one, fault))] ?? '' };
}

function sameFault(a: BoardFault, b: BoardFault): boolean {
  return a.kind === b.kind && a.place === b.place && a.variant === b.variant;
}

/** How a name given to a hidden fault is graded. `fewest` is an expectation over the faults that the symptoms leave. */
export interface FaultGrade {
  readonly right: boolean;
  readonly proved: boolean;
  readonly taken: number;
  readonly fewest: number;
  readonly sentence: string;
}

/** Grade a name (kind and place) after some observations; a name that reads alike everywhere counts as right. */
export function gradeFault(
  hidden: HiddenFault,
  named: Pick<BoardFault, 'kind' | 'place'>,
  made: readonly Seen[],
  frequencies: Frequencies = USUAL_FREQUENCIES,
): FaultGrade {
  const table = benchTable(hidden.board);
  const suspects = weigh(table, frequencies);
  const start = suspectsLeft(table, hidden.symptoms, []);
  const truth = table.faults.findIndex((one) => sameFault(one, hidden.fault));
  const group = alikeNames(suspects, [truth, ...start]).find(
    (names) => names.includes(faultName(hidden.fault)) && sameRow(names, table, truth),
  );
  const right = faultName(named) === faultName(hidden.fault) || (group?.includes(faultName(named)) ?? false);
  const left = new Set(suspectsLeft(table, hidden.symptoms, made).map((at) => suspects.names[at]));
  const proved =
    right && [...left].every((name) => name === faultName(hidden.fault) || group?.includes(name ?? ''));
  const fewest = fewestFrom(hidden, frequencies, suspects, start);
  const counts = `You took ${made.length}; the best way takes ${fewest.toFixed(1)} on average over the faults that these symptoms leave.`;
  const sentence = !right
    ? `Not this one. It was: ${sayBoardFault(hidden.fault)}.`
    : proved
      ? `Right, and settled. ${counts}`
      : `Right, but not settled: ${left.size} faults still fitted. ${counts}`;
  return { right, proved, taken: made.length, fewest, sentence };
}

const FEWEST = new WeakMap<Frequencies, Map<string, number>>();

/** The fewest observations from what the symptoms leave: the same for every fault that shows them, so worked out once. */
function fewestFrom(
  { board, symptoms }: HiddenFault,
  frequencies: Frequencies,
  suspects: Suspects,
  start: readonly number[],
): number {
  const known = FEWEST.get(frequencies) ?? new Map<string, number>();
  FEWEST.set(frequencies, known);
  const which = `${board}: ${symptoms.join()}`;
  const fewest = known.get(which) ?? fewestExpected(suspects, start);
  known.set(which, fewest);
  return fewest;
}

/** Whether a group of names holds one that answers as the hidden fault does everywhere. */
function sameRow(names: readonly string[], table: BenchTable, truth: number): boolean {
  return names.every((name) =>
    table.faults.some(
      (fault, at) => faultName(fault) === name && table.answers.every((row) => row[at] === row[truth]),
    ),
  );
}
