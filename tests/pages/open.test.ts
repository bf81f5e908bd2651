import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { builtPages } from '../support/site.ts';
import { unfold, wakeIslands, watch } from '../support/watch.ts';

/** Largest weight of all scripts of a page after gzip, with every widget awake and every fold open, bytes: our own limits. */
const LESSON_SCRIPT_BYTES = 90_000;
const TOOL_SCRIPT_BYTES = 130_000;

/** WCAG 2.2, levels A and AA. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

const WIDTHS = [390, 1440];
const SCHEMES = ['light', 'dark'] as const;

async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join(' ')}`,
  );
}

for (const { address } of builtPages()) {
  for (const width of WIDTHS) {
    for (const colorScheme of SCHEMES) {
      test(`${address} is quiet, accessible and fits at ${width} px in ${colorScheme}`, async ({
        page,
        baseURL,
      }) => {
        const seen = await watch(page, baseURL ?? '');
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 900 });
        await page.goto(address);
        await wakeIslands(page);
        await page.evaluate(() => document.fonts.ready);

        // Everything unfolded is checked each time; a page as it opens, which shows less of the same, twice.
        const folds = (await page.locator('.predict, details').count()) > 0;
        if (!folds || (width === 390) === (colorScheme === 'dark')) {
          expect.soft(await accessibilityFaults(page)).toEqual([]);
        }
        if (folds) {
          await unfold(page);
          expect.soft(await accessibilityFaults(page)).toEqual([]);
        }
        const { needed, given } = await page.evaluate(() => ({
          needed: document.documentElement.scrollWidth,
          given: document.documentElement.clientWidth,
        }));
        expect.soft(needed).toBeLessThanOrEqual(given);
        expect.soft(await seen.violations()).toEqual([]);
        expect.soft(seen.complaints).toEqual([]);
      });
    }
  }

  test(`${address} loads less script than the budget`, async ({ page, baseURL }) => {
    const seen = await watch(page, baseURL ?? '');
    await page.goto(address);
    await unfold(page);
    await page.waitForLoadState('networkidle');
    const scripts = await seen.scripts();
    const total = [...scripts.values()].reduce((sum, bytes) => sum + bytes, 0);
    expect([...scripts.keys()].some((url) => url.endsWith('/theme.js'))).toBe(true);
    expect(total, JSON.stringify([...scripts], null, 1)).toBeLessThan(
      address.startsWith('/lessons/') ? LESSON_SCRIPT_BYTES : TOOL_SCRIPT_BYTES,
    );
    test.info().annotations.push({ type: 'script bytes after gzip', description: String(total) });
  });
}
