/** The fault bench: hide a fault by seed, show symptoms, answer observations, grade a name; and the guide 'nothing arrives'. */
import { boardFaults, faultName, sayBoardFault, withBoardFault } from './board-faults.ts';
import type { BenchBoard, BoardFault, BoardFaultKind } from './board-faults.ts';
import { observationsOf } from './board-observations.ts';
import type { Observation } from './board-observations.ts';
import { symptomsOf } from './board-symptoms.ts';
import type { Symptom } from './board-symptoms.ts';
import { alikeNames, bitsOfObservation, fewestExpected } from './decision.ts';
import type { Suspects } from './decision.ts';
import { sayReading } from '../readings/index.ts';
import type { Reading } from '../readings/index.ts';
import { noiseVolts } from '../readings/index.ts';

/** How often each fault is met, relative to the others. Invented; a teacher may change them. */
export type Frequencies = Readonly<Record<BoardFaultKind, number>>;

/** Said wherever the frequencies are shown. */
export const FREQUENCIES_ARE_INVENTED =
  'How often each fault is met is invented for practice; change it to what you meet.';

/** The frequencies of the workbook, invented. */
export const USUAL_FREQUENCIES: Frequencies = {
  open: 6,
  short: 2,
  swapped: 4,
  mirrored: 3,
  'ts-lead': 5,
  'cold-joint': 5,
  'wrong-style': 5,
  'outlet-set-wrong': 5,
  'out-into-out': 6,
  'dead-thru': 1,
  'soft-thru-off': 5,
  'supply-off': 4,
  'wrong-channel': 8,
  'program-off-by-one': 6,
  'bank-missing': 4,
  'message-filtered': 3,
  'not-listening': 4,
};

/** A board whose every fault was put in once, and everything observed on each: made once for each kind of board. */
export interface BenchTable {
  readonly board: BenchBoard;
  readonly faults: readonly BoardFault[];
  readonly symptoms: readonly (readonly Symptom[])[];
  readonly observations: readonly Observation[];
  /** What is seen, in words, by observation and fault. */
  readonly seen: readonly (readonly string[])[];
  readonly answers: readonly (readonly number[])[];
  /** What is seen with nothing wrong, by observation. */
  readonly good: readonly string[];
}

const TABLES = new Map<BenchBoard, BenchTable>();

/** The table of a board. */
export function benchTable(board: BenchBoard): BenchTable {
  const known = TABLES.get(board);
  if (known) return known;
  const faults = boardFaults(board);
  const states = faults.map((fault) => withBoardFault(board, fault));
  const observations = observationsOf(board);
  const rows = observations.map(({ see }) => {
    const all = [...states, withBoardFault(board, undefined)].map(see);
    return asShown(all);
  });
  const made: BenchTable = {
    board,
    faults,
    symptoms: states.map(symptomsOf),
    observations,
    seen: rows.map((row) => row.slice(0, -1)),
    answers: rows.map((row) => {
      const words = [...new Set(row)];
      return row.slice(0, -1).map((one) => words.indexOf(one));
    }),
    good: rows.map((row) => row.at(-1) ?? ''),
  };
  TABLES.set(board, made);
  return made;
}

/** Readings nearer than this many uncertainties count as the same. */
const SAME_STEPS = 3;

/** What is seen, in words; readings that a meter cannot tell apart get the same words. */
function asShown(all: readonly (string | Reading)[]): readonly string[] {
  const values = all
    .flatMap((one) => (typeof one !== 'string' && one.shows === 'value' ? [one.value] : []))
    .sort((a, b) => a - b);
  const middles: number[] = [];
  let group: number[] = [];
  values.forEach((value, at) => {
    const before = values[at - 1];
    if (before !== undefined && value - before > SAME_STEPS * noiseVolts(value)) {
      middles.push(group[group.length >> 1] as number);
      group = [];
    }
    group.push(value);
  });
  if (group.length > 0) middles.push(group[group.length >> 1] as number);
  return all.map((one) => {
    if (typeof one === 'string') return one;
    if (one.shows !== 'value') return sayReading(one);
    const nearest = middles.reduce((best, middle) =>
      Math.abs(middle - one.value) < Math.abs(best - one.value) ? middle : best,
    );
    return sayReading({ ...one, value: nearest });
  });
}

/** An observation that was made, by its identifier, and what was seen. */
export interface Seen {
  readonly id: string;
  readonly seen: string;
}

/** The faults that symptoms and observations leave, by number in the table. Unknown symptoms (undefined) leave all. */
export function suspectsLeft(
  table: BenchTable,
  symptoms: readonly Symptom[] | undefined,
  made: readonly Seen[],
): readonly number[] {
  return [...table.faults.keys()].filter(
    (fault) =>
      (symptoms === undefined || table.symptoms[fault]?.join() === symptoms.join()) &&
      made.every(
        ({ id, seen }) => table.seen[table.observations.findIndex((one) => one.id === id)]?.[fault] === seen,
      ),
  );
}

