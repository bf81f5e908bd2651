import { readFileSync } from 'node:fs';
import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import {
  cableSchedule,
  csvText,
  demoBoard,
  deviceRows,
  leadLabels,
  sayPrice,
  shoppingList,
  timePress,
} from '../../src/core/board/index.ts';
import { planBoard } from '../../src/core/planner/index.ts';
import { readSharedLink, setWishes, writeSharedLink } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import type { PlanAnswer } from '../../src/core/planner/index.ts';
import { randomBoard } from '../core/board/boards.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { readPdf } from '../support/pdf.ts';
import { readSquareCode } from '../support/square-code.ts';
import { wakeIslands } from '../support/watch.ts';
import { runThrough } from '../../src/core/signal/index.ts';

/** The invented demo board, as the page opens it. */
const DEMO = demoBoard();

const OFFERS = 'Leads and hubs available, prices and wishes';
const PLANNING = 'Plan it for me';
const PRESS = 'One footswitch press';
const RESULTS = 'Results to take away: lists, labels, sheets';

/** A4 and Letter, points: 210 by 297 mm, 8.5 by 11 inches. */
const PAPERS = [
  ['A4', 595, 842],
  ['Letter', 612, 792],
] as const;

/** A plan takes about a second on a free machine, and many more on a busy one. */
const PLANNED = { timeout: 60_000 } as const;

/** What the core plans, to the end. */
function planned(plan: Plan): PlanAnswer {
  return runThrough(planBoard(plan));
}

async function openDemo(page: Page, ...folds: readonly string[]): Promise<void> {
  await page.goto('./board/');
  await wakeIslands(page);
  await page.getByRole('button', { name: 'Open the demo board' }).first().click();
  for (const fold of folds) await page.locator('summary', { hasText: fold }).click();
}

/** Press a button that has the focus of the keyboard. */
async function pressKey(page: Page, control: Locator, key = 'Enter'): Promise<void> {
  await control.focus();
  await page.keyboard.press(key);
}

test('a board is planned in the background as the core plans it, and the plan taken is one step back', async ({
  page,
}) => {
  await openDemo(page, PLANNING, RESULTS);
  const answer = planned(DEMO);
  if (!answer.ok) throw new Error(answer.why);
  const { best, other } = answer;
  const area = page.locator('.plan-it');
  await pressKey(page, area.getByRole('button', { name: 'Plan it for me' }));
  const table = area.getByRole('table');
  await expect(table).toBeVisible(PLANNED);
  const currency = DEMO.currency ?? '';
  await expect(table.getByRole('row', { name: /^cost/ }).getByRole('cell')).toHaveText(
    [best, ...(other ? [other] : [])].map(
      ({ cost }) => `${sayPrice(cost, currency)}, with invented prices in it`,
    ),
  );
  await expect(table.getByRole('row', { name: /^could it cost less/ })).toContainText(
    `Certain: no plan costs less than ${sayPrice(best.cost, currency)}`,
  );
  for (const { device, silent } of best.facts.silentWithout)
    await expect(table).toContainText(`${device} off: ${silent.join(', ')} silent`);

  const total = page.locator('.board-papers tfoot');
  await page.getByRole('radio', { name: /^lists/ }).check();
  const before = sayPrice(shoppingList(DEMO).total, currency);
  const after = sayPrice(shoppingList(best.plan).total, currency);
  expect(after).not.toBe(before);
  await expect(total).toContainText(before);
  await pressKey(page, table.getByRole('button', { name: /^Take this plan/ }).first());
  await expect(total).toContainText(after);
  await expect(table).toContainText('On the board now.');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(total).toContainText(before);
});

