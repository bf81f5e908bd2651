/** Which tasks stand at the end of a lesson. */
import { chanceOf, seedAfter } from './chance.ts';
import { LEVELS, type TaskId } from './task.ts';
import { TASKS_BY_LESSON } from './tasks.ts';

/** Kinds from earlier lessons that the end of a lesson mixes in. */
const FROM_EARLIER = 2;

/** Tasks at the end of a lesson: two of each of the first three levels, and two from earlier lessons, by a seed. */
export function tasksOfLesson(lesson: string, seed: number): readonly TaskId[] {
  const chance = chanceOf(seed);
  const own = (TASKS_BY_LESSON[lesson] ?? []).map(({ kind }, at): TaskId => ({
    kind,
    level: LEVELS[Math.floor(at / 2)] ?? 2,
    seed: seedAfter(seed, at),
  }));
  const names = Object.keys(TASKS_BY_LESSON);
  const earlier = names
    .slice(0, Math.max(0, names.indexOf(lesson)))
    .flatMap((name) => TASKS_BY_LESSON[name] ?? []);
  const mixed = chance
    .shuffled(earlier)
    .slice(0, FROM_EARLIER)
    .map(({ kind }, at): TaskId => ({ kind, level: 2, seed: seedAfter(seed, own.length + at) }));
  return [...own, ...mixed];
}

/** Another task of the same kind. */
export function anotherLike({ kind, level, seed }: TaskId): TaskId {
  return { kind, level, seed: seedAfter(seed, 1) };
}
