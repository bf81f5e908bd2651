/** From a printed sheet back to its lead: the code that a phone reads, and the letters that a person types. */
import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import { cableSheet, leadCode } from '../../src/core/making/index.ts';
import { linkOf, planOfLink, writePlanText, writeSharedLink } from '../../src/core/plan/index.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { readSquareCode } from '../support/square-code.ts';
import { wakeIslands } from '../support/watch.ts';

const paper = (page: Page): Locator => page.getByRole('article', { name: 'Build sheet' });
const square = (page: Page): Locator => page.getByRole('img', { name: /^QR code that opens this lead/ });
const rows = (page: Page): Locator =>
  paper(page)
    .getByRole('table', { name: /^Conductors/ })
    .getByRole('row');

/** The sheet with most conductors, its second lead the one wanted, and a fault that no sheet is for. */
const SEVEN = planOfLink(makeJack('out', 'din7', 'din'), makeJack('in', 'din7', 'din'), [
  makeLead('din7', 'din7', wires('4-4', '5-5', '2-2'), { to: { connector: 'din7', form: 'jack' } }),
  makeLead('din7', 'din7', wires('1-1', '2-2', '3-3', '5-4', '4-5', '6-6', '7-7', 'shell-shell'), {
    lengthMetres: 2.5,
    faults: [{ kind: 'open', side: 'to', contact: '5' }],
  }),
]);

/** DIN to Type A (MMA RP-054). */
const LEAST = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a'), [
  makeLead('din5', 'trs-3.5', wires('2-sleeve', '4-ring', '5-tip')),
]);

