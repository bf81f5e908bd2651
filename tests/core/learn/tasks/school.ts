/** What a second solver of tasks reads and hands in: it knows the question as a learner sees it, and none of the code that made it. */
import { expect } from 'vitest';
import { gradeAnswer, makeTask, writeTaskId } from '../../../../src/core/learn/index.ts';
import type { Level, Task } from '../../../../src/core/learn/index.ts';

const LEVELS_TRIED = [1, 2, 3] as const;
const SEEDS = Array.from({ length: 40 }, (_, at) => at * 53 + 11);

/** Tasks of a kind at some levels, forty seeds each. */
export function tasksOf(kind: string, levels: readonly Level[] = LEVELS_TRIED): readonly Task[] {
  return levels.flatMap((level) =>
    SEEDS.map((seed) => {
      const task = makeTask({ kind, level, seed });
      if (typeof task === 'string') throw new Error(task);
      return task;
    }),
  );
}

/** The rows that a task shows, by what they are called. */
export function rowsOf({ shows }: Task): ReadonlyMap<string, string> {
  if (shows?.shows !== 'rows') throw new Error('task: needs rows');
  return new Map(shows.rows);
}

/** The first number of a text: '220 ohm' gives 220. */
export function numberIn(text: string | undefined): number {
  return Number(/-?\d+(?:\.\d+)?/.exec(text ?? '')?.[0]);
}

/** The number after certain words in a question. */
export function numberAfter(text: string, words: RegExp): number {
  return Number(new RegExp(`${words.source} (-?\\d+(?:\\.\\d+)?)`).exec(text)?.[1]);
}

/** Hand in an answer and expect it to be right. */
export function expectRight(task: Task, answer: string): void {
  expect(gradeAnswer(task, answer), `${writeTaskId(task.id)}: ${task.ask} ${answer}`).toMatchObject({
    right: true,
  });
}

/** Hand in an answer that a known mistake gives, and expect it to be called by its name. */
export function expectMistake(task: Task, answer: string, name: string): void {
  expect(gradeAnswer(task, answer), `${writeTaskId(task.id)}: ${task.ask} ${answer}`).toMatchObject({
    right: false,
    mistake: name,
  });
}

/** The wrong options of a task to choose from, each with its place. */
export function wrongOptions(task: Task): readonly (readonly [place: string, option: string])[] {
  return optionsOf(task).flatMap((option, at) => (String(at) === task.right ? [] : [[String(at), option]]));
}

/** How often each of some mistakes was met: what no task ever shows is no test. */
export function tally(): { readonly met: (name: string) => string; readonly names: () => readonly string[] } {
  const names = new Set<string>();
  return {
    met: (name) => {
      names.add(name);
      return name;
    },
    names: () => [...names].sort(),
  };
}

/** The place of the one option that begins so. */
export function optionOf({ form }: Task, start: string): string {
  if (form.form !== 'choice') throw new Error('task: needs choices');
  const found = form.options.flatMap((option, at) => (option.startsWith(start) ? [String(at)] : []));
  expect(found, start).toHaveLength(1);
  return found[0] ?? '';
}

/** The options of a task, as they are shown. */
export function optionsOf({ form }: Task): readonly string[] {
  if (form.form !== 'choice' && form.form !== 'several') throw new Error('task: needs options');
  return form.options;
}

/** Places of the options that a test finds so, as an answer. */
export function placesWhere(task: Task, isSo: (option: string) => boolean): string {
  return (
    optionsOf(task)
      .flatMap((option, at) => (isSo(option) ? [at] : []))
      .join(' ') || '-'
  );
}

/** The numbers of the rows that are called so, in their order. */
export function numbersOf(task: Task, ...names: readonly string[]): readonly number[] {
  const rows = rowsOf(task);
  return names.map((name) => numberIn(rows.get(name)));
}

/** Places in the order of the items that a number gives, the least first. */
export function orderBy({ form }: Task, key: (item: string) => number): string {
  if (form.form !== 'order') throw new Error('task: needs an order');
  const { items } = form;
  return items
    .map((_, at) => at)
    .sort((a, b) => key(items[a] ?? '') - key(items[b] ?? ''))
    .join(' ');
}

/**
 * Hand in what each known mistake gives when it is made by hand, and expect that it is met by its own name and sentence. Each
 * mistake that a task names has to be in the table, and each of the table in some task.
 */
export function expectMistakes(
  tasks: readonly Task[],
  byHand: Readonly<Record<string, (task: Task) => number | string>>,
): void {
  const met = new Set<string>();
  for (const task of tasks)
    for (const { name, sentence } of task.slips) {
      const make = byHand[name];
      if (make === undefined)
        throw new Error(`task: ${writeTaskId(task.id)} names '${name}', and the table does not`);
      const answer = String(make(task));
      expect(gradeAnswer(task, answer), `${writeTaskId(task.id)}: ${task.ask} ${answer}`).toMatchObject({
        right: false,
        mistake: name,
        sentence,
      });
      met.add(name);
    }
  expect([...met].sort()).toEqual(Object.keys(byHand).sort());
}

/** The words of the right one of a task's answers. */
export const rightOf = (task: Task): string => optionsOf(task)[Number(task.right)] ?? '';
