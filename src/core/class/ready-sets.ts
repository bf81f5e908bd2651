/** Sets of a lesson that need no choosing: to begin with, to practise, and to see at the end what is known. */
import { LEVELS, TASKS_BY_LESSON } from '../learn/index.ts';
import type { Level } from '../learn/index.ts';
import { CLASS_LIMITS } from './limits.ts';
import type { WorkSet } from './work-set.ts';

/** A recipe: what it is called, how many kinds at most, the level, tasks of each kind, and how it is done (our choices). */
interface Recipe extends Pick<WorkSet, 'perStudent' | 'show' | 'seed'> {
  readonly name: string;
  readonly kinds: number;
  readonly level: Level;
  readonly count: number;
}

const [, LAST_STEP, FREE, TRAPS] = LEVELS;

const RECIPES: readonly Recipe[] = [
  { name: 'to begin with', kinds: 3, level: LAST_STEP, count: 1, perStudent: false, show: 'each', seed: 1 },
  { name: 'practice', kinds: Infinity, level: FREE, count: 2, perStudent: true, show: 'each', seed: 2 },
  { name: 'test', kinds: Infinity, level: TRAPS, count: 1, perStudent: true, show: 'end', seed: 3 },
];

/** The ready Sets of a lesson, by its name in the address and its title; none for a lesson without tasks. */
export function readySets(lesson: string, title: string): readonly WorkSet[] {
  const all = TASKS_BY_LESSON[lesson] ?? [];
  if (all.length === 0) return [];
  return RECIPES.map(({ name, kinds, level, count, ...how }) => ({
    format: 'five-milliamps-set',
    version: 1,
    title: `${title.slice(0, CLASS_LIMITS.title - name.length - 2)}: ${name}`,
    items: all
      .slice(0, Math.min(kinds, Math.floor(CLASS_LIMITS.tasks / count)))
      .map(({ kind }) => ({ kind, level, count })),
    ...how,
    draw: 'mixed',
  }));
}