test('planning is cancelled at once: the worker ends, and the board stays', async ({ page }) => {
  const board = randomBoard(4, 24);
  await page.goto(`./board/#plan=${await writeSharedLink(board)}`);
  await wakeIslands(page);
  await page.locator('summary', { hasText: PLANNING }).click();
  const area = page.locator('.plan-it');
  await expect(area).toContainText('With 24 devices to feed it searches by chance');
  const [worker] = await Promise.all([
    page.waitForEvent('worker'),
    area.getByRole('button', { name: 'Plan it for me' }).click(),
  ]);
  await expect(area.getByRole('progressbar')).toBeVisible();
  await expect(area.locator('.stage')).toContainText(/solving the links|searching/);
  await Promise.all([
    worker.waitForEvent('close'),
    pressKey(page, area.getByRole('button', { name: 'Cancel' })),
  ]);
  await expect(area.getByRole('status')).toHaveText('Cancelled; the board is as it was.');
  await expect(area.getByRole('progressbar')).toHaveCount(0);
  await expect(area.getByRole('table')).toHaveCount(0);
  await expect(area.getByRole('button', { name: 'Plan it for me' })).toBeEnabled();
});

test('a wish that makes a plan impossible is named as the core names it', async ({ page }) => {
  await openDemo(page, OFFERS, PLANNING);
  const answer = planned(setWishes(DEMO, { noHub: true, mostHops: 2 }));
  if (answer.ok) throw new Error('demo board: was meant to need a hub, or three links in a chain');
  await page.getByRole('checkbox', { name: /^no hub/ }).check();
  await page.getByLabel(/^Links from the controller/).fill('2');
  await page.keyboard.press('Enter');
  const area = page.locator('.plan-it');
  await expect(area).toContainText('with your wishes: no hub, at most 2 links to any device');
  await area.getByRole('button', { name: 'Plan it for me' }).click();
  await expect(area.getByRole('status')).toHaveText(answer.why, PLANNED);
  await expect(area.getByRole('table')).toHaveCount(0);
});

test('leads and hubs are put on offer by keyboard, and what cannot be is refused by name', async ({
  page,
}) => {
  await openDemo(page, OFFERS);
  const offers = page.locator('.offers');
  const leads = offers.getByRole('region', { name: 'Leads available' });
  const before = DEMO.stock?.length ?? 0;
  await expect(leads.getByRole('listitem')).toHaveCount(before);
  await leads.getByLabel('Commonly ready made').selectOption('straight TRS lead, 6.35 mm');
  await pressKey(page, leads.getByRole('button', { name: 'Add this lead', exact: true }));
  const added = leads.getByRole('group', { name: 'straight TRS lead, 6.35 mm' });
  await expect(added).toContainText('6.35 mm TRS plug to 6.35 mm TRS plug; tip to tip, ring to ring');
  await added.getByLabel('price').fill('-3');
  await page.keyboard.press('Enter');
  await expect(added.getByRole('alert')).toContainText('price: expected a number from 0 to 1000000000');
  await expect(added.getByLabel('price')).toHaveValue('0');
  await added.getByLabel('I own').fill('2');
  await page.keyboard.press('Enter');
  await expect(added).toContainText('no cost');
  await leads.getByText('Another lead: its plugs and its wires').click();
  await leads.getByLabel('Wires, first end to second end').fill('4-ring 9-tip');
  await pressKey(page, leads.getByRole('button', { name: 'Add this lead of your own' }));
  await expect(leads.getByRole('alert')).toHaveText(
    "conductors: expected a contact of 5-pin DIN (1, 2, 3, 4, 5, shell), got '9' in '9-tip'. Nothing was added.",
  );
  await leads.getByLabel('Wires, first end to second end').fill('4 to ring, 5 to tip');
  await pressKey(page, leads.getByRole('button', { name: 'Add this lead of your own' }));
  await expect(leads.getByRole('listitem')).toHaveCount(before + 2);
  await pressKey(page, added.getByRole('button', { name: /^Remove/ }));
  await expect(leads.getByRole('listitem')).toHaveCount(before + 1);
  await offers.getByLabel('Sign or letters of your currency').fill('thalers');
  await page.keyboard.press('Enter');
  await expect(offers.getByRole('region', { name: 'Hubs and converters available' })).toContainText(
    'thalers',
  );
});

