/** Which tasks come next: at the end of a lesson, in practice, and after a task was done. */
import { describe, expect, it } from 'vitest';
import {
  MOST_SEED,
  TASKS_BY_LESSON,
  anotherLike,
  isDue,
  makeTask,
  tasksOfLesson,
  tasksToPractise,
  untried,
} from '../../../../src/core/learn/index.ts';
import type { Standing } from '../../../../src/core/learn/index.ts';

const LESSONS = Object.keys(TASKS_BY_LESSON);
const kindsOf = (lesson: string): readonly string[] =>
  (TASKS_BY_LESSON[lesson] ?? []).map(({ kind }) => kind);
const SEEDS = [0, 1, 2, 77, 4096, MOST_SEED];

describe('The end of a lesson', () => {
  it.each(LESSONS)(
    'of %s has each of its kinds once, in their order, two to a level, and none that cannot be made',
    (lesson) => {
      for (const seed of SEEDS) {
        const tasks = tasksOfLesson(lesson, seed);
        const own = tasks.slice(0, kindsOf(lesson).length);
        expect(own.map(({ kind }) => kind)).toEqual(kindsOf(lesson));
        expect(own.map(({ level }) => level)).toEqual([0, 0, 1, 1, 2, 2].slice(0, own.length));
        for (const { seed: drawn } of tasks) {
          expect(drawn).toBeGreaterThanOrEqual(0);
          expect(drawn).toBeLessThanOrEqual(MOST_SEED);
        }
      }
    },
  );

  it('mixes in two different kinds of earlier lessons, free of help, and none of later ones', () => {
    for (const [at, lesson] of LESSONS.entries()) {
      const earlier = new Set(LESSONS.slice(0, at).flatMap(kindsOf));
      for (const seed of SEEDS) {
        const mixed = tasksOfLesson(lesson, seed).slice(kindsOf(lesson).length);
        expect(mixed).toHaveLength(at === 0 ? 0 : 2);
        expect(new Set(mixed.map(({ kind }) => kind)).size).toBe(mixed.length);
        for (const { kind, level } of mixed) {
          expect(earlier.has(kind), `${lesson}: ${kind}`).toBe(true);
          expect(level).toBe(2);
        }
      }
    }
  });

  it('mixes in other kinds for other seeds, and the same for the same', () => {
    const mixed = (seed: number): string =>
      tasksOfLesson('setting-up-once', seed)
        .slice(6)
        .map(({ kind }) => kind)
        .join(' ');
    expect(mixed(5)).toBe(mixed(5));
    expect(new Set(Array.from({ length: 30 }, (_, seed) => mixed(seed))).size).toBeGreaterThan(20);
  });

  it('of a lesson that is not there has no tasks', () => {
    expect(tasksOfLesson('no-such-lesson', 3)).toEqual([]);
  });

  it('gives no two tasks one seed, so that their answers do not stand at one place', () => {
    const seeds = tasksOfLesson('chain-or-hub', MOST_SEED - 2).map(({ seed }) => seed);
    expect(new Set(seeds).size).toBe(seeds.length);
  });
});

describe('Another task', () => {
  it('is of the same kind and level with another seed, and after the last seed comes the first', () => {
    const id = { kind: 'loop-current', level: 2, seed: MOST_SEED } as const;
    expect(anotherLike(id)).toEqual({ ...id, seed: 0 });
    for (const seed of SEEDS) {
      const [one, other] = [makeTask({ ...id, seed }), makeTask(anotherLike({ ...id, seed }))];
      if (typeof one === 'string' || typeof other === 'string') throw new Error('task: needs two');
      expect(one.shows).not.toEqual(other.shows);
    }
  });
});

describe('Practice', () => {
  /** A standing of a kind: tried so often, right so often without a hint, due on a day. */
  const stands = (kind: string, tried: number, unaided = 0, due?: number): Standing => ({
    ...untried({ kind, lesson: kind.startsWith('a') ? 'first' : 'second', selfMarked: false }),
    tried,
    unaided,
    due,
  });
  const ALL = [
    stands('a-fresh', 0),
    stands('a-tried', 3, 1, 120),
    stands('a-due', 5, 2, 100),
    stands('b-known', 9, 3, 99),
    stands('b-fresh', 0),
  ];
  const kinds = (...asked: Parameters<typeof tasksToPractise>): readonly string[] =>
    tasksToPractise(...asked).map(({ kind }) => kind);

  it('is due on its day and after it, and never before it was tried', () => {
    expect([99, 100, 101].map((day) => isDue(stands('a-due', 1, 0, 100), day))).toEqual([false, true, true]);
    expect(isDue(stands('a-fresh', 0), 99_999)).toBe(false);
  });

  it('of what is due has each kind once, and nothing else', () => {
    for (const seed of SEEDS) {
      expect([...kinds(ALL, 'due', 100, 10, seed)].sort()).toEqual(['a-due', 'b-known']);
      expect(kinds(ALL, 'due', 98, 10, seed)).toEqual([]);
      expect(kinds(ALL, 'due', 200, 2, seed)).toHaveLength(2);
    }
  });

  it('of lessons begins with what is due, then what was tried least, and goes round again', () => {
    for (const seed of SEEDS) {
      expect(kinds(ALL, ['first'], 100, 7, seed)).toEqual([
        ...['a-due', 'a-fresh', 'a-tried'],
        ...['a-due', 'a-fresh', 'a-tried'],
        'a-due',
      ]);
      const both = kinds(ALL, ['first', 'second'], 100, 5, seed);
      expect([...both.slice(0, 2)].sort()).toEqual(['a-due', 'b-known']);
      expect([...both.slice(2, 4)].sort()).toEqual(['a-fresh', 'b-fresh']);
      expect(both[4]).toBe('a-tried');
    }
    expect(kinds(ALL, ['no such lesson'], 100, 7, 1)).toEqual([]);
    expect(kinds(ALL, [], 100, 7, 1)).toEqual([]);
  });

  it('mixes kinds that stand alike by the seed', () => {
    const alike = [stands('a-one', 2, 1, 90), stands('b-other', 2, 1, 90)];
    const firsts = new Set(Array.from({ length: 30 }, (_, seed) => kinds(alike, 'due', 100, 1, seed)[0]));
    expect(firsts).toEqual(new Set(['a-one', 'b-other']));
  });

  it('takes a level of help away for each unaided right answer, down to none', () => {
    const levels = new Map(
      tasksToPractise([...ALL, stands('b-much', 20, 9, 1)], ['first', 'second'], 100, 6, 4).map(
        ({ kind, level }) => [kind, level],
      ),
    );
    expect(Object.fromEntries(levels)).toEqual({
      'a-fresh': 0,
      'a-tried': 1,
      'a-due': 2,
      'b-known': 3,
      'b-fresh': 0,
      'b-much': 3,
    });
  });

  it('gives each task a seed of its own, counted on from the one that was given', () => {
    expect(tasksToPractise(ALL, ['first'], 1, 5, MOST_SEED - 1).map(({ seed }) => seed)).toEqual([
      ...[MOST_SEED - 1, MOST_SEED],
      ...[0, 1, 2],
    ]);
  });
});
