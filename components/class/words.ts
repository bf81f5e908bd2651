/** What the class pages call things. */
import { sayProblem } from '../../src/core/plan/index.ts';
import type { Level } from '../../src/core/learn/index.ts';
import type { Reading, WorkSet } from '../../src/core/class/index.ts';

/** A lesson with the kinds of tasks that it has. */
export interface LessonKinds {
  readonly name: string;
  readonly title: string;
  readonly kinds: readonly { readonly kind: string; readonly title: string }[];
}

/** What a level is called. */
export const LEVEL_WORDS: Readonly<Record<Level, string>> = {
  0: 'with a worked example',
  1: 'only the last step',
  2: 'on their own',
  3: 'hard, with traps',
};

/** When students are told whether they are right. */
export const SHOW_WORDS: Readonly<Record<WorkSet['show'], string>> = {
  each: 'after each task, with hints and a second try',
  end: 'when all is handed in',
  never: 'not at all: you tell them',
};

/** The same, said to a student. */
export const SHOW_TO_STUDENT: Readonly<Record<WorkSet['show'], string>> = {
  each: 'You see after each task whether it is right, and may try once more.',
  end: 'You see what was right when you have handed in.',
  never: 'Your teacher tells you what was right.',
};

/** Whether the end of an address holds a Set. */
export const holdsSet = (hash: string): boolean => hash.includes('#set=');

/** How many tasks of a Set there are. */
export const countTasks = ({ items }: Pick<WorkSet, 'items'>): number =>
  items.reduce((sum, { count }) => sum + count, 0);

/** What is wrong with a reading, in one line; empty where nothing is. */
export function sayWrong(reading: Reading<unknown>): string {
  return reading.ok ? '' : reading.problems.slice(0, 2).map(sayProblem).join('; ');
}
