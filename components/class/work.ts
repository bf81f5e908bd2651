/** A student's work on a Set, step by step: begun, answered, and how far it is. */
import { markResults, tasksOfSet } from '../../src/core/class/index.ts';
import type { MarkedTask, Result, WorkSet } from '../../src/core/class/index.ts';
import { writeTaskId } from '../../src/core/learn/index.ts';

/** Work with nothing answered yet. `number` is that of the class list; `name` may be empty. */
export function newWork(set: WorkSet, number: number, name: string): Result {
  return { format: 'five-milliamps-result', version: 1, set, number, name, attempts: [] };
}

/** The work with an attempt more; where answers are not told, it takes the place of the one before it at the same task. */
export function withAnswer(work: Result, attempt: Result['attempts'][number]): Result {
  const others =
    work.set.show === 'each' ? work.attempts : work.attempts.filter(({ task }) => task !== attempt.task);
  return { ...work, attempts: [...others, attempt] };
}

/** The names of the tasks that have an answer. */
export function answeredIn({ attempts }: Result): ReadonlySet<string> {
  return new Set(attempts.map(({ task }) => task));
}

/** The place of the first task without an answer; behind the last where there is none. */
export function nextOpen(work: Result): number {
  const done = answeredIn(work);
  const all = tasksOfSet(work.set, work.number);
  const open = all.findIndex((one) => !done.has(writeTaskId(one)));
  return open < 0 ? all.length : open;
}

/** Every task of the work, solved again and marked. */
export function marksOf(work: Result): readonly MarkedTask[] {
  const [row] = markResults([{ source: '', reading: { ok: true, value: work } }]).rows;
  return row && 'tasks' in row ? row.tasks : [];
}
