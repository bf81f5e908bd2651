/** Work on a Set, answer by answer: where it stands, and what takes the place of what. */
import { expect, test } from 'vitest';
import { answeredIn, marksOf, newWork, nextOpen, withAnswer } from '../../../components/class/work.ts';
import { tasksOfSet } from '../../../src/core/class/index.ts';
import type { WorkSet } from '../../../src/core/class/index.ts';
import { makeTask, writeTaskId } from '../../../src/core/learn/index.ts';
import { CLASS_SET } from '../../support/classroom.ts';

const SET: WorkSet = { ...CLASS_SET, items: [{ kind: 'lay-lead', level: 2, count: 3 }], show: 'each' };
const NAMES = tasksOfSet(SET, 4).map(writeTaskId);
const answer = (at: number, text: string) => ({ task: NAMES[at] ?? '', answer: text, hints: 0, day: 20000 });

test('new work has nothing answered, and begins with the first task', () => {
  const work = newWork(SET, 4, 'Ada');
  expect([work.number, work.name, work.attempts]).toEqual([4, 'Ada', []]);
  expect([nextOpen(work), answeredIn(work).size]).toEqual([0, 0]);
});

test('an answer is added where answers are told, and takes the place of the one before where they are not', () => {
  for (const [show, texts] of [
    ['each', ['none', '4-ring']],
    ['end', ['4-ring']],
    ['never', ['4-ring']],
  ] as const) {
    const begun = newWork({ ...SET, show }, 4, '');
    const work = withAnswer(withAnswer(begun, answer(0, 'none')), answer(0, '4-ring'));
    expect(work.attempts.map((one) => one.answer)).toEqual(texts);
    expect([...answeredIn(work)]).toEqual([NAMES[0]]);
  }
});

test('what is open next is the first task without an answer, whichever were answered, and behind the last none', () => {
  const first = withAnswer(newWork(SET, 4, ''), answer(1, 'none'));
  expect(nextOpen(first)).toBe(0);
  const second = withAnswer(first, answer(0, 'none'));
  expect(nextOpen(second)).toBe(2);
  expect(nextOpen(withAnswer(second, answer(2, 'none')))).toBe(3);
});

test('every task is marked: the right answer of a task as right, and one without an answer as none', () => {
  const task = makeTask(tasksOfSet(SET, 4)[1] as ReturnType<typeof tasksOfSet>[number]);
  if (typeof task === 'string') throw new Error(task);
  const work = withAnswer(newWork(SET, 4, ''), answer(1, task.right));
  expect(marksOf(work).map(({ mark }) => mark)).toEqual(['none', 'right', 'none']);
});
