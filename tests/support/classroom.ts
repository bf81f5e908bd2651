/** A made-up class of thirty that did one Set: who made which mistake is written down here, so that every count can be checked by hand. */
import { resultFileName, resultHash, tasksOfSet, writeResultText } from '../../src/core/class/index.ts';
import type { Result, WorkSet } from '../../src/core/class/index.ts';
import { makeTask, writeTaskId } from '../../src/core/learn/index.ts';
import type { Task } from '../../src/core/learn/index.ts';

/** Five tasks, other ones for each student. */
export const CLASS_SET: WorkSet = {
  format: 'five-milliamps-set',
  version: 1,
  title: 'Loop test',
  seed: 4711,
  perStudent: true,
  items: [
    { kind: 'lay-lead', level: 2, count: 2 },
    { kind: 'loop-current', level: 2, count: 2 },
    { kind: 'trace-to-hex', level: 2, count: 1 },
  ],
  show: 'never',
};

/** Day of every answer: the first of September 2026, in days since the first of January 1970. */
const DAY = 20_697;

/** The tasks of a student, made. */
function tasksFor(set: WorkSet, number: number): readonly Task[] {
  return tasksOfSet(set, number).map((id) => {
    const task = makeTask(id);
    if (typeof task === 'string') throw new Error(task);
    return task;
  });
}

/** A result with an answer to each task; `answer` gives it, the right one where it gives none. */
export function resultOf(
  set: WorkSet,
  number: number,
  answer: (task: Task, at: number) => string | undefined = () => undefined,
  name = '',
): Result {
  const attempts = tasksFor(set, number).map((task, at) => ({
    task: writeTaskId(task.id),
    answer: answer(task, at) ?? task.right,
    hints: 0,
    day: DAY,
  }));
  return { format: 'five-milliamps-result', version: 1, set, number, name, attempts };
}

/** Mistakes at the first task of their kind, and the students (numbers in the list) who make them. */
export const MISTAKES: readonly {
  readonly kind: string;
  readonly mistake: string;
  readonly students: readonly number[];
}[] = [
  { kind: 'lay-lead', mistake: 'pair swapped', students: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11] },
  { kind: 'loop-current', mistake: 'LED forgotten', students: [5, 6, 7, 8, 12, 13] },
  { kind: 'loop-current', mistake: 'one resistor', students: [14, 15, 16, 17] },
  { kind: 'trace-to-hex', mistake: 'lowest bit last', students: [8, 16, 18] },
  { kind: 'lay-lead', mistake: 'no way back', students: [19, 20] },
];

/** The answer that a mistake gives to a task. @throws when the task does not know the mistake. */
export function slipOf(task: Task, mistake: string): string {
  const slip = task.slips.find(({ name }) => name === mistake);
  if (!slip) throw new Error(`task ${writeTaskId(task.id)}: needs the mistake '${mistake}'`);
  return slip.answer;
}

/** What a student of the class answers to a task: by the mistakes above, at the first task of a kind. */
function answerOf(number: number, task: Task, at: number): string | undefined {
  const kinds = tasksOfSet(CLASS_SET, number).map(({ kind }) => kind);
  if (kinds.indexOf(task.id.kind) !== at) return undefined;
  const made = MISTAKES.find(({ kind, students }) => kind === task.id.kind && students.includes(number));
  return made && slipOf(task, made.mistake);
}

/** Numbers in the list of those who did something out of the way. */
export const ODD = {
  copiedFrom: 21,
  copy: 22,
  edited: 23,
  variant: 24,
  variantOf: 3,
  spoiled: 25,
  link: 26,
  formula: 27,
} as const;

/** Wrong answers that nobody else gives. */
const OWN_WRONG: Readonly<Record<string, string>> = { 'loop-current': '123', 'trace-to-hex': '5A' };

/** The result of a student of the class, spoiled by nobody. */
export function studentResult(number: number): Result {
  switch (number) {
    case ODD.copiedFrom:
      return resultOf(CLASS_SET, number, (task) => OWN_WRONG[task.id.kind]);
    case ODD.copy: {
      const other = studentResult(ODD.copiedFrom).attempts;
      return resultOf(CLASS_SET, number, (_, at) => other[at]?.answer);
    }
    case ODD.edited: {
      const made = resultOf(CLASS_SET, number);
      return {
        ...made,
        attempts: made.attempts.map((one, at) => (at === 2 ? { ...one, task: 'loop-current.0.1' } : one)),
      };
    }
    case ODD.variant:
      return {
        ...resultOf(CLASS_SET, ODD.variantOf, (task, at) => answerOf(ODD.variantOf, task, at)),
        number,
      };
    case ODD.formula:
      return resultOf(CLASS_SET, number, () => undefined, '=1+1');
    default:
      return resultOf(CLASS_SET, number, (task, at) => answerOf(number, task, at));
  }
}

/** What the class hands in, in the order of the list: files by their names, one spoiled, and one link. */
export async function handedIn(): Promise<readonly { readonly source: string; readonly text: string }[]> {
  return Promise.all(
    Array.from({ length: 30 }, async (_, at) => {
      const result = studentResult(at + 1);
      const source = resultFileName(result);
      if (result.number === ODD.spoiled) return { source, text: writeResultText(result).slice(0, 200) };
      if (result.number === ODD.link)
        return { source: 'link', text: `https://example.org/mark/${await resultHash(result)}` };
      return { source, text: writeResultText(result) };
    }),
  );
}
