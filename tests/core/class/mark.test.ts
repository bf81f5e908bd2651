/** A class of thirty marked: the counts expected are those written down in the made-up class. */
import { describe, expect, it } from 'vitest';
import {
  countOf,
  markResults,
  numbersMissing,
  resultsCsv,
  resultsIn,
  sayMistake,
  tasksOfSet,
  titleByCode,
} from '../../../src/core/class/index.ts';
import { makeTask, writeTaskId } from '../../../src/core/learn/index.ts';
import type { Marked, MarkedRow, Result, WorkSet } from '../../../src/core/class/index.ts';
import { CLASS_SET, MISTAKES, ODD, handedIn, resultOf, studentResult } from '../../support/classroom.ts';

async function markClass(): Promise<Marked> {
  const inputs = await Promise.all((await handedIn()).map(({ source, text }) => resultsIn(source, text)));
  return markResults(inputs.flat());
}

const marked = await markClass();
const row = (number: number): Exclude<MarkedRow, { readonly problem: string }> => {
  const found = marked.rows[number - 1];
  if (!found || 'problem' in found) throw new Error(`row ${number}: needs a result`);
  return found;
};

const markAll = (...results: readonly Result[]): Marked =>
  markResults(results.map((value, at) => ({ source: `file ${at + 1}`, reading: { ok: true, value } })));

const notesOf = (all: Marked): readonly (readonly string[])[] =>
  all.rows.map((one) => ('notes' in one ? one.notes : []));

