/** Answers that readers mark themselves: read, graded and counted apart. */
import { describe, expect, it } from 'vitest';
import {
  MOST_SIGNS,
  NO_RECORD,
  TASKS_BY_LESSON,
  answerOfText,
  gradeAnswer,
  isLongEnough,
  makeTask,
  standings,
  withAttempt,
  writeTaskId,
} from '../../../../src/core/learn/index.ts';
import type { Task } from '../../../../src/core/learn/index.ts';
import { tasksOf } from './school.ts';

const TEXT = 'A hub keeps each pedal apart. It takes one lead more than a chain.';

function defended(seed: number): Task & { readonly form: { readonly points: readonly string[] } } {
  const task = makeTask({ kind: 'defend-choice', level: 0, seed });
  if (typeof task === 'string' || task.form.form !== 'rubric') throw new Error('task: needs a rubric');
  return { ...task, form: task.form };
}

const priceAt = ({ form }: ReturnType<typeof defended>): number =>
  form.points.findIndex((point) => /only reason/.test(point));

describe('a text against a rubric', () => {
  it('is right with every point but the one that spoils it, whatever its words', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const task = defended(seed);
      const spoils = priceAt(task);
      const wanted = task.form.points.flatMap((_, at) => (at === spoils ? [] : [at]));
      expect(gradeAnswer(task, answerOfText(wanted, TEXT))).toMatchObject({ right: true, selfMarked: true });
      expect(gradeAnswer(task, answerOfText([...wanted, spoils], TEXT))).toMatchObject({
        right: false,
        mistake: 'price only',
        selfMarked: true,
      });
    }
  });

  it('lacks what is not ticked, and each lack has its own sentence', () => {
    const task = defended(3);
    const spoils = priceAt(task);
    const wanted = task.form.points.flatMap((_, at) => (at === spoils ? [] : [at]));
    const said = wanted.map((left) => {
      const grading = gradeAnswer(
        task,
        answerOfText(
          wanted.filter((at) => at !== left),
          TEXT,
        ),
      );
      expect(grading.right).toBe(false);
      return grading.sentence;
    });
    expect(new Set(said).size).toBe(wanted.length);
  });

  it('cannot be read without a text of two short sentences, or without ticks', () => {
    const task = defended(3);
    for (const answer of ['', '0 1', '0 1 | A hub.', TEXT, `9 | ${TEXT}`])
      expect(gradeAnswer(task, answer), answer).toMatchObject({ right: false, readable: false });
    expect(gradeAnswer(task, '').sentence).toBe(
      'There is no answer yet. Needed: two sentences of your own, and then a tick for each point that they hold.',
    );
    expect(isLongEnough('one two three four five six seven')).toBe(false);
    expect(isLongEnough(TEXT)).toBe(true);
  });

  it('may hold any signs, and is cut where it is too long', () => {
    const task = defended(3);
    expect(gradeAnswer(task, answerOfText([0], `${TEXT} | and\nmore`)).readable).toBe(true);
    expect(gradeAnswer(task, answerOfText([0], 'word '.repeat(MOST_SIGNS))).readable).toBe(true);
  });

  it('is offered by the kinds that say so, and by no other', () => {
    for (const { kind, selfMarked = false } of Object.values(TASKS_BY_LESSON).flat())
      expect(tasksOf(kind, [2])[0]?.form.form === 'rubric', kind).toBe(selfMarked);
  });
});

describe('the record of texts', () => {
  it('says of such a kind that readers mark it themselves', () => {
    const task = defended(3);
    const record = withAttempt(NO_RECORD, {
      task: writeTaskId(task.id),
      answer: task.right,
      hints: 0,
      day: 10,
    });
    const marked = standings(record).filter(({ selfMarked }) => selfMarked);
    expect(marked.map(({ kind }) => kind)).toEqual(['defend-choice']);
    expect(marked[0]).toMatchObject({ done: true, tried: 1, due: 11 });
  });
});
