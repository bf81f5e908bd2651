import { expect, test } from '../support/test.ts';
import { wakeIslands } from '../support/watch.ts';

test('an island that another scrolls out of view before the browser has seen it there is brought back, and wakes', async ({
  page,
}) => {
  await page.goto('./fault-bench/');
  // As a widget does that wakes and shows where it stands: once for each that is brought into view.
  await page.evaluate(() => {
    const bring = Element.prototype.scrollIntoView;
    const taken = new Set<Element>();
    Element.prototype.scrollIntoView = function (this: Element, how) {
      bring.call(this, how);
      if (!taken.has(this)) scrollTo(0, document.body.scrollHeight);
      taken.add(this);
    };
  });
  await wakeIslands(page);
  await expect(page.locator('main astro-island[ssr]')).toHaveCount(0);
});
