/** Which files of scripts are made one. A file costs 2000 bytes beside its own; an opening of a page counts 1, of a fold a quarter. */
import { describe, expect, test } from 'vitest';
import { mergedParts } from '../../src/scripts/merge.mjs';

const page = (name: string, ...imports: readonly string[]) =>
  ({ name, bytes: 1000, imports, role: 'page' }) as const;
const later = (name: string, ...imports: readonly string[]) =>
  ({ name, bytes: 1000, imports, role: 'later' }) as const;
const shared = (name: string, bytes: number, ...imports: readonly string[]) =>
  ({ name, bytes, imports, role: 'shared' }) as const;

describe('Files of scripts', () => {
  test('become one where every page that loads one of them loads the other', () => {
    const parts = [page('bench', 'a', 'b'), page('board', 'a', 'b'), shared('a', 9000), shared('b', 9000)];
    expect(mergedParts(parts)).toEqual([['a', 'b']]);
  });

  test('become one where a page would get less that it does not use than the file it saves costs', () => {
    const parts = (bytes: number) => [
      page('bench', 'a', 'b'),
      page('board', 'a'),
      shared('a', 9000),
      shared('b', bytes),
    ];
    expect(mergedParts(parts(1900))).toEqual([['a', 'b']]);
    expect(mergedParts(parts(2100))).toEqual([]);
  });

  test('stay apart where one would bring with it more than itself', () => {
    // b is small, and needs c: the board would get 1500 + 1000 bytes for the one file that the bench saves.
    const parts = [
      page('bench', 'a', 'b'),
      page('board', 'a'),
      page('meter', 'c'),
      shared('a', 9000),
      shared('b', 1500, 'c'),
      shared('c', 1000),
    ];
    expect(mergedParts(parts).some((names) => names.includes('a') && names.includes('b'))).toBe(false);
  });

  test('count less where only a fold fetches them', () => {
    // Two folds together count half: 2 x 0.25 x 2000 = 1000 bytes, against the 900 and the 1100 that the page would get.
    const parts = (bytes: number) => [
      page('bench', 'a'),
      later('send', 'a', 'b'),
      later('listen', 'a', 'b'),
      shared('a', 9000),
      shared('b', bytes),
    ];
    expect(mergedParts(parts(900))).toEqual([['a', 'b']]);
    expect(mergedParts(parts(1100))).toEqual([]);
  });

  test('never go round in a circle: two that a page leads through a third are merged with it or not at all', () => {
    // The third is a fold's own file, which stays itself: top needs it, and it needs base.
    const parts = [
      page('bench', 'top'),
      shared('top', 1000, 'fold'),
      later('fold', 'base'),
      shared('base', 1000),
    ];
    expect(mergedParts(parts)).toEqual([]);
  });

  test('leave the file that a page opens with, and that a fold fetches, as they are', () => {
    const parts = [page('bench', 'a'), later('send', 'a'), shared('a', 10)];
    expect(mergedParts(parts)).toEqual([]);
  });
});
