/** Where every kind of task stands, worked out from the attempts. No more of them are solved again than that takes. */
import { remembered } from './chance.ts';
import { gradeAnswer } from './grade.ts';
import type { Attempt, LearnRecord } from './record.ts';
import { LEVELS } from './task.ts';
import { readTaskId } from './task-id.ts';
import type { TaskKind } from './task.ts';
import { TASKS_BY_LESSON, makeTask } from './tasks.ts';

/** Days until a kind comes back after one, two, three and more right answers in a row; a miss begins again with the first. */
const WAITS = [1, 3, 7, 21] as const;

/** Unaided right answers on so many different days make a kind known. */
const DAYS_TO_KNOW = 2;

/** Unaided right answers are counted as far as they raise the level. */
const MOST_UNAIDED = LEVELS.length - 1;

/** Where a kind of task stands. */
export interface Standing {
  readonly kind: string;
  readonly lesson: string;
  /** Attempts at it, first answers only. */
  readonly tried: number;
  /** Right at the first answer without a hint: so often, or the most that is counted, one less than there are levels. */
  readonly unaided: number;
  /** Whether any answer to it was right. */
  readonly done: boolean;
  readonly known: boolean;
  /** Whether readers mark their own answers to it: all of it is then counted apart. */
  readonly selfMarked: boolean;
  /** Day on which it comes back; undefined while it was never tried. */
  readonly due: number | undefined;
}

/** Whether an answer to a task is right. */
const isRightAnswer = remembered((task: string, answer: string): boolean => {
  const id = readTaskId(task);
  const made = typeof id === 'string' ? id : makeTask(id);
  return typeof made !== 'string' && gradeAnswer(made, answer).right;
});
const isRight = ({ task, answer }: Attempt): boolean => isRightAnswer(task, answer);

/** Where every kind of task stands by what was done. */
export function standings({ attempts }: LearnRecord): readonly Standing[] {
  const byKind = Map.groupBy(attempts, ({ task }) => task.slice(0, task.indexOf('.')));
  return Object.entries(TASKS_BY_LESSON).flatMap(([lesson, kinds]) =>
    kinds.map((one) => standingOf(one, lesson, byKind.get(one.kind) ?? [])),
  );
}

/**
 * The first answer to a task decides; a second one after a miss counts as done, not as unaided. The newest are solved first, and
 * only as long as one of them can still change what is said.
 */
function standingOf(
  { kind, selfMarked = false }: TaskKind,
  lesson: string,
  attempts: readonly Attempt[],
): Standing {
  const seen = new Set<string>();
  const firsts = attempts.filter(({ task }) => !seen.has(task) && seen.add(task)).toReversed();
  const days = new Set<number>();
  let row = 0;
  let inRow = true;
  let unaided = 0;
  for (const attempt of firsts) {
    const counts = attempt.hints === 0 && (unaided < MOST_UNAIDED || days.size < DAYS_TO_KNOW);
    if (!counts && !inRow) continue;
    const right = isRight(attempt);
    inRow &&= right;
    if (!right || attempt.hints > 0) continue;
    unaided = Math.min(unaided + 1, MOST_UNAIDED);
    days.add(attempt.day);
    if (inRow) row += 1;
    inRow &&= row < WAITS.length;
  }
  const wait = WAITS[Math.max(row, 1) - 1] ?? 1;
  return {
    kind,
    lesson,
    tried: firsts.length,
    unaided,
    done: unaided > 0 || attempts.findLast(isRight) !== undefined,
    known: days.size >= DAYS_TO_KNOW,
    selfMarked,
    due: firsts.length === 0 ? undefined : Math.max(...firsts.map(({ day }) => day)) + wait,
  };
}
