import { expect, test } from 'vitest';
import { gradeAnswer } from '../../../../src/core/learn/tasks/grade.ts';
import { knownMistakes } from '../../../../src/core/learn/tasks/mistakes.ts';
import { TASKS_BY_LESSON, makeTask } from '../../../../src/core/learn/tasks/tasks.ts';

test('The known mistakes of a lesson are those of its tasks, each sentence once under its kind', () => {
  for (const [lesson, kinds] of Object.entries(TASKS_BY_LESSON)) {
    const known = knownMistakes(lesson);
    expect(known.map(({ title }) => title)).toEqual(kinds.map(({ title }) => title));
    for (const { said } of known) {
      expect(said.length).toBeGreaterThan(0);
      expect(new Set(said.map(({ sentence }) => sentence)).size).toBe(said.length);
    }
  }
  expect(knownMistakes('no such lesson')).toEqual([]);
});

test('A student who forgets the LED hears the sentence that the teacher reads', () => {
  const task = makeTask({ kind: 'loop-current', level: 2, seed: 3 });
  if (typeof task === 'string') throw new Error(task);
  const slip = task.slips.find(({ name }) => name === 'LED forgotten');
  const heard = gradeAnswer(task, slip?.answer ?? '');
  const [first] = knownMistakes('five-milliamp-loop');
  expect(first?.said).toContainEqual({ names: ['LED forgotten'], sentence: heard.sentence });
});

test('A swapped pair is met without the amperes of one lead', () => {
  const lay = knownMistakes('why-makers-differ').find(({ title }) => title === 'Lay a lead');
  expect(lay?.said.map(({ names }) => names.join())).toContain('pair swapped');
  expect(lay?.said.every(({ sentence }) => !/\d/.test(sentence))).toBe(true);
});
