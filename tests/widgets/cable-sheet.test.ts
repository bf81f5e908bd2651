import { readFileSync } from 'node:fs';
import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import { cableSheet, fullRows } from '../../src/core/making/index.ts';
import { linkOf, planOfLink, writePlanText, writeSharedLink } from '../../src/core/plan/index.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { readPdf } from '../support/pdf.ts';
import { wakeIslands } from '../support/watch.ts';

const paper = (page: Page): Locator => page.getByRole('article', { name: 'Build sheet' });
const verdict = (page: Page): Locator => page.locator('.test .says');

/** The lead that most of these tests are about: DIN 4, 5, 2 to ring, tip, sleeve, Type A (MMA RP-054). */
const LEAST = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a'), [
  makeLead('din5', 'trs-3.5', wires('2-sleeve', '4-ring', '5-tip')),
]);

async function open(page: Page, hash?: string): Promise<void> {
  await page.goto(`./cable-sheet/${hash ?? `#plan=${await writeSharedLink(LEAST)}`}`);
  await wakeIslands(page);
}

/** Unfold the jacks of the lead in hand. */
async function otherJacks(page: Page): Promise<void> {
  await page.getByText(/^Another lead: other jacks/).click();
}

/** The plan with most to print: two DIN plugs, all five pins and the shell through. */
const FULL = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'din5', 'din'), [
  makeLead('din5', 'din5', wires('1-1', '2-2', '3-3', '4-4', '5-5', 'shell-shell')),
]);

/** The same with seven pins: the longest sheet there is. */
const SEVEN = planOfLink(makeJack('out', 'din7', 'din'), makeJack('in', 'din7', 'din'), [
  makeLead('din7', 'din7', wires('1-1', '2-2', '3-3', '4-4', '5-5', '6-6', '7-7', 'shell-shell')),
]);

/** A4 and Letter, points: 210 by 297 mm, 8.5 by 11 inches. */
const PAPERS = [
  ['A4', 595, 842],
  ['Letter', 612, 792],
] as const;

test('the sheet prints on one page of A4 and of Letter, with all its text', async ({ page }) => {
  await open(page);
  await expect(paper(page).getByRole('row', { name: 'source pin 4 ring RD red' })).toBeVisible();
  for (const plan of [LEAST, FULL, SEVEN]) {
    const [lead, link] = [plan.leads[0], plan.links[0]];
    if (!lead || !link) throw new Error('plan: needs a lead in a link');
    const sheet = cableSheet(lead, linkOf(plan, link));
    if (plan !== LEAST) {
      await page.goto('about:blank');
      await open(page, `#plan=${await writeSharedLink(plan)}`);
      await expect(paper(page).getByRole('heading', { level: 2 })).toHaveText(sheet.title);
    }
    for (const [format, width, height] of PAPERS) {
      const pdf = readPdf(await page.pdf({ format }));
      expect.soft(pdf.pages, `${sheet.title} on ${format}`).toBe(1);
      expect.soft(Math.abs(pdf.size[0] - width) + Math.abs(pdf.size[1] - height)).toBeLessThan(2);
      const wanted = [
        sheet.title,
        sheet.cutWords,
        sheet.mirrorWarning ?? '',
        'solder side, key down',
        'common practice',
        ...sheet.cautions.map(({ gist }) => gist),
        ...sheet.proof.map(({ words }) => words),
        'the meter has the last word',
      ];
      const missing = wanted.filter((text) => !pdf.text.includes(text.replace(/\s/g, '')));
      expect.soft(missing, `${sheet.title} on ${format}`).toEqual([]);
      expect.soft(pdf.text).not.toContain('Printthesheet');
    }
  }
});

