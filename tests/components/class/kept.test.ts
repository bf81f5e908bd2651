/** What the class pages keep: the teacher's Set, and work that was begun, student by student. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keepSet, keepWork, keptSet, workOn } from '../../../components/class/kept-class.ts';
import { keepNote } from '../../../components/keep/notes.ts';
import { CLASS_SET, resultOf, studentResult } from '../../support/classroom.ts';
import { SmallStore } from '../../support/small-store.ts';

beforeEach(() => void vi.stubGlobal('localStorage', new SmallStore(200_000)));
afterEach(() => void vi.unstubAllGlobals());

describe('The Set of a teacher', () => {
  test('is kept as it is, and a spoiled one is none', () => {
    expect(keptSet()).toBeUndefined();
    expect(keepSet(CLASS_SET)).toBeUndefined();
    expect(keptSet()).toEqual(CLASS_SET);
    keepNote('class-set', { ...CLASS_SET, seed: 'x' });
    expect(keptSet()).toBeUndefined();
  });
});

describe('Work that was begun', () => {
  const begun = (number: number, answers: number) => {
    const whole = studentResult(number);
    return { ...whole, attempts: whole.attempts.slice(0, answers) };
  };

  test('is gone on with by whoever began it last, and by number by the others', () => {
    keepWork({ result: begun(1, 2), handedIn: false });
    keepWork({ result: begun(2, 3), handedIn: false });
    expect(workOn(CLASS_SET)?.result.number).toBe(2);
    expect(workOn(CLASS_SET, 1)?.result.attempts).toHaveLength(2);
    expect(workOn(CLASS_SET, 3)).toBeUndefined();
  });

  test('takes the place of what was kept of it, and is not begun again when it is handed in', () => {
    keepWork({ result: begun(1, 2), handedIn: false });
    keepWork({ result: begun(1, 4), handedIn: true });
    expect(workOn(CLASS_SET)).toBeUndefined();
    expect(workOn(CLASS_SET, 1)).toMatchObject({ handedIn: true, result: { attempts: { length: 4 } } });
  });

  test('belongs to its Set: other work is not found under it, the same under another title is', () => {
    keepWork({ result: begun(1, 2), handedIn: false });
    expect(workOn({ ...CLASS_SET, seed: 1 })).toBeUndefined();
    expect(workOn({ ...CLASS_SET, title: 'By the code' })?.result.number).toBe(1);
  });

  test('of sixty students is kept, the oldest let go', () => {
    for (let number = 1; number <= 61; number += 1)
      keepWork({ result: { ...resultOf(CLASS_SET, number), attempts: [] }, handedIn: true });
    expect(workOn(CLASS_SET, 1)).toBeUndefined();
    expect(workOn(CLASS_SET, 2)).toBeDefined();
  });

  test('says so where the browser keeps nothing', () => {
    vi.stubGlobal('localStorage', new SmallStore(10));
    expect(keepWork({ result: begun(1, 2), handedIn: false })).toMatch(
      /^This browser keeps nothing for this page/,
    );
  });

  test('leaves out what is spoiled and finds the rest', () => {
    keepNote('class-work', [{ result: 5 }, 7, { result: begun(4, 1), handedIn: false }]);
    expect(workOn(CLASS_SET)?.result.number).toBe(4);
    keepNote('class-work', 'nothing');
    expect(workOn(CLASS_SET)).toBeUndefined();
  });
});
