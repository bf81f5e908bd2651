/** Which tasks come next: at the end of a lesson, and in practice. */
import { MOST_SEED, chanceOf } from './chance.ts';
import { standings, type LearnRecord, type Standing } from './record.ts';
import { LEVELS, type Level, type TaskId } from './task.ts';
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

/** What practice is asked for: lessons by name, or what is due. */
export type Wanted = readonly string[] | 'due';

/**
 * Tasks to practise, at most `count`: what is due first and then what was tried least, kinds mixed, each at the level that
 * its unaided right answers have reached. `today` is a day as in an attempt. Empty where nothing is due.
 */
export function tasksToPractise(
  record: LearnRecord,
  wanted: Wanted,
  today: number,
  count: number,
  seed: number,
): readonly TaskId[] {
  const all = standings(record);
  const chosen =
    wanted === 'due'
      ? all.filter((one) => isDue(one, today))
      : all.filter(({ lesson }) => wanted.includes(lesson));
  const mixed = chanceOf(seed).shuffled(chosen);
  const order = mixed.toSorted(
    (a, b) => Number(isDue(b, today)) - Number(isDue(a, today)) || a.tried - b.tried,
  );
  const rounds = order.length === 0 ? 0 : wanted === 'due' ? 1 : Math.ceil(count / order.length);
  return Array.from({ length: rounds }, () => order)
    .flat()
    .slice(0, count)
    .map(({ kind, unaided }, at) => ({ kind, level: levelAfter(unaided), seed: seedAfter(seed, at) }));
}

/** Whether a kind is due on a day. */
export function isDue({ due }: Standing, today: number): boolean {
  return due !== undefined && due <= today;
}

/** The level after so many unaided right answers: each takes a little away that was given. */
function levelAfter(unaided: number): Level {
  return LEVELS[Math.min(unaided, LEVELS.length - 1)] ?? 0;
}

/** Another task of the same kind. */
export function anotherLike({ kind, level, seed }: TaskId): TaskId {
  return { kind, level, seed: seedAfter(seed, 1) };
}

function seedAfter(seed: number, steps: number): number {
  return (seed + steps) % (MOST_SEED + 1);
}
