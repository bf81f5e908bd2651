/** Mixed tasks: over many numbers no task tells another, none comes twice to a student, and old Sets are what they were. */
import { describe, expect, it } from 'vitest';
import {
  markResults,
  readSet,
  readSetCode,
  readSetText,
  setCode,
  setFromHash,
  setHash,
  tasksOfSet,
  writeSetText,
} from '../../../src/core/class/index.ts';
import type { WorkSet } from '../../../src/core/class/index.ts';
import { makeTask, rowOfSeed, scatteredSeed, writeTaskId } from '../../../src/core/learn/index.ts';
import type { Level, Task } from '../../../src/core/learn/index.ts';
import { sayProblem } from '../../../src/core/plan/index.ts';
import { CLASS_SET, resultOf } from '../../support/classroom.ts';

const NUMBERS = 400;

const setOf = (level: Level, count: number, ...kinds: readonly string[]): WorkSet => ({
  ...CLASS_SET,
  draw: 'mixed',
  items: kinds.map((kind) => ({ kind, level, count })),
});

const tasksFor = (set: WorkSet, number: number): readonly Task[] =>
  tasksOfSet(set, number).map((id) => {
    const task = makeTask(id);
    if (typeof task === 'string') throw new Error(task);
    return task;
  });

/** The right answer in words. */
const rightOf = ({ form, right }: Task): string =>
  form.form === 'choice' ? (form.options[Number(right)] ?? '') : right;

/** What each of the numbers has for right answers, task by task. */
const rightsOf = (set: WorkSet): readonly (readonly string[])[] =>
  Array.from({ length: NUMBERS }, (_, at) => tasksFor(set, at + 1).map(rightOf));

/** How far pairs are from being independent: chi square (Pearson) over its degrees of freedom, near 1 where they are. */
function dependence(pairs: readonly (readonly [string, string])[]): number {
  const count = (is: (pair: readonly [string, string]) => boolean): number => pairs.filter(is).length;
  const [ones, others] = [0, 1].map((side) => [...new Set(pairs.map((pair) => pair[side]))]) as [
    string[],
    string[],
  ];
  const cells = ones.flatMap((a) =>
    others.map((b) => {
      const expected = (count(([one]) => one === a) * count(([, other]) => other === b)) / pairs.length;
      return (count(([one, other]) => one === a && other === b) - expected) ** 2 / expected;
    }),
  );
  return cells.reduce((sum, one) => sum + one, 0) / ((ones.length - 1) * (others.length - 1));
}

// By the usual table, chi square over its degrees of freedom is above 3.3 (4 of them) to 2.4 (9 of them) in one of a hundred cases;
// of tasks that hang together it was 30 to 130.
const MOST = 3.5;

describe('Mixed tasks', () => {
  const kinds = ['phrase-type', 'straight-or-crossed', 'missing-line'];

  it.each([2, 3] as const)('have right answers that tell nothing of one another, at level %i', (level) => {
    const rights = rightsOf(setOf(level, 1, ...kinds));
    for (const [one, other] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const)
      expect(
        dependence(rights.map((all) => [all[one] ?? '', all[other] ?? ''])),
        `${kinds[one]} and ${kinds[other]}`,
      ).toBeLessThan(MOST);
  });

  it('tell a student nothing of the next number, or of the one that is four or eight on', () => {
    const rights = rightsOf(setOf(2, 1, ...kinds));
    for (const step of [1, 4, 8])
      for (const at of kinds.keys()) {
        const pairs = rights
          .slice(step)
          .map((all, number) => [rights[number]?.[at] ?? '', all[at] ?? ''] as const);
        expect(dependence(pairs), `${kinds[at]} ${step} on`).toBeLessThan(MOST);
      }
  });

  it('have each answer that they offer right for some, where it stands for something that they ask', () => {
    const rightAt = (level: Level): readonly (readonly string[])[] => {
      const rights = rightsOf(setOf(level, 1, ...kinds));
      return kinds.map((_, at) => [...new Set(rights.map((all) => all[at] ?? ''))].sort());
    };
    const offered = tasksFor(setOf(3, 1, ...kinds), 1).map(({ form }) =>
      form.form === 'choice' ? form.options.toSorted() : [],
    );
    expect(rightAt(3)).toEqual(offered);
    // Below level 3 both jacks are of a loop, and between these one of the two leads always works.
    const [types, leads, lines] = offered;
    expect(rightAt(2)).toEqual([types, leads?.filter((one) => one !== 'Neither of the two'), lines]);
  });

  it('come to no student twice while others are left, and then each once more', () => {
    const text = ({ ask, shows }: Task): string => JSON.stringify([ask, shows]);
    // By hand: two loop types out, and three kinds of loop input in, make six pairs.
    for (let number = 1; number <= 40; number += 1) {
      const six = tasksFor(setOf(2, 6, 'straight-or-crossed'), number).map(text);
      expect(new Set(six).size).toBe(6);
      const twelve = tasksFor(setOf(2, 12, 'straight-or-crossed'), number).map(text);
      expect(new Set(twelve.slice(0, 6)).size).toBe(6);
      expect(new Set(twelve.slice(6)).size).toBe(6);
    }
    const firsts = Array.from({ length: 40 }, (_, at) =>
      tasksFor(setOf(2, 6, 'straight-or-crossed'), at + 1)
        .map(text)
        .join(),
    );
    expect(new Set(firsts).size).toBeGreaterThan(35);
  });

  it('are never two alike in one number, nor in two', () => {
    const set = setOf(3, 10, ...kinds);
    const all = Array.from({ length: 30 }, (_, at) => tasksOfSet(set, at + 1).map(writeTaskId)).flat();
    expect(new Set(all).size).toBe(900);
    expect(tasksOfSet({ ...set, perStudent: false }, 3)).toEqual(
      tasksOfSet({ ...set, perStudent: false }, 9),
    );
  });
});

