/** From a click on a contact to the painted verdict, in a real browser on a processor slowed four times. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { BROWSER_ARGUMENTS, NO_BROWSER, findBrowser } from '../support/browser.ts';
import { serve } from '../support/serve.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';

/** Frames are not held for a screen that is not there: what is measured is work, not waiting for the next refresh. */
const UNHELD = ['--disable-frame-rate-limit', '--disable-gpu-vsync'];
const SLOWED = 4;
const CLICKS = 120;

/** The built site; built now when nobody has. */
function builtSite(): string {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const folder = `${root}dist`;
  if (!existsSync(`${folder}/bench/index.html`)) {
    const { status } = spawnSync('astro', ['build'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'] });
    if (status !== 0) throw new Error(`bench: the site could not be built, status ${status}`);
  }
  return folder;
}

/** Opens the bench of the built site. */
export async function figures(): Promise<readonly Figure[]> {
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error(NO_BROWSER);
  const site = await serve({ folder: builtSite(), firstPort: 0 });
  const browser = await chromium.launch({ executablePath, args: [...BROWSER_ARGUMENTS, ...UNHELD] });
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 1000 } });
    await page.goto(`${site.address}bench/`);
    await page.waitForSelector('astro-island:not([ssr])');
    await page.evaluate(watchClicks);
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
    // Places are looked up before: a look-up by role runs in the page and would be measured with the click.
    const places: [number, number][][] = [];
    for (const pair of PAIRS) {
      const ends: [number, number][] = [];
      for (const name of pair) {
        const box = await page.getByRole('button', { name }).boundingBox();
        if (box === null) throw new Error(`bench: contact '${name}' is not on the page`);
        ends.push([box.x + box.width / 2, box.y + box.height / 2]);
      }
      places.push(ends);
    }
    for (let click = 0; click < CLICKS; click++) {
      for (const [x, y] of places[click % places.length] ?? []) {
        await page.mouse.click(x, y);
        await page.evaluate(settled);
      }
    }
    const times = await page.evaluate(() => (globalThis as unknown as { paints: number[] }).paints);
    // Every second click changes the lead; the first few also compile code.
    const changes = times.filter((_, at) => at % 2 === 1).slice(10);
    return [
      { name: 'click to painted verdict, 4x slowed: median', value: quantile(changes, 0.5), unit: 'ms' },
      {
        name: 'click to painted verdict, 4x slowed: 95th percentile',
        value: quantile(changes, 0.95),
        unit: 'ms',
        atMost: 16.7,
      },
    ];
  } finally {
    await browser.close();
    await site.close();
  }
}

const PAIRS = [
  ['plug at the output, pin 4', 'plug at the input, ring'],
  ['plug at the output, pin 5', 'plug at the input, tip'],
  ['plug at the output, pin 2', 'plug at the input, sleeve'],
] as const;

/** Runs in the page: resolves when the page has painted twice, so that no click waits behind the work of another. */
function settled(): Promise<number> {
  return new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
}

/** Runs in the page: notes for each pointer press the milliseconds from its own time to the paint that follows. */
function watchClicks(): void {
  const paints: number[] = [];
  (globalThis as unknown as { paints: number[] }).paints = paints;
  addEventListener(
    'pointerup',
    (event) => {
      const pressed = event.timeStamp;
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => paints.push(performance.now() - pressed);
        channel.port2.postMessage(undefined);
      });
    },
    { capture: true },
  );
}
