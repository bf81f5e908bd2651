import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';
import type axe from 'axe-core';
import { contrastFaults, stopTransitions } from './contrast.ts';

/** The checker, in its short form: it is handed over to each page that is judged. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2, levels A and AA; contrast is judged by a script of its own, a hundred times as fast: tests/support/contrast.ts. */
const RULES: axe.RunOptions = {
  runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
  rules: { 'color-contrast': { enabled: false } },
  resultTypes: ['violations'],
  // No rule of these reads the style sheets.
  preload: { assets: ['media'] },
};

declare global {
  interface Window {
    axe?: typeof axe;
  }
}

/** What a page, or the parts of it that `within` selects, breaks of WCAG 2.2, contrast apart. */
export async function accessibilityFaults(
  page: Page,
  ...within: readonly string[]
): Promise<readonly string[]> {
  const isThere = await page.evaluate(() => window.axe !== undefined);
  if (!isThere) await page.evaluate(AXE);
  const parts = { include: within.length === 0 ? ['html'] : [...within] };
  return page.evaluate(
    async ([where, rules]) => {
      if (!window.axe) throw new Error('axe: needs to be on the page');
      const { violations } = await window.axe.run(where, rules);
      return violations.map(
        ({ id, help, nodes }) => `${id}: ${help}: ${nodes.map(({ html }) => html).join(' ')}`,
      );
    },
    [parts, RULES] as const,
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
