/**
 * Every page as a phone opens it: Lighthouse 12 with its mobile settings (a slow network and a processor slowed four times, both
 * simulated), and the longest piece of work while the widgets wake on a processor that is really slowed four times.
 */
import { chromium, type Browser } from '@playwright/test';
import lighthouse from 'lighthouse';
import { BROWSER_ARGUMENTS, NO_BROWSER, findBrowser } from '../support/browser.ts';
import { serve } from '../support/serve.ts';
import { readerPages } from '../support/site.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';

const CATEGORIES = ['performance', 'accessibility', 'best-practices', 'seo'] as const;
/** Goals, of 100. */
const LEAST = { performance: 95, accessibility: 100, 'best-practices': 100, seo: 100 } as const;
const PORT = 9222;
const SLOWED = 4;
/** Longest piece of work while a widget wakes, milliseconds: longer ones make a reader wait. */
const MOST_WAKING = 100;
/** A page that falls short is opened twice more; the middle counts. */
const AGAIN = 2;

type Scores = Readonly<Record<(typeof CATEGORIES)[number], number>>;

/** Scores of a page, 0 to 100. Lighthouse drives the browser that is open on `PORT`. */
async function scoresOf(address: string): Promise<Scores> {
  const result = await lighthouse(address, {
    port: PORT,
    output: 'json',
    logLevel: 'error',
    onlyCategories: [...CATEGORIES],
  });
  if (result === undefined) throw new Error(`speed: Lighthouse gave nothing for ${address}`);
  const score = (name: (typeof CATEGORIES)[number]): number =>
    Math.round((result.lhr.categories[name]?.score ?? 0) * 100);
  return {
    performance: score('performance'),
    accessibility: score('accessibility'),
    'best-practices': score('best-practices'),
    seo: score('seo'),
  };
}

/** The middle of one run, or of three where the first falls short. */
async function middleOf(address: string): Promise<Scores> {
  const runs = [await scoresOf(address)];
  const [first] = runs;
  if (first && CATEGORIES.some((name) => first[name] < LEAST[name]))
    for (let run = 0; run < AGAIN; run++) runs.push(await scoresOf(address));
  const middle = (name: (typeof CATEGORIES)[number]): number =>
    quantile(
      runs.map((one) => one[name]),
      0.5,
    );
  return {
    performance: middle('performance'),
    accessibility: middle('accessibility'),
    'best-practices': middle('best-practices'),
    seo: middle('seo'),
  };
}

/** The longest task from the first script to the last awake widget, milliseconds, as the browser counts them. */
async function wakingOf(browser: Browser, address: string): Promise<number> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
  });
  try {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
    await page.addInitScript(() => {
      const tasks: number[] = [];
      Object.assign(globalThis, { tasks });
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) tasks.push(duration);
      }).observe({ type: 'longtask', buffered: true });
    });
    await page.goto(address);
    await page.waitForFunction(() => document.querySelector('astro-island[ssr][client="load"]') === null);
    await page.waitForLoadState('networkidle');
    return await page.evaluate(() =>
      Math.max(0, ...(globalThis as unknown as { tasks: readonly number[] }).tasks),
    );
  } finally {
    await context.close();
  }
}

/** Opens each page of the built site: half an hour. SPEED_PAGES names some of them instead ('/ /bench/'). */
export async function figures(): Promise<readonly Figure[]> {
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error(NO_BROWSER);
  const site = await serve({ folder: 'dist', firstPort: 0 });
  const browser = await chromium.launch({
    executablePath,
    args: [...BROWSER_ARGUMENTS, `--remote-debugging-port=${PORT}`],
  });
  const found: Figure[] = [];
  const chosen = (process.env['SPEED_PAGES'] ?? '').split(' ').filter((one) => one !== '');
  try {
    for (const { address } of readerPages()) {
      if (address === '/404.html' || (chosen.length > 0 && !chosen.includes(address))) continue;
      const at = site.address + address.slice(1);
      const scores = await middleOf(at);
      for (const name of CATEGORIES)
        found.push({
          name: `Lighthouse ${name}, ${address}`,
          value: scores[name],
          unit: 'of 100',
          atLeast: LEAST[name],
        });
      found.push({
        name: `longest task while ${address} wakes, 4x slowed`,
        value: await wakingOf(browser, at),
        unit: 'ms',
        atMost: MOST_WAKING,
      });
    }
    return found;
  } finally {
    await browser.close();
    await site.close();
  }
}
