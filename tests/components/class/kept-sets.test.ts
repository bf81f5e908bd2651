/** The teacher's Set in a store that is full, spoiled, or shared by two tabs: none is replaced without staying among the earlier ones. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { earlierSets, keepSet, keptSet, ownSet } from '../../../components/class/kept-sets.ts';
import { CLASS_SET } from '../../support/classroom.ts';
import { SmallStore } from '../../support/small-store.ts';

const KEY = 'five-milliamps class-set';

const named = (title: string) => ({ ...CLASS_SET, title });
const titles = (): readonly string[] => earlierSets().map(({ title }) => title);

beforeEach(() => {
  vi.stubGlobal('localStorage', new SmallStore());
  ownSet();
});
afterEach(() => void vi.unstubAllGlobals());

test('A Set that is changed step by step leaves no earlier one', () => {
  expect(keepSet(named('one'), false)).toEqual({ moved: false });
  expect(keepSet(named('two'), false)).toEqual({ moved: false });
  expect(keptSet()).toEqual(named('two'));
  expect(titles()).toEqual([]);
});

test('A Set that is opened in the place of another leaves that one among the earlier ones', () => {
  keepSet(named('one'), false);
  expect(keepSet(named('two'), true)).toEqual({ moved: true });
  expect(earlierSets()).toMatchObject([{ title: 'one', value: named('one') }]);
  expect(keepSet(named('two'), true)).toEqual({ moved: false });
});

test('A Set that another tab has kept is not lost to the next change here, nor to a Set without tasks', () => {
  keepSet(named('mine'), false);
  localStorage.setItem(KEY, JSON.stringify(named('of the other tab')));
  expect(keepSet(named('mine again'), false)).toEqual({ moved: true });
  expect(keptSet()).toEqual(named('mine again'));
  localStorage.setItem(KEY, JSON.stringify(named('once more')));
  expect(keepSet({ ...CLASS_SET, items: [] }, false)).toEqual({ moved: true });
  expect(keptSet()).toBeUndefined();
  expect(titles()).toEqual(['once more', 'of the other tab']);
});

test('A Set that cannot be read stays as it is: among the earlier ones, or where it stands if there is no room', () => {
  localStorage.setItem(KEY, '{"half');
  expect(keptSet()).toBeUndefined();
  expect(keepSet(named('mine'), false)).toEqual({ moved: true });
  expect(titles()).toEqual(['cannot be read']);
  vi.stubGlobal('localStorage', new SmallStore(KEY.length + 10));
  localStorage.setItem(KEY, '{"half');
  expect(keepSet(named('mine'), false).problem).toMatch(
    /^This browser has no room for the Set that stood here before/,
  );
  expect(localStorage.getItem(KEY)).toBe('{"half');
});

test('A browser that keeps nothing is told', () => {
  vi.stubGlobal('localStorage', new SmallStore(10));
  expect(keepSet(named('mine'), false).problem).toMatch(/^This browser keeps nothing for this page/);
});
