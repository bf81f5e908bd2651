/** Laws that hold for every Set and every class, tried on Sets and results made by chance from fixed seeds. */
import { describe, expect, it } from 'vitest';
import {
  KINDS,
  markResults,
  packProgress,
  papersOf,
  readProgress,
  readSetCode,
  readSetText,
  resultHash,
  resultsCsv,
  resultsIn,
  sameWork,
  setCode,
  setFromHash,
  setHash,
  tasksOfSet,
  writeSetText,
} from '../../../src/core/class/index.ts';
import type { Marked, Result, WorkSet } from '../../../src/core/class/index.ts';
import { versionLetter } from '../../../src/core/class/papers.ts';
import { CODE_LETTERS } from '../../../src/core/making/index.ts';
import {
  LEVELS,
  MOST_SEED,
  gradeAnswer,
  makeTask,
  readTaskId,
  writeTaskId,
} from '../../../src/core/learn/index.ts';
import { CLASS_SET, resultOf, studentResult } from '../../support/classroom.ts';
import { seededRandom } from '../../support/random.ts';

const NAMES = [...KINDS.keys()];

/** A Set by chance: up to four items, at most 40 tasks. */
function someSet(seed: number): WorkSet {
  const { integer, pick, chance } = seededRandom(seed);
  return {
    ...CLASS_SET,
    seed: integer(0, MOST_SEED),
    perStudent: chance(0.5),
    show: pick(['each', 'end', 'never'] as const),
    items: Array.from({ length: integer(1, 4) }, () => ({
      kind: pick(NAMES),
      level: pick(LEVELS),
      count: integer(1, 10),
    })),
    ...(chance(0.5) ? { draw: 'mixed' } : {}),
  };
}

const SETS = Array.from({ length: 60 }, (_, at) => someSet(at + 1));
const codes = (set: WorkSet, number: number): readonly string[] => tasksOfSet(set, number).map(writeTaskId);

describe('Every Set', () => {
  it('comes back whole from its file and its link, and by its code as the same work', async () => {
    let byCode = 0;
    for (const set of SETS) {
      expect(readSetText(writeSetText(set))).toEqual({ ok: true, value: set });
      expect(await setFromHash(await setHash(set))).toEqual({ ok: true, value: set });
      const code = setCode(set);
      if (code === undefined) continue;
      byCode += 1;
      const read = readSetCode(code);
      expect(read.ok && sameWork(read.value), code).toBe(sameWork(set));
    }
    expect(byCode).toBeGreaterThan(30);
  });

  it('is the same work under any title and however its items are cut, and other work with another seed', () => {
    for (const set of SETS) {
      const cut = set.items.flatMap((one) => Array.from({ length: one.count }, () => ({ ...one, count: 1 })));
      expect(sameWork({ ...set, title: 'Other', items: cut })).toBe(sameWork(set));
      expect(sameWork({ ...set, seed: (set.seed + 1) % (MOST_SEED + 1) })).not.toBe(sameWork(set));
    }
  });

  it('gives no task twice: not to one student, and with tasks of their own not to a class of thirty', () => {
    for (const set of SETS) {
      const own = codes(set, 5).map((code) => code.replace(/\.\d\./, '.'));
      expect(new Set(own).size).toBe(own.length);
      if (!set.perStudent) continue;
      const all = Array.from({ length: 30 }, (_, at) => codes(set, at + 1)).flat();
      expect(new Set(all).size).toBe(all.length);
    }
  });
});

describe('A code', () => {
  it('with any one letter changed, or any two neighbours the other way round, is never read as another Set', () => {
    const letters = [...(setCode(CLASS_SET) ?? '').replaceAll('-', '')];
    for (const [at, letter] of letters.entries()) {
      for (const other of CODE_LETTERS)
        if (other !== letter)
          expect(readSetCode(letters.with(at, other).join('')).ok, `${other} at ${at}`).toBe(false);
      const next = letters[at + 1];
      if (next !== undefined && next !== letter)
        expect(
          readSetCode(
            letters
              .with(at, next)
              .with(at + 1, letter)
              .join(''),
          ).ok,
        ).toBe(false);
    }
  });

  it('is read with the letters that look like its digits', () => {
    const code = setCode(CLASS_SET) ?? '';
    expect(code).toMatch(/0/);
    expect(readSetCode(code.replaceAll('0', 'o').replaceAll('1', 'L'))).toEqual(readSetCode(code));
  });
});

