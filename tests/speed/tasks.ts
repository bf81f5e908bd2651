/** Tasks made from seeds and graded: how long a reader waits for the next one, for a word on an answer, and for what is due. */
import {
  LEVELS,
  NO_RECORD,
  TASKS_BY_LESSON,
  gradeAnswer,
  makeTask,
  standings,
  writeTaskId,
} from '../../src/core/learn/index.ts';
import type { Attempt } from '../../src/core/learn/index.ts';
import { seededRandom } from '../support/random.ts';
import type { Figure } from './figures.ts';

/** Seeds tried for each kind and level. */
const SEEDS = 50;
/** Longest time for 95 of 100 tasks, milliseconds (our own limit). */
const LIMIT_MILLISECONDS = 20;

/** Attempts of a long record: ten a day for a year and a half. */
const ATTEMPTS = 5000;
/** Answers of it that are right. */
const SHARE_RIGHT = 0.7;
/** Most of the time of grading every attempt that finding out what is due may take (our own limit). */
const LIMIT_SHARE = 0.2;

/** The time that it takes to find where a long record stands, as a share of the time to grade each of its attempts. */
function shareOfGrading(): number {
  const kinds = Object.values(TASKS_BY_LESSON).flat();
  const random = seededRandom(12);
  let grading = 0;
  const attempts = Array.from({ length: ATTEMPTS }, (_, at): Attempt => {
    const { kind } = random.pick(kinds);
    const start = performance.now();
    const task = makeTask({ kind, level: random.pick(LEVELS), seed: 1000 + at });
    if (typeof task === 'string') throw new Error(task);
    const answer = random.chance(SHARE_RIGHT) ? task.right : (task.slips[0]?.answer ?? '');
    gradeAnswer(task, answer);
    grading += performance.now() - start;
    return { task: writeTaskId(task.id), answer, hints: 0, day: 20_000 + Math.floor(at / 10) };
  });
  const start = performance.now();
  standings({ ...NO_RECORD, attempts });
  return (performance.now() - start) / grading;
}

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
    {
      name: `what is due in a record of ${ATTEMPTS} attempts, to grading each of them`,
      value: shareOfGrading(),
      unit: '',
      atMost: LIMIT_SHARE,
    },
  ];
}
