/** What is kept is shown, saved and wiped, and a wipe asks first. */
import { expect, test } from '../support/test.ts';
import { savedBy } from '../support/stores.ts';
import { takeFirstWiring, wakeIslands } from '../support/watch.ts';

test('what was done is listed, saved to one file, and wiped only after a question', async ({ page }) => {
  await page.goto('./bench/');
  await wakeIslands(page);
  await takeFirstWiring(page);
  await page.goto('./kept/');
  await wakeIslands(page);
  const main = page.getByRole('main');
  await expect(main.getByRole('row', { name: /^The lead in hand: two jacks/ }).first()).toBeVisible();
  const file = await savedBy(page, page.getByRole('button', { name: 'Save all of it to a file' }));
  const { format, kept } = JSON.parse(file) as { format: string; kept: Record<string, string> };
  expect(format).toBe('five-milliamps-kept');
  expect(kept['five-milliamps bench']).toContain('"leads"');

  await page.getByRole('button', { name: 'Wipe all of it' }).click();
  await expect(page.getByRole('button', { name: 'Keep it', exact: true })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(main.getByRole('row')).not.toHaveCount(0);
  await page.getByRole('button', { name: 'Wipe all of it' }).click();
  await page.getByRole('button', { name: 'Yes, wipe it' }).click();
  await expect(page.getByText('All of it is wiped from this browser.')).toBeVisible();
  await expect(page.getByText('Nothing of yours is kept here yet.')).toBeVisible();
  expect(await page.evaluate(() => localStorage.length)).toBe(0);
});
