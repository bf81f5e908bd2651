/** Which tasks come next in practice, by where the reader stands. */
import { chanceOf, seedAfter } from './chance.ts';
import type { Standing } from './standings.ts';
import { LEVELS, type Level, type TaskId } from './task.ts';

/** What practice is asked for: lessons by name, or what is due. */
export type Wanted = readonly string[] | 'due';

/**
 * Tasks to practise, at most `count`: what is due first and then what was tried least, kinds mixed, each at the level that
 * its unaided right answers have reached. `today` is a day as in an attempt. Empty where nothing is due.
 */
export function tasksToPractise(
  all: readonly Standing[],
  wanted: Wanted,
  today: number,
  count: number,
  seed: number,
): readonly TaskId[] {
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

/** Where a kind of task stands that was never tried. */
export function untried(kind: Pick<Standing, 'kind' | 'lesson' | 'selfMarked'>): Standing {
  return { ...kind, tried: 0, unaided: 0, done: false, known: false, due: undefined };
}

/** Whether a kind is due on a day. */
export function isDue({ due }: Standing, today: number): boolean {
  return due !== undefined && due <= today;
}

/** The level after so many unaided right answers: each takes a little away that was given. */
function levelAfter(unaided: number): Level {
  return LEVELS[Math.min(unaided, LEVELS.length - 1)] ?? 0;
}
