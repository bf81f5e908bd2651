/** Tasks made from seeds and graded: how long a reader waits for the next one, and for a word on an answer. */
import { LEVELS, TASKS_BY_LESSON, gradeAnswer, makeTask } from '../../src/core/learn/index.ts';
import type { Figure } from './figures.ts';

/** Seeds tried for each kind and level. */
const SEEDS = 50;
/** Longest time for 95 of 100 tasks, milliseconds (our own limit). */
const LIMIT_MILLISECONDS = 20;

/** The times of making and grading tasks of every kind and level, each task made for the first time. */
export async function figures(): Promise<readonly Figure[]> {
  const times: number[] = [];
  for (const { kind } of Object.values(TASKS_BY_LESSON).flat())
    for (const level of LEVELS)
      for (let seed = 0; seed < SEEDS; seed += 1) {
        const start = performance.now();
        const task = makeTask({ kind, level, seed });
        if (typeof task === 'string') throw new Error(task);
        gradeAnswer(task, task.right);
        times.push(performance.now() - start);
      }
  times.sort((a, b) => a - b);
  return [
    {
      name: `a task made and graded, 95th percentile of ${times.length}`,
      value: times[Math.floor(times.length * 0.95)] ?? NaN,
      unit: 'ms',
      atMost: LIMIT_MILLISECONDS,
    },
  ];
}
