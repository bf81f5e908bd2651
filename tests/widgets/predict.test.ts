import { readFileSync } from 'node:fs';
import { expect, test } from '../support/test.ts';
import { accessibilityFaults } from '../support/accessible.ts';
import { builtPages } from '../support/site.ts';
import { wakeIslands } from '../support/watch.ts';

const LESSONS = builtPages().filter(({ address }) => /^\/lessons\/[^/]+\/$/.test(address));

test('every lesson asks before it shows', () => {
  expect(LESSONS.length).toBeGreaterThan(0);
  const silent = LESSONS.filter(({ file }) => !readFileSync(file, 'utf8').includes('Before you look'));
  expect(silent.map(({ address }) => address)).toEqual([]);
});

test('a question that waits for its answer is accessible', async ({ page }) => {
  await page.goto(`.${LESSONS[0]?.address ?? ''}`);
  await wakeIslands(page);
  expect(await accessibilityFaults(page, '.predict')).toEqual([]);
});

for (const { address } of LESSONS) {
  test(`the questions of ${address} are answered by keyboard, with one more try, and only the answer given is explained`, async ({
    page,
  }) => {
    await page.goto(`.${address}`);
    await wakeIslands(page);
    const questions = page.locator('.predict');
    for (let place = 0; place < (await questions.count()); place += 1) {
      const question = questions.nth(place);
      const choices = question.locator('.choice').getByRole('radio');
      const status = question.locator(':scope > .press').getByRole('status');
      const explanation = question.locator(':scope > .explanation');
      await expect(explanation).toBeHidden();

      await question.getByRole('button', { name: 'Answer', exact: true }).press('Enter');
      await expect(status).toHaveText('Choose an answer first.');
      await expect(question.locator('.because')).toHaveCount(0);

      await choices.first().focus();
      await page.keyboard.press('Space');
      await question.getByRole('button', { name: 'Answer', exact: true }).press('Enter');
      await expect(status).toHaveText(/^(Right|Not quite)\. .{10,}/);
      await expect(question.locator('.because')).toHaveCount(1);
      if (await explanation.isHidden()) {
        await expect(status).toHaveText(/ One more try\.$/);
        await question.getByRole('button', { name: 'Answer', exact: true }).press('Enter');
        await expect(status).toHaveText('That was your first answer. Choose another.');
        await choices.nth(1).focus();
        await page.keyboard.press('Space');
        await question.getByRole('button', { name: 'Answer', exact: true }).press('Enter');
        await expect(status).toHaveText(/^(Right|Not quite)\. .{10,}/);
      }
      await expect(question.locator('.because .good')).not.toHaveCount(0);
      await expect(explanation).toBeVisible();
      await expect(choices.first()).toBeDisabled();

      const again = question.locator(':scope > .press').getByRole('button', { name: 'Try again' });
      await expect(again).toBeFocused();
      await page.keyboard.press('Enter');
      await expect(explanation).toBeHidden();
      await expect(choices.first()).toBeEnabled();
      await expect(choices.first()).not.toBeChecked();
    }
  });
}
