/** How long a reader waits after each act on each tool, on a processor slowed four times, as Event Timing counts it. */
import { chromium, type Browser } from '@playwright/test';
import { BROWSER_ARGUMENTS, NO_BROWSER, findBrowser } from '../support/browser.ts';
import { serve } from '../support/serve.ts';
import { wakeIslands } from '../support/watch.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';
import { Hand, type Act } from './hand.ts';
import { SCENES, type Scene } from './scenes.ts';

const SLOWED = 4;
/** Rounds of each scene that count; those before them also compile code and fetch what is fetched once. */
const ROUNDS = 10;
const WARM_UP = 1;
/** Goals of all acts together, milliseconds. */
const MOST_USUAL = 50;
const MOST_RARE = 100;
const USUAL = 0.75;
const RARE = 0.95;

/** What a scene gave: every act by name, and what the reference work took before each round, milliseconds. */
interface Played {
  readonly acts: ReadonlyMap<string, readonly Act[]>;
  readonly reference: readonly number[];
}

async function play(browser: Browser, site: string, scene: Scene): Promise<Played> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 1000 },
    serviceWorkers: 'block',
  });
  try {
    const page = await context.newPage();
    const hand = await Hand.on(page, SLOWED);
    await page.goto(`${site}${scene.address.slice(1)}`);
    await wakeIslands(page);
    await scene.prepare?.(page);
    const reference: number[] = [];
    for (let round = 0; round < WARM_UP + ROUNDS; round += 1) {
      reference.push(await hand.reference());
      await scene.round(hand, page, round);
    }
    return { acts: await hand.acts(), reference: reference.slice(WARM_UP) };
  } finally {
    await context.close();
  }
}

/** The figures of one act: its waits, each beside its ratio to the reference work of the run, and the time of the processor, which other work on the machine does not lengthen. */
function figuresOf(name: string, acts: readonly Act[], reference: readonly number[]): readonly Figure[] {
  const waits = acts.map(({ wait }) => wait);
  const wait = (words: string, share: number, atMost: number): Figure => {
    const value = quantile(waits, share);
    const ratio = value / quantile(reference, 0.5);
    return {
      name: `${name}: ${words}`,
      value,
      unit: 'ms',
      atMost,
      beside: `${ratio.toFixed(1)} x reference`,
    };
  };
  return [
    wait('75th percentile', USUAL, MOST_USUAL),
    wait('95th percentile', RARE, MOST_RARE),
    {
      name: `${name}: processor, median`,
      value: quantile(
        acts.map(({ processor }) => processor),
        0.5,
      ),
      unit: 'ms',
    },
  ];
}

/** Acts on each tool of the built site: five minutes. SPEED_PAGES names some of them instead ('/ /bench/'). */
export async function figures(): Promise<readonly Figure[]> {
  const executablePath = findBrowser();
  if (executablePath === undefined) throw new Error(NO_BROWSER);
  const site = await serve({ folder: 'dist', firstPort: 0 });
  const browser = await chromium.launch({ executablePath, args: [...BROWSER_ARGUMENTS] });
  const chosen = (process.env['SPEED_PAGES'] ?? '').split(' ').filter((one) => one !== '');
  const found: Figure[] = [];
  const all: Act[] = [];
  const references: number[] = [];
  try {
    for (const scene of SCENES) {
      const page = scene.address.replace(/#.*/, '');
      if (chosen.length > 0 && !chosen.includes(page)) continue;
      const { acts: named, reference } = await play(browser, site.address, scene);
      references.push(...reference);
      for (const [name, acts] of named) {
        const counted = acts.slice(WARM_UP);
        all.push(...counted);
        found.push(...figuresOf(`${page} ${name}`, counted, reference));
      }
    }
    const middle = { name: 'reference work, median', value: quantile(references, 0.5), unit: 'ms' };
    return [...found, ...figuresOf('all acts', all, references), middle];
  } finally {
    await browser.close();
    await site.close();
  }
}
