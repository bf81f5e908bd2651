import { expect, test } from 'vitest';
import { numberOfStudent, packProgress, readProgress } from '../../../src/core/class/progress.ts';
import type { Result } from '../../../src/core/class/result.ts';
import { readSet, tasksOfSet } from '../../../src/core/class/work-set.ts';
import { makeTask, writeTaskId } from '../../../src/core/learn/index.ts';

const reading = readSet({
  format: 'five-milliamps-set',
  version: 1,
  title: 'Forty',
  seed: 900_000,
  perStudent: true,
  items: [
    { kind: 'loop-current', level: 2, count: 20 },
    { kind: 'lay-lead', level: 3, count: 20 },
  ],
  show: 'each',
});
if (!reading.ok) throw new Error('the Set of the test is whole');
const SET = reading.value;
const IDS = tasksOfSet(SET, 7);

/** Work on the first `count` tasks, each answered once by `answer`. */
function work(count: number, answer: (at: number) => string): Result {
  const attempts = IDS.slice(0, count).map((id, at) => ({
    task: writeTaskId(id),
    answer: answer(at),
    hints: 1,
    day: 20_000,
  }));
  return { format: 'five-milliamps-result', version: 1, set: SET, number: 7, name: '', attempts };
}

function rightAnswer(at: number): string {
  const id = IDS[at];
  const task = id && makeTask(id);
  if (!task || typeof task === 'string') throw new Error(`no task ${at}`);
  return task.right;
}

test('Forty answered tasks are kept in a third of the room, and come back as they were', () => {
  const whole = work(40, rightAnswer);
  const text = packProgress(whole);
  expect(text.length).toBeLessThan(4096 / 3);
  expect(readProgress(SET, text)).toEqual(whole);
});

test('Work that is too long loses second tries first, then what is oldest, and never more than it must', () => {
  const long = work(40, (at) => `${at}`.padEnd(150, 'x'));
  const twice = {
    ...long,
    attempts: long.attempts.flatMap((one) => [{ ...one, answer: 'y'.repeat(150) }, one]),
  };
  for (const one of [long, twice]) {
    const text = packProgress(one);
    expect(text.length).toBeLessThanOrEqual(4096);
    // One more answer of 150 letters with its marks would not have fitted.
    expect(text.length).toBeGreaterThan(4096 - 175);
    expect(readProgress(SET, text)?.attempts).toEqual(
      long.attempts.slice(-(readProgress(SET, text)?.attempts.length ?? 0)),
    );
  }
});

test('What is no work on this Set is no work', () => {
  for (const text of ['', 'a', 'b[7,[]]', 'a[0,[]]', 'a[7]', 'a{"x":1}', 'a[1000,[]]', 'null'])
    expect(readProgress(SET, text), text).toBeUndefined();
  expect(readProgress(SET, 'a[7,[[40,0,0,"1"],[-1,0,0,"1"],[0,0,0,5]]]')?.attempts).toEqual([]);
});

test('A student of a course system has one number, from 1 to 999, and others have others', () => {
  const numbers = Array.from({ length: 300 }, (_, at) => numberOfStudent(`student-${at}`));
  expect(numbers.every((one) => Number.isInteger(one) && one >= 1 && one <= 999)).toBe(true);
  expect(new Set(numbers).size).toBeGreaterThan(200);
  expect(numberOfStudent('student-17')).toBe(numbers[17]);
});
