/** The practice record in a store that is full, spoiled, emptied, or shared by two tabs: no answer is lost. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { aside } from '../../../components/keep/shelf.ts';
import { keepAttempt, keptRecord, recordText, wipeRecord } from '../../../components/keep/stored-record.ts';
import { readRecord } from '../../../src/core/learn/index.ts';
import type { Attempt } from '../../../src/core/learn/index.ts';
import { SmallStore } from '../../support/small-store.ts';

const KEY = 'five-milliamps record';

const attempt = (day: number): Attempt => ({ task: 'lay-lead.2.7F3K', answer: '', hints: 0, day });

const days = (): readonly number[] => keptRecord().record.attempts.map((one) => one.day);

beforeEach(() => void vi.stubGlobal('localStorage', new SmallStore()));
afterEach(() => {
  wipeRecord();
  vi.unstubAllGlobals();
});

test('Answers of two tabs stand in one record', () => {
  keepAttempt(attempt(1));
  const other = { ...keptRecord().record, attempts: [attempt(1), attempt(2)] };
  localStorage.setItem(KEY, JSON.stringify(other));
  keepAttempt(attempt(3));
  expect(days()).toEqual([1, 2, 3]);
});

test('An answer that the browser refuses is said, is in the file of the record, and is kept with the next', () => {
  keepAttempt(attempt(1));
  const before = localStorage.getItem(KEY) ?? '';
  vi.stubGlobal('localStorage', new SmallStore(KEY.length + before.length));
  localStorage.setItem(KEY, before);
  expect(keepAttempt(attempt(2)).problem).toMatch(/^This browser keeps nothing for this page/);
  expect(localStorage.getItem(KEY)).toBe(before);
  expect(readRecord(JSON.parse(recordText()))).toMatchObject({ attempts: [{ day: 1 }, { day: 2 }] });
  vi.stubGlobal('localStorage', new SmallStore());
  localStorage.setItem(KEY, before);
  expect(keepAttempt(attempt(3)).problem).toBeUndefined();
  expect(days()).toEqual([1, 2, 3]);
});

test('A spoiled record is put aside before another is written, and is not written over where it cannot be', () => {
  const spoiled = '{"format":"five-milliamps-record","version":9,"attempts":[1,2,3,4,5,6,7,8,9]}';
  localStorage.setItem(KEY, spoiled);
  expect(keptRecord().problem).toBe(
    'What was kept here cannot be read, and was put aside. record: version must be 1, got 9.',
  );
  keepAttempt(attempt(1));
  expect([aside('record'), days()]).toEqual([spoiled, [1]]);
  wipeRecord();
  for (const text of [spoiled, spoiled.slice(0, -1)]) {
    vi.stubGlobal('localStorage', new SmallStore(KEY.length + spoiled.length + 20));
    localStorage.setItem(KEY, text);
    expect(keepAttempt(attempt(1)).problem).toContain('no room to put it aside');
    expect(localStorage.getItem(KEY)).toBe(text);
  }
});

test('A record that is wiped does not come back with the next answer', () => {
  vi.stubGlobal('localStorage', new SmallStore(10));
  keepAttempt(attempt(1));
  wipeRecord();
  vi.stubGlobal('localStorage', new SmallStore());
  keepAttempt(attempt(2));
  expect(days()).toEqual([2]);
});