/** Suspects of a table, weighed by frequencies; variants share the frequency of their kind. */
export function weigh(table: BenchTable, frequencies: Frequencies): Suspects {
  return {
    names: table.faults.map(faultName),
    weights: table.faults.map((fault) => {
      const variants = table.faults.filter((one) => faultName(one) === faultName(fault)).length;
      return Math.max(frequencies[fault.kind], 1e-6) / variants;
    }),
    answers: table.answers,
  };
}

/** The next observation, and how likely each name is now. */
export interface GuideStep {
  readonly observation: Observation | undefined;
  readonly bits: number;
  readonly words: string;
  readonly suspects: readonly {
    readonly name: string;
    readonly words: string;
    readonly probability: number;
  }[];
}

/**
 * The guide: the most telling observation among those not made, easier ones first where they tell as much. What is
 * `skipped`, by identifier, cannot be observed and is not asked for.
 */
export function guide(
  board: BenchBoard,
  symptoms: readonly Symptom[] | undefined,
  made: readonly Seen[],
  frequencies: Frequencies = USUAL_FREQUENCIES,
  skipped: readonly string[] = [],
): GuideStep {
  const table = benchTable(board);
  const left = suspectsLeft(table, symptoms, made);
  const suspects = weigh(table, frequencies);
  const ranked = table.observations
    .map((observation, at) => ({ observation, bits: bitsOfObservation(suspects, left, at) }))
    .filter(({ observation: { id } }) => !skipped.includes(id) && !made.some((one) => one.id === id))
    .sort((a, b) => b.bits - 0.001 * b.observation.effort - (a.bits - 0.001 * a.observation.effort));
  const best = ranked[0] && ranked[0].bits > 1e-9 ? ranked[0] : undefined;
  const named = namesOf(table, suspects, left);
  return {
    observation: best?.observation,
    bits: best?.bits ?? 0,
    words: sayStep(best?.observation, named),
    suspects: named,
  };
}

function namesOf(table: BenchTable, suspects: Suspects, left: readonly number[]): GuideStep['suspects'] {
  const total = left.reduce((sum, at) => sum + (suspects.weights[at] as number), 0);
  const names = new Map<string, { words: string; probability: number }>();
  for (const at of left) {
    const name = suspects.names[at] as string;
    const known = names.get(name) ?? { words: sayBoardFault(table.faults[at] as BoardFault), probability: 0 };
    known.probability += (suspects.weights[at] as number) / total;
    names.set(name, known);
  }
  return [...names].map(([name, one]) => ({ name, ...one })).sort((a, b) => b.probability - a.probability);
}

function sayStep(observation: Observation | undefined, named: GuideStep['suspects']): string {
  if (named.length === 0)
    return 'No single fault of this board shows all of that. Look again, from the start.';
  if (named.length === 1) return `Only one fault is left. ${named[0]?.words ?? ''}.`;
  if (!observation)
    return `Nothing more can tell these apart: ${named.map(({ words }) => words).join('; ')}. Open the plug and look.`;
  return `${named.length} faults are left. ${observation.words}`;
}

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
    throw new Error(`fault bench: number must be whole, from 1 to ${MOST_FAULT_NUMBER}, got ${number}`);
  return hideFault(board, (number * GOLDEN) % 1);
}

/** What an observation shows on a board with a hidden fault. @throws when the board has no such observation. */
export function observe({ board, fault }: HiddenFault, id: string): Seen {
  const table = benchTable(board);
  const at = table.observations.findIndex((one) => one.id === id);
  if (at < 0) throw new Error(`fault bench: a '${board}' has no observation '${id}'`);
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
  const fewest = fewestExpected(suspects, start);
  const counts = `You took ${made.length}; the best way takes ${fewest.toFixed(1)} on average over the faults that these symptoms leave.`;
  const sentence = !right
    ? `Not this one. It was: ${sayBoardFault(hidden.fault)}.`
    : proved
      ? `Right, and proved. ${counts}`
      : `Right, but not proved: ${left.size} faults still fitted. ${counts}`;
  return { right, proved, taken: made.length, fewest, sentence };
}

/** Whether a group of names holds one that answers as the hidden fault does everywhere. */
function sameRow(names: readonly string[], table: BenchTable, truth: number): boolean {
  return names.every((name) =>
    table.faults.some(
      (fault, at) => faultName(fault) === name && table.answers.every((row) => row[at] === row[truth]),
    ),
  );
}