/** Answers by chance: the right one, a known mistake, nothing, or one that cannot be read. */
function someResult(number: number): Result {
  const { next, pick, chance } = seededRandom(number * 97);
  const whole = resultOf(CLASS_SET, number, ({ slips }) => {
    const draw = next();
    return draw < 0.5 ? undefined : draw < 0.8 ? pick(slips).answer : '?';
  });
  return { ...whole, attempts: whole.attempts.filter(() => chance(0.9)) };
}

const CLASS = Array.from({ length: 20 }, (_, at) => someResult(at + 1));
const mark = (...results: readonly Result[]): Marked =>
  markResults(results.map((value) => ({ source: `file ${value.number}`, reading: { ok: true, value } })));

/** What is found of each student, by number, without notes on others. */
const byNumber = ({ rows }: Marked): ReadonlyMap<number, readonly string[]> =>
  new Map(
    rows.flatMap((row) =>
      'result' in row ? [[row.result.number, row.tasks.map((one) => one.mark)] as const] : [],
    ),
  );

describe('Every class', () => {
  const marked = mark(...CLASS);

  it('is marked the same in any order, and each student as if alone', () => {
    expect(byNumber(mark(...CLASS.toReversed()))).toEqual(
      new Map([...byNumber(marked)].toSorted(([a], [b]) => b - a)),
    );
    for (const one of CLASS)
      expect([...byNumber(mark(one)).values()]).toEqual([byNumber(marked).get(one.number)]);
  });

  it('has for each task as many marks as students, and no mistake of more students than that', () => {
    const [set] = marked.sets;
    for (const { marks } of set?.tasks ?? [])
      expect(Object.values(marks).reduce((sum, one) => sum + one, 0)).toBe(CLASS.length);
    const counts = set?.mistakes.map(({ students }) => students) ?? [];
    expect(counts.length).toBeGreaterThan(3);
    expect(counts).toEqual(counts.toSorted((a, b) => b - a));
    expect(Math.max(...counts)).toBeLessThanOrEqual(CLASS.length);
  });

  it('counts the same with a spoiled file among the results, and with each result brought twice', () => {
    const inputs = CLASS.map((value) => ({ source: 'a', reading: { ok: true, value } }) as const);
    const spoiled = {
      source: 'b',
      reading: { ok: false, problems: [{ place: 'the file', expected: 'JSON', got: 'x' }] },
    } as const;
    expect(markResults([spoiled, ...inputs]).sets).toEqual(marked.sets);
    expect(markResults([...inputs, ...inputs]).sets).toEqual(marked.sets);
  });

  it('is right exactly where the first answer is right, solved by itself', () => {
    for (const result of CLASS)
      for (const [at, code] of codes(CLASS_SET, result.number).entries()) {
        const id = readTaskId(code);
        const task = typeof id === 'string' ? id : makeTask(id);
        const given = result.attempts.find((one) => one.task === code);
        const right =
          typeof task !== 'string' && given !== undefined && gradeAnswer(task, given.answer).right;
        expect(byNumber(marked).get(result.number)?.[at] === 'right', code).toBe(right);
      }
  });
});

describe('What stands out', () => {
  const notes = ({ rows }: Marked): readonly string[] =>
    rows.flatMap((row) => ('notes' in row ? row.notes : []));
  const strange = (...tasks: readonly string[]): Result => {
    const made = resultOf(CLASS_SET, 5);
    const attempts = made.attempts.map((one, at) => ({ ...one, task: tasks[at] ?? one.task }));
    return { ...made, attempts };
  };

  it('counts changed tasks in words, and finds no owner where no number has them all', () => {
    expect(notes(mark(strange('lay-lead.0.1', 'lay-lead.0.2')))).toEqual([
      '2 answers are to tasks that are not in this Set: they were changed, and count as not right.',
    ]);
    const [third = ''] = codes(CLASS_SET, 3);
    expect(notes(mark(strange(third, 'lay-lead.0.2')))[0]).toMatch(/^2 answers are to tasks/);
    expect(notes(mark(strange(third)))[0]).toMatch(/^These are the tasks of number 3, handed in as number 5/);
  });

  it('never gives the tasks of a Set that is the same for all to another number', () => {
    const same = { ...CLASS_SET, perStudent: false };
    const made = resultOf(CLASS_SET, 3);
    expect(notes(mark({ ...made, set: same }))[0]).toMatch(
      /^5 answers are to tasks that are not in this Set/,
    );
  });

  it('needs three answers in common, two of them wrong: less may be chance', () => {
    const alike = (number: number, wrong: readonly (string | undefined)[], count: number): Result => {
      const made = resultOf({ ...CLASS_SET, perStudent: false }, number, (_, at) => wrong[at]);
      return { ...made, attempts: made.attempts.slice(0, count) };
    };
    const wrong = ['none', 'none', '99', '98', '00'];
    const noted = (count: number, given: readonly (string | undefined)[]): number =>
      notes(mark(alike(1, given, count), alike(2, given, count))).length;
    expect(noted(3, wrong)).toBe(2);
    expect(noted(2, wrong)).toBe(0);
    expect(noted(5, [undefined, undefined, '99'])).toBe(0);
    expect(noted(5, [undefined, undefined, '99', '98'])).toBe(2);
  });
});

