/** Rounds of the fault page in the record: each name that was given to a numbered fault is an attempt, graded anew from what it holds. */
import {
  BENCH_BOARDS,
  MOST_FAULT_NUMBER,
  benchTable,
  faultName,
  gradeFault,
  hideNumberedFault,
  observe,
} from '../../faults/index.ts';
import type { BenchBoard } from '../../faults/index.ts';
import type { Attempt, LearnRecord } from './record.ts';
import { LEVELS } from './task.ts';
import { readTaskId, writeTaskId } from './task-id.ts';

/** Its kind in the record. It is no kind of task: its board is done on the fault page alone. */
const KIND = 'find-fault';

/** Level of the first board; that of the other is one higher. */
const FIRST_LEVEL = 2;

/** Between the name and the checks, and between two checks. */
const [NAME_END, CHECK_END] = [' | ', ', '];

/** A round that ended with a name: the board, the number of the fault, the name ('lead 1: open'), and the checks made, by identifier. */
interface NamedRound {
  readonly board: BenchBoard;
  readonly number: number;
  readonly named: string;
  readonly made: readonly string[];
}

/** A round as an attempt; `day` as in any attempt. */
export function attemptOfRound({ board, number, named, made }: NamedRound, day: number): Attempt {
  const level = LEVELS[FIRST_LEVEL + BENCH_BOARDS.indexOf(board)] ?? FIRST_LEVEL;
  return {
    task: writeTaskId({ kind: KIND, level, seed: number }),
    answer: named + NAME_END + made.join(CHECK_END),
    hints: 0,
    day,
  };
}

/** Whether an attempt is a round. */
export function isRound({ task }: Attempt): boolean {
  return task.startsWith(`${KIND}.`);
}

/** How often the faults of a board were named: `found` rightly at the first name, `settled` of these once one fault alone was left. */
interface RoundsOnBoard {
  readonly board: BenchBoard;
  readonly tried: number;
  readonly found: number;
  readonly settled: number;
}

/** The rounds of a record, by board; boards that were not tried are left out, and so is what holds no round. */
export function roundsIn({ attempts }: LearnRecord): readonly RoundsOnBoard[] {
  const named = attempts.flatMap((attempt) => {
    const round = roundOf(attempt);
    return round ? [[attempt.task, round] as const] : [];
  });
  // The last of one fault would stand in a map: turned round, it is the first.
  const firsts = [...new Map(named.toReversed()).values()];
  return BENCH_BOARDS.map((board) => {
    const grades = firsts.filter((round) => round.board === board).map(gradeRound);
    const [found, settled] = [grades.filter(({ right }) => right), grades.filter(({ proved }) => proved)];
    return { board, tried: grades.length, found: found.length, settled: settled.length };
  }).filter(({ tried }) => tried > 0);
}

function roundOf({ task, answer }: Attempt): NamedRound | undefined {
  const id = readTaskId(task);
  if (typeof id === 'string' || id.kind !== KIND) return undefined;
  const board = BENCH_BOARDS[id.level - FIRST_LEVEL];
  const [named = '', checks = ''] = answer.split(NAME_END);
  if (board === undefined || id.seed < 1 || id.seed > MOST_FAULT_NUMBER) return undefined;
  const made = checks.split(CHECK_END).filter((one) => one !== '');
  const { faults, observations } = benchTable(board);
  const whole =
    faults.some((one) => faultName(one) === named) &&
    made.every((one) => observations.some(({ id: known }) => known === one));
  return whole ? { board, number: id.seed, named, made } : undefined;
}

function gradeRound({ board, number, named, made }: NamedRound): ReturnType<typeof gradeFault> {
  const hidden = hideNumberedFault(board, number);
  const fault = benchTable(board).faults.find((one) => faultName(one) === named) ?? hidden.fault;
  return gradeFault(
    hidden,
    fault,
    made.map((one) => observe(hidden, one)),
  );
}