describe('A table of seeds', () => {
  it('holds every seed at most once, from 0 up to the highest', () => {
    const seeds = Array.from({ length: 40 }, (_, row) =>
      Array.from({ length: 1024 }, (__, column) => scatteredSeed('a', row, column)),
    ).flat();
    expect(new Set(seeds).size).toBe(seeds.length);
    for (const at of [0, 1023, 1024, 20_000, 40_959])
      expect(rowOfSeed('a', seeds[at] ?? 0)).toBe(Math.floor(at / 1024));
    expect(Math.min(...seeds)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...seeds)).toBeLessThan(2 ** 20);
    // Spread: of 40 960 seeds each sixteenth of all has its share of 2560, give or take four times the root of that.
    const share = Array.from({ length: 16 }, (_, part) => seeds.filter((one) => one >> 16 === part).length);
    for (const one of share) expect(Math.abs(one - 2560)).toBeLessThan(4 * Math.sqrt(2560));
  });
});

it('The tasks of another number in a mixed Set are known by their owner at once', () => {
  const set = setOf(2, 6, 'say-outcome', 'lay-lead');
  const other = { ...resultOf(set, 741), number: 5 };
  const marked = markResults([{ source: 'file', reading: { ok: true, value: other } }]);
  expect(marked.rows.map((row) => ('notes' in row ? row.notes : []))).toEqual([
    [
      'These are the tasks of number 741, handed in as number 5: none counts as right. For number 741, 12 of 12 would be.',
    ],
  ]);
});

describe('How a Set is drawn', () => {
  const mixed: WorkSet = { ...CLASS_SET, draw: 'mixed' };

  it('goes with its file, its link and its code', async () => {
    expect(readSetText(writeSetText(mixed))).toEqual({ ok: true, value: mixed });
    expect(await setFromHash(await setHash(mixed))).toEqual({ ok: true, value: mixed });
    const read = readSetCode(setCode(mixed) ?? '');
    expect(read.ok && { ...read.value, title: mixed.title }).toEqual(mixed);
    expect(setCode(mixed)).not.toBe(setCode(CLASS_SET));
  });

  it('stays as it was for a Set that was handed out before', async () => {
    // Code and link as they were made before a Set could be mixed; the tasks by hand: 4711 + 14 is 4JL in base 32, 4711 + 7 is 4JE.
    const tasks = [
      'lay-lead.2.4JL',
      'lay-lead.2.4JM',
      'loop-current.2.4JL',
      'loop-current.2.4JM',
      'trace-to-hex.2.4JE',
    ];
    const code = readSetCode('04K7-583K-HENB-H7M3-G6V');
    const link = await setFromHash(
      '#set=ai1byyc8vUChJLS5R0jExNzTUMdSJVspJrNTNSU1MUdIx0jHSUcrJzy_QTS4tKkrNK4EKlRQlJqfqluTrZqRWgIQMY3WMYgE',
    );
    for (const read of [code, link])
      expect(read?.ok && tasksOfSet(read.value, 7).map(writeTaskId)).toEqual(tasks);
  });

  it('is refused where it is no way that there is', () => {
    const read = readSet({ ...CLASS_SET, draw: 'lots' });
    expect(read.ok ? [] : read.problems.map(sayProblem)).toEqual([
      "draw: expected one of turns, mixed, got 'lots'",
    ]);
  });
});
