import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import { planOfLink, writeSharedLink } from '../../src/core/plan/index.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import { SITE_BASE } from '../support/site.ts';
import { takeFirstWiring, wakeIslands } from '../support/watch.ts';

/** DIN to Type B on 3.5 mm: pin 4 to tip, pin 5 to ring, pin 2 to sleeve (common practice, no source). */
const SOURCE_TO_TIP = 'source pin 4 tip RD red';

const paper = (page: Page): Locator => page.getByRole('article', { name: 'Build sheet' });
const row = (page: Page, name: string): Locator => paper(page).getByRole('row', { name });
const menuLink = (page: Page, name: string): Locator =>
  page.getByRole('banner').getByRole('link', { name, exact: true }).last();

async function open(page: Page, address: string): Promise<void> {
  await page.goto(`.${address}`);
  await wakeIslands(page);
}

/** Go to a page by the menu, on a screen of any width. */
async function byMenu(page: Page, name: string): Promise<void> {
  await page.getByText('All pages', { exact: true }).click();
  await menuLink(page, name).click();
  await wakeIslands(page);
}

/** The lead in hand is on the build sheet by the menu, after a reload, and in a new tab. */
async function sheetShows(page: Page, name: string): Promise<void> {
  await byMenu(page, 'Build sheet');
  await expect(row(page, name)).toBeVisible();
  await page.reload();
  await wakeIslands(page);
  await expect(row(page, name)).toBeVisible();
  const tab = await page.context().newPage();
  await open(tab, '/cable-sheet/');
  await expect(row(tab, name)).toBeVisible();
  await tab.close();
}

test('with nothing in hand the sheet says so, shows the ways to a lead and nothing that looks finished', async ({
  page,
}) => {
  await open(page, '/cable-sheet/');
  await expect(page.getByText('No lead in hand yet')).toBeVisible();
  await expect(paper(page)).toHaveCount(0);
  const maker = page.getByRole('region', { name: 'Build sheet maker' });
  await expect(maker.getByRole('link', { name: 'the front page' })).toHaveAttribute('href', SITE_BASE);
  await expect(maker.getByRole('link', { name: 'the bench' })).toHaveAttribute('href', `${SITE_BASE}bench/`);
  await maker.getByRole('button', { name: 'Find the lead for these two jacks' }).click();
  // DIN pin 4 to ring: Type A (MMA RP-054).
  await expect(row(page, 'source pin 4 ring RD red')).toBeVisible();
  const html = await (await page.request.get('./cable-sheet/')).text();
  expect(html).toContain('Looking for the lead in hand.');
  expect(html).not.toContain('<article');
});

test('a lead wired on the bench is on the sheet, the meter and the bytes page', async ({ page }) => {
  await open(page, '/bench/');
  await page.getByRole('group', { name: 'Input jack' }).getByLabel('Type').selectOption('type-b');
  await takeFirstWiring(page);
  await expect(page.locator('.headline .outcome')).toHaveText('Works');
  await sheetShows(page, SOURCE_TO_TIP);
  await byMenu(page, 'Meter');
  await expect(page.getByLabel('The lead is')).toHaveValue('hand');
  await expect(page.getByRole('group', { name: 'Input' }).getByLabel('Type')).toHaveValue('type-b');
  await byMenu(page, 'Bytes on the wire');
  await expect(page.getByText('The two jacks: 5-pin DIN out, 3.5 mm TRS in')).toBeVisible();
  await page.getByLabel('wiring').selectOption('source missing');
  await byMenu(page, 'Build sheet');
  await expect(row(page, 'sink pin 5 ring')).toBeVisible();
  await expect(row(page, 'source pin 4')).toHaveCount(0);
});

test('a link puts its lead in hand, and what it replaced is among the versions', async ({ page }) => {
  await open(page, '/bench/');
  await takeFirstWiring(page);
  await expect(page.locator('.headline .outcome')).toHaveText('Works');
  const crossed = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'din5', 'din'), [
    makeLead('din5', 'din5', wires('4-5', '5-4')),
  ]);
  await open(page, `/cable-sheet/#plan=${await writeSharedLink(crossed)}`);
  await expect(row(page, 'pin 4 pin 5')).toBeVisible();
  await byMenu(page, 'Bench');
  await expect(page.locator('.headline .outcome')).toHaveText('Reversed');
  await page.getByText('Earlier versions of this work').click();
  await page
    .getByRole('button', { name: /^Open the version/ })
    .first()
    .click();
  await expect(page.locator('.headline .outcome')).toHaveText('Works');
});

test.describe('from the front page, 390 px wide', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('by touch', async ({ page }) => {
    await open(page, '/');
    const listener = page.getByRole('group', { name: /^The jack on the listener/ });
    await page
      .getByRole('group', { name: /^The jack on the sender/ })
      .getByText('DIN')
      .first()
      .tap();
    await listener.getByText('3.5 mm').first().tap();
    await listener.getByRole('radio', { name: /^Type B/ }).tap();
    await expect(page.getByRole('region', { name: 'The answer' })).toContainText('pin 4 to tip');
    await sheetShows(page, SOURCE_TO_TIP);
  });

  test('by keyboard', async ({ page }) => {
    await open(page, '/');
    const listener = page.getByRole('group', { name: /^The jack on the listener/ });
    await page
      .getByRole('group', { name: /^The jack on the sender/ })
      .getByRole('radio', { name: /DIN/ })
      .focus();
    await page.keyboard.press('Space');
    await listener.getByRole('radio', { name: /3\.5 mm/ }).focus();
    await page.keyboard.press('Space');
    await listener.getByRole('radio', { name: /^Type B/ }).focus();
    await page.keyboard.press('Space');
    await page.getByRole('link', { name: /^I have this lead/ }).focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { name: 'Test it with a meter' })).toBeFocused();
    await sheetShows(page, SOURCE_TO_TIP);
  });
});
