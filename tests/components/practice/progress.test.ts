/** How far a reader is, counted once for every page that tells of it. */
import { describe, expect, it } from 'vitest';
import LessonStanding from '../../../components/practice/LessonStanding.svelte';
import { progressOf, sayBack, standsAs, untriedOf } from '../../../components/practice/standing.svelte.ts';
import type { Standing } from '../../../src/core/learn/index.ts';
import { htmlOf, wordsOf } from '../../support/rendered.ts';

const kind = (lesson: string, more: Partial<Standing> = {}): Standing => ({
  kind: 'any',
  lesson,
  tried: 0,
  unaided: 0,
  done: false,
  known: false,
  due: undefined,
  selfMarked: false,
  ...more,
});

const ALL = [
  kind('one', { done: true, known: true, due: 9 }),
  kind('one', { done: true, due: 12 }),
  kind('two', { done: true, due: 10 }),
  kind('two'),
  kind('two', { selfMarked: true, done: true, due: 10 }),
];

describe('progress on day 10', () => {
  const progress = progressOf(ALL, 10);

  it('counts each lesson by itself, and what readers mark themselves apart', () => {
    expect(progress.lessons).toEqual([
      { lesson: 'one', kinds: 2, tried: 0, done: 2, known: 1, due: 1, marked: '' },
      {
        lesson: 'two',
        kinds: 2,
        tried: 0,
        done: 1,
        known: 0,
        due: 1,
        marked: '; of 1 that you mark yourself 1 right',
      },
    ]);
  });

  it('names lessons that are done, and all that is due', () => {
    expect(progress.done).toEqual(['one']);
    expect(progress.due).toBe(3);
  });

  it('is none where nothing stands yet', () => {
    expect(progressOf([], 10)).toEqual({ lessons: [], done: [], due: 0 });
  });
});

describe('where one kind stands', () => {
  const tried = kind('one', { tried: 1, due: 11 });

  it('is one of four words, the furthest that is so', () => {
    expect(
      [kind('one'), tried, { ...tried, done: true }, { ...tried, done: true, known: true }].map(standsAs),
    ).toEqual(['not tried yet', 'not right yet', 'right', 'known']);
  });

  it('is told with the day on which it comes back', () => {
    expect([9, 10, 11, 12].map((today) => sayBack(tried, today))).toEqual([
      'in 2 days',
      'tomorrow',
      'today',
      'today',
    ]);
    expect(sayBack(kind('one'), 10)).toBe('at any time');
  });
});

describe('a lesson on the page of practice', () => {
  const lesson = {
    name: 'one',
    title: 'The one',
    kinds: [
      { kind: 'a', title: 'Kind A', selfMarked: false },
      { kind: 'b', title: 'Kind B', selfMarked: true },
    ],
  };
  const told = (all: readonly Standing[]): string =>
    wordsOf(htmlOf(LessonStanding, { lesson, all, today: 10 }));

  it('says that nothing was tried where there is no record', () => {
    const all = untriedOf([lesson]);
    expect(all.map(({ kind: name, selfMarked }) => [name, selfMarked])).toEqual([
      ['a', false],
      ['b', true],
    ]);
    expect(told(all)).toBe('none tried yet');
  });

  it('names its lesson, counts what was tried, right, known and due, and what readers mark themselves apart', () => {
    const [a, b] = untriedOf([lesson]) as [Standing, Standing];
    expect(told([{ ...a, tried: 2, done: true, due: 10 }, b])).toBe(
      'The one: 1 of 1 tried, 1 right, 0 known, 1 due today; of 1 that you mark yourself 0 right',
    );
  });
});
