/**
 * `npm run firefox`: the bench, a lesson and the board by keyboard in a system's Firefox, on the built site. It stands apart from
 * `npm test`, since not every machine has a Firefox; without one it says what to install and fails.
 */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import puppeteer, { type Browser } from 'puppeteer-core';
import { findFirefox, NO_FIREFOX } from '../support/browser.ts';
import { serve } from '../support/serve.ts';
import { SITE_BASE, SITE_FOLDER } from '../support/site.ts';
import { CHECKS, type Check } from './checks.ts';
import { Keyboard } from './keyboard.ts';

/** What the browser may take to start on a busy machine, milliseconds. */
const MOST_START = 120_000;

/** What went wrong in a check, or nothing. */
async function complaintsOf(browser: Browser, site: string, check: Check): Promise<readonly string[]> {
  const page = await browser.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(`page error: ${String(error)}`));
  page.on('console', (message) => {
    if (['error', 'warn'].includes(message.type())) complaints.push(`console: ${message.text()}`);
  });
  try {
    await page.setViewport({ width: 1280, height: 900 });
    await page.goto(`${site}${check.address}`);
    const keyboard = new Keyboard(page);
    await keyboard.awake();
    await check.work(keyboard);
  } catch (error) {
    complaints.push(error instanceof Error ? error.message : String(error));
  } finally {
    await page.close();
  }
  return complaints;
}

const executablePath = findFirefox();
if (executablePath === undefined || !existsSync(`${SITE_FOLDER}/index.html`)) {
  console.error(
    executablePath === undefined ? NO_FIREFOX : `site '${SITE_FOLDER}': run \`npm run build\` first`,
  );
  process.exit(2);
}
const root = fileURLToPath(new URL('../..', import.meta.url));
process.chdir(root);
const site = await serve({ folder: SITE_FOLDER, base: SITE_BASE, firstPort: 0 });
const browser = await puppeteer.launch({ browser: 'firefox', executablePath, timeout: MOST_START });
let failed = 0;
try {
  console.log(await browser.version());
  for (const check of CHECKS) {
    const complaints = await complaintsOf(browser, site.address, check);
    console.log(`${complaints.length === 0 ? 'ok    ' : 'FAILED'}  ${check.title}`);
    for (const complaint of complaints) console.log(`        ${complaint}`);
    failed += complaints.length === 0 ? 0 : 1;
  }
} finally {
  await browser.close();
  await site.close();
}
console.log(`\n${CHECKS.length - failed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