async function open(page: Page, hash?: string): Promise<void> {
  await page.goto(`./cable-sheet/${hash ?? `#plan=${await writeSharedLink(LEAST)}`}`);
  await wakeIslands(page);
  await expect(square(page)).toBeVisible();
}

function sheetOf(plan: Plan, name: string) {
  const lead = plan.leads.find((one) => one.name === name);
  const link = plan.links[0];
  if (!lead || !link) throw new Error(`plan: needs a lead '${name}' in a link`);
  return cableSheet(lead, linkOf(plan, link));
}

test.describe('the QR code, as printed and whatever the theme', () => {
  for (const colorScheme of ['light', 'dark'] as const)
    test(`read from the sheet under print media (${colorScheme}) it opens the same lead`, async ({
      browser,
      baseURL: site,
    }) => {
      const baseURL = site ?? '';
      // Four pixels of the screen for one: as fine as a plain printer.
      const context = await browser.newContext({ deviceScaleFactor: 4, colorScheme, baseURL });
      const page = await context.newPage();
      await open(page, `#plan=${await writeSharedLink(SEVEN)}`);
      await page.getByLabel('Lead of this plan').selectOption('lead 2');
      const sheet = sheetOf(SEVEN, 'lead 2');
      await expect(paper(page).getByRole('heading', { level: 2 })).toHaveText(sheet.title);
      await page.emulateMedia({ media: 'print' });
      // The address is written anew for each lead: wait for what the screen reader hears and for the shape.
      await expect
        .poll(async () => {
          const png = await square(page).screenshot();
          const address = await readSquareCode(browser, png);
          return address?.split('=')[0];
        })
        .toBe(new URL('./cable-sheet/#plan', baseURL).href);
      const address = (await readSquareCode(browser, await square(page).screenshot())) ?? '';

      // ISO/IEC 18004 asks for four light modules all round; a module is at least 0.4 mm.
      const modules = Number((await square(page).getAttribute('viewBox'))?.split(' ')[2]);
      const box = await square(page).boundingBox();
      const moduleMm = (((box?.width ?? 0) / 96) * 25.4) / modules;
      expect(moduleMm).toBeGreaterThanOrEqual(0.4);
      expect(Math.abs((box?.width ?? 0) - (box?.height ?? 1))).toBeLessThan(0.5);

      const other = await context.newPage();
      await other.goto(address);
      await wakeIslands(other);
      await expect(paper(other).getByRole('heading', { level: 2 })).toHaveText(sheet.title);
      await expect(paper(other)).toContainText(sheet.cutWords);
      await expect(rows(other)).toHaveText(
        ['', ...sheet.rows].map((row) =>
          typeof row === 'string'
            ? /line.*output end/
            : new RegExp(`^\\s*${row.line}\\s*${row.from}\\s*${row.to}`),
        ),
      );
      await context.close();
    });
});

test('the code holds the address that the reader sets, which is kept, and a slip leaves it as it was', async ({
  page,
  browser,
}) => {
  await open(page);
  await page.getByText(/^Length, plugs, cable/).click();
  const field = page.getByLabel('Address of this workbook');
  const site = async (): Promise<string | undefined> => {
    await expect(square(page)).toBeVisible();
    return (await readSquareCode(browser, await square(page).screenshot({ scale: 'css' })))?.split('#')[0];
  };
  await field.fill('https://wires.example/class/');
  await field.press('Enter');
  await page.setViewportSize({ width: 1440, height: 2400 });
  await expect.poll(site).toBe('https://wires.example/class/cable-sheet/');
  await expect(square(page)).toHaveAccessibleName('QR code that opens this lead at wires.example');
  await field.fill('wires.example');
  await field.press('Enter');
  await expect(page.getByRole('alert')).toHaveText(
    "address: expected one that begins with https:// or http://, got 'wires.example'. The sheet keeps the address it had.",
  );
  expect(await site()).toBe('https://wires.example/class/cable-sheet/');
  await page.reload();
  await wakeIslands(page);
  await expect(square(page)).toHaveAccessibleName('QR code that opens this lead at wires.example');
});

test('a link too long for a readable code leaves the letters, and the reader may want these alone', async ({
  page,
}) => {
  await open(page);
  await page.getByText(/^Length, plugs, cable/).click();
  const field = page.getByLabel('Address of this workbook');
  await field.fill(`https://wires.example/${'a-long-folder/'.repeat(40)}`);
  await field.press('Enter');
  await expect(square(page)).toHaveCount(0);
  await expect(paper(page)).toContainText('To find this lead again, type 7YJC-0S32-0C02-H');
  await page.getByLabel('To find it again').selectOption('nothing');
  await expect(paper(page)).not.toContainText('7YJC');
});

test('the letters of a sheet bring its lead back on another device, and a slip is named', async ({
  page,
}) => {
  const plan = planOfLink(makeJack('out', 'trs-6.35', 'type-b'), makeJack('in', 'din5', 'din'), [
    makeLead('trs-6.35', 'din5', wires('tip-4', 'ring-5', 'sleeve-2'), { lengthMetres: 3.2 }),
  ]);
  const [lead, link] = [plan.leads[0], plan.links[0]];
  if (!lead || !link) throw new Error('plan: needs a lead in a link');
  const letters = leadCode(lead, linkOf(plan, link)) ?? '';
  await open(page);
  await page.getByText(/^Another lead/).click();
  await page.getByText('Type the letters of a printed sheet').click();
  const field = page.getByLabel('Letters of a printed sheet');
  const wrong = letters[5] === 'K' ? 'M' : 'K';
  await field.fill(letters.slice(0, 5) + wrong + letters.slice(6));
  await field.press('Enter');
  await expect(page.getByRole('alert')).toHaveText(
    `the code, letter 1 of group 2: expected '${letters[5]}' if nothing else is wrong, got '${wrong}'. The sheet is as it was.`,
  );
  await expect(paper(page).getByRole('heading', { level: 2 })).toContainText('5-pin DIN to 3.5 mm TRS');
  await field.fill(letters.toLowerCase().replaceAll('-', ' '));
  await field.press('Enter');
  await expect(paper(page).getByRole('heading', { level: 2 })).toContainText('6.35 mm TRS to 5-pin DIN');
  await expect(paper(page)).toContainText('for a lead of 3.20 m');
  // Type B: source on tip, sink on ring (common practice).
  await expect(paper(page).getByRole('row', { name: /^source tip pin 4/ })).toBeVisible();
  await expect(paper(page).getByRole('row', { name: /^sink ring pin 5/ })).toBeVisible();
});

test('what was opened is there again after a reload, and starting over forgets what was chosen for it', async ({
  page,
}) => {
  await open(page);
  await page.getByText(/^Another lead/).click();
  await page.getByLabel('Plan file to open').setInputFiles({
    name: 'seven.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writePlanText(SEVEN)),
  });
  const title = paper(page).getByRole('heading', { level: 2 });
  await page.getByLabel('Lead of this plan').selectOption('lead 2');
  await page.getByText(/^Length, plugs, cable/).click();
  await page.getByLabel('Plug, input end').selectOption('flat');
  await page.reload();
  await wakeIslands(page);
  await expect(title).toHaveText('lead 2: 7-pin DIN to 7-pin DIN');
  await expect(paper(page).getByRole('img', { name: /^From the side/ })).toHaveAccessibleName(
    /Input end: a 7-pin DIN plug with a flat body, the cable leaving to the side/,
  );
  await page.getByText(/^Length, plugs, cable/).click();
  await page.getByRole('button', { name: 'Start over' }).click();
  await expect(title).toHaveText('lead 1: 7-pin DIN to 7-pin DIN');
  await page.reload();
  await wakeIslands(page);
  await expect(title).toHaveText('lead 1: 7-pin DIN to 7-pin DIN');
  await expect(paper(page).getByRole('img', { name: /^From the side/ })).toHaveAccessibleName(
    /Input end: a 7-pin DIN jack with a straight body/,
  );
});
