/** Sets, results, links and codes: read as written, and refused with the field, what was expected and what came. */
import { describe, expect, it } from 'vitest';
import {
  KINDS,
  readResultText,
  readSet,
  readSetCode,
  readSetText,
  resultFileName,
  resultHash,
  resultsIn,
  setCode,
  setFromHash,
  setHash,
  tasksOfSet,
  writeResultText,
  writeSetText,
} from '../../../src/core/class/index.ts';
import type { Reading, WorkSet } from '../../../src/core/class/index.ts';
import { kindNumber } from '../../../src/core/class/set-code.ts';
import { MOST_SEED, writeTaskId } from '../../../src/core/learn/index.ts';
import { sayProblem } from '../../../src/core/plan/index.ts';
import { CLASS_SET, resultOf, studentResult } from '../../support/classroom.ts';

const problemsOf = (reading: Reading<unknown> | undefined): readonly string[] =>
  reading && !reading.ok ? reading.problems.map(sayProblem) : [];

describe('A Set', () => {
  it('is read as it was written, from a file, a link and a code', async () => {
    expect(readSetText(writeSetText(CLASS_SET))).toEqual({ ok: true, value: CLASS_SET });
    expect(await setFromHash(`https://example.org/hand-in/${await setHash(CLASS_SET)}`)).toEqual({
      ok: true,
      value: CLASS_SET,
    });
    expect(readSetCode(setCode(CLASS_SET) ?? '')).toEqual({
      ok: true,
      value: { ...CLASS_SET, title: 'Set 04K7' },
    });
  });

  it.each([
    [{ title: '' }, "title: expected text of 1 to 60 characters, got ''"],
    [{ seed: MOST_SEED + 1 }, 'seed: expected a whole number from 0 to 1048575, got 1048576'],
    [{ show: 'now' }, "show: expected one of each, end, never, got 'now'"],
    [{ perStudent: 1 }, 'perStudent: expected true or false, got 1'],
    [{ items: [] }, 'items: expected a list of 1 to 40, got a list of 0'],
    [
      { items: [{ kind: 'juggle', level: 2, count: 1 }] },
      "items[0].kind: expected a kind of task that there is, got 'juggle'",
    ],
    [
      { items: [{ kind: 'lay-lead', level: 4, count: 1 }] },
      'items[0].level: expected one of 0, 1, 2, 3, got 4',
    ],
    [
      { items: Array(3).fill({ kind: 'lay-lead', level: 2, count: 20 }) },
      'items: expected at most 40 tasks in all, got 60',
    ],
    [{ format: 'five-milliamps-plan' }, "format: expected five-milliamps-set, got 'five-milliamps-plan'"],
    [{ version: 2 }, 'version: expected 1: this file was made by a newer workbook, got 2'],
  ])('with %o is refused: %s', (change, words) => {
    expect(problemsOf(readSet({ ...CLASS_SET, ...change }))).toEqual([words]);
  });

  it('refuses what is no JSON, no object, and a link that is cut short', async () => {
    expect(problemsOf(readSetText('{'))[0]).toMatch(/^the file: expected JSON, got other text/);
    expect(problemsOf(readSetText('5'))).toEqual([
      'the file: expected an object with the format five-milliamps-set, got 5',
    ]);
    expect(problemsOf(await setFromHash((await setHash(CLASS_SET)).slice(0, 30)))).toEqual([
      'the link: expected a whole link, got one that is cut short or changed',
    ]);
    expect(await setFromHash('#plan=abc')).toBeUndefined();
  });
});

describe('The tasks of a Set', () => {
  const written = (set: WorkSet, number: number): readonly string[] =>
    tasksOfSet(set, number).map(writeTaskId);

  it('differ from student to student, none given twice, and are the same at every asking', () => {
    const all = Array.from({ length: 30 }, (_, at) => written(CLASS_SET, at + 1));
    expect(new Set(all.flat()).size).toBe(30 * 5);
    expect(written(CLASS_SET, 7)).toEqual(all[6]);
    // By hand: seed 4711, number 7, two leads each: 4711 + 14 = 4725, in base 32 4JL; one trace each: 4718, 4JE.
    expect(all[6]).toEqual([
      'lay-lead.2.4JL',
      'lay-lead.2.4JM',
      'loop-current.2.4JL',
      'loop-current.2.4JM',
      'trace-to-hex.2.4JE',
    ]);
  });

  it('are the same for all where the Set says so, and never two alike in one', () => {
    const same: WorkSet = { ...CLASS_SET, perStudent: false };
    expect(written(same, 3)).toEqual(written(same, 9));
    const twice = {
      ...CLASS_SET,
      items: [...CLASS_SET.items, { kind: 'lay-lead', level: 2, count: 2 } as const],
    };
    expect(new Set(written(twice, 3)).size).toBe(7);
  });

  it('begin again at 0 after the last seed', () => {
    const last: WorkSet = { ...CLASS_SET, seed: MOST_SEED, perStudent: false };
    expect(tasksOfSet(last, 1).map(({ seed }) => seed)).toEqual([MOST_SEED, 0, MOST_SEED, 0, MOST_SEED]);
  });
});

