/** The tasks of a student, mixed: no task tells another's answer, and nobody gets one twice while there are others. */
import { makeTask, remembered, rowOfSeed, scatteredSeed } from '../learn/index.ts';
import type { Level, Task, TaskId } from '../learn/index.ts';
import { CLASS_LIMITS } from './limits.ts';

/** Some tasks of one kind and level. */
interface Item {
  readonly kind: string;
  readonly level: Level;
  readonly count: number;
}

/** Seeds that one student has of each kind: a row of the table of seeds. */
const ROW = 1024;

/** Tasks that are looked at to know how many a kind has; where there are more than anyone can get, fewer do. */
const LOOKED_AT = 512;

/** The parts of a list of answers in one order, for the order in which answers stand makes no other task. */
function unordered(form: Task['form']): object {
  switch (form.form) {
    case 'choice':
    case 'several':
      return { ...form, options: form.options.toSorted() };
    case 'order':
      return { ...form, items: form.items.toSorted() };
    case 'rubric':
      return { ...form, points: form.points.toSorted() };
    case 'number':
    case 'bytes':
    case 'lead':
      return form;
  }
}

/** What a task asks, as text: two tasks with the same are the same to a student. */
function askedBy(kind: string, level: Level, seed: number): string {
  const task = makeTask({ kind, level, seed });
  if (typeof task === 'string') throw new Error(task);
  const { ask, shows, material, form } = task;
  return JSON.stringify([ask, shows, material, unordered(form)]);
}

/** All that a kind asks at a level, or more of it than anyone can get. */
const allAsked = remembered((kind: string, level: Level): ReadonlySet<string> => {
  const found = new Set<string>();
  for (let at = 0; at < LOOKED_AT && found.size <= CLASS_LIMITS.tasks; at += 1)
    found.add(askedBy(kind, level, scatteredSeed(kind, 0, at)));
  return found;
});

/** The table of seeds that a kind has in a Set of this seed. */
const tableOf = (seed: number, kind: string): string => `${kind} ${seed}`;

/** The only row that a task can be from in a Set of this seed. */
export const rowOfMixed = (seed: number, task: TaskId): number =>
  rowOfSeed(tableOf(seed, task.kind), task.seed);

/** One kind's tasks for one student, in their order. */
function tasksOfKind(kind: string, levels: readonly Level[], table: string, row: number): readonly TaskId[] {
  const had = new Set<string>();
  const tasks: TaskId[] = [];
  for (let at = 0; tasks.length < levels.length; at += 1) {
    const level = levels[tasks.length] as Level;
    const task = { kind, level, seed: scatteredSeed(table, row, at) };
    // With one task there is none to be like.
    if (levels.length > 1) {
      const all = allAsked(kind, level);
      if ([...all].every((one) => had.has(one))) for (const one of all) had.delete(one);
      const asked = askedBy(kind, level, task.seed);
      const mustTake = ROW - at <= levels.length - tasks.length;
      if (had.has(asked) && !mustTake) continue;
      had.add(asked);
    }
    tasks.push(task);
  }
  return tasks;
}

/** The tasks of a student in the order of the items. `row` is the number in the class list, or 0 for what all get. */
export const mixedTasks = remembered(
  (seed: number, items: readonly Item[], row: number): readonly TaskId[] => {
    const each = items.flatMap(({ kind, level, count }) =>
      Array<Item>(count).fill({ kind, level, count: 1 }),
    );
    const byKind = Map.groupBy(each, ({ kind }) => kind);
    const tasks = new Map(
      [...byKind].map(([kind, all]) => [
        kind,
        tasksOfKind(
          kind,
          all.map(({ level }) => level),
          tableOf(seed, kind),
          row,
        ).values(),
      ]),
    );
    return each.map(({ kind }) => tasks.get(kind)?.next().value as TaskId);
  },
);
