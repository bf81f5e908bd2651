/** How far a reader is, counted once for every page that tells of it. */
import { describe, expect, it } from 'vitest';
import { progressOf } from '../../../components/practice/standing.svelte.ts';
import type { Standing } from '../../../src/core/learn/index.ts';

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
      { lesson: 'one', kinds: 2, done: 2, known: 1, due: 1, marked: '' },
      { lesson: 'two', kinds: 2, done: 1, known: 0, due: 1, marked: '; of 1 that you mark yourself 1 done' },
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
