/**
 * Makes the picture in the README: the built bench page with the first lead that works laid on it, as Chromium draws it on
 * light paper.
 * Run `npm run build` first.
 */
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser, NO_BROWSER } from './browser.ts';
import { serve } from './serve.ts';
import { SITE_FOLDER } from './site.ts';
import { wakeIslands } from './watch.ts';

/** Width of the picture in pixels of the page: a laptop's window. */
const WIDTH = 1200;

const path = fileURLToPath(new URL('../../public/bench-picture.png', import.meta.url));

const executablePath = findBrowser();
if (executablePath === undefined) throw new Error(NO_BROWSER);
const site = await serve({ folder: SITE_FOLDER });
const browser = await chromium.launch({ executablePath, args: [...BROWSER_ARGUMENTS] });
try {
  const page = await browser.newPage({ viewport: { width: WIDTH, height: 900 }, colorScheme: 'light' });
  await page.goto(new URL('/bench/', site.address).href);
  await wakeIslands(page);
  await page.evaluate(() => document.fonts.ready);
  const ask = page.getByRole('button', { name: 'Which lead?' });
  await ask.click();
  await page
    .getByRole('button', { name: /^Use this wiring/ })
    .first()
    .click();
  await ask.click();
  await page.mouse.move(0, 0);
  await page.getByRole('main').screenshot({ path, animations: 'disabled' });
  console.log(`Picture of the bench: ${path}`);
} finally {
  await browser.close();
  await site.close();
}