/** The cells of a CSV text by RFC 4180. */
function cellsOf(csv: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain = '', end] of csv.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
    if (quoted === undefined && plain === '' && end === '') break;
    rows.at(-1)?.push(quoted?.replaceAll('""', '"') ?? plain);
    if (end === '\r\n') rows.push([]);
  }
  return rows.filter((row) => row.length > 0);
}

it('Whatever students write for a name stands whole in one cell, and begins no formula', () => {
  const names = ['=1+1', '+A1', '-2', '@x', 'Ann "A", 7b', 'two\nlines', '\tTab', 'Zoë', "O'Hara", ''];
  const all = mark(...names.map((name, at) => ({ ...studentResult(at + 1), name })));
  const [head, ...rows] = cellsOf(resultsCsv(all));
  expect(rows).toHaveLength(names.length);
  for (const [at, row] of rows.entries()) {
    expect(row).toHaveLength(head?.length ?? 0);
    const cell = row[2] ?? '';
    expect(cell).not.toMatch(/^[=+@\t-]/);
    expect(cell.replace(/^'/, '')).toBe(names[at]);
  }
});

describe('Paper', () => {
  it('has a version letter of its own for each of 999 numbers, in the order of a spreadsheet', () => {
    const all = Array.from({ length: 999 }, (_, at) => versionLetter(at + 1));
    expect(new Set(all).size).toBe(999);
    expect(all).toEqual(all.toSorted((a, b) => a.length - b.length || (a < b ? -1 : 1)));
    // By hand: 26 + 26 x 26 = 702 is the last of two letters.
    expect([all[701], all[702]]).toEqual(['ZZ', 'AAA']);
  });

  it('holds the tasks that the same number gets on a screen', () => {
    for (const set of SETS.slice(0, 6))
      for (const { number, tasks } of papersOf(set, 3)) {
        expect(tasks.map(({ code }) => code)).toEqual(codes(set, number ?? 1));
        for (const { right } of tasks) expect(right[0]).not.toBe('');
      }
  });
});

it('Work that is kept by a course system comes back as what was done last, however long it was', () => {
  const long: WorkSet = { ...CLASS_SET, items: CLASS_SET.items.map((one) => ({ ...one, count: 10 })) };
  const whole = resultOf(long, 4);
  for (let letters = 0; letters <= 300; letters += 50) {
    const attempts = whole.attempts.map((one) => ({ ...one, answer: 'x'.repeat(letters) }));
    const text = packProgress({ ...whole, attempts });
    expect(text.length).toBeLessThanOrEqual(4096);
    const kept = readProgress(long, text)?.attempts ?? [];
    expect(kept).toEqual(attempts.slice(attempts.length - kept.length));
    expect(kept.length).toBe(Math.min(attempts.length, kept.length));
    expect(kept.length).toBeGreaterThan(9);
  }
});

it('A link to a result with one letter changed is refused or is the same result, and never ends the marking', async () => {
  const link = await resultHash(studentResult(8));
  for (let at = '#result='.length; at < link.length; at += 3) {
    const changed = link.slice(0, at) + (link[at] === 'A' ? 'B' : 'A') + link.slice(at + 1);
    const [one] = await resultsIn('link', changed);
    expect(one && markResults([one]).rows).toHaveLength(1);
  }
});
