/** What a learner is told settles the answer, and what was shown before does not give it away. */
import { describe, expect, it } from 'vitest';
import { anotherLike, gradeAnswer, makeTask } from '../../../../src/core/learn/index.ts';
import type { Level, Task } from '../../../../src/core/learn/index.ts';
import { optionsOf, tasksOf } from './school.ts';

const LEVELS: readonly Level[] = [0, 1, 2, 3];

const made = (kind: string, level: Level, seed: number): Task => {
  const task = makeTask({ kind, level, seed });
  if (typeof task === 'string') throw new Error(task);
  return task;
};

/** What can be seen of a lead: its plugs and its wires, and not which line a contact carries. */
function seenOf({ ask, shows }: Task): string {
  if (shows?.shows !== 'lead') throw new Error('task: needs a lead');
  const { output, input, conductors } = shows;
  return JSON.stringify([ask, output.connector, input.connector, conductors]);
}

/** The options that are right, as they read. */
const rightOf = (task: Task): string =>
  task.right
    .split(' ')
    .map((place) => optionsOf(task)[Number(place)] ?? place)
    .sort()
    .join();

describe('what a learner is told', () => {
  it.each(['loop-direction', 'cut-conductors'])('settles the answer of %s', (kind) => {
    const answers = new Map<string, string>();
    for (const task of tasksOf(kind, LEVELS)) {
      const seen = seenOf(task);
      expect(rightOf(task), seen).toBe(answers.get(seen) ?? rightOf(task));
      answers.set(seen, rightOf(task));
    }
    expect(answers.size).toBeGreaterThan(3);
  });

  it('another task like a worked one is not the example that was just read', () => {
    for (let seed = 0; seed < 40; seed += 1) {
      const first = made('loop-current', 0, seed);
      const next = makeTask(anotherLike(first.id));
      if (typeof next === 'string') throw new Error(next);
      expect(next.shows).not.toEqual(first.example?.shows);
    }
  });

  it('of a line that is missing says that it is missing, and not that it is joined', () => {
    const said: Readonly<Record<string, RegExp>> = {
      'The source line': /^Joined: [^.]+\. Missing: the source line\.$/,
      'The sink line': /^Joined: [^.]+\. Missing: the sink line\.$/,
      'The shield': /^Joined: [^.]+\. Missing: the shield\.$/,
      'None, all three lines are joined': /^Joined: [^.]+\. Missing: none, all three lines are joined\.$/,
    };
    const met = new Set<string>();
    for (const task of tasksOf('missing-line', LEVELS)) {
      met.add(rightOf(task));
      expect(gradeAnswer(task, task.right).sentence).toMatch(said[rightOf(task)] ?? /never/);
    }
    expect(met.size).toBe(4);
  });

  it('of two jacks is said in whole sentences, with one full stop at the end of each', () => {
    const kinds = ['straight-or-crossed', 'phrase-type', 'lay-lead', 'say-outcome', 'missing-line'];
    const asked = [...kinds, 'count-crossings', 'stray-strand'].flatMap((kind) => tasksOf(kind, LEVELS));
    for (const { ask, steps } of asked)
      for (const text of [ask, ...steps]) {
        expect(text).not.toMatch(/\.['’]\.|, (?:out|in)[,.]| to takes|nothing and/);
        expect(text).toMatch(/^[A-Z\d]/);
      }
    expect(asked.map(({ ask }) => ask)).toContain(
      'The output is a Type B phone jack. The input is a phone jack that takes either direction. Which lead works between them?',
    );
  });

  it('of an answer left out says what is needed, and quotes one that cannot be read', () => {
    const task = made('loop-current', 2, 0);
    expect(gradeAnswer(task, ' ').sentence).toBe('There is no answer yet. Needed: a number in mA.');
    expect(gradeAnswer(task, 'abc').sentence).toBe("Needed: a number in mA. 'abc' cannot be read.");
  });
});
