/** A class from the code on the board to the marks, with the network off: thirty students, one of them on this page. */
import { readFileSync } from 'node:fs';
import type { Browser, Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import {
  papersOf,
  readResultText,
  resultsIn,
  setCode,
  setFromHash,
  tasksOfSet,
  writeSetText,
} from '../../src/core/class/index.ts';
import { writeTaskId } from '../../src/core/learn/index.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { enter, taskOf } from '../support/answering.ts';
import { CLASS_SET, MISTAKES, ODD, handedIn, slipOf, studentResult } from '../support/classroom.ts';
import { ON_PAPER, overprints, readPdf } from '../support/pdf.ts';
import { readSquareCode } from '../support/square-code.ts';
import { wakeIslands } from '../support/watch.ts';

// A screen as fine as a phone's: under a long address a code has more squares.
test.use({ serviceWorkers: 'allow', deviceScaleFactor: 2 });

/** The student who works on this page. */
const HERE = 7;

const kinds = tasksOfSet(CLASS_SET, 1).map(({ kind }) => kind);

/** What the table says of each task of a student, by the list of who made which mistake. */
function expectedTasks(number: number): readonly string[] {
  switch (number) {
    case ODD.copiedFrom:
      return ['right', 'right', 'wrong', 'wrong', 'wrong'];
    case ODD.copy:
      return ['no answer', 'no answer', 'wrong', 'wrong', 'wrong'];
    case ODD.edited:
      return ['right', 'right', 'changed task', 'right', 'right'];
    case ODD.variant:
      return kinds.map(() => 'changed task');
    default:
      return kinds.map((kind, at) => {
        const made = MISTAKES.find((one) => one.kind === kind && one.students.includes(number));
        return made && kinds.indexOf(kind) === at ? `wrong: ${made.mistake}` : 'right';
      });
  }
}

const same = (other: number): string =>
  `The same answers in all as number ${other}, 3 of them wrong in a way that nobody else was.`;

const NOTES: Readonly<Record<number, string>> = {
  [ODD.copiedFrom]: same(ODD.copy),
  [ODD.copy]: same(ODD.copiedFrom),
  [ODD.edited]: 'One answer is to a task that is not in this Set: it was changed, and counts as not right.',
  [ODD.variant]:
    'These are the tasks of number 3, handed in as number 24: none counts as right. For number 3, 4 of 5 would be.',
};

/** A line of the table, as a spreadsheet gets it. */
function expectedLine(source: string, number: number): string {
  const tasks = expectedTasks(number);
  const count = (is: (mark: string) => boolean): number => tasks.filter(is).length;
  const right = count((mark) => mark === 'right');
  const note = NOTES[number] ?? '';
  return [
    source,
    number,
    number === HERE ? 'Ann' : number === ODD.formula ? "'=1+1" : '',
    'Loop test',
    5,
    right,
    right,
    count((mark) => mark.startsWith('wrong')),
    count((mark) => mark === 'no answer'),
    count((mark) => mark === 'changed task'),
    0,
    note.includes(',') ? `"${note}"` : note,
    '',
    ...tasks,
  ].join(',');
}

async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await wakeIslands(page);
}

/** The teacher opens the code that stood on the board last year, under the same title: the link is the same. */
async function makeSet(page: Page): Promise<string> {
  await open(page, './class/');
  await page.getByText('Open a Set that you made before').click();
  await page.getByLabel('Code').fill(setCode(CLASS_SET) ?? '');
  await page.getByRole('button', { name: 'Open the code' }).click();
  await expect(page.getByText(/^Opened: Set /)).toBeVisible();
  await page.getByLabel('Title').fill('Loop test');
  await page.getByLabel('Title').blur();
  const link = page.getByRole('textbox', { name: 'Link for students' });
  await expect.poll(async () => setFromHash(await link.inputValue())).toEqual({ ok: true, value: CLASS_SET });
  await page.getByRole('radio', { name: 'the worksheets' }).check();
  await expect(page.getByRole('article', { name: /^Worksheet: Loop test, number \d+$/ })).toHaveCount(30);
  expect(await accessibilityFaults(page, 'main')).toEqual([]);
  return link.inputValue();
}

