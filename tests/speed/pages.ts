/**
 * Every page as a phone opens it: Lighthouse 12 with its mobile settings (a slow network and a processor slowed four times, both
 * simulated), what it fetches, and the longest piece of work while the widgets wake on a processor that is really slowed four times.
 */
import { chromium, type Browser, type CDPSession } from '@playwright/test';
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
/** Most that a page fetches before anything is pressed, kilobytes with headers, compressed as our server does. */
const MOST_KILOBYTES = { lesson: 200, tool: 260 } as const;
/** Most files of scripts that it fetches: each waits for its turn (our choice: half of what the board once fetched). */
const MOST_SCRIPTS = 35;
/** Most that lines move while it opens, in the measure of the layout shift (our choice: half of what web.dev calls good). */
const MOST_MOVED = 0.05;
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

/** What one run gave, or three of them where the first falls short. */
async function runsOf<T>(run: () => Promise<T>, fallsShort: (one: T) => boolean): Promise<readonly T[]> {
  const first = await run();
  const runs = [first];
  if (fallsShort(first)) for (let more = 0; more < AGAIN; more++) runs.push(await run());
  return runs;
}

/** The middle of the runs of Lighthouse. */
async function middleOf(address: string): Promise<Scores> {
  const runs = await runsOf(
    () => scoresOf(address),
    (one) => CATEGORIES.some((name) => one[name] < LEAST[name]),
  );
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

/** What a page costs from the first byte to the last awake widget. */
interface Opening {
  /** Whether anything wakes on it. */
  readonly widgets: boolean;
  /** The longest task, milliseconds, as the browser counts them. */
  readonly waking: number;
  readonly kilobytes: number;
  readonly scripts: number;
  /** The sum of its layout shifts. */
  readonly moved: number;
}

/** Counts all that a page fetches from now on. */
async function countFetched(session: CDPSession): Promise<{ bytes: number; scripts: number }> {
  const fetched = { bytes: 0, scripts: 0 };
  session.on('Network.responseReceived', ({ type }) => {
    if (type === 'Script') fetched.scripts++;
  });
  session.on('Network.loadingFinished', ({ encodedDataLength }) => {
    fetched.bytes += encodedDataLength;
  });
  await session.send('Network.enable');
  return fetched;
}

/** Open a page once, on a slowed processor and with nothing kept from before. */
async function openingOf(browser: Browser, address: string): Promise<Opening> {
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    serviceWorkers: 'block',
  });
  try {
    const page = await context.newPage();
    const session = await context.newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
    const fetched = await countFetched(session);
    await page.addInitScript(() => {
      const tasks: number[] = [];
      const moves: number[] = [];
      Object.assign(globalThis, { tasks, moves });
      new PerformanceObserver((list) => {
        for (const { duration } of list.getEntries()) tasks.push(duration);
      }).observe({ type: 'longtask', buffered: true });
      new PerformanceObserver((list) => {
        for (const entry of list.getEntries()) moves.push((entry as unknown as { value: number }).value);
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(address);
    await page.waitForFunction(() => document.querySelector('astro-island[ssr][client="load"]') === null);
    await page.waitForLoadState('networkidle');
    const seen = await page.evaluate(() => {
      const { tasks, moves } = globalThis as unknown as Record<'tasks' | 'moves', readonly number[]>;
      return {
        widgets: document.querySelector('astro-island') !== null,
        waking: Math.max(0, ...tasks),
        moved: moves.reduce((sum, one) => sum + one, 0),
      };
    });
    return { ...seen, kilobytes: fetched.bytes / 1e3, scripts: fetched.scripts };
  } finally {
    await context.close();
  }
}

/** One opening, or the one in the middle of three where something took long to wake: other work on the machine lengthens a task. */
async function middleOpening(browser: Browser, address: string): Promise<Opening> {
  const openings = await runsOf(
    () => openingOf(browser, address),
    ({ widgets, waking }) => widgets && waking > MOST_WAKING,
  );
  const wakings = openings.map(({ waking }) => waking);
  return { ...(openings[0] as Opening), waking: quantile(wakings, 0.5) };
}

/** The figures of an opening, with their goals; the first layout of a page without widgets is no waking. */
function openingFigures(address: string, opening: Opening): readonly Figure[] {
  const { widgets, waking, kilobytes, scripts, moved } = opening;
  const kind = address.startsWith('/lessons/') ? 'lesson' : 'tool';
  return [
    widgets
      ? {
          name: `longest task while ${address} wakes, 4x slowed`,
          value: waking,
          unit: 'ms',
          atMost: MOST_WAKING,
        }
      : { name: `longest task while ${address} opens, 4x slowed`, value: waking, unit: 'ms' },
    { name: `weight of ${address}`, value: kilobytes, unit: 'kB', atMost: MOST_KILOBYTES[kind] },
    { name: `files of scripts of ${address}`, value: scripts, unit: 'files', atMost: MOST_SCRIPTS },
    { name: `how far lines of ${address} move`, value: moved, unit: 'CLS', atMost: MOST_MOVED },
  ];
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
      found.push(...openingFigures(address, await middleOpening(browser, at)));
    }
    return found;
  } finally {
    await browser.close();
    await site.close();
  }
}
