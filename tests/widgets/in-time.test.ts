import { readFileSync } from 'node:fs';
import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import { runOperatingPoint } from '../support/spice.ts';
import { takeFirstWiring, wakeIslands } from '../support/watch.ts';

const outcome = (page: Page) => page.locator('.send .outcome');

async function open(page: Page): Promise<void> {
  await page.goto('./in-time/');
  await wakeIslands(page);
}

test('a program change is written in plain words, sent, and arrives', async ({ page }) => {
  await open(page);
  const program = page.getByLabel('program, from 1');
  await program.fill('10');
  await program.press('Enter');
  // Program 10 counted from 1 is 9 on the wire (MIDI 1.0, table I: Cn pp).
  await expect(page.getByText('What is sent: C0 09')).toBeVisible();
  await expect(outcome(page)).toHaveText('2 bytes sent: all arrived as sent.');
});

test('swapped lines are silence, and a chain of many slow parts loses bytes', async ({ page }) => {
  await open(page);
  await page.getByLabel('wiring').selectOption('source and sink swapped');
  await expect(outcome(page)).toContainText('2 missing');
  await page.getByLabel('wiring').selectOption('line to line');
  await expect(outcome(page)).toHaveText('2 bytes sent: all arrived as sent.');
  const links = page.getByLabel('links in a chain');
  await links.fill('40');
  await links.press('Enter');
  await expect(outcome(page)).toContainText('First trouble');
});

test('a long journey is sent in the background: it can be stopped and sent again, and nothing of the one before is shown', async ({
  page,
}) => {
  await page.addInitScript(() => {
    // The first order is what the page opens with; a worker that does not hear the second stands for one that takes long.
    const Real = window.Worker;
    let orders = 0;
    window.Worker = class extends Real {
      override postMessage(order: unknown): void {
        if (orders++ !== 1) super.postMessage(order);
      }
    };
  });
  await open(page);
  const figure = page.getByRole('slider', { name: /^The signal in time/ });
  await expect(figure).toBeVisible();
  const links = page.getByLabel('links in a chain');
  await links.fill('40');
  await links.press('Tab');
  await expect(outcome(page)).toHaveText('What arrives is not known yet.');
  await expect(figure).toHaveCount(0);
  const progress = page.getByRole('progressbar', { name: 'Links sent through' });
  await expect(progress).toBeVisible();
  await page.getByRole('button', { name: 'Stop sending' }).click();
  await expect(progress).toHaveCount(0);
  await page.getByRole('button', { name: 'Send', exact: true }).click();
  await expect(outcome(page)).toContainText('2 bytes sent');
  await expect(figure).toBeVisible();
});

test('bytes by hand may be nonsense, and what is no byte is refused in words', async ({ page }) => {
  await open(page);
  await page.getByLabel('Add', { exact: true }).selectOption({ label: 'bytes by hand' });
  await page.getByRole('button', { name: 'Add this message' }).click();
  const bytes = page.getByLabel('bytes, hex');
  await bytes.fill('F9 zz');
  await bytes.press('Enter');
  await expect(page.getByRole('alert')).toHaveText(
    "bytes: expected hex from 00 to FF, got 'zz'. The list stays as it was.",
  );
  await bytes.fill('F9 7F');
  await bytes.press('Enter');
  await expect(page.getByText('What is sent: C0 04 F9 7F')).toBeVisible();
  await expect(outcome(page)).toHaveText('4 bytes sent: all arrived as sent.');
});

test('the cursor is moved by keyboard, by bit and by edge, and says what is there', async ({ page }) => {
  await open(page);
  const figure = page.getByRole('slider', { name: /The signal in time/ });
  await figure.focus();
  await page.keyboard.press('Home');
  await expect(figure).toHaveAttribute('aria-valuetext', /line at rest/);
  await page.keyboard.press('ArrowRight');
  await expect(figure).toHaveAttribute(
    'aria-valuetext',
    /byte 1, start bit; 5\.3\d mA at the input; output low/,
  );
  await page.keyboard.press('Shift+ArrowRight');
  await expect(figure).toHaveAttribute('aria-valuetext', /data bit 6|data bit 5/);
  await page.keyboard.press('End');
  await expect(figure).toHaveAttribute('aria-valuetext', /line at rest/);
});

test('ten thousand builds are drawn in the background and can be cancelled', async ({ page, context }) => {
  await open(page);
  await page.getByText('10 000 sets of real parts: how many work').click();
  // The worker's script is held back, so that the work is surely under way when it is cancelled.
  const worker = /builds-worker/;
  await context.route(worker, () => undefined);
  await page.getByRole('button', { name: 'Draw 10 000 builds' }).click();
  await expect(page.getByRole('progressbar', { name: 'Builds drawn' })).toBeVisible();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.locator('.tolerance [role="status"]')).toHaveText('Cancelled; nothing was changed.');
  await expect(page.getByRole('progressbar')).toHaveCount(0);
  await context.unroute(worker);
  await page.getByRole('button', { name: 'Draw 10 000 builds' }).click();
  await expect(page.locator('.tolerance [role="status"]')).toContainText('10000 of 10000 builds work');
  await expect(page.getByText('What matters most: supply')).toBeVisible();
});

test('the saved deck is run by a stock SPICE engine and gives the current that the page says', async ({
  page,
}) => {
  await open(page);
  await page.getByText('Take it further: the link as a SPICE deck').click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'While a 0 is sent (active)' }).click(),
  ]);
  const { amperes } = await runOperatingPoint(readFileSync(await download.path(), 'utf8'));
  const led = [...amperes].filter(([name]) => name.startsWith('d')).map(([, value]) => value);
  expect(Math.max(...led)).toBeGreaterThan(5.3e-3);
  expect(Math.max(...led)).toBeLessThan(5.4e-3);
});

test('the bench sends through the lead that lies on it', async ({ page }) => {
  await page.goto('./bench/');
  await wakeIslands(page);
  const fold = page.getByText('Send something through it');
  // Nothing can be sent where there is no wire.
  await expect(fold).toHaveCount(0);
  await takeFirstWiring(page);
  await fold.click();
  await expect(outcome(page)).toHaveText('2 bytes sent: all arrived as sent.');
});
