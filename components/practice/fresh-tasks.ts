/** Tasks drawn when they are asked for, by a seed that no one has chosen. */
import { TASKS_BY_LESSON, tasksOfLesson } from '../../src/core/learn/index.ts';
import type { TaskId } from '../../src/core/learn/index.ts';
import { freshSeed } from '../keep/stored-record.ts';

/** Tasks at the end of a lesson, by a fresh seed. */
export function freshTasksOf(lesson: string): readonly TaskId[] {
  return tasksOfLesson(lesson, freshSeed());
}

/** A task of the kind that a broken address still names, with a worked example first; undefined where it names none. */
export function freshTaskFor(named: string): { readonly id: TaskId; readonly title: string } | undefined {
  const [name] = named.trim().toLowerCase().split('.');
  const found = Object.values(TASKS_BY_LESSON)
    .flat()
    .find(({ kind }) => kind === name);
  return found && { id: { kind: found.kind, level: 0, seed: freshSeed() }, title: found.title };
}