test('printed from a window 390 px wide, with turned plugs, the longest sheet is one page still', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page, `#plan=${await writeSharedLink(SEVEN)}`);
  await page.getByText(/^Length, plugs, cable/).click();
  const shape = page
    .getByRole('img', { name: /^From the side/ })
    .locator(':scope > path')
    .first();
  const before = await shape.getAttribute('d');
  await page.getByLabel('Plug, output end').selectOption('right-angle');
  await page.getByLabel('Plug, input end').selectOption('right-angle');
  const bodies = page.getByRole('img', { name: /^From the side/ });
  await expect(bodies).toHaveAccessibleName(/Output end: a 7-pin DIN plug with a right-angle body/);
  expect(await shape.getAttribute('d')).not.toBe(before);
  for (const [format] of PAPERS) {
    const pdf = readPdf(await page.pdf({ format }));
    expect.soft(pdf.pages, format).toBe(1);
    expect.soft(pdf.text).toContain('Lengthsandbodiesnottoscale');
    expect.soft(pdf.text).toContain('themeterhasthelastword');
  }
});

test('the full test comes on pages of its own when it is asked for, every pair once', async ({ page }) => {
  for (const plan of [FULL, SEVEN]) {
    const lead = plan.leads[0];
    if (!lead) throw new Error('plan: needs a lead');
    await page.goto('about:blank');
    await open(page, `#plan=${await writeSharedLink(plan)}`);
    await expect(paper(page).getByRole('heading', { level: 2 })).toContainText('DIN to');
    const wanted = page.getByRole('checkbox', { name: /^print the full test too/ });
    if (!(await wanted.isVisible())) await page.getByText(/^Length, plugs, cable/).click();
    await wanted.check();
    const rows = fullRows(lead);
    // 6 or 8 contacts an end: 12 * 11 / 2 and 16 * 15 / 2 pairs.
    expect(rows).toHaveLength(plan === FULL ? 66 : 120);
    for (const [format] of PAPERS) {
      const pdf = readPdf(await page.pdf({ format }));
      expect.soft(pdf.pages, format).toBeGreaterThanOrEqual(2);
      expect.soft(pdf.pages, format).toBeLessThanOrEqual(plan === FULL ? 3 : 4);
      const table = pdf.text.slice(pdf.text.indexOf('Fulltest,pairbypair'));
      const missing = rows.filter(({ words }) => !table.includes(words.replace(/\s/g, '')));
      expect.soft(missing).toEqual([]);
    }
    await wanted.uncheck();
    expect(readPdf(await page.pdf({ format: 'A4' })).pages).toBe(1);
  }
});

test('ticks are there again after a reload, each lead its own, and a browser that keeps nothing says so', async ({
  page,
}) => {
  await open(page);
  await page.getByLabel(/^row 2, pin 4 at the output end to ring/).selectOption('from');
  await page.getByLabel(/^row 4, pin 1 at the output end/).selectOption('silent');
  await expect(verdict(page)).toContainText(
    'the joint of the conductor pin 4 to ring is cold at the output end',
  );
  const input = page.getByRole('group', { name: 'Input jack' });
  await otherJacks(page);
  await input.getByLabel('Type').selectOption('type-b');
  await expect(verdict(page)).toContainText('Nothing read yet.');
  await page.reload();
  await wakeIslands(page);
  await expect(paper(page).getByRole('row', { name: 'source pin 4 tip RD red' })).toBeVisible();
  await expect(verdict(page)).toContainText('Nothing read yet.');
  await otherJacks(page);
  await input.getByLabel('Type').selectOption('type-a');
  await expect(verdict(page)).toContainText(
    'the joint of the conductor pin 4 to ring is cold at the output end',
  );
  await expect(page.getByLabel(/^row 4, pin 1 at the output end/)).toHaveValue('silent');
  await page.getByRole('button', { name: 'Start the test again' }).click();
  await page.reload();
  await wakeIslands(page);
  await expect(verdict(page)).toContainText('Nothing read yet.');

  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.getByLabel(/^row 2, pin 4 at the output end to ring/).selectOption('silent');
  await expect(page.locator('.test').getByRole('alert')).toContainText(
    'This browser’s store is full: your work is not kept (full)',
  );
  await expect(verdict(page)).toContainText('the conductor pin 4 to ring is open somewhere');
});

