import { beforeAll, describe, expect, it } from 'vitest';
import {
  LEVELS,
  TASKS_BY_LESSON,
  gradeAnswer,
  makeTask,
  readTaskId,
  writeTaskId,
} from '../../../../src/core/learn/index.ts';
import type { Level, Task } from '../../../../src/core/learn/index.ts';

/** Seeds in a row, so that tasks which follow each other are among them. */
const SEEDS = Array.from({ length: 200 }, (_, seed) => seed);
const GROUPS = Object.values(TASKS_BY_LESSON)
  .flat()
  .flatMap(({ kind }) => LEVELS.map((level) => [kind, level] as const));

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

/** Answers to choose from: the length of each, and which is right. */
interface Choice {
  readonly lengths: readonly number[];
  readonly right: number;
}

const choiceIn = ({ form, right }: Task): readonly Choice[] =>
  form.form === 'choice' ? [{ lengths: form.options.map((one) => one.length), right: Number(right) }] : [];

/** The choices among the tasks of each kind and level: all that is kept of tasks once they were judged. */
const CHOICES = new Map<string, readonly Choice[]>();

function tasksOf(kind: string, level: Level): readonly Task[] {
  const tasks = SEEDS.map((seed) => taskOf(kind, level, seed));
  CHOICES.set(`${kind} ${level}`, tasks.flatMap(choiceIn));
  return tasks;
}

/** What failed is gathered and named at the end: to expect each of a hundred thousand things by itself took most of the time. */
const namesOf = (tasks: readonly Task[]): readonly string[] => tasks.map(({ id }) => writeTaskId(id));

describe.each(GROUPS)('tasks %s at level %i over 200 seeds', (kind, level) => {
  let tasks: readonly Task[] = [];
  beforeAll(() => {
    tasks = tasksOf(kind, level);
    return () => {
      tasks = [];
    };
  });

  it('do not pass as they start, and pass with the model answer', () => {
    const empty = tasks.filter(({ form, right }) => !(form.form === 'several' && right === '-'));
    expect(namesOf(empty.filter((task) => gradeAnswer(task, startOf(task)).right))).toEqual([]);
    const failed = tasks.filter((task) => {
      const { right, readable } = gradeAnswer(task, task.right);
      return !right || !readable;
    });
    expect(namesOf(failed)).toEqual([]);
  });

  it('know every mistake that they name, by its own sentence', () => {
    const repeat = ({ slips }: Task) => new Set(slips.map(({ answer }) => answer)).size !== slips.length;
    expect(namesOf(tasks.filter((task) => task.slips.length === 0 || repeat(task)))).toEqual([]);
    const unknown = tasks.flatMap((task) =>
      task.slips
        .filter(({ name, answer, sentence }) => {
          const grading = gradeAnswer(task, answer);
          const { right, readable, mistake } = grading;
          return right || !readable || mistake !== name || grading.sentence !== sentence;
        })
        .map(({ name, answer }) => `${writeTaskId(task.id)}: ${name} ${answer}`),
    );
    expect(unknown).toEqual([]);
  });

  it('are never the same twice in a row', () => {
    const faces = tasks.map(faceOf);
    expect(namesOf(tasks.filter((_, at) => faces[at] === faces[at - 1]))).toEqual([]);
  });

  it('say nothing twice in a list, which a page would show as one', () => {
    const repeating = tasks.filter(({ shows, form, hints, steps }) => {
      const lists = [
        hints,
        steps,
        shows?.shows === 'rows' ? shows.rows.map(([what]) => what) : [],
        'options' in form ? form.options : 'items' in form ? form.items : 'points' in form ? form.points : [],
      ];
      return lists.some((list) => new Set(list).size !== list.length);
    });
    expect(namesOf(repeating)).toEqual([]);
  });

  it('say three hints, and a way to the answer of at least two steps', () => {
    const short = tasks.filter(
      ({ hints, steps, example }) =>
        hints.length !== 3 ||
        hints.some((one) => one.length <= 10) ||
        steps.length < 2 ||
        (example !== undefined) !== (level === 0),
    );
    expect(namesOf(short)).toEqual([]);
  });
});

describe('answers to choose from', () => {
  let choices: readonly Choice[] = [];
  beforeAll(() => {
    // Made above already, unless these tests are run alone.
    for (const [kind, level] of GROUPS) if (!CHOICES.has(`${kind} ${level}`)) tasksOf(kind, level);
    choices = [...CHOICES.values()].flat();
  });

  it('have the right one at each place as often as chance would', () => {
    const counts = new Map<number, number[]>();
    for (const { lengths, right } of choices) {
      const places = counts.get(lengths.length) ?? lengths.map(() => 0);
      places[right] = (places[right] ?? 0) + 1;
      counts.set(lengths.length, places);
    }
    expect(counts.size).toBeGreaterThan(0);
    for (const places of counts.values()) {
      const all = places.reduce((sum, one) => sum + one, 0);
      const share = 1 / places.length;
      // Four standard deviations of a binomial count.
      const bound = 4 * Math.sqrt(all * share * (1 - share));
      for (const count of places) expect(Math.abs(count - all * share)).toBeLessThan(bound);
    }
  });

  it('do not give the right one away as the longest', () => {
    const longest = choices.filter(({ lengths, right }) => {
      const most = Math.max(...lengths);
      return lengths[right] === most && lengths.filter((one) => one === most).length === 1;
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
