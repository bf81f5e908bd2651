import { expect, test } from '../support/test.ts';
import { painter } from '../support/painting.ts';

test('a browser that has stopped painting is set going again under the test, and the page stays as it is', async ({
  page,
  browser,
}) => {
  await page.goto('./safety/');
  await page.evaluate(() => Object.assign(window, { opened: 'once' }));
  process.kill(await painter(browser), 'SIGSTOP');
  await page.evaluate(
    () => new Promise((frame) => requestAnimationFrame(() => requestAnimationFrame(frame))),
  );
  expect(await page.evaluate(() => 'opened' in window)).toBe(true);
});
