/** Tasks at the end of a lesson, drawn when they are asked for. */
import { tasksOfLesson } from '../../src/core/learn/index.ts';
import type { TaskId } from '../../src/core/learn/index.ts';
import { freshSeed } from './stored-record.ts';

/** Tasks at the end of a lesson, by a fresh seed. */
export function freshTasksOf(lesson: string): readonly TaskId[] {
  return tasksOfLesson(lesson, freshSeed());
}
