import { expect, test } from 'vitest';
import { fileName, planFileName, studentOfFile } from '../../../src/core/plan/file-name.ts';
import { plainPlan } from './plans.ts';

const NOBODY = { number: 0, name: '' };

test('The name of a file says title, number and name, and leaves out what is not known', () => {
  expect(fileName('First loop', 'plan', { number: 7, name: 'Ann' }, 'json')).toBe('first-loop-07-ann.json');
  expect(fileName('', 'plan', NOBODY, 'json')).toBe('plan.json');
  expect(fileName('', 'plan', { number: 12, name: '' }, 'csv')).toBe('plan-12.csv');
});

test('Nothing that a file system reads as its own gets into a name, and letters of every script do', () => {
  expect(fileName('../a:b*?"<|>\\c', 'plan', NOBODY, 'json')).toBe('a-b-c.json');
  expect(fileName('...', 'plan', NOBODY, 'json')).toBe('plan.json');
  expect(fileName('Übung №1: 回路', 'plan', NOBODY, 'json')).toBe('übung-1-回路.json');
  expect(fileName('x'.repeat(200), 'plan', { number: 1, name: 'y'.repeat(200) }, 'json').length).toBeLessThan(
    100,
  );
});

test('A student is told by the last number in the name of a file and what stands behind it', () => {
  expect(studentOfFile('class/first-loop-07-ann.json')).toEqual({ number: 7, name: 'ann' });
  expect(studentOfFile('week 3-12-Ann Lee (2).json')).toEqual({ number: 12, name: 'Ann Lee' });
  expect(studentOfFile('C:\\work\\7 Zoë.json')).toEqual({ number: 7, name: 'Zoë' });
  expect(studentOfFile('loop-123-bo.json')).toEqual({ number: 123, name: 'bo' });
  expect(studentOfFile('ann.json')).toEqual({ number: 0, name: 'ann' });
  expect(studentOfFile('2026-plan.json')).toEqual({ number: 0, name: '2026 plan' });
});

test('What a name was made of is found in it again', () => {
  for (let number = 1; number < 100; number++)
    expect(studentOfFile(fileName('Loops', 'plan', { number, name: 'bo' }, 'json'))).toEqual({
      number,
      name: 'bo',
    });
});

test('A file of a plan is named by its title and number, and by what is made of it', () => {
  const plan = { ...plainPlan(), title: 'First loop', student: 7 };
  expect(planFileName(plan, 'json')).toBe('first-loop-07.json');
  expect(planFileName(plan, 'csv', 'shopping list')).toBe('first-loop-shopping-list-07.csv');
  expect(planFileName({ ...plan, title: ' ', student: 0 }, 'json')).toBe('five-milliamps-plan.json');
  expect(planFileName({ ...plan, title: '' }, 'svg', 'lead')).toBe('five-milliamps-lead-07.svg');
});
