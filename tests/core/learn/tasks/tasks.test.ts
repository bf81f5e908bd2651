import { describe, expect, it } from 'vitest';
import {
  LEVELS,
  TASKS_BY_LESSON,
  gradeAnswer,
  makeTask,
  readTaskId,
  writeTaskId,
} from '../../../../src/core/learn/index.ts';
import type { Level, Task } from '../../../../src/core/learn/index.ts';

const SEEDS = Array.from({ length: 200 }, (_, seed) => seed * 37 + 5);
const KINDS = Object.values(TASKS_BY_LESSON).flat();

function taskOf(kind: string, level: Level, seed: number): Task {
  const task = makeTask({ kind, level, seed });
  if (typeof task === 'string') throw new Error(task);
  return task;
}

/** What stands in the fields before anything was done. */
function startOf({ form }: Task): string {
  switch (form.form) {
    case 'order':
      return form.items.map((_, at) => at).join(' ');
    case 'several':
      return '-';
    default:
      return '';
  }
}

/** What a reader sees of a task before answering. */
const faceOf = ({ ask, shows, form }: Task): string => JSON.stringify([ask, shows, form]);

describe.each(KINDS.flatMap(({ kind }) => LEVELS.map((level) => [kind, level] as const)))(
  'tasks %s at level %i over 200 seeds',
  (kind, level) => {
    const tasks = SEEDS.map((seed) => taskOf(kind, level, seed));

    it('do not pass as they start, and pass with the model answer', () => {
      for (const task of tasks) {
        if (!(task.form.form === 'several' && task.right === '-'))
          expect(gradeAnswer(task, startOf(task)).right, writeTaskId(task.id)).toBe(false);
        expect(gradeAnswer(task, task.right), `${writeTaskId(task.id)}: ${task.right}`).toMatchObject({
          right: true,
          readable: true,
        });
      }
    });

    it('know every mistake that they name, by its own sentence', () => {
      for (const task of tasks) {
        expect(task.slips.length, writeTaskId(task.id)).toBeGreaterThan(0);
        expect(new Set(task.slips.map(({ answer }) => answer)).size).toBe(task.slips.length);
        for (const slip of task.slips) {
          const grading = gradeAnswer(task, slip.answer);
          expect(grading, `${writeTaskId(task.id)}: ${slip.name} ${slip.answer}`).toMatchObject({
            right: false,
            readable: true,
            mistake: slip.name,
            sentence: slip.sentence,
          });
        }
      }
    });

    it('are never the same twice in a row', () => {
      for (let seed = 0; seed < 60; seed++)
        expect(faceOf(taskOf(kind, level, seed)), `${kind} ${seed}`).not.toBe(
          faceOf(taskOf(kind, level, seed + 1)),
        );
    });

    it('say nothing twice in a list, which a page would show as one', () => {
      for (const { id, shows, form, hints, steps } of tasks) {
        const lists = [
          hints,
          steps,
          shows?.shows === 'rows' ? shows.rows.map(([what]) => what) : [],
          'options' in form
            ? form.options
            : 'items' in form
              ? form.items
              : 'points' in form
                ? form.points
                : [],
        ];
        for (const list of lists) expect(new Set(list).size, writeTaskId(id)).toBe(list.length);
      }
    });

    it('say three hints, and a way to the answer of at least two steps', () => {
      for (const { hints, steps, example } of tasks) {
        expect(hints.every((one) => one.length > 10)).toBe(true);
        expect(steps.length).toBeGreaterThanOrEqual(2);
        expect(example !== undefined).toBe(level === 0);
      }
    });
  },
);

describe('answers to choose from', () => {
  const choices = KINDS.flatMap(({ kind }) =>
    LEVELS.flatMap((level) => SEEDS.map((seed) => taskOf(kind, level, seed))),
  ).filter(({ form }) => form.form === 'choice');

  it('have the right one at each place as often as chance would', () => {
    const counts = new Map<number, number[]>();
    for (const { form, right } of choices) {
      if (form.form !== 'choice') continue;
      const places = counts.get(form.options.length) ?? form.options.map(() => 0);
      places[Number(right)] = (places[Number(right)] ?? 0) + 1;
      counts.set(form.options.length, places);
    }
    for (const places of counts.values()) {
      const all = places.reduce((sum, one) => sum + one, 0);
      const share = 1 / places.length;
      // Four standard deviations of a binomial count.
      const bound = 4 * Math.sqrt(all * share * (1 - share));
      for (const count of places) expect(Math.abs(count - all * share)).toBeLessThan(bound);
    }
  });

  it('do not give the right one away as the longest', () => {
    const longest = choices.filter(({ form, right }) => {
      if (form.form !== 'choice') return false;
      const lengths = form.options.map((one) => one.length);
      return (
        lengths.filter((one) => one === Math.max(...lengths)).length === 1 &&
        lengths[Number(right)] === Math.max(...lengths)
      );
    });
    expect(longest.length / choices.length).toBeLessThan(0.45);
  });
});

describe('the name of a task', () => {
  it('is read as it was written', () => {
    const id = { kind: 'lay-lead', level: 2, seed: 1_048_575 } as const;
    expect(writeTaskId(id)).toBe('lay-lead.2.VVVV');
    expect(readTaskId('lay-lead.2.VVVV')).toEqual(id);
  });

  it('says what is wrong with it', () => {
    expect(readTaskId('lay lead')).toBe(
      "task: expected a kind, a level and a seed such as 'lay-lead.2.7F3K', got 'lay lead'",
    );
    expect(readTaskId('lay-lead.7.1')).toBe('task: level must be 0 to 3, got 7');
    expect(makeTask({ kind: 'sing', level: 0, seed: 1 })).toBe(
      "task: expected a kind of task that there is, got 'sing'",
    );
  });
});