describe('A class of thirty', () => {
  it('has a row for every input, in their order, and one Set', () => {
    expect(marked.rows).toHaveLength(30);
    expect(marked.sets).toHaveLength(1);
    expect(marked.sets[0]?.students).toBe(29);
    const { numbers = [] } = marked.sets[0] ?? {};
    expect(numbersMissing(numbers, 30)).toEqual([ODD.spoiled]);
    expect(numbersMissing(numbers, 33)).toEqual([ODD.spoiled, 31, 32, 33]);
  });

  it('counts each mistake as it was made, the commonest first', () => {
    expect(marked.sets[0]?.mistakes.slice(0, 4).map(sayMistake)).toEqual([
      '11 of 29: pair swapped (Lay a lead)',
      '6 of 29: LED forgotten (Work out the current)',
      '4 of 29: one resistor (Work out the current)',
      '3 of 29: lowest bit last (From the wire to a byte)',
    ]);
    for (const { mistake, students } of MISTAKES)
      expect(marked.sets[0]?.mistakes.find((one) => one.mistake === mistake)?.students).toBe(students.length);
  });

  it('marks who made no mistake all right, and who made three three wrong', () => {
    expect(countOf(row(28).tasks, 'right')).toBe(5);
    expect(row(8).tasks.map(({ mark }) => mark)).toEqual(['wrong', 'right', 'wrong', 'right', 'wrong']);
    expect(row(ODD.link).tasks.map(({ mark }) => mark)).toEqual(Array(5).fill('right'));
  });

  it('says why a spoiled file is not marked', () => {
    expect(marked.rows[ODD.spoiled - 1]).toMatchObject({
      source: 'loop-test-25.json',
      problem: expect.stringMatching(/^the file: expected JSON, got other text \(/) as string,
    });
  });

  it('never counts a changed task as right, and says so', () => {
    expect(row(ODD.edited).tasks.map(({ mark }) => mark)).toEqual([
      'right',
      'right',
      'changed',
      'right',
      'right',
    ]);
    expect(row(ODD.edited).notes).toEqual([
      'One answer is to a task that is not in this Set: it was changed, and counts as not right.',
    ]);
  });

  it("knows another student's tasks by their number", () => {
    expect(countOf(row(ODD.variant).tasks, 'changed')).toBe(5);
    expect(row(ODD.variant).notes).toEqual([
      'These are the tasks of number 3, handed in as number 24: none counts as right. For number 3, 4 of 5 would be.',
    ]);
  });

  it('points out the copy and whom it is like, and nobody else', () => {
    const said = (number: number) =>
      `The same answers in all as number ${number}, 3 of them wrong in a way that nobody else was.`;
    expect(row(ODD.copy).notes).toEqual([said(ODD.copiedFrom)]);
    expect(row(ODD.copiedFrom).notes).toEqual([said(ODD.copy)]);
    expect(notesOf(marked).filter((notes) => notes.length > 0)).toHaveLength(4);
  });

  it('counts the marks of each task of the Set, and each column of them gives all who handed in', () => {
    const [first] = marked.sets[0]?.tasks ?? [];
    // 11 swapped the pair and 2 left out the way back; 24 is another's; the copy is 22.
    expect(first).toMatchObject({ title: 'Lay a lead', level: 2 });
    expect(first?.marks).toMatchObject({ wrong: 13, changed: 1, helped: 0 });
    for (const { marks } of marked.sets[0]?.tasks ?? [])
      expect(Object.values(marks).reduce((sum, one) => sum + one, 0)).toBe(29);
  });
});

describe('A table for a spreadsheet', () => {
  const lines = resultsCsv(marked).trimEnd().split('\r\n');

  it('has a line for every input below its head', () => {
    expect(lines).toHaveLength(31);
    expect(lines[0]).toBe(
      'handed in as,number,name,title,tasks,right,right at once,wrong,no answer,changed,marked by the student,notes,not marked because,task 1,task 2,task 3,task 4,task 5',
    );
    expect(lines[8]).toBe(
      'loop-test-08.json,8,,Loop test,5,2,2,3,0,0,0,,,wrong: pair swapped,right,wrong: LED forgotten,right,wrong: lowest bit last',
    );
  });

  it('lets no cell begin a formula', () => {
    expect(lines[ODD.formula]).toContain(",'=1+1,");
    for (const line of lines) expect(line).not.toMatch(/(^|,)"?[=+@\t-]/);
  });
});

describe('Marking', () => {
  it('takes a right answer after a miss, or with a hint, as helped', () => {
    const once = resultOf(CLASS_SET, 1);
    const [first, second, ...rest] = once.attempts as [
      Result['attempts'][number],
      Result['attempts'][number],
      ...Result['attempts'],
    ];
    const all = markAll({
      ...once,
      attempts: [{ ...first, answer: 'none' }, first, { ...second, hints: 2 }, ...rest],
    });
    expect(all.rows[0]).toMatchObject({
      tasks: [
        { mark: 'helped' },
        { mark: 'helped' },
        { mark: 'right' },
        { mark: 'right' },
        { mark: 'right' },
      ],
    });
    expect(all.sets[0]?.mistakes).toMatchObject([{ mistake: 'gave up', students: 1, of: 1 }]);
  });

  it('counts what students mark themselves apart, and names the work by a title where any result has one', () => {
    const rubric: WorkSet = {
      ...CLASS_SET,
      title: 'Defend it',
      items: [{ kind: 'defend-choice', level: 2, count: 1 }],
    };
    const [id] = tasksOfSet(rubric, 1);
    const task = id && makeTask(id);
    if (!id || typeof task !== 'object') throw new Error('test: needs a task with a rubric');
    const all = markAll({
      ...resultOf(CLASS_SET, 1),
      set: rubric,
      attempts: [{ task: writeTaskId(id), answer: task.right, hints: 0, day: 0 }],
    });
    expect(all.rows[0]).toMatchObject({ tasks: [{ mark: 'self', misses: [] }] });
    expect(all.sets[0]?.tasks[0]?.marks).toMatchObject({ self: 1, right: 0, helped: 0, wrong: 0 });
    const two = markResults([
      {
        source: 'by code',
        reading: {
          ok: true,
          value: { ...resultOf(CLASS_SET, 1), set: { ...CLASS_SET, title: titleByCode(CLASS_SET) } },
        },
      },
      { source: 'by link', reading: { ok: true, value: resultOf(CLASS_SET, 2) } },
    ]);
    expect(two.sets.map(({ set, students }) => [set.title, students])).toEqual([[CLASS_SET.title, 2]]);
  });

  it('tells what was not answered, and an answer that cannot be read is none', () => {
    const once = resultOf(CLASS_SET, 1, (_, at) => (at === 4 ? 'no hex' : undefined));
    const all = markAll({ ...once, attempts: once.attempts.slice(1) });
    expect(all.rows[0]).toMatchObject({ tasks: [{ mark: 'none' }, {}, {}, {}, { mark: 'none' }] });
  });

  it('counts the same result once, under whatever title, and two different ones of a number both, and says so', () => {
    const once = resultOf(CLASS_SET, 1);
    const again = { ...once, set: { ...CLASS_SET, title: 'Other title' } };
    const other = resultOf(CLASS_SET, 1, (task) => task.slips[0]?.answer);
    const all = markAll(once, again, other);
    expect(all.sets[0]?.students).toBe(2);
    expect(notesOf(all)).toEqual([
      ['Number 1 handed in more than once: see file 3.'],
      ['The same result as file 1.'],
      ['Number 1 handed in more than once: see file 1.'],
    ]);
  });

  it('counts work once that was handed in under a second name, and says so', () => {
    const robin = { ...resultOf(CLASS_SET, 7), name: 'Robin' };
    const all = markAll(robin, { ...robin, name: 'Pat' }, resultOf(CLASS_SET, 8));
    expect(all.sets[0]).toMatchObject({ students: 2, numbers: [7, 8] });
    expect(notesOf(all)).toEqual([
      [],
      ['The same answers as file 1, which was handed in by Robin under the same number: they count once.'],
      [],
    ]);
    // Two who have answered nothing yet have no work that could be the same.
    const none = (name: string): Result => ({ ...robin, name, attempts: [] });
    expect(markAll(none('Robin'), none('Pat')).sets[0]?.students).toBe(2);
  });

  it('says of two different results of a number by which other name it came', () => {
    const robin = { ...resultOf(CLASS_SET, 7), name: 'Robin' };
    const pat = { ...resultOf(CLASS_SET, 7, (task) => task.slips[0]?.answer), name: 'Pat' };
    expect(notesOf(markAll(robin, pat)).flat()).toEqual([
      'Number 7 also came under another name (Pat): see file 2. Ask whose number it is.',
      'Number 7 also came under another name (Robin): see file 1. Ask whose number it is.',
    ]);
  });

  it('points out no one where many share the same mistakes, and two who alone share theirs', () => {
    const same = { ...CLASS_SET, perStudent: false };
    const wrong = (number: number): Result => resultOf(same, number, (task) => task.slips[0]?.answer);
    const mixed = resultOf(same, 3, (task, at) => (at < 4 ? task.slips[0]?.answer : undefined));
    expect(
      notesOf(markAll(wrong(1), wrong(2), resultOf(same, 4))).filter(({ length }) => length > 0),
    ).toHaveLength(2);
    expect(notesOf(markAll(wrong(1), wrong(2), mixed)).flat()).toEqual([]);
  });

  it('keeps results of different Sets apart, the fuller one first', () => {
    const other = { ...CLASS_SET, seed: 1 };
    const all = markAll(resultOf(other, 1), resultOf(CLASS_SET, 1), resultOf(CLASS_SET, 2));
    expect(all.sets.map(({ set, students }) => [set.seed, students])).toEqual([
      [4711, 2],
      [1, 1],
    ]);
    expect(all.rows.map((one) => ('set' in one ? one.set : undefined))).toEqual([1, 0, 0]);
  });

  it('of nothing gives nothing', () => {
    expect(markResults([])).toEqual({ rows: [], sets: [] });
    expect(resultsCsv(markResults([]))).toBe('');
  });

  it('does the same result the same way wherever it came from', () => {
    expect(markAll(studentResult(8)).rows[0]).toMatchObject({ tasks: row(8).tasks });
  });
});
