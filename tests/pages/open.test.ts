import AxeBuilder from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import { builtPages } from '../support/site.ts';
import { unfold, wakeIslands, watch } from '../support/watch.ts';

/** Largest weight of all scripts of a page after gzip, with every widget awake and every fold open, bytes: our own limits. */
const LESSON_SCRIPT_BYTES = 90_000;
const TOOL_SCRIPT_BYTES = 130_000;

/** WCAG 2.2, levels A and AA. */
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** The one rule whose answer hangs on light or dark. */
const CONTRAST = 'color-contrast';

/** Each width with the scheme that the page opens in; the other scheme follows without opening it again. */
const OPENINGS = [
  { width: 390, first: 'dark', then: 'light' },
  { width: 1440, first: 'light', then: 'dark' },
] as const;

async function accessibilityFaults(page: Page, only?: string): Promise<readonly string[]> {
  const check = new AxeBuilder({ page });
  const { violations } = await (only === undefined ? check.withTags(RULES) : check.withRules(only)).analyze();
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join(' ')}`,
  );
}

for (const { address } of builtPages()) {
  for (const { width, first, then } of OPENINGS) {
    test(`${address} is quiet, accessible, light enough and fits at ${width} px`, async ({
      page,
      baseURL,
    }) => {
      const seen = await watch(page, baseURL ?? '');
      await page.emulateMedia({ colorScheme: first, reducedMotion: 'reduce' });
      await page.setViewportSize({ width, height: 900 });
      await page.goto(address);
      await wakeIslands(page);
      await page.evaluate(() => document.fonts.ready);
      // A page as it opens shows less of the same, so that once is enough.
      const folds = (await page.locator('.predict, details').count()) > 0;
      if (folds && width === 390) expect.soft(await accessibilityFaults(page), 'as it opens').toEqual([]);
      if (folds) await unfold(page);
      expect.soft(await accessibilityFaults(page), 'with all unfolded').toEqual([]);
      await page.emulateMedia({ colorScheme: then, reducedMotion: 'reduce' });
      expect.soft(await accessibilityFaults(page, CONTRAST), then).toEqual([]);

      const { needed, given } = await page.evaluate(() => ({
        needed: document.documentElement.scrollWidth,
        given: document.documentElement.clientWidth,
      }));
      expect.soft(needed).toBeLessThanOrEqual(given);
      expect.soft(await seen.violations()).toEqual([]);
      expect.soft(seen.complaints).toEqual([]);

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
}
