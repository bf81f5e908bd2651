/** From what arrived to the cause, and a real lead under test: with a stand-in for the interface, for no hardware was at hand. */
import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import { demoBoard, timePress } from '../../src/core/board/index.ts';
import { planOfLink, writePlanText, writeSharedLink } from '../../src/core/plan/index.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import { standIn } from '../support/midi-stand-in.ts';
import type { StandIn } from '../support/midi-stand-in.ts';
import { wakeIslands } from '../support/watch.ts';

async function open(page: Page, hash = ''): Promise<void> {
  await page.goto(`./what-arrived/${hash}`);
  await wakeIslands(page);
}

/** Open the page with a stand-in, and the fold of the lead's test. */
async function openTest(page: Page, what: StandIn): Promise<void> {
  await standIn(page, what);
  await open(page);
  await page.getByText('Put a real lead under test with a MIDI interface').click();
}

const lead = (page: Page) => page.getByRole('region', { name: 'A real lead under test' });

async function startTest(page: Page): Promise<void> {
  await lead(page).getByRole('button', { name: 'Ask for the MIDI interface' }).click();
  await lead(page).getByRole('button', { name: 'Start the test' }).click();
}

async function runTest(page: Page, what: StandIn): Promise<void> {
  await openTest(page, what);
  await startTest(page);
}

/** The counts of the result by their names. */
async function counts(page: Page): Promise<Record<string, number>> {
  const table = lead(page).getByRole('table', { name: 'Messages' });
  const [heads, cells] = await Promise.all([
    table.getByRole('columnheader').allTextContents(),
    table.getByRole('cell').allTextContents(),
  ]);
  return Object.fromEntries(heads.map((head, at) => [head, Number(cells[at])]));
}

test('bytes that were typed lead to the cause, its bytes beside those seen, and where to look', async ({
  page,
}) => {
  await open(page);
  await page.getByLabel('What was sent').fill('90 88 00');
  await page.getByLabel('What was seen').fill('F3* FE 00*');
  await page.getByRole('button', { name: 'Find the cause' }).click();
  await expect(page.getByRole('heading', { name: /^1\. The line is upside down/ })).toBeVisible();
  await expect(page.getByText('Most likely: The line is upside down.')).toBeVisible();
  await expect(page.getByRole('definition').first()).toHaveText('F3* FE 00*');
  await expect(page.getByText(/no log tells them apart/)).toBeVisible();
  await page.getByText('The line, bit by bit').first().click();
  await expect(page.getByRole('img', { name: /^The line is upside down/ })).toBeVisible();
  await page.getByLabel('What was seen').fill('3C 8');
  await page.getByRole('button', { name: 'Find the cause' }).click();
  await expect(
    page.getByText("line 1: expected bytes in hex, each of two digits from 00 to FF, got '8'"),
  ).toBeVisible();
});

test('a log in the address is looked at at once, and one that fits nothing says so', async ({ page }) => {
  await open(page, '#sent=90-3C-40-80-3C-40-C0-05&seen=E3-17-2A-5B-71-66-0D-9C');
  await expect(page.getByText(/^This log fits none of the causes/)).toBeVisible();
});

test('a good lead brings every message back right', async ({ page }) => {
  await runTest(page, {});
  // A computer that does much else may bring some late, and then says so.
  await expect(lead(page).getByText(/^All \d+ messages came back right/)).toBeVisible();
  const found = await counts(page);
  expect(found).toMatchObject({ lost: 0, garbled: 0, 'not sent by this test': 0 });
  expect(found['right']).toBe(found['sent']);
  await expect(lead(page).getByText(/^Round trip/)).toBeVisible();
  await expect(lead(page).getByText(/works by a hair works here as well/)).toBeVisible();
});

test('an input that turns on 20 µs late garbles, and what came back leads to its cause', async ({
  page,
  context,
}) => {
  await runTest(page, { wire: ['slow to turn on', 20e-6] });
  await expect(lead(page).getByText(/Do not trust this lead\.$/)).toBeVisible();
  const found = await counts(page);
  expect((found['lost'] ?? 0) + (found['garbled'] ?? 0)).toBeGreaterThan(0);
  const other = context.waitForEvent('page');
  await lead(page).getByRole('link', { name: 'Find the cause of what came back wrong' }).click();
  const next = await other;
  await expect(next.getByRole('heading', { name: /^1\. The input is slow to turn on/ })).toBeVisible();
});

test('no lead at all is told as nothing that came back', async ({ page }) => {
  await runTest(page, { wire: 'open' });
  await expect(lead(page).getByText(/^Nothing came back of \d+ messages/)).toBeVisible();
});

test('messages that nobody sent are counted apart', async ({ page }) => {
  await runTest(page, { clock: true });
  await expect(lead(page).getByText(/came that the test did not send/)).toBeVisible();
  expect((await counts(page))['not sent by this test']).toBeGreaterThan(0);
});

