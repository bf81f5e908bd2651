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
