/** The quick reference and the pocket card as they come out of a printer, held to the core. */
import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import { referenceTable, shortConductor } from '../../src/core/answer/index.ts';
import { readPdf } from '../support/pdf.ts';
import { wakeIslands } from '../support/watch.ts';

const CELLS = referenceTable();

/** A4, points, and how far a printer may round. */
const A4 = [595, 842] as const;

test('the quick reference prints on one sheet of A4, with every lead of the table', async ({ page }) => {
  await page.goto('./quick-reference/');
  const { pages, size, text } = readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(pages).toBe(1);
  expect(Math.abs(size[0] - A4[0]) + Math.abs(size[1] - A4[1])).toBeLessThan(3);
  for (const { conductors } of CELLS)
    if (conductors) expect(text).toContain(conductors.map(shortConductor).join(''));
  expect(text).toContain('Phantompower');
});

test('each cell on the screen is the lead that the core solves', async ({ page }) => {
  await page.goto('./quick-reference/');
  const shown = await page.locator('.matrix tbody td').allInnerTexts();
  expect(shown.length).toBe(CELLS.length);
  CELLS.forEach(({ conductors, outputType, inputType }, at) => {
    const cell = (shown[at] ?? '').replace(/\s+/g, ' ');
    expect(cell, `${outputType} to ${inputType}`).toContain(
      conductors ? conductors.map(shortConductor).join(' ') : 'no plain lead',
    );
  });
});

test('the pocket card prints four times on one sheet, in 8 point type', async ({ page }) => {
  await page.goto('./pocket-card/');
  const { pages, text } = readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(pages).toBe(1);
  expect(text.split('Everycellissolved').length - 1).toBe(4);
  await page.emulateMedia({ media: 'print' });
  const size = await page
    .locator('.matrix td')
    .first()
    .evaluate((cell) => getComputedStyle(cell).fontSize);
  // 8 pt is 10.67 CSS pixels.
  expect(parseFloat(size)).toBeCloseTo(10.67, 1);
});

test('the table is there as CSV and as a drawing', async ({ request }) => {
  const rows = (await (await request.get('./quick-reference.csv')).text()).trim().split(/\r?\n/);
  expect(rows.length).toBe(CELLS.length + 1);
  const svg = await (await request.get('./quick-reference.svg')).text();
  expect(svg.startsWith('<svg')).toBe(true);
  expect(svg.split('<text').length - 1).toBe(CELLS.length + 7 + 8);
});

/** Press Tab until the focus is on what is wanted; a page that does not lead there is a fault. */
async function tabTo(page: Page, wanted: Locator): Promise<void> {
  const MOST = 40;
  for (let presses = 0; presses < MOST; presses += 1) {
    await page.keyboard.press('Tab');
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
  }
  throw new Error(`keyboard: needs a place that Tab reaches within ${MOST} presses, got none`);
}

/** How far a table that is wider than the page was moved, pixels. */
const moved = (region: Locator): Promise<number> => region.evaluate((element) => element.scrollLeft);

test.describe('by keyboard alone, 390 px wide', () => {
  test.use({ viewport: { width: 390, height: 844 } });

  test.beforeEach(({ page }) =>
    page.addInitScript(() => {
      window.print = () => document.documentElement.toggleAttribute('data-asked-to-print', true);
    }),
  );

  test('the quick reference opens its card, saves its files, prints, and shows its whole table', async ({
    page,
  }) => {
    await page.goto('./quick-reference/');
    await wakeIslands(page);
    for (const [name, file] of [
      ['as CSV', 'quick-reference.csv'],
      ['as SVG', 'quick-reference.svg'],
    ] as const) {
      await tabTo(page, page.getByRole('link', { name }));
      const [saved] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
      expect(saved.suggestedFilename()).toBe(file);
    }
    await tabTo(page, page.getByRole('button', { name: 'Print the quick reference' }));
    await page.keyboard.press('Enter');
    await expect(page.locator('html[data-asked-to-print]')).toHaveCount(1);
    const table = page.getByRole('region', { name: 'The lead between two types' });
    await tabTo(page, table);
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => moved(table)).toBeGreaterThan(0);
    // The readings need no moving: the whole of their table stands on the page.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await page.getByRole('link', { name: 'pocket card' }).focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { name: 'Pocket card' })).toBeVisible();
  });

  test('the pocket card is moved, printed, and leads back', async ({ page }) => {
    await page.goto('./pocket-card/');
    await wakeIslands(page);
    await tabTo(page, page.getByRole('button', { name: 'Print the cards' }));
    await page.keyboard.press('Enter');
    await expect(page.locator('html[data-asked-to-print]')).toHaveCount(1);
    const card = page.getByRole('region', { name: 'Pocket card' });
    await tabTo(page, card);
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => moved(card)).toBeGreaterThan(0);
    await page.getByRole('link', { name: 'quick reference' }).first().focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('heading', { name: 'Quick reference', level: 1 })).toBeVisible();
  });
});