/** A student opens the Set from a file, makes the mistakes of the list, leaves the page in the middle, and saves the work as a file. */
async function doSet(
  page: Page,
  browser: Browser,
  link: string,
): Promise<{ readonly name: string; readonly text: string }> {
  await open(page, './hand-in/');
  await page.getByLabel('File of a Set to open').setInputFiles({
    name: 'loop-test-set.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeSetText(CLASS_SET)),
  });
  // From here on the Set is in the address: when the page is loaded again, nobody needs the file.
  await expect(page).toHaveURL(link);
  await page.getByLabel('Your number in the class list').fill('seven');
  await page.getByRole('button', { name: 'Begin' }).click();
  await expect(page.getByRole('alert')).toHaveText(
    "Number: expected a whole number from 1 to 999, got 'seven'.",
  );
  await page.getByLabel('Your number in the class list').fill(String(HERE));
  await page.getByLabel('Your name').fill('Ann');
  await page.getByRole('button', { name: 'Begin' }).click();
  for (const [at, id] of tasksOfSet(CLASS_SET, HERE).entries()) {
    await expect(page.getByRole('heading', { name: `Loop test: task ${at + 1} of 5` })).toBeVisible();
    if (at === 0) expect(await accessibilityFaults(page, 'main')).toEqual([]);
    if (at === 3) {
      await page.reload();
      await wakeIslands(page);
      await page.getByRole('button', { name: 'Back' }).click();
      const slip = slipOf(taskOf(writeTaskId(tasksOfSet(CLASS_SET, HERE)[2] ?? id)), 'LED forgotten');
      await expect(page.getByRole('textbox', { name: 'Your answer' })).toHaveValue(slip);
      await page.getByRole('button', { name: 'Keep this answer and go on' }).click();
    }
    const task = taskOf(writeTaskId(id));
    const made = MISTAKES.find((one) => one.kind === id.kind && one.students.includes(HERE));
    await enter(page, task, made && kinds.indexOf(id.kind) === at ? slipOf(task, made.mistake) : task.right);
    await page.getByRole('button', { name: 'Keep this answer and go on' }).click();
  }
  await expect(page.getByText('5 of 5 answered')).toBeVisible();
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save my work as a file' }).click(),
  ]);
  expect(await faintFaults(page)).toEqual([]);
  // Whoever cannot save a file shows the code on the screen: it holds the same work.
  const square = await page.getByRole('img', { name: 'QR code of my work' }).screenshot();
  const [shown] = await resultsIn('screen', (await readSquareCode(browser, square)) ?? '');
  const text = readFileSync(await saved.path(), 'utf8');
  expect(shown?.reading).toEqual(readResultText(text));
  return { name: saved.suggestedFilename(), text };
}

test('a class goes from a code on the board to marks and a table, with the network off', async ({
  page,
  context,
  browser,
}) => {
  await page.goto('./class/');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await context.setOffline(true);
  const own = await doSet(page, browser, await makeSet(page));
  expect(own.name).toBe('loop-test-07-ann.json');
  const read = readResultText(own.text);
  const answers = (list: readonly { readonly task: string; readonly answer: string }[]) =>
    list.map(({ task, answer }) => `${task} ${answer.split(' ').sort().join(' ')}`);
  expect(read.ok && answers(read.value.attempts)).toEqual(answers(studentResult(HERE).attempts));

  const all = (await handedIn()).map((one, at) =>
    at === HERE - 1 ? { source: own.name, text: own.text } : one,
  );
  await open(page, './mark/');
  await page.getByLabel('Files to mark').setInputFiles(
    all
      .filter(({ source }) => source !== 'link')
      .map(({ source, text }) => ({
        name: source,
        mimeType: 'application/json',
        buffer: Buffer.from(text),
      })),
  );
  await expect(page.getByText('28 of 29 marked, 1 not: see below.')).toBeVisible();
  await page.getByLabel(/^Or paste links/).fill(all[ODD.link - 1]?.text ?? '');
  await page.getByRole('button', { name: 'Read the links' }).click();
  await expect(page.getByText('29 of 30 marked, 1 not: see below.')).toBeVisible();
  await expect(page.getByText('29 students handed in. No result from number 25.')).toBeVisible();
  for (const { mistake, students } of MISTAKES)
    await expect(page.getByText(new RegExp(`^${students.length} of 29: ${mistake} \\(`))).toBeVisible();
  for (const [number, note] of Object.entries(NOTES))
    await expect(page.getByRole('listitem').filter({ hasText: `Number ${number}: ${note}` })).toBeVisible();
  expect(await accessibilityFaults(page, 'main')).toEqual([]);

  const rows = page.getByRole('table').first().locator('tbody tr');
  const expected = all.flatMap((_, at) => (at + 1 === ODD.spoiled ? [] : [at + 1]));
  expect(
    await rows.evaluateAll((list) =>
      list.map((row) =>
        [...row.children].map((cell) => (cell.textContent ?? '').replace(/^\(?[✓✗–≠]\)?/, '')),
      ),
    ),
  ).toEqual(
    expected.map((number) => {
      const tasks = expectedTasks(number);
      const right = String(tasks.filter((mark) => mark === 'right').length);
      const name = number === HERE ? 'Ann' : number === ODD.formula ? '=1+1' : '';
      return [String(number), name, right, right, ...tasks.map((mark) => mark.replace(/:.*/, ''))];
    }),
  );

  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the marks (CSV)' }).click(),
  ]);
  expect(saved.suggestedFilename()).toBe('loop-test-marks.csv');
  const [head = '', ...lines] = readFileSync(await saved.path(), 'utf8')
    .trimEnd()
    .split('\r\n');
  expect(head).toMatch(
    /^\uFEFFhanded in as,number,name,title,tasks,right,right at once,wrong,no answer,changed,marked by the student,/,
  );
  expect(lines[ODD.spoiled - 1]).toMatch(
    /^loop-test-25\.json,(?:,){11}"?the file: expected JSON, got other text \(.*\)"?,,,,,$/,
  );
  const sources = [
    ...all.flatMap(({ source }, at) => (source === 'link' ? [] : [[source, at + 1] as const])),
    ['pasted 1', ODD.link] as const,
  ];
  expect(lines.filter((_, at) => at !== ODD.spoiled - 1)).toEqual(
    sources
      .filter(([, number]) => number !== ODD.spoiled)
      .map(([source, number]) => expectedLine(source, number)),
  );
});

