import type { Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { headingFaults, smallTexts } from '../support/legible.ts';
import { ON_PAPER, overprints, readPdf } from '../support/pdf.ts';
import { readerPages } from '../support/site.ts';
import { unfold, wakeIslands, watch } from '../support/watch.ts';

/** Largest weight of all scripts of a page after gzip, with every widget awake and every fold open, bytes: our own limits. */
const LESSON_SCRIPT_BYTES = 114_000;
const TOOL_SCRIPT_BYTES = 170_000;

/** Widths of a telephone and of a laptop, pixels: a page opens at the first and is then drawn wide. */
const WIDTHS = [390, 1440] as const;

/** Width of the smallest screen, and of a laptop's at 400 %, pixels (WCAG 2.2, 1.4.10). */
const LEAST_WIDTH = 320;

/** Whether the page fits into a window of this width. */
async function judgeFit(page: Page, width: number): Promise<void> {
  await page.setViewportSize({ width, height: 900 });
  await wakeIslands(page);
  const { needed, given } = await page.evaluate(() => ({
    needed: document.documentElement.scrollWidth,
    given: document.documentElement.clientWidth,
  }));
  expect.soft(needed, `${width} px`).toBeLessThanOrEqual(given);
}

/** Judge what hangs on the width of the window: whether the page fits, and whether every word can be read. */
async function judgeWidth(page: Page, width: number): Promise<void> {
  await judgeFit(page, width);
  expect.soft(await faintFaults(page), `${width} px`).toEqual([]);
}

for (const { address } of readerPages()) {
  test(`${address} is quiet, accessible, light enough and fits, narrow and wide, in light and dark and on paper`, async ({
    page,
    baseURL,
  }) => {
    const seen = await watch(page, baseURL ?? '');
    const [narrow, wide] = WIDTHS;
    await page.emulateMedia({ colorScheme: 'dark', reducedMotion: 'reduce' });
    await page.setViewportSize({ width: narrow, height: 900 });
    await page.goto(`.${address}`);
    await wakeIslands(page);
    await page.evaluate(() => document.fonts.ready);
    expect.soft(overprints(readPdf(await page.pdf(ON_PAPER))), 'on paper').toEqual([]);
    // What folds hide, and what an answer takes away, stands in the state that follows or in the one before.
    if ((await page.locator('.predict, main details').count()) > 0) {
      expect.soft(await faintFaults(page), 'as it opens').toEqual([]);
      await unfold(page);
    }
    await judgeFit(page, LEAST_WIDTH);
    await judgeWidth(page, narrow);
    expect.soft(await headingFaults(page)).toEqual([]);
    expect.soft(await smallTexts(page), `${narrow} px`).toEqual([]);
    // Narrow is the harder case for the size of targets and for what scrolls; wide may show what narrow leaves out.
    // At the end of the page what sticks to the screen lies in its own place, over nothing else.
    await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
    expect.soft(await accessibilityFaults(page), `${narrow} px`).toEqual([]);
    const hidden = await page.evaluateHandle(() =>
      [...document.body.querySelectorAll('*')].filter((one) => !one.checkVisibility()),
    );
    await judgeWidth(page, wide);
    const brought = await hidden.evaluate((ones) => {
      const shown = ones.filter((one) => one.checkVisibility());
      const outermost = shown.filter((one) => !shown.some((other) => other !== one && other.contains(one)));
      for (const one of outermost) one.setAttribute('data-brought-by-width', '');
      return outermost.length;
    });
    if (brought > 0)
      expect.soft(await accessibilityFaults(page, '[data-brought-by-width]'), `${wide} px`).toEqual([]);
    expect.soft(await seen.violations()).toEqual([]);
    expect.soft(seen.complaints).toEqual([]);

    await page.waitForLoadState('networkidle');
    // The whole fonts are for a reader's own words: the workbook's stand in the cut ones.
    const whole = await page.evaluate(() =>
      performance
        .getEntriesByType('resource')
        .map(({ name }) => name)
        .filter((name) => name.includes('-latin-')),
    );
    expect.soft(whole).toEqual([]);
    const scripts = await seen.scripts();
    const total = [...scripts.values()].reduce((sum, bytes) => sum + bytes, 0);
    expect([...scripts.keys()].some((url) => url.endsWith('/theme.js'))).toBe(true);
    expect(total, JSON.stringify([...scripts], null, 1)).toBeLessThan(
      address.startsWith('/lessons/') ? LESSON_SCRIPT_BYTES : TOOL_SCRIPT_BYTES,
    );
    test.info().annotations.push({ type: 'script bytes after gzip', description: String(total) });
  });
}
