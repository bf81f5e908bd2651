/** Chance actions on every page of the built site that holds a widget: 2 000 a page, or 100 with `--short`.
 * Addresses among the arguments soak these pages alone, and a number is that many actions. */
import { chromium } from '@playwright/test';
import { BROWSER_ARGUMENTS, NO_BROWSER, findBrowser } from '../support/browser.ts';
import { serve } from '../support/serve.ts';
import { SITE_FOLDER } from '../support/site.ts';
import { pagesWithWidgets, soakPage } from '../support/soak-page.ts';

const given = process.argv
  .slice(2)
  .map(Number)
  .find((one) => one > 0);
const ACTIONS = given ?? (process.argv.includes('--short') ? 100 : 2_000);
const SEED = 1;

const executablePath = findBrowser();
if (executablePath === undefined) throw new Error(NO_BROWSER);
const wanted = process.argv.slice(2).filter((one) => one.startsWith('/'));
const site = await serve({ folder: SITE_FOLDER });
const browser = await chromium.launch({ executablePath, args: [...BROWSER_ARGUMENTS] });
let broke = 0;
for (const address of wanted.length > 0 ? wanted : pagesWithWidgets()) {
  const start = performance.now();
  const context = await browser.newContext({ baseURL: site.address, serviceWorkers: 'block' });
  const complaints = await soakPage(await context.newPage(), address, SEED, ACTIONS);
  await context.close();
  if (complaints.length > 0) broke += 1;
  console.log(
    `${address}: ${ACTIONS} actions in ${((performance.now() - start) / 1000).toFixed(0)} s, ${complaints.length === 0 ? 'held' : `BROKE\n${complaints.join('\n')}`}`,
  );
}
await browser.close();
await site.close();
process.exitCode = broke === 0 ? 0 : 1;
