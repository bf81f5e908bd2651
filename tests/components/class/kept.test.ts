/** What the class pages open and keep: Sets, and work that was begun, student by student. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  dropWork,
  hearWork,
  joinedWork,
  keepWork,
  nothingKept,
  olderWork,
  workFile,
  workOn,
  worksOfNumber,
} from '../../../components/class/kept-work.ts';
import { openSet } from '../../../components/class/open-set.ts';
import { holdsSet, sayWrong } from '../../../components/class/words.ts';
import { keepNote } from '../../../components/keep/notes.ts';
import { aside } from '../../../components/keep/shelf.ts';
import { resultsIn, setCode, setHash, writeSetText } from '../../../src/core/class/index.ts';
import { CLASS_SET, resultOf, studentResult } from '../../support/classroom.ts';
import { SmallStore } from '../../support/small-store.ts';

beforeEach(() => void vi.stubGlobal('localStorage', new SmallStore(200_000)));
afterEach(() => {
  // What a browser refused is known until one takes it.
  vi.stubGlobal('localStorage', new SmallStore());
  keepWork({ result: { ...resultOf(CLASS_SET, 1), attempts: [] }, handedIn: true });
  vi.unstubAllGlobals();
});

describe('A Set', () => {
  test('is opened from a code, a file, an address, and from what was kept', async () => {
    const opened = { ok: true, value: CLASS_SET };
    expect(await openSet({ from: 'file', text: writeSetText(CLASS_SET) })).toEqual(opened);
    expect(await openSet({ from: 'address', text: await setHash(CLASS_SET) })).toEqual(opened);
    expect(await openSet({ from: 'kept', value: CLASS_SET })).toEqual(opened);
    expect(await openSet({ from: 'code', text: setCode(CLASS_SET) ?? '' })).toMatchObject({
      value: { seed: CLASS_SET.seed, items: CLASS_SET.items },
    });
  });

  test('that is spoiled, or not there, says what was expected', async () => {
    expect(sayWrong(await openSet({ from: 'kept', value: { ...CLASS_SET, seed: 'x' } }))).toBe(
      "seed: expected a whole number from 0 to 1048575, got 'x'",
    );
    expect(sayWrong(await openSet({ from: 'address', text: '#plan=x' }))).toBe(
      'the address: expected one that ends in #set= and a Set, got none',
    );
    expect([holdsSet('#set=a'), holdsSet('#plan=a')]).toEqual([true, false]);
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
    expect(worksOfNumber(CLASS_SET, 1)[0]?.result.attempts).toHaveLength(2);
    expect(worksOfNumber(CLASS_SET, 3)[0]).toBeUndefined();
  });

  test('takes the place of what was kept of it, and is not begun again when it is handed in', () => {
    keepWork({ result: begun(1, 2), handedIn: false });
    keepWork({ result: begun(1, 4), handedIn: true });
    expect(workOn(CLASS_SET)).toBeUndefined();
    expect(worksOfNumber(CLASS_SET, 1)[0]).toMatchObject({
      handedIn: true,
      result: { attempts: { length: 4 } },
    });
  });

  test('belongs to its Set: other work is not found under it, the same under another title is', () => {
    keepWork({ result: begun(1, 2), handedIn: false });
    expect(workOn({ ...CLASS_SET, seed: 1 })).toBeUndefined();
    expect(workOn({ ...CLASS_SET, title: 'By the code' })?.result.number).toBe(1);
  });

  test('of two students under one number stays two, and capitals and spaces make no other student', () => {
    const named = (name: string, answers: number) => ({ ...begun(7, answers), name });
    keepWork({ result: named('Robin', 5), handedIn: true });
    keepWork({ result: named('Pat', 1), handedIn: false });
    keepWork({ result: named(' robin', 5), handedIn: true });
    const works = worksOfNumber(CLASS_SET, 7);
    expect(works.map(({ result, handedIn }) => [result.name, result.attempts.length, handedIn])).toEqual([
      [' robin', 5, true],
      ['Pat', 1, false],
    ]);
  });

  test('that had no name is kept once when it gets one', () => {
    keepWork({ result: begun(7, 2), handedIn: false });
    keepWork({ result: { ...begun(7, 2), name: 'Ann' }, handedIn: false }, begun(7, 2));
    expect(worksOfNumber(CLASS_SET, 7).map(({ result }) => result.name)).toEqual(['Ann']);
  });

  const keepSome = (count: number): void => {
    for (let number = 1; number <= count; number += 1)
      keepWork({ result: { ...resultOf(CLASS_SET, number), attempts: [] }, handedIn: true });
  };
  const numbers = (list: ReturnType<typeof olderWork>) => list.map(({ result }) => result.number);

  test('of more than sixty students stays, and the oldest goes when it was saved, not before', async () => {
    keepSome(60);
    expect(olderWork(resultOf(CLASS_SET, 60), false)).toEqual([]);
    keepSome(62);
    const older = olderWork(resultOf(CLASS_SET, 62), false);
    expect(numbers(older)).toEqual([2, 1]);
    expect(worksOfNumber(CLASS_SET, 1)[0]).toBeDefined();
    const file = await resultsIn('older.json', workFile(older));
    expect(file.map(({ source }) => source)).toEqual(['loop-test-02.json', 'loop-test-01.json']);
    expect(file.map(({ reading }) => reading.ok && reading.value)).toEqual(older.map(({ result }) => result));
    // What was added since it was saved is not in the file, and stays.
    keepWork({ result: begun(2, 1), handedIn: true });
    expect(dropWork(older)).toBeUndefined();
    expect(worksOfNumber(CLASS_SET, 1)[0]).toBeUndefined();
    expect(worksOfNumber(CLASS_SET, 2)[0]?.result.attempts).toHaveLength(1);
    expect(worksOfNumber(CLASS_SET, 3)[0]).toBeDefined();
  });

  test('of all others may go where there is no room, sixty at a time, the oldest first', () => {
    keepSome(62);
    expect(numbers(olderWork(resultOf(CLASS_SET, 62), true))).toEqual(
      Array.from({ length: 60 }, (_, at) => 60 - at),
    );
    const text = localStorage.getItem('five-milliamps class-work') ?? '';
    const tight = new SmallStore('five-milliamps class-work'.length + text.length);
    vi.stubGlobal('localStorage', tight);
    tight.setItem('five-milliamps class-work', text);
    expect(keepWork({ result: begun(63, 5), handedIn: false }).problem).toContain('no room');
    expect(dropWork(olderWork(resultOf(CLASS_SET, 63), true))).toBeUndefined();
    expect(keepWork({ result: begun(63, 5), handedIn: false }).problem).toBeUndefined();
    expect(worksOfNumber(CLASS_SET, 63)[0]?.result.attempts).toHaveLength(5);
    const left = [1, 60, 61].map((number) => worksOfNumber(CLASS_SET, number)[0]?.result.number);
    expect(left).toEqual([undefined, undefined, 61]);
  });

  test('that is gone from the store is missed, and work that a browser refuses to be asked about is not', () => {
    expect(nothingKept()).toBe(true);
    keepSome(1);
    expect(nothingKept()).toBe(false);
    vi.stubGlobal('localStorage', undefined);
    expect(nothingKept()).toBe(false);
  });

  test('is heard of when another tab changes it or empties the store, and when the page comes back', () => {
    const tab = Object.assign(new EventTarget(), { visibilityState: 'visible' });
    const store = new EventTarget();
    vi.stubGlobal('document', tab);
    for (const name of ['addEventListener', 'removeEventListener'] as const)
      vi.stubGlobal(name, store[name].bind(store));
    let heard = 0;
    const stop = hearWork(() => (heard += 1));
    const say = (key: string | null) => store.dispatchEvent(Object.assign(new Event('storage'), { key }));
    say('five-milliamps board');
    expect(heard).toBe(0);
    say('five-milliamps class-work');
    say(null);
    tab.dispatchEvent(new Event('visibilitychange'));
    expect(heard).toBe(3);
    stop();
    say(null);
    tab.dispatchEvent(new Event('visibilitychange'));
    expect(heard).toBe(3);
  });

  test('that was handed in from another tab is handed in here, with the answers of both', () => {
    const whole = studentResult(1);
    const [mine, theirs] = [whole.attempts.slice(0, 2), whole.attempts.slice(2, 4)];
    keepWork({ result: { ...whole, attempts: theirs }, handedIn: true });
    expect(joinedWork({ result: { ...whole, attempts: mine }, handedIn: false })).toEqual({
      result: { ...whole, attempts: [...mine, ...theirs] },
      handedIn: true,
    });
  });

  test('says so where the browser keeps nothing', () => {
    vi.stubGlobal('localStorage', new SmallStore(10));
    expect(keepWork({ result: begun(1, 2), handedIn: false }).problem).toMatch(
      /^This browser keeps nothing for this page/,
    );
  });

  test('is still known where the browser refused it, and is kept with the next that it takes', () => {
    vi.stubGlobal('localStorage', new SmallStore(10));
    keepWork({ result: begun(1, 2), handedIn: false });
    expect(worksOfNumber(CLASS_SET, 1)[0]?.result.attempts).toHaveLength(2);
    const roomy = new SmallStore(200_000);
    vi.stubGlobal('localStorage', roomy);
    expect(keepWork({ result: begun(2, 1), handedIn: false }).problem).toBeUndefined();
    expect((JSON.parse(roomy.getItem('five-milliamps class-work') ?? '') as unknown[]).length).toBe(2);
  });

  test('of one student in two tabs is joined: the last one does not win', () => {
    const whole = studentResult(1);
    const [first, second] = [whole.attempts.slice(0, 2), whole.attempts.slice(2, 3)];
    keepWork({ result: { ...whole, attempts: first }, handedIn: false });
    const { work } = keepWork({ result: { ...whole, attempts: second }, handedIn: false });
    expect(work.result.attempts).toEqual([...second, ...first]);
    expect(worksOfNumber(CLASS_SET, 1)[0]?.result.attempts).toEqual([...second, ...first]);
  });

  test('that is spoiled is put aside before it is written over, and stays where there is no room for that', () => {
    const spoiled = [{ result: 5 }, { result: begun(4, 1), handedIn: false }];
    keepNote('class-work', spoiled);
    expect(keepWork({ result: begun(1, 2), handedIn: false }).problem).toBeUndefined();
    expect(aside('class-work')).toBe(JSON.stringify(spoiled));
    expect(worksOfNumber(CLASS_SET, 4)[0]?.result.attempts).toHaveLength(1);
    const text = JSON.stringify(spoiled);
    const tight = new SmallStore(text.length + 100);
    vi.stubGlobal('localStorage', tight);
    tight.setItem('five-milliamps class-work', text);
    expect(keepWork({ result: begun(1, 2), handedIn: false }).problem).toContain('no room to put it aside');
    expect(tight.getItem('five-milliamps class-work')).toBe(text);
  });

  test('leaves out what is spoiled and finds the rest', () => {
    keepNote('class-work', [{ result: 5 }, 7, { result: begun(4, 1), handedIn: false }]);
    expect(workOn(CLASS_SET)?.result.number).toBe(4);
    keepNote('class-work', 'nothing');
    expect(workOn(CLASS_SET)).toBeUndefined();
  });
});
