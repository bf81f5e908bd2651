/** A class: how long a teacher waits for thirty worksheets with their key, and for the marks of two hundred results. */
import { markResults, papersOf } from '../../src/core/class/index.ts';
import type { WorkSet } from '../../src/core/class/index.ts';
import { TASKS_BY_LESSON } from '../../src/core/learn/index.ts';
import { CLASS_SET, resultOf } from '../support/classroom.ts';
import type { Figure } from './figures.ts';

/** Students of a class, tasks of a worksheet, and results marked in one go. */
const STUDENTS = 30;
const TASKS = 20;
const RESULTS = 200;
/** Longest that a teacher waits, milliseconds (our own limits). */
const LIMIT_MILLISECONDS = 2000;

/** Twenty tasks of as many kinds, different ones for each student, leads to be laid among them. */
const KINDS = [
  ...new Set(['lay-lead', ...Object.values(TASKS_BY_LESSON).flatMap((list) => list.map(({ kind }) => kind))]),
];
const LONG_SET: WorkSet = {
  ...CLASS_SET,
  items: KINDS.slice(0, TASKS).map((kind) => ({ kind, level: 3, count: 1 })),
};

/** Wrong answers turn up at every third task. */
const EVERY = 3;

/** Time that some work takes on the processor, milliseconds: what else the machine does is not counted. */
function cpuMilliseconds(work: () => void): number {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
}

/** The times of papers and marks, nothing known before. */
export async function figures(): Promise<readonly Figure[]> {
  const papers = cpuMilliseconds(() => papersOf(LONG_SET, STUDENTS));
  const results = Array.from({ length: RESULTS }, (_, at) =>
    resultOf(LONG_SET, at + 1, (task, place) =>
      (at + place) % EVERY === 0 ? task.slips[0]?.answer : undefined,
    ),
  );
  const inputs = results.map(
    (value, at) => ({ source: `file ${at}`, reading: { ok: true, value } }) as const,
  );
  const marks = cpuMilliseconds(() => {
    if (markResults(inputs).sets[0]?.students !== RESULTS)
      throw new Error(`class: needs ${RESULTS} results in one Set`);
  });
  return [
    {
      name: `${STUDENTS} worksheets of ${TASKS} tasks with their key`,
      value: papers,
      unit: 'ms',
      atMost: LIMIT_MILLISECONDS,
    },
    {
      name: `${RESULTS} results of ${TASKS} tasks marked`,
      value: marks,
      unit: 'ms',
      atMost: LIMIT_MILLISECONDS,
    },
  ];
}
