import { expect, test } from '@playwright/test';
import { builtPages } from '../support/site.ts';
import { wakeIslands } from '../support/watch.ts';

test.use({ serviceWorkers: 'allow' });

test('after one visit every page opens with the network off, and the bench still works', async ({
  page,
  context,
}) => {
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await context.setOffline(true);
  for (const { address } of builtPages().filter(({ address }) => address !== '/404.html')) {
    await page.goto(address);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  }
  await page.goto('/bench/');
  await wakeIslands(page);
  await page.getByRole('button', { name: 'Which lead?' }).click();
  await page
    .getByRole('button', { name: /^Use this wiring/ })
    .first()
    .click();
  await expect(page.locator('.headline .outcome')).toHaveText('Works');
});