test('nothing is asked of the browser before the button, and a refusal is told', async ({ page }) => {
  await openTest(page, { refuses: true });
  await expect(lead(page).getByRole('alert')).toHaveCount(0);
  await lead(page).getByRole('button', { name: 'Ask for the MIDI interface' }).click();
  await expect(lead(page).getByText(/was told not to give access to MIDI/)).toBeVisible();
  await expect(lead(page).getByRole('button', { name: 'Ask again' })).toBeVisible();
});

test('a browser without MIDI says so plainly', async ({ page }) => {
  await page.addInitScript(() => {
    delete (Navigator.prototype as { requestMIDIAccess?: unknown }).requestMIDIAccess;
  });
  await open(page);
  await page.getByText('Put a real lead under test with a MIDI interface').click();
  await lead(page).getByRole('button', { name: 'Ask for the MIDI interface' }).click();
  await expect(lead(page).getByText(/^This browser has no access to MIDI/)).toBeVisible();
});

test('an interface that is pulled out stops the wiggling and the test', async ({ page }) => {
  await openTest(page, {});
  await lead(page).getByRole('button', { name: 'Ask for the MIDI interface' }).click();
  await lead(page).getByRole('button', { name: 'Wiggle it' }).click();
  await expect(lead(page).getByText(/^[1-9]\d* messages round, 0 breaks\.$/)).toBeVisible();
  await page.evaluate(() => window.pullOut?.());
  await expect(lead(page).getByText(/^An interface was pulled out/)).toBeVisible();
  await expect(lead(page).getByText(/^No interface with an output and an input/)).toBeVisible();
});

test('a lead that breaks while it is wiggled has the moment marked', async ({ page }) => {
  await openTest(page, { wire: 'open' });
  await lead(page).getByRole('button', { name: 'Ask for the MIDI interface' }).click();
  await lead(page).getByRole('button', { name: 'Wiggle it' }).click();
  await expect(lead(page).getByRole('list', { name: 'Breaks' }).getByRole('listitem').first()).toHaveText(
    /^\d\.\d s: nothing came back$/,
  );
});

test('a controller that is listened to has each message told in words', async ({ page }) => {
  await standIn(page);
  await open(page);
  await page.getByText('Listen to a foot controller’s presses').click();
  const heard = page.getByRole('region', { name: 'A foot controller listened to' });
  await heard.getByRole('button', { name: 'Ask for the MIDI interface' }).click();
  await heard.getByRole('button', { name: 'Listen', exact: true }).click();
  await page.evaluate(() => window.hearMessage?.([0xc0, 0x04]));
  await expect(heard.getByText(/^No board plan in this browser has a press/)).toBeVisible();
  await expect(heard.getByRole('cell', { name: /^C0 04: Program change, channel 1/ })).toBeVisible();
});

test('a press is told message by message beside the plan, and the first difference is named', async ({
  page,
}) => {
  const plan = demoBoard();
  // By hand from the bytes of the press: each status byte begins a message; the first is sent a channel too high.
  const bytes = timePress(plan).items.flatMap((item) => item.bytes);
  const starts = [...bytes.keys()].filter((at) => (bytes[at] ?? 0) >= 0x80);
  const messages = starts.map((start, number) => bytes.slice(start, starts[number + 1]));
  const [status = 0, ...data] = messages[0] ?? [];
  const channel = (status & 15) + 1;
  await standIn(page);
  await page.addInitScript((text) => localStorage.setItem('five-milliamps board', text), writePlanText(plan));
  await open(page);
  await page.getByText('Listen to a foot controller’s presses').click();
  const heard = page.getByRole('region', { name: 'A foot controller listened to' });
  await heard.getByRole('button', { name: 'Ask for the MIDI interface' }).click();
  await heard.getByRole('button', { name: 'Listen', exact: true }).click();
  await page.evaluate(
    (list) => list.forEach((one) => window.hearMessage?.(one)),
    [[status + 1, ...data], ...messages.slice(1)],
  );
  const first = heard.getByRole('table', { name: 'Press 1' }).getByRole('row').nth(1);
  await expect(
    first.getByRole('cell', { name: `channel ${channel + 1} in place of ${channel}` }),
  ).toBeVisible();
  await expect(
    heard.getByText(`${messages.length - 1} of ${messages.length} planned messages came right.`),
  ).toBeVisible();
});

test('a test with an interface on the build sheet is kept with the lead', async ({ page }) => {
  // Nothing comes back without a lead, however busy the computer is.
  await standIn(page, { wire: 'open' });
  const lead = makeLead('din5', 'trs-3.5', wires('2-sleeve', '4-ring', '5-tip'));
  const plan = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a'), [lead]);
  await page.goto(`./cable-sheet/#plan=${await writeSharedLink(plan)}`);
  await wakeIslands(page);
  await page.getByText('Test it with a computer and a MIDI interface as well').click();
  await startTest(page);
  const words = /^With a computer interface, \d{4}-\d\d-\d\d: Nothing came back of \d+ messages/;
  const result = page.locator('#test').getByText(words);
  await expect(result).toBeVisible();
  await page.reload();
  await expect(result).toBeVisible();
  // The paper carries it as well.
  await expect(page.getByRole('article', { name: 'Build sheet' }).getByText(words)).toHaveCount(1);
});
