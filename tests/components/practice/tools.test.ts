/** Which tool a task is done with, and what a tool renders while the answer is asked. */
import { expect, test } from 'vitest';
import BenchTask from '../../../components/practice/BenchTask.svelte';
import { taskAddress, taskInHash } from '../../../components/practice/address.ts';
import { toolOf } from '../../../components/practice/tools.ts';
import WireTask from '../../../components/practice/WireTask.svelte';
import { LEVELS, TASKS_BY_LESSON, makeTask } from '../../../src/core/learn/index.ts';
import type { Task } from '../../../src/core/learn/index.ts';
import { allOf, htmlOf, wordsOf } from '../../support/rendered.ts';

function taskOf(kind: string, seed: number): Task {
  const task = makeTask({ kind, level: 2, seed });
  if (typeof task === 'string') throw new Error(task);
  return task;
}

const nothing = (): void => undefined;

test('an address names a task on any page, and is read as it was written', () => {
  expect(taskAddress('/bench/', 'lay-lead.2.7F3K')).toBe('/bench/#task=lay-lead.2.7F3K');
  expect(taskInHash('#task=lay-lead.2.7F3K')).toBe('lay-lead.2.7F3K');
  expect(taskInHash('#plan=abc')).toBeNull();
  expect(taskInHash('')).toBeNull();
});

test('a kind is done with the same tool at every level and seed: a tool that is missing would tell something', () => {
  for (const { kind } of Object.values(TASKS_BY_LESSON).flat()) {
    const pages = LEVELS.flatMap((level) =>
      [1, 2, 3].map((seed) => {
        const task = makeTask({ kind, level, seed });
        return typeof task === 'string' ? task : toolOf(task)?.page;
      }),
    );
    expect(new Set(pages).size, kind).toBe(1);
  }
  expect(toolOf(taskOf('lay-lead', 1))?.page).toBe('/bench/');
  expect(toolOf(taskOf('trace-to-hex', 1))?.page).toBe('/in-time/');
  expect(toolOf(taskOf('loop-current', 1))).toBeUndefined();
});

test('the bench tells what a lead does once the task is over, and before it shows the lead as it was joined', () => {
  const task = taskOf('lay-lead', 1);
  const html = (answer: string, over: boolean): string =>
    htmlOf(BenchTask, { task, answer, over, onanswer: nothing });
  expect(wordsOf(html(task.right, false))).not.toMatch(/Works|mA|source|sink|Which lead/);
  expect(html(task.right, false).match(/aria-label="conductor from /g)).toHaveLength(3);
  expect(html('', false)).not.toContain('conductor from');
  expect(allOf(html('', false), 'button')).toEqual(['Undo', 'Redo', 'Clear']);
  expect(wordsOf(html(task.right, true))).toMatch(/Works.* mA/);
});

test('a task without a lead is none for the bench', () => {
  const task = taskOf('loop-current', 1);
  expect(() => htmlOf(BenchTask, { task, answer: '', over: false, onanswer: nothing })).toThrow(
    "bench: needs a task on a lead, got 'number'",
  );
});

test('the wire tells the bits and the byte once the task is over, and before only the current', () => {
  const task = taskOf('trace-to-hex', 3);
  const html = (over: boolean): string => htmlOf(WireTask, { task, answer: '', over, onanswer: nothing });
  expect(html(false)).toContain('aria-valuetext="16.0 µs: 5.81 mA at the input"');
  expect(wordsOf(html(false))).not.toMatch(/data bit|bytes heard|bits sent/);
  expect(wordsOf(html(false)).split(' ')).not.toContain(task.right);
  expect(wordsOf(html(true))).toContain(task.right);
  expect(wordsOf(html(true))).toContain('bytes heard');
});