describe('A code for the board', () => {
  it('is four letters for the seed, one for the choices, four for each kind, two checks', () => {
    // 5 + 3 times 4 + 2 letters, in groups of four.
    expect(setCode(CLASS_SET)).toMatch(/^04K7-.{4}-.{4}-.{4}-.{3}$/);
  });

  it('holds more than eight tasks of a kind, and there is none for too many kinds', () => {
    const long: WorkSet = { ...CLASS_SET, items: [{ kind: 'lay-lead', level: 3, count: 20 }] };
    const read = readSetCode(setCode(long) ?? '');
    expect(read.ok && read.value.items).toEqual(long.items);
    const kinds = [...KINDS.keys()].slice(0, 7);
    expect(
      setCode({ ...CLASS_SET, items: kinds.map((kind) => ({ kind, level: 1, count: 1 })) }),
    ).toBeUndefined();
  });

  it('is read in small letters and without lines, and a slip is found and told', () => {
    const code = setCode(CLASS_SET) ?? '';
    expect(readSetCode(` ${code.toLowerCase().replaceAll('-', ' ')} `).ok).toBe(true);
    const slip = `1${code.slice(1)}`;
    expect(problemsOf(readSetCode(slip))).toEqual([
      "the code: expected the letters as printed, got a code that would be right with '0' as letter 1",
    ]);
    expect(problemsOf(readSetCode(`4${code[0]}${code.slice(2)}`))).toEqual([
      'the code: expected the letters as printed, got a code that would be right with letters 1 and 2 the other way round',
    ]);
    expect(problemsOf(readSetCode('AB?'))).toEqual([
      "the code: expected letters and digits as printed, got '?'",
    ]);
    expect(problemsOf(readSetCode('ABC'))).toEqual(['the code: expected a whole code, got 3 letters']);
  });

  it('has a number of its own for every kind', () => {
    expect(new Set([...KINDS.keys()].map(kindNumber)).size).toBe(KINDS.size);
  });
});

describe('A result', () => {
  const result = studentResult(7);

  it('is read as it was written, from a file, a link, and a text with several links', async () => {
    expect(readResultText(writeResultText(result))).toEqual({ ok: true, value: result });
    const link = `https://example.org/mark/${await resultHash(result)}`;
    expect(await resultsIn('mail', link)).toEqual([{ source: 'mail', reading: { ok: true, value: result } }]);
    expect((await resultsIn('mails', `Ann: ${link}\nBen: ${link}`)).map(({ source }) => source)).toEqual([
      'mails, link 1',
      'mails, link 2',
    ]);
  });

  it('fits into a link of at most 600 characters for twenty tasks', async () => {
    const long: WorkSet = {
      ...CLASS_SET,
      items: CLASS_SET.items.map((one) => ({ ...one, count: 7 })),
    };
    expect((await resultHash(resultOf(long, 7))).length).toBeLessThan(600);
  });

  it('is named by title, number and name, in letters that every disk takes', () => {
    expect(resultFileName({ ...result, name: 'Ann-Zoë O’Hara' })).toBe('loop-test-07-ann-zoë-o-hara.json');
    expect(resultFileName({ ...result, number: 112, set: { ...CLASS_SET, title: '../..' } })).toBe(
      'class-work-112.json',
    );
  });

  it.each([
    [{ number: 0 }, 'number: expected a whole number from 1 to 999, got 0'],
    [{ set: { ...CLASS_SET, seed: -1 } }, 'set.seed: expected a whole number from 0 to 1048575, got -1'],
    [
      { attempts: [{ task: 'lay-lead', answer: '', hints: 0, day: 1 }] },
      "attempts[0].task: expected a kind, a level and a seed such as 'lay-lead.2.7F3K', got 'lay-lead'",
    ],
    [
      { attempts: [{ task: 'lay-lead.2.7', answer: '', hints: 4, day: 1 }] },
      'attempts[0].hints: expected a whole number from 0 to 3, got 4',
    ],
    [
      { score: 100 },
      'score: expected no field of this name (there are format, version, set, number, name, attempts), got 100',
    ],
  ])('with %o is refused: %s', (change, words) => {
    expect(problemsOf(readResultText(JSON.stringify({ ...result, ...change })))).toEqual([words]);
  });
});
