import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { textOf } from '../../src/core/plan/index.ts';
import { filesOf, readFile } from '../../src/cli/files.ts';
import { main } from '../../src/cli/main.ts';
import { readySets, resultHash, tasksOfSet, writeResultText } from '../../src/core/class/index.ts';
import type { Result } from '../../src/core/class/index.ts';
import { makeTask, writeTaskId } from '../../src/core/learn/index.ts';
import type { Task } from '../../src/core/learn/index.ts';
import { writePlanText, writeSharedLink } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { plainPlan } from '../core/plan/plans.ts';

const good = plainPlan();
const wired = (...pairs: readonly (readonly [string, string])[]): Plan => ({
  ...good,
  leads: good.leads.map((lead) => ({
    ...lead,
    conductors: pairs.map(([from, to]) => ({ from, to }) as (typeof lead.conductors)[number]),
  })),
});
const turned = wired(['4', '5'], ['5', '4'], ['2', '2']);
const open = wired(['4', '4']);
/** The task made easier: a smaller resistor in the output. */
const changed: Plan = {
  ...good,
  devices: good.devices.map((device, at) => ({
    ...device,
    jacks: device.jacks.map((jack) => (at === 0 ? { ...jack, values: { sourceOhms: 100 } } : jack)),
  })),
};

/** A folder of files, by path; gone again when `work` has ended. */
async function inFolder<T>(
  files: Readonly<Record<string, string | Uint8Array>>,
  work: (home: string) => T,
): Promise<Awaited<T>> {
  const home = mkdtempSync(join(tmpdir(), 'class-'));
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(join(home, path, '..'), { recursive: true });
    writeFileSync(join(home, path), content);
  }
  try {
    return await work(home);
  } finally {
    rmSync(home, { recursive: true });
  }
}

/** The command line on a real folder. */
function runOn(files: Readonly<Record<string, string | Uint8Array>>, ...given: readonly string[]) {
  return inFolder(files, async (home) => {
    const [out, error]: [string[], string[]] = [[], []];
    const status = await main(given, {
      list: (word) => filesOf(word, home),
      read: (file) => readFile(file, home),
      out: (text) => out.push(text),
      error: (text) => error.push(text),
    });
    return { status, out: out.join('\n'), error: error.join('\n') };
  });
}

const utf16 = (text: string): Uint8Array => Buffer.from(text, 'utf16le');
const CLASS = {
  'work/loop-02-ben.json': writePlanText(turned),
  'work/loop-10-cy.json': writePlanText(open),
  'work/loop-01-ann.json': writePlanText(good),
  'work/late/loop-03-di.json': utf16(`\ufeff${writePlanText(good)}`),
  'work/loop-04-ed.json': writePlanText(changed),
  'work/loop-05-fay.json': '{"format": ',
  'work/.hidden.json': 'of the system',
  'teacher.json': writePlanText(good),
};

