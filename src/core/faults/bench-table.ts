/** The table of the fault bench: every fault of a board with what it shows, and the suspects that symptoms and observations leave. */
import { noiseVolts, sayReading } from '../readings/index.ts';
import type { Reading } from '../readings/index.ts';
import { boardFaults, faultName, isTaught } from './board-faults.ts';
import type { BenchBoard, BoardFault, BoardFaultKind } from './board-faults.ts';
import { observationsOf } from './board-observations.ts';
import type { Observation } from './observation.ts';
import { withBoardFault } from './board-changes.ts';
import { symptomsOf } from './board-symptoms.ts';
import type { Symptom } from './board-symptoms.ts';
import type { Suspects } from './decision.ts';

/** How often each fault is met, relative to the others. Invented; a teacher may change them. */
export type Frequencies = Readonly<Record<BoardFaultKind, number>>;

/** Said wherever the frequencies are shown. */
export const FREQUENCIES_ARE_INVENTED =
  'How often each fault happens is invented for practice; change it to what you meet.';

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
  'bad-joint': 2,
  'half-in': 4,
  'odd-jack': 1,
  'output-part': 1,
  'input-part': 1,
  'supply-low': 1,
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
const TAUGHT = new Map<BenchBoard, BenchTable>();

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

/** Observations that tell apart only what is left to the bench. */
const BENCH_LOOKS = /^(answers|home|moved|ohms) /;

/** The part of a board's table that lessons and tasks speak of. */
export function taughtTable(board: BenchBoard): BenchTable {
  const known = TAUGHT.get(board);
  if (known) return known;
  const table = benchTable(board);
  const kept = <Value>(row: readonly Value[]): readonly Value[] =>
    row.filter((_, at) => isTaught(table.faults[at] as BoardFault));
  const looked = <Value>(rows: readonly Value[]): readonly Value[] =>
    rows.filter((_, at) => !BENCH_LOOKS.test(table.observations[at]?.id ?? ''));
  const made: BenchTable = {
    board,
    faults: kept(table.faults),
    symptoms: kept(table.symptoms),
    observations: looked(table.observations),
    seen: looked(table.seen).map(kept),
    answers: looked(table.answers).map(kept),
    good: looked(table.good),
  };
  TAUGHT.set(board, made);
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