test('a test with an open conductor names it, and one that agrees throughout says so', async ({ page }) => {
  await open(page);
  const rows = page.locator('.test select');
  await expect(verdict(page)).toContainText('Not tested yet');
  for (const row of await rows.all()) {
    const conductor = (await row.getByRole('option', { name: /no plug moved yet/ }).count()) > 0;
    await row.selectOption(conductor ? 'beep' : 'silent');
  }
  await expect(verdict(page)).toContainText('Tested: as planned');
  // Pin 4 to ring is the second conductor of the table.
  await rows.nth(1).selectOption('silent');
  await expect(verdict(page)).toContainText('Not as planned');
  await expect(verdict(page).getByRole('listitem')).toHaveText([
    /^the conductor pin 4 to ring is open somewhere/,
  ]);
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await faintFaults(page)).toEqual([]);
});

test('a contact that beeps where it must not is ticked by keyboard, and further readings narrow it down', async ({
  page,
}) => {
  await open(page);
  const row = page.getByLabel(/^row 4, pin 1 at the output end/);
  await row.selectOption({ label: 'beeps to one or more' });
  await page.getByLabel('pin 4 at the output end', { exact: true }).focus();
  await page.keyboard.press('Space');
  await expect(verdict(page)).toContainText('Not as planned');
  await expect(verdict(page)).toContainText('pin 1 and pin 4 touch at the output end');
  const before = await verdict(page).getByRole('listitem').count();
  const ask = page.getByRole('group', { name: /^The reading that tells most now/ });
  if (before > 1) {
    await ask.getByRole('button', { name: 'silent' }).click();
    await expect(page.getByRole('list', { name: 'Further readings' }).getByRole('listitem')).toHaveCount(1);
  }
});

test('other jacks get another lead, jacks that no lead joins get none, and a plan file gets its own', async ({
  page,
}) => {
  await open(page);
  const input = page.getByRole('group', { name: 'Input jack' });
  await otherJacks(page);
  await input.getByLabel('Type').selectOption('type-b');
  await expect(paper(page).getByRole('row', { name: 'source pin 4 tip RD red' })).toBeVisible();
  // A ground-referenced output cannot light an isolated input through any passive lead.
  const output = page.getByRole('group', { name: 'Output jack' });
  await output.getByLabel('Connector').selectOption('3.5 mm TRS');
  await output.getByLabel('Type').selectOption('tip-signal');
  await expect(page.locator('.asking')).toContainText('powered converter');
  await expect(paper(page)).toHaveCount(0);
  await page.getByLabel('Plan file to open').setInputFiles({
    name: 'board.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writePlanText(FULL)),
  });
  await expect(paper(page).getByRole('heading', { level: 2 })).toHaveText('lead 1: 5-pin DIN to 5-pin DIN');
  await page.getByLabel('Plan file to open').setInputFiles({
    name: 'broken.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":'),
  });
  await expect(page.getByRole('alert')).toContainText('The sheet is as it was.');
  await expect(paper(page).getByRole('heading', { level: 2 })).toHaveText('lead 1: 5-pin DIN to 5-pin DIN');
  // On a phone with every fold open the button stands far below the message: it comes into view.
  await page.setViewportSize({ width: 390, height: 844 });
  await page.getByText(/^Length, plugs, cable/).click();
  await page.getByLabel('Plan file to open').setInputFiles({
    name: 'other.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{"format":7}'),
  });
  await expect(page.getByRole('alert')).toContainText(
    "The file 'other.json' was not opened. Why: format: expected",
  );
  await expect(page.getByRole('alert')).toBeInViewport();
});

test('the drawing is saved as an SVG file that looks the same without the style sheet', async ({ page }) => {
  await open(page);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the drawing (SVG)' }).click(),
  ]);
  const svg = readFileSync(await download.path(), 'utf8');
  expect(svg).toContain('xmlns="http://www.w3.org/2000/svg"');
  expect(svg).not.toContain('class=');
  // The source line's own colour on light paper: #b34700.
  expect(svg).toMatch(/stroke="rgb\(179, 71, 0\)"/);
});
