/** Bounds and choices of a Set, apart from its reader, so that a page can offer them before it knows the tasks. */
import { PLAN_LIMITS } from '../plan/index.ts';

/** When a student is told whether an answer is right: after each, when all is handed in, or not at all. */
export const SHOWS = ['each', 'end', 'never'] as const;

/** How the tasks of a Set are drawn: by turns, as the first Sets were, or mixed, so that no answer tells another. */
export const DRAWS = ['turns', 'mixed'] as const;

/**
 * Bounds of a Set and its results (our choices): characters of a title and a name, kinds, tasks of one kind, tasks in all, the
 * highest number in a class list, and characters of a file: forty answers take 4000, so that it holds the work of 500 students.
 */
export const CLASS_LIMITS = {
  title: 60,
  name: 60,
  items: 40,
  count: 20,
  tasks: 40,
  number: PLAN_LIMITS.student,
  file: 2_000_000,
} as const;