test('the messages of a press are added, moved and changed by keyboard, and the times are those of the core', async ({
  page,
}) => {
  await openDemo(page, PRESS);
  const area = page.locator('.press');
  const items = area.locator('ol > li');
  const press = DEMO.press ?? [];
  await expect(items).toHaveCount(press.length);
  const ms = (seconds: number | undefined): string => `${((seconds ?? NaN) * 1e3).toFixed(2)} ms`;
  await expect(area.locator('.state')).toContainText(ms(timePress(DEMO).seconds));

  // The first message changes places with the second; the hand stays on it.
  const down = items.first().getByRole('button', { name: /^Move down/ });
  await pressKey(page, down);
  await expect(items.nth(1).getByRole('button', { name: /^Move down/ })).toBeFocused();
  const [first, second, ...rest] = press;
  if (!first || !second) throw new Error('demo board: needs two messages');
  const moved: Plan = { ...DEMO, press: [second, first, ...rest] };
  const timing = timePress(moved);
  await area.getByText('The figure as a table').click();
  const rows = area.getByRole('table').first().getByRole('row');
  for (const [at, { item, arrivesSeconds }] of timing.items.entries()) {
    await expect(rows.nth(at + 1)).toContainText(item.device);
    await expect(
      rows
        .nth(at + 1)
        .getByRole('cell')
        .last(),
    ).toHaveText(
      (arrivesSeconds ?? 0) < 1e-3 ? `${((arrivesSeconds ?? 0) * 1e3).toFixed(3)} ms` : ms(arrivesSeconds),
    );
  }
  // Program changes are shown from 1, and as they go over the wire, from 0.
  const program = area.getByLabel('program, from 1').first();
  await program.fill('128');
  await page.keyboard.press('Enter');
  await expect(items.filter({ has: page.getByText('(from 0: 127)') })).toHaveCount(1);
  // A limit below what it takes is told.
  await area.getByLabel('Longest that one press may take').fill('1');
  await page.keyboard.press('Enter');
  await expect(area.locator('.warnings')).toContainText('your limit is 1.0 ms');
  const count = await items.count();
  await pressKey(page, items.last().getByRole('button', { name: /^Remove/ }));
  await expect(items).toHaveCount(count - 1);
  await expect(items.last().getByRole('button', { name: /^Remove/ })).toBeFocused();
  await pressKey(page, area.getByRole('button', { name: 'Add this message' }));
  await expect(items).toHaveCount(count);
});

test('the board sheet is one page of A4 and of Letter, and the whole set has the pages it should', async ({
  page,
}) => {
  await openDemo(page, RESULTS);
  const rows = deviceRows(DEMO);
  const made = DEMO.leads.filter(({ origin = 'made' }) => origin === 'made');
  for (const [format, width, height] of PAPERS) {
    await page.getByRole('radio', { name: /^board sheet/ }).check();
    const sheet = readPdf(await page.pdf({ format }));
    expect.soft(sheet.pages, `board sheet on ${format}`).toBe(1);
    expect.soft(Math.abs(sheet.size[0] - width) + Math.abs(sheet.size[1] - height)).toBeLessThan(2);
    const wanted = [
      DEMO.title,
      ...rows.map(({ device }) => device),
      ...DEMO.links.map(({ name }) => name),
      'the meter has the last word',
    ];
    expect.soft(wanted.filter((text) => !sheet.text.includes(text.replace(/\s/g, '')))).toEqual([]);
    for (const control of ['Printthis', 'Undo', 'Planitforme', 'Cableschedule'])
      expect.soft(sheet.text).not.toContain(control);

    await page.getByRole('radio', { name: /^everything/ }).check();
    await expect(page.getByRole('article', { name: 'Build sheet' })).toHaveCount(made.length);
    await expect(page.getByRole('img', { name: /^QR code that opens this lead/ })).toHaveCount(made.length);
    const all = readPdf(await page.pdf({ format }));
    // The board, the lists, the labels, and a sheet for each lead to make.
    expect.soft(all.pages, `the whole set on ${format}`).toBe(3 + made.length);
    const labels = leadLabels(DEMO).map(({ there }) => `other end: ${there}`);
    const titles = made.map(({ name }) => `${name}: `);
    expect
      .soft([...labels, ...titles].filter((text) => !all.text.includes(text.replace(/\s/g, ''))))
      .toEqual([]);
  }
});

