import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { contrastFaults, stopTransitions } from './contrast.ts';

/** WCAG 2.2, levels A and AA. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** Judged by its own script, a hundred times as fast: tests/support/contrast.ts. */
const CONTRAST = 'color-contrast';

/** What a page, or the parts of it that `within` selects, breaks of WCAG 2.2, contrast apart. */
export async function accessibilityFaults(
  page: Page,
  ...within: readonly string[]
): Promise<readonly string[]> {
  const checker = within.reduce(
    (builder, selector) => builder.include(selector),
    new AxeBuilder({ page })
      .options({ resultTypes: ['violations'] })
      .withTags(TAGS)
      .disableRules(CONTRAST),
  );
  // Without a second page for the results: there are no frames here to gather them from.
  const { violations } = await checker.setLegacyMode(true).analyze();
  return violations.map(
    ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join(' ')}`,
  );
}

/** What cannot be read on a page in light or in dark, scheme by scheme. Leaves the page in the scheme that it had first. */
export async function faintFaults(page: Page): Promise<readonly string[]> {
  const dark = await page.evaluate(() => matchMedia('(prefers-color-scheme: dark)').matches);
  const schemes = dark ? (['light', 'dark'] as const) : (['dark', 'light'] as const);
  await stopTransitions(page);
  const found: string[] = [];
  for (const colorScheme of schemes) {
    await page.emulateMedia({ colorScheme });
    found.push(...(await contrastFaults(page)).map((fault) => `${colorScheme}: ${fault}`));
  }
  return found;
}
