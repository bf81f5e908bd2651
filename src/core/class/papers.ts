/** Work on paper: the worksheets of a Set and their key, as plain data to be printed. */
import { makeTask, writeTaskId } from '../learn/index.ts';
import type { Task } from '../learn/index.ts';
import { sayRight } from './say-answer.ts';
import { tasksOfSet } from './work-set.ts';
import type { WorkSet } from './work-set.ts';

/** One task on paper. `code` is the task as it is written, so that paper and key can be laid side by side. */
interface PaperTask {
  readonly code: string;
  readonly task: Task;
  /** Every right answer in words, the one that is worked out first. */
  readonly right: readonly string[];
}

/** One worksheet and its key. */
export interface Paper {
  /** Number of the student in the class list; undefined where all have the same. */
  readonly number: number | undefined;
  /** Letter of the version, so that neighbours see that theirs differ. */
  readonly version: string;
  readonly tasks: readonly PaperTask[];
}

const LETTERS = 26;

/** The version of a number: A to Z, then AA and on. */
export function versionLetter(number: number): string {
  const letter = String.fromCharCode('A'.charCodeAt(0) + ((number - 1) % LETTERS));
  const before = Math.floor((number - 1) / LETTERS);
  return before > 0 ? versionLetter(before) + letter : letter;
}

/** The worksheets for students number 1 to `students`, each with its key: one for all where the Set is the same for all. */
export function papersOf(set: WorkSet, students: number): readonly Paper[] {
  const numbers = set.perStudent ? Array.from({ length: students }, (_, at) => at + 1) : [undefined];
  return numbers.map((number) => ({
    number,
    version: versionLetter(number ?? 1),
    tasks: tasksOfSet(set, number ?? 1).map((id) => {
      const task = makeTask(id);
      if (typeof task === 'string') throw new Error(task);
      return { code: writeTaskId(id), task, right: sayRight(task) };
    }),
  }));
}
