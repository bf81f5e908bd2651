/**
 * Makes the pictures that are kept beside the code, as Chromium draws them on light paper: the built bench page with the first
 * lead that works laid on it (README), the icons of the app from its mark, and the card that is shown beside a shared link.
 * Run `npm run build` first.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from '@playwright/test';
import { BROWSER_ARGUMENTS, findBrowser, NO_BROWSER } from './browser.ts';
import { serve, type Site } from './serve.ts';
import { SITE_FOLDER } from './site.ts';
import { wakeIslands } from './watch.ts';

/** Width of the picture of the bench in pixels of the page: a laptop's window. */
const BENCH_WIDTH = 1200;

/** Size of the card beside a shared link, pixels: what most readers of such cards take (common practice, no source). */
const CARD = { width: 1200, height: 630 };

/** Share of an icon's side that its mark takes (our choice). */
const ICON_SHARE = 0.88;

/** Share of a maskable icon's side that its mark may take: a host may cut off all but the inner four fifths (W3C app manifest). */
const MASK_SAFE = 0.6;

const fileOf = (name: string): string => fileURLToPath(new URL(`../../public/${name}`, import.meta.url));

async function drawBench(browser: Browser, site: Site): Promise<void> {
  const page = await browser.newPage({ viewport: { width: BENCH_WIDTH, height: 900 }, colorScheme: 'light' });
  await page.goto(new URL('bench/', site.address).href);
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
  await page.getByRole('main').screenshot({ path: fileOf('bench-picture.png'), animations: 'disabled' });
}

/** The mark on a square of paper; `share` of its side. */
async function drawIcon(page: Page, name: string, side: number, share: number): Promise<void> {
  const mark = Buffer.from(readFileSync(fileOf('favicon.svg'))).toString('base64');
  await page.setViewportSize({ width: side, height: side });
  await page.setContent(
    `<body style="margin:0;height:100vh;display:grid;place-items:center;background:#faf7f0">
      <img style="width:${share * 100}vw" src="data:image/svg+xml;base64,${mark}">`,
  );
  await page.screenshot({ path: fileOf(name), omitBackground: false });
}

/** The card: the mark, the name, and what the workbook is, in its own fonts. */
async function drawCard(page: Page, site: Site): Promise<void> {
  await page.setViewportSize(CARD);
  await page.goto(site.address);
  await page.evaluate((mark) => {
    document.body.innerHTML = `<div id="card"><img src="${mark}"><h1>Five Milliamps</h1>
      <p>Will these two jacks talk? Wire the lead, watch the current, and see why.</p></div>`;
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`#card { box-sizing: border-box; height: 100vh; padding: 80px; display: grid; align-content: center;
      grid-template-columns: 260px 1fr; column-gap: 60px; background: var(--paper); color: var(--ink) }
      #card img { width: 260px; grid-row: span 2 } #card h1 { font-size: 84px; margin: 0; align-self: end }
      #card p { font: 500 40px/1.35 var(--font-tool); margin: 20px 0 0 }`);
    document.adoptedStyleSheets.push(sheet);
  }, new URL('favicon.svg', site.address).href);
  await page.evaluate(() => document.fonts.ready);
  await page.locator('#card img').evaluate((image: HTMLImageElement) => image.decode());
  await page.screenshot({ path: fileOf('social-card.png') });
}

const executablePath = findBrowser();
if (executablePath === undefined) throw new Error(NO_BROWSER);
const site = await serve({ folder: SITE_FOLDER });
const browser = await chromium.launch({ executablePath, args: [...BROWSER_ARGUMENTS] });
try {
  await drawBench(browser, site);
  const page = await browser.newPage({ colorScheme: 'light' });
  await drawIcon(page, 'icon-192.png', 192, ICON_SHARE);
  await drawIcon(page, 'icon-512.png', 512, ICON_SHARE);
  await drawIcon(page, 'icon-maskable-512.png', 512, MASK_SAFE);
  await drawCard(page, site);
  console.log('Pictures of the bench, of the app and for shared links: public/*.png');
} finally {
  await browser.close();
  await site.close();
}
