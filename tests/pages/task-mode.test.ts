/** A tool with a task on it: nothing that eyes, ears or a script could find gives the answer away before it is handed in. */
import type { Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import { OUTCOMES, outcomeWords } from '../../src/core/verdict/index.ts';
import { contactWords } from '../../src/core/wiring/index.ts';
import type { Contact } from '../../src/core/wiring/index.ts';
import type { Task } from '../../src/core/learn/index.ts';
import { accessibilityFaults } from '../support/accessible.ts';
import { enter, taskOf } from '../support/answering.ts';
import { givenAway, toldOn } from '../support/told.ts';
import type { Secret } from '../support/told.ts';
import { wakeIslands } from '../support/watch.ts';

/** A tool, the tasks tried on it, what it must not tell beside the answer, and what it tells once the task is over. */
interface Tried {
  readonly page: string;
  readonly tasks: readonly string[];
  readonly secrets: (task: Task) => readonly Secret[];
  readonly answer: (page: Page, task: Task) => Promise<void>;
  readonly after: (task: Task) => readonly Secret[];
}

const AMOUNT = /\d (?:mA|V)\b/;
const OUTCOME_LABELS = OUTCOMES.map((outcome) => outcomeWords(outcome).label);

const words = (pair: string): readonly [string, string] => {
  const [from, to] = pair.split('-').map((contact) => contactWords(contact as Contact));
  return [from ?? '', to ?? ''];
};

const TOOLS: Readonly<Record<string, Tried>> = {
  bench: {
    page: '/bench/',
    tasks: ['lay-lead.2.1', 'lay-lead.3.8', 'lay-lead.3.3'],
    secrets: ({ right }) => [
      ...OUTCOME_LABELS,
      AMOUNT,
      /\b(?:source|sink|shield)\b/,
      /which lead/i,
      /what to change/i,
      ...(right === 'none' ? [] : [right]),
    ],
    answer: async (page, { right }) => {
      if (right === 'none') return page.getByRole('checkbox', { name: 'No plain lead can' }).check();
      await page.getByText('The lead as a table').click();
      for (const pair of right.split(' ')) {
        const [from, to] = words(pair);
        await page.getByRole('combobox', { name: `Lead, ${from} to` }).selectOption({ label: to });
      }
    },
    after: ({ right }) => (right === 'none' ? [/powered converter/] : ['Works', AMOUNT, 'source', 'sink']),
  },
  'bytes on the wire': {
    page: '/in-time/',
    tasks: ['trace-to-hex.2.0', 'trace-to-hex.2.7', 'trace-to-hex.3.4'],
    secrets: ({ right }) => [
      right,
      new RegExp(parseInt(right, 16).toString(2).padStart(8, '0')),
      /data bit/,
      /\bhigh \(1\)|\blow \(0\)/,
    ],
    answer: (page, task) => enter(page, task, task.right),
    after: ({ right }) => [right, /data bit|start bit/, /output (?:high|low)/],
  },
  'test of a lead': {
    page: '/cable-sheet/',
    tasks: ['four-beeps.2.0', 'four-beeps.3.3'],
    secrets: () => [
      /smallest explanation/,
      /not as planned/i,
      'Tested: as planned',
      /tells most now/,
      /Mend it/,
    ],
    answer: async (page, task) => {
      const touch = page.getByRole('button', { name: /^Touch / });
      for (let left = await touch.count(); left > 0; left -= 1) await touch.first().click();
      await enter(page, task, task.right);
    },
    after: () => [/smallest explanation|Tested: as planned/],
  },
  'fault page': {
    page: '/fault-bench/',
    tasks: ['finish-hunt.2.1', 'finish-hunt.3.5'],
    secrets: () => [/It was/, /What to do/, /\d %/, /Name the fault/, /answer by answer/, /best way takes/],
    answer: async (page, task) => {
      await page.getByRole('button', { name: /^pedal 1/ }).click();
      await page.getByRole('region', { name: 'At pedal 1' }).getByRole('button').first().click();
      await enter(page, task, task.right);
    },
    after: () => [/It was/, /What to do/],
  },
  meter: {
    page: '/meter/',
    tasks: ['strangers-lead.2.1', 'strangers-lead.3.2'],
    secrets: () => [/Under test/, /The lead is/, /conductor/, /because|joins/],
    answer: async (page, task) => {
      await page.getByRole('radio', { name: 'resistance' }).check();
      await page.getByRole('button', { name: 'Swap probes' }).click();
      await enter(page, task, task.right);
    },
    after: ({ steps }) => [steps[0] ?? ''],
  },
  'jack finder': {
    page: '/jack-finder/',
    tasks: ['cross-out.2.1', 'may-be.2.2', 'next-safe.3.1', 'source-contact.2.1'],
    secrets: () => [
      /\d %/,
      /How likely/,
      /Why this one/,
      'Next reading',
      /jack that the workbook does not know/,
    ],
    answer: (page, task) => enter(page, task, task.right),
    after: () => [/\d %/, /How likely each name is/],
  },
  board: {
    page: '/board/',
    tasks: ['how-deep.2.1', 'who-falls-silent.3.4', 'cheapest-board.2.3'],
    secrets: () => [
      /link \d+ from the sender/,
      /no message comes along/,
      /What the check found/,
      /Who hears/,
      /Works|Marginal/,
      AMOUNT,
    ],
    answer: (page, task) => enter(page, task, task.right),
    after: () => [/link \d+ from the sender/, 'Works', /Who hears a message/],
  },
};

/** What is left of each choice without its words and its number: nothing may tell the right one. */
async function choicesOf(page: Page): Promise<readonly string[]> {
  return page.locator('form label:has(input)').evaluateAll((labels) =>
    labels.map((label) => {
      const copy = label.cloneNode(true) as HTMLElement;
      for (const input of copy.querySelectorAll('input')) input.removeAttribute('value');
      return copy.outerHTML.replace(copy.textContent ?? '', '');
    }),
  );
}

async function open(page: Page, address: string): Promise<void> {
  await page.goto(`.${address}`);
  await wakeIslands(page);
  await expect(page.getByText('Getting it ready.')).toHaveCount(0);
}

/** What this browser keeps, the record of attempts apart. */
async function keptBesides(page: Page): Promise<Record<string, string>> {
  const all = await page.evaluate(() => ({ ...localStorage }) as Record<string, string>);
  return Object.fromEntries(Object.entries(all).filter(([name]) => !name.endsWith('record')));
}

for (const [tool, { page: address, tasks, secrets, answer, after }] of Object.entries(TOOLS)) {
  test(`${tool}: no answer before it is handed in, all of it afterwards`, async ({ page }) => {
    for (const name of tasks) {
      const task = taskOf(name);
      const own = [...secrets(task), task.steps.at(-1) ?? '', ...task.slips.map(({ sentence }) => sentence)];
      await open(page, 'about:blank');
      await open(page, `${address}#task=${name}`);
      await expect(page.getByText(task.ask)).toBeVisible();
      expect(givenAway(await toldOn(page), own, [task.ask]), `${name} at first`).toEqual([]);
      expect(new Set(await choicesOf(page)).size).toBeLessThanOrEqual(1);
      await answer(page, task);
      const left = own.filter((secret) => secret !== task.right);
      expect(givenAway(await toldOn(page), left, [task.ask]), `${name} answered`).toEqual([]);
      await page.getByRole('button', { name: 'Hand in' }).click();
      await expect(page.locator('form')).toContainText('Right');
      for (const secret of after(task))
        await expect.poll(async () => givenAway(await toldOn(page), [secret], []), name).not.toEqual([]);
    }
    expect(await accessibilityFaults(page, 'main')).toEqual([]);
  });
}

test('an answer is found wherever on a page it is planted', async ({ page }) => {
  const task = taskOf('lay-lead.2.1');
  const plants: readonly ((element: HTMLElement) => void)[] = [
    (element) => element.append('It works: Works.'),
    (element) => element.setAttribute('aria-label', 'pin 4, source line'),
    (element) => (element.title = 'What to change: nothing'),
    (element) => (element.dataset['answer'] = '5.4 mA'),
    (element) => element.classList.add('sink'),
    (element) => element.insertAdjacentHTML('beforeend', '<p hidden>Reversed</p>'),
    (element) => element.insertAdjacentHTML('beforeend', '<details><p>Which <b>lead</b>?</p></details>'),
    (element) => element.insertAdjacentHTML('beforeend', '<input type="hidden" value="shield">'),
    (element) => element.insertAdjacentHTML('beforeend', '<!-- 4-ring: source -->'),
    (element) => element.insertAdjacentHTML('beforeend', '<svg><desc>Always on</desc></svg>'),
  ];
  await open(page, '/bench/#task=lay-lead.2.1');
  const own = TOOLS['bench']?.secrets(task) ?? [];
  for (const plant of plants) {
    const source = `(${plant.toString()})(document.querySelector('main h1'))`;
    const before = await page.locator('main').innerHTML();
    await page.evaluate(source);
    expect(givenAway(await toldOn(page), own, [task.ask]), plant.toString()).not.toEqual([]);
    await page.locator('main').evaluate((main, html) => (main.innerHTML = html), before);
    expect(givenAway(await toldOn(page), own, [task.ask]), plant.toString()).toEqual([]);
  }
});

test('a task leaves alone what the reader keeps, joins the record, and gives the tool back', async ({
  page,
}) => {
  await open(page, '/bench/');
  await page.getByText('The lead as a table').click();
  await page.getByRole('combobox', { name: 'Lead 1, pin 4 to' }).selectOption({ label: 'ring' });
  await expect.poll(async () => Object.keys(await keptBesides(page)).length).toBeGreaterThan(0);
  const kept = await keptBesides(page);
  // By the address alone, as a link on the page does.
  await page.evaluate(() => (location.hash = '#task=lay-lead.2.5'));
  const task = taskOf('lay-lead.2.5');
  await expect(page.getByText(task.ask)).toBeVisible();
  await TOOLS['bench']?.answer(page, task);
  await page.getByRole('button', { name: 'Hand in' }).click();
  await expect(page.locator('form')).toContainText('Right');
  expect(await keptBesides(page)).toEqual(kept);
  await page.getByRole('link', { name: 'Back to practice' }).click();
  await expect(page.getByText('Your record: 1 answers')).toBeVisible();
  await open(page, '/bench/');
  await page.getByText('The lead as a table').click();
  await expect(page.getByRole('combobox', { name: 'Lead 1, pin 4 to' })).toHaveValue('ring');
});