describe('A folder of a class', () => {
  test('is read whole, by number, and ends with what is right and why the others are not', async () => {
    const { status, out, error } = await runOn(CLASS, '--against', 'teacher.json', 'work');
    expect(status).toBe(2);
    expect(out.split('\n').slice(-2)).toEqual([
      '6 handed in: 2 right, 3 not right, 1 not read.',
      'Not right: 1 Reversed, 1 Changed task, 1 No path.',
    ]);
    expect(error).toMatch(/^work\/loop-05-fay\.json: the file: expected JSON, got/);
  });

  test('has a row for every file as data: whose it is, whether it is the same task and right', async () => {
    const { out } = await runOn(CLASS, '--json', '--against', 'teacher.json', 'work');
    const rows = JSON.parse(out) as readonly Record<string, unknown>[];
    expect(
      rows.map(({ number, name, read, sameTask, right }) => [number, name, read, sameTask, right]),
    ).toEqual([
      [3, 'di', true, true, true],
      [1, 'ann', true, true, true],
      [2, 'ben', true, true, false],
      [4, 'ed', true, false, false],
      [5, 'fay', false, null, false],
      [10, 'cy', true, true, false],
    ]);
    expect(new Set(rows.map((row) => Object.keys(row).sort().join(' '))).size).toBe(1);
  });

  test('is a table for a spreadsheet, in which no cell begins a formula', async () => {
    const formula = { ...good, links: good.links.map((link) => ({ ...link, name: '=1+1' })) };
    const { out } = await runOn(
      { ...CLASS, 'work/loop-06-=cmd.json': writePlanText(formula) },
      '--csv',
      'work',
    );
    const lines = out.split('\r\n');
    expect(lines[0]).toBe(
      'number,name,file,link,task,right,same task,outcome,mA at rest,mA active,mA at worst,notes,why',
    );
    expect(lines[2]).toMatch(/^1,ann,work\/loop-01-ann\.json,link 1,,yes,,Works,0,5\.377/);
    expect(lines).toHaveLength(8);
    expect(out).toContain("'=1+1");
    expect(out).not.toMatch(/(^|,|\n)"?[=+@-]/);
  });

  test('has no right row for a changed task, even where its link works', async () => {
    const { out, status } = await runOn(CLASS, '--json', '--against', 'teacher.json', 'work/loop-04-ed.json');
    expect(JSON.parse(out)).toMatchObject([{ outcome: 'flows', sameTask: false, right: false }]);
    expect(status).toBe(1);
  });
});

describe('Work on a Set', () => {
  const set = readySets('five-milliamp-loop', 'Loop')[0];
  if (!set) throw new Error('the first lesson has ready Sets');
  const ids = tasksOfSet(set, 4);
  const answers = (pick: (task: Task) => string): Result['attempts'] =>
    ids.map((id) => {
      const task = makeTask(id);
      if (typeof task === 'string') throw new Error(task);
      return { task: writeTaskId(id), answer: pick(task), hints: 0, day: 20_000 };
    });
  const result = (number: number, name: string, attempts: Result['attempts']): Result => ({
    format: 'five-milliamps-result',
    version: 1,
    set,
    number,
    name,
    attempts,
  });
  const right = answers((task) => task.right);
  const wrong = answers((task) => task.slips[0]?.answer ?? '');
  const changed = right.map((one, at) => (at === 0 ? { ...one, task: 'loop-current.1.V' } : one));

  test('has a row for each task: right, wrong with what is said to it, and never right where the task was changed', async () => {
    const files = {
      'work/loop-01-ann.json': writeResultText(result(1, 'Ann', right)),
      'work/loop-02-ben.json': writeResultText(result(2, 'Ben', wrong)),
      'work/loop-03-cy.json': writeResultText(result(3, 'Cy', changed)),
      'work/links.txt': `http://localhost/mark/${await resultHash(result(4, 'Di', right))}`,
      'work/spoiled.json': '{"format": "five-milliamps-result", "version": 1}',
    };
    const { out, status } = await runOn(files, '--json', 'work');
    const rows = JSON.parse(out) as readonly Record<string, unknown>[];
    const of = (number: number): readonly unknown[] =>
      rows.filter((row) => row['number'] === number).map((row) => [row['right'], row['sameTask']]);
    expect([of(1), of(2), of(4)]).toEqual([
      ids.map(() => [true, true]),
      ids.map(() => [false, true]),
      ids.map(() => [true, true]),
    ]);
    expect(of(3)).toEqual([[false, false], ...ids.slice(1).map(() => [true, true])]);
    expect(rows.filter(({ read }) => read === false).map(({ file }) => file)).toEqual(['work/spoiled.json']);
    expect(status).toBe(2);
    const lines = await runOn(files, 'work');
    expect(lines.out).toContain('5 handed in: 2 right, 2 not right, 1 not read.');
    expect(lines.out).toContain("'Loop: to begin with': 4 handed in.");
    expect(lines.out).toContain('1 of 4: LED forgotten (Work out the current)');
    expect(lines.error).toContain('work/spoiled.json: set: ');
    expect((await runOn(files, 'work/loop-01-ann.json')).status).toBe(0);
  });
});

describe('Files', () => {
  test('are named by a folder, by a pattern in quotes, or as they are, whatever signs they have', async () => {
    await inFolder({ ...CLASS, 'a[1].json': '' }, (home) => {
      const last = 'work/loop-05-fay.json';
      expect(filesOf('work', home)).toHaveLength(6);
      expect(filesOf('work/*-0[3-5]-*.json', home)).toEqual(['work/loop-04-ed.json', last]);
      expect(filesOf('work/**/loop-03*', home)).toEqual(['work/late/loop-03-di.json']);
      expect(filesOf('a[1].json', home)).toEqual(['a[1].json']);
      expect(filesOf('nowhere.json', home)).toEqual(['nowhere.json']);
      expect(() => filesOf('*.txt', home)).toThrow('expected a pattern that some file fits, got none');
    });
    const none = await runOn(CLASS, '*.txt', 'teacher.json');
    expect([none.status, none.error]).toEqual([
      2,
      "'*.txt': cannot be read: expected a pattern that some file fits, got none",
    ]);
    expect(none.out).toContain('teacher.json: ');
  });

  test('are text in UTF-8 or UTF-16, with or without a mark', () => {
    const text = writePlanText({ ...good, title: 'Übung' });
    const swapped = Buffer.from(text, 'utf16le').swap16();
    for (const bytes of [Buffer.from(text), utf16(text), swapped]) expect(textOf(bytes)).toBe(text);
    expect(textOf(utf16(`\ufeff${text}`))).toBe(text);
    expect(textOf(Buffer.concat([Buffer.from([0xfe, 0xff]), swapped]))).toBe(text);
    expect(textOf(new Uint8Array())).toBe('');
  });

  test('are refused where they are too large, unread', async () => {
    const { error } = await runOn({ 'film.json': new Uint8Array(4_000_001) }, 'film.json');
    expect(error).toBe('film.json: cannot be read: expected a file of at most 4000000 bytes, got 4000001');
  });
});

describe('Links in a text', () => {
  test('are a plan each, with the student who stands before the address', async () => {
    const [right, wrong] = await Promise.all([
      writeSharedLink(good),
      writeSharedLink({ ...turned, student: 9 }),
    ]);
    const text = [
      'Handed in on Friday',
      `7 Ann: http://localhost:4321/bench/#plan=${right}`,
      `http://localhost:4321/bench/#plan=${wrong}&x`,
      `Cy http://localhost:4321/bench/#plan=${right.slice(0, 40)}`,
    ].join('\r\n');
    const { status, out } = await runOn({ 'links.txt': text }, '--json', 'links.txt');
    const rows = JSON.parse(out) as readonly Record<string, unknown>[];
    expect(rows.map(({ file, number, name, right }) => [file, number, name, right])).toEqual([
      ['links.txt line 2', 7, 'Ann', true],
      ['links.txt line 3', 9, '', false],
      ['links.txt line 4', null, 'Cy', false],
    ]);
    expect(rows[2]?.['why']).toBe('the link: expected a whole link, got one that is cut short or changed');
    expect(status).toBe(2);
  });

  test('may be one alone, and the student is told by the name of the file', async () => {
    const link = `[InternetShortcut]\nURL=http://localhost:4321/bench/#plan=${await writeSharedLink(good)}\n`;
    const { out } = await runOn({ '4 dee.url': link }, '--json', '4 dee.url');
    expect(JSON.parse(out)).toMatchObject([{ file: '4 dee.url', number: 4, name: 'dee', right: true }]);
  });
});
