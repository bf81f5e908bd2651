/** Search from the keyboard alone. */
import { expect, test } from '../support/test.ts';
import { wakeIslands } from '../support/watch.ts';

test('a word is looked up by keyboard, its place opens, and the way back finds the words again', async ({
  page,
}) => {
  await page.goto('./search/');
  await wakeIslands(page);
  const words = page.getByRole('searchbox', { name: 'Words to look for' });
  await words.focus();
  await page.keyboard.type('optocoup');
  await expect(page.getByRole('status').filter({ hasText: 'places found' })).toBeVisible();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  const first = page.locator('.found a').first();
  await expect(first).toBeFocused();
  const name = (await first.textContent()) ?? '';
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText(name.split(':')[0] ?? '');
  await page.goBack();
  await wakeIslands(page);
  await expect(words).toHaveValue('optocoup');
  await expect(first).toHaveText(name);
  await words.fill('zzzz');
  await expect(page.getByText("Nothing has 'zzzz' in it.")).toBeVisible();
});
