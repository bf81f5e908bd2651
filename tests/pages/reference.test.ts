/** The quick reference and the pocket card as they come out of a printer, held to the core. */
import { expect, test } from '@playwright/test';
import { referenceTable, shortConductor } from '../../src/core/answer/index.ts';
import { readPdf } from '../support/pdf.ts';

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