test('the code on a sheet of the set opens that lead on the build sheet', async ({ browser, baseURL }) => {
  const context = await browser.newContext({ deviceScaleFactor: 4, baseURL: baseURL ?? '' });
  const page = await context.newPage();
  await openDemo(page, RESULTS);
  await page.getByRole('radio', { name: /^build sheets/ }).check();
  const lead = DEMO.leads.find(({ origin = 'made' }) => origin === 'made');
  const paper = page.getByRole('article', { name: 'Build sheet' }).first();
  const code = paper.getByRole('img', { name: /^QR code that opens this lead/ });
  await code.scrollIntoViewIfNeeded();
  const address = await readSquareCode(browser, await code.screenshot());
  expect(address?.startsWith(new URL('../cable-sheet/#plan=', page.url()).href)).toBe(true);
  const reading = await readSharedLink((address ?? '').split('#plan=')[1] ?? '');
  if (!reading.ok) throw new Error('the code holds no plan');
  expect(reading.plan.leads[0]?.conductors).toEqual(lead?.conductors);
  expect(reading.plan.leads[0]?.lengthMetres).toBe(lead?.lengthMetres);
  await context.close();
});

test('the lists are saved as CSV that says what the core says, and each lead has its sheet', async ({
  page,
}) => {
  await openDemo(page, RESULTS);
  const save = async (name: string): Promise<string> => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: `Save the ${name} (CSV)` }).click(),
    ]);
    return readFileSync(await download.path(), 'utf8');
  };
  expect(await save('cable schedule')).toBe(csvText(cableSchedule(DEMO)));
  expect(await save('labels')).toBe(csvText(leadLabels(DEMO)));
  expect(await save('channels')).toBe(csvText(deviceRows(DEMO)));
  const shopping = await save('shopping list');
  expect(shopping.split('\r\n')).toHaveLength(shoppingList(DEMO).rows.length + 3);
  expect(shopping).toContain(`in all,,,,${shoppingList(DEMO).total}`);

  const name = DEMO.leads.at(-1)?.name ?? '';
  const link = page.getByRole('link', { name: `Build sheet of ${name}` });
  await expect(link).toHaveAttribute('href', /#plan=./);
  await link.click();
  await wakeIslands(page);
  await expect(
    page.getByRole('article', { name: 'Build sheet' }).getByRole('heading', { level: 2 }),
  ).toContainText(`${name}: `);
});

test('every section of a planned board is accessible, and fits a narrow screen with every paper shown', async ({
  page,
}) => {
  await openDemo(page, OFFERS, PLANNING, PRESS, RESULTS);
  await page.locator('.plan-it').getByRole('button', { name: 'Plan it for me' }).click();
  await expect(page.getByRole('button', { name: /^Take this plan/ }).first()).toBeVisible(PLANNED);
  await page.locator('.press').getByText('The figure as a table').click();
  await page.getByRole('radio', { name: /^lists/ }).check();
  expect(await accessibilityFaults(page, '.offers', '.plan-it', '.press', '.results')).toEqual([]);
  expect(await faintFaults(page)).toEqual([]);
  await page.getByRole('radio', { name: /^everything/ }).check();
  await page.setViewportSize({ width: 390, height: 900 });
  const { needed, given } = await page.evaluate(() => ({
    needed: document.documentElement.scrollWidth,
    given: document.documentElement.clientWidth,
  }));
  expect(needed).toBeLessThanOrEqual(given);
});