/** A worksheet with its key. */
type Paper = ReturnType<typeof papersOf>[number];

const unspaced = (text: string): string => text.replace(/\s/g, '');

/** What is on show, as it is printed: nothing on it lies on anything else. */
async function printed(page: Page): Promise<string> {
  await page.evaluate(() => document.fonts.ready);
  const paper = readPdf(await page.pdf(ON_PAPER));
  expect(overprints(paper)).toEqual([]);
  return paper.text;
}

/** The part of a print from one heading to the next. */
function partOf(text: string, head: string, next: string | undefined): string {
  const from = text.indexOf(head);
  expect(from, head).toBeGreaterThanOrEqual(0);
  const to = next === undefined ? text.length : text.indexOf(next, from + head.length);
  return text.slice(from, to < 0 ? text.length : to);
}

test('thirty worksheets and their key, on paper, have the same tasks, each with its answer', async ({
  page,
}) => {
  await makeSet(page);
  const papers = papersOf(CLASS_SET, 30);
  const sheets = await printed(page);
  await page.getByRole('radio', { name: 'the key' }).check();
  await expect(page.getByRole('article', { name: /^Key: version / })).toHaveCount(30);
  const key = await printed(page);
  await page.getByRole('radio', { name: 'nothing' }).check();
  expect(await printed(page)).toContain('Nothingwaschosentobeprinted.');
  const sheetHead = ({ version, number }: Paper): string =>
    unspaced(`Version ${version}, number ${number}`) + 'Name:';
  const keyHead = ({ version, number }: Paper): string =>
    unspaced(`Key: Loop test, version ${version}, number ${number}`);
  for (const [at, paper] of papers.entries()) {
    const next = papers[at + 1];
    const sheet = partOf(sheets, sheetHead(paper), next && sheetHead(next));
    const answers = partOf(key, keyHead(paper), next && keyHead(next));
    let [inSheet, inKey] = [0, 0];
    for (const { code, task, right } of paper.tasks) {
      for (const words of [task.ask, code]) {
        inSheet = sheet.indexOf(unspaced(words), inSheet);
        expect(inSheet, `worksheet ${at + 1}: ${words}`).toBeGreaterThanOrEqual(0);
      }
      for (const words of [right[0] ?? '', code, task.steps[0] ?? '']) {
        inKey = answers.indexOf(unspaced(words), inKey);
        expect(inKey, `key ${at + 1}: ${words}`).toBeGreaterThanOrEqual(0);
      }
      // The worksheet does not tell the way.
      expect(sheet).not.toContain(unspaced(task.steps.at(-1) ?? ''));
    }
  }
});
