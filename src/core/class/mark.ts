/** Marking: everything that was handed in is solved again. No score is taken from anyone, and an answer to a changed task is never right. */
import { gradeAnswer, makeTask, readTaskId, writeTaskId } from '../learn/index.ts';
import type { Grading, Task } from '../learn/index.ts';
import { sayProblem } from '../plan/index.ts';
import type { Result } from './result.ts';
import type { HandedIn } from './taken.ts';
import { tasksOfSet } from './work-set.ts';

/**
 * How a task stands: right at the first answer without a hint; right with a hint or at a later answer; marked by the student, since no
 * machine can; wrong; not answered; answered to a task that is not the student's.
 */
export const MARKS = ['right', 'helped', 'self', 'wrong', 'none', 'changed'] as const;
/** How a task stands. */
export type Mark = (typeof MARKS)[number];

/** A wrong answer: the known mistake, or none that is known, and what is said to it. */
interface Miss {
  readonly mistake: string | undefined;
  readonly sentence: string;
}

/** One task of one student. `answer` is the right one, or else the last that was given: one that cannot be read where none can. */
export interface MarkedTask {
  readonly task: Task;
  readonly mark: Mark;
  readonly answer: string | undefined;
  /** Each wrong answer that was given, in order. */
  readonly misses: readonly Miss[];
}

/** A result as it was marked. `strange` are answers to tasks that are not in the Set for this number. */
export interface MarkedResult {
  readonly source: string;
  readonly result: Result;
  readonly tasks: readonly MarkedTask[];
  readonly strange: readonly string[];
}

/** Something that was handed in and cannot be marked, and why. */
export interface Refused {
  readonly source: string;
  readonly problem: string;
}

/** Problems that a refusal names. */
const PROBLEMS_NAMED = 2;

/** Makes tasks and grades answers, each once for all that ask. */
export interface Marker {
  /** A task by its written identity; undefined where there is no such task. */
  readonly task: (written: string) => Task | undefined;
  readonly grade: (written: string, task: Task, answer: string) => Grading;
}

/** A marker that knows nothing yet. */
export function makeMarker(): Marker {
  const tasks = new Map<string, Task | undefined>();
  const gradings = new Map<string, Grading>();
  return {
    task: (written) => {
      if (!tasks.has(written)) {
        const id = readTaskId(written);
        const made = typeof id === 'string' ? id : makeTask(id);
        tasks.set(written, typeof made === 'string' ? undefined : made);
      }
      return tasks.get(written);
    },
    grade: (written, task, answer) => {
      const key = `${written} ${answer}`;
      const grading = gradings.get(key) ?? gradeAnswer(task, answer);
      gradings.set(key, grading);
      return grading;
    },
  };
}

/** Mark one thing that was handed in. */
export function markOne({ source, reading }: HandedIn, marker: Marker): MarkedResult | Refused {
  if (!reading.ok) {
    const named = reading.problems.slice(0, PROBLEMS_NAMED).map(sayProblem);
    const more = reading.problems.length - named.length;
    return { source, problem: `${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}` };
  }
  const result = reading.value;
  const expected = tasksOfSet(result.set, result.number).map(writeTaskId);
  const strange = result.attempts.filter(({ task }) => !expected.includes(canonical(task)));
  const left = [...strange];
  const tasks = expected.map((written) => {
    const task = marker.task(written);
    if (!task) throw new Error(`set: its reader lets no kind pass that does not exist, got '${written}'`);
    const own = result.attempts.filter((one) => canonical(one.task) === written);
    if (own.length > 0) return markTask(written, task, own, marker);
    const at = left.findIndex((one) => one.task.startsWith(`${task.id.kind}.`));
    const [other] = at >= 0 ? left.splice(at, 1) : [];
    return other
      ? { task, mark: 'changed' as const, answer: other.answer, misses: [] }
      : { task, mark: 'none' as const, answer: undefined, misses: [] };
  });
  return { source, result, tasks, strange: strange.map(({ task }) => canonical(task)) };
}

/** A task in its one way of writing. */
function canonical(written: string): string {
  const id = readTaskId(written);
  return typeof id === 'string' ? written : writeTaskId(id);
}

function markTask(written: string, task: Task, attempts: Result['attempts'], marker: Marker): MarkedTask {
  const graded = attempts
    .map((attempt) => ({ ...attempt, grading: marker.grade(written, task, attempt.answer) }))
    .filter(({ grading }) => grading.readable);
  const misses = graded
    .filter(({ grading }) => !grading.right)
    .map(({ grading: { mistake, sentence } }) => ({ mistake, sentence }));
  const right = graded.find(({ grading }) => grading.right);
  const last = right ?? graded.at(-1);
  if (last?.grading.selfMarked) return { task, mark: 'self', answer: last.answer, misses: [] };
  const mark =
    last === undefined
      ? 'none'
      : !right
        ? 'wrong'
        : right === graded[0] && right.hints === 0
          ? 'right'
          : 'helped';
  return { task, mark, answer: (last ?? attempts.at(-1))?.answer, misses };
}
