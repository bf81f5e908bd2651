/** A task that readers mark themselves, as it is first rendered: nothing of its points is there before a text is written. */
import { expect, test } from 'vitest';
import TaskView from '../../../components/practice/TaskView.svelte';
import { makeTask } from '../../../src/core/learn/index.ts';
import { htmlOf, wordsOf } from '../../support/rendered.ts';

const nothing = (): void => undefined;

test('a rubric shows its points only once two sentences are written', () => {
  const task = makeTask({ kind: 'defend-choice', level: 2, seed: 4 });
  if (typeof task === 'string' || task.form.form !== 'rubric') throw new Error('task: needs a rubric');
  const html = htmlOf(TaskView, { task, onattempt: nothing, onanother: nothing, onnext: nothing });
  expect(wordsOf(html)).toContain('Your two sentences');
  expect(html).toMatch(/<textarea[^>]*maxlength="280"/);
  for (const point of task.form.points) expect(html).not.toContain(point);
});
