import { gzipSync } from 'node:zlib';
import { expect, type Locator, type Page } from '@playwright/test';

declare global {
  interface Window {
    policyViolations?: string[];
  }
}

/** What a page did that a good page does not do, in words, and the scripts it loaded. */
interface Watch {
  /** Console errors and warnings, uncaught errors, failed requests and requests to another host. */
  readonly complaints: readonly string[];
  /** Bytes of every script that the page loaded, after gzip, by address. */
  readonly scripts: () => Promise<ReadonlyMap<string, number>>;
  /** Breaches of the content policy so far. */
  readonly violations: () => Promise<readonly string[]>;
}

/** What the browser tests say for themselves: they open each page as if for the first time (see the Playwright config). */
const NO_SERVICE_WORKER = 'Service Worker registration blocked by Playwright';

/** Watch a page from before it is opened. `address` is that of the site. */
export async function watch(page: Page, address: string): Promise<Watch> {
  const complaints: string[] = [];
  const scripts: Promise<readonly [string, number]>[] = [];
  const host = new URL(address).origin;
  page.on('console', (message) => {
    if (message.text().startsWith(NO_SERVICE_WORKER)) return;
    if (message.type() === 'error' || message.type() === 'warning') {
      complaints.push(`console ${message.type()}: ${message.text()}`);
    }
  });
  page.on('pageerror', (error) => complaints.push(`uncaught: ${String(error)}`));
  page.on('request', (request) => {
    const url = new URL(request.url());
    const own = url.origin === host || url.protocol === 'data:' || url.protocol === 'blob:';
    if (!own) complaints.push(`request to another host: ${request.url()}`);
  });
  page.on('requestfailed', (request) => complaints.push(`request failed: ${request.url()}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`status ${response.status()}: ${response.url()}`);
    if (response.request().resourceType() === 'script') {
      const weighed = response
        .body()
        .then((body) => [response.url(), gzipSync(body, { level: 9 }).length] as const);
      // A page that has gone on to another address has no body to give: that fails only who asks for the weights.
      weighed.catch(() => undefined);
      scripts.push(weighed);
    }
  });
  await page.addInitScript(() => {
    window.policyViolations = [];
    document.addEventListener('securitypolicyviolation', (event) => {
      window.policyViolations?.push(`${event.violatedDirective}: ${event.blockedURI} ${event.sample}`);
    });
  });
  return {
    complaints,
    scripts: async () => new Map(await Promise.all(scripts)),
    violations: () => page.evaluate(() => window.policyViolations ?? ['the page was not watched']),
  };
}

/** Time between two looks at an island that is still asleep, milliseconds: about a frame. */
const BETWEEN_LOOKS = 16;

/** How long an island may take to wake before that is a fault, milliseconds: only a fault waits for so long. */
const MOST_WAKING = 60_000;

/**
 * Bring every island of a page, or of what `within` selects, that is on show into view, one after the other, and wait until each
 * has come to life. All of it in the page: asking from outside would take longer than the waking does.
 */
export async function wakeIslands(page: Page, within = 'body'): Promise<void> {
  const asleep = await page.evaluate(
    async ([part, every, most]) => {
      const islands = document.querySelector(part)?.getElementsByTagName('astro-island') ?? [];
      for (let place = 0; place < islands.length; place += 1) {
        const island = islands[place];
        if (!island) continue;
        const shown = () => [...island.children].find((child) => child.getClientRects().length > 0);
        if (!shown()) continue;
        // An island inside another may go while the outer one wakes: then there is nothing to wait for.
        const isAsleep = (): boolean => island.isConnected && island.hasAttribute('ssr');
        let frames = 0;
        await new Promise<void>((done) => {
          const late = setTimeout(done, most);
          const look = (): void => {
            if (isAsleep()) {
              // Again and again: one that woke elsewhere may have scrolled the page to itself meanwhile.
              shown()?.scrollIntoView({ block: 'center' });
              requestAnimationFrame(() => {
                frames += 1;
              });
              setTimeout(look, every);
              return;
            }
            clearTimeout(late);
            done();
          };
          look();
        });
        if (isAsleep()) return `${island.getAttribute('component-url')}, in ${frames} frames`;
      }
      return '';
    },
    [within, BETWEEN_LOOKS, MOST_WAKING] as const,
  );
  expect(asleep, `not awake after ${MOST_WAKING / 1000} s`).toBe('');
}

/**
 * Answer every question within a page or a part of it with its first choice, and where that is wrong with its second: then it
 * shows what it hides. That they are answered by keyboard is tests/widgets/predict.test.ts.
 */
export async function answerQuestions(within: Locator): Promise<void> {
  const questions = within.locator('.predict');
  await questions.evaluateAll(async (all) => {
    for (const question of all)
      for (const choice of [...question.querySelectorAll<HTMLElement>(':scope > fieldset input')].slice(
        0,
        2,
      )) {
        if (question.querySelector(':scope > .explanation:not([hidden])')) break;
        choice.click();
        question.querySelector<HTMLElement>(':scope > .press > button')?.click();
        await new Promise(requestAnimationFrame);
      }
  });
  await expect(within.locator('.predict > .explanation:not([hidden])')).toHaveCount(await questions.count());
}

/**
 * Show all that a page can show: wake its islands, answer each question, wake what the answers
 * brought, and open every fold of its main part. The menu of the header lies over the page, and has a test of its own.
 */
export async function unfold(page: Page): Promise<void> {
  await wakeIslands(page);
  await answerQuestions(page.locator('main'));
  await wakeIslands(page);
  // A fold may hold others, and fetch what it shows.
  const closed = page.locator('main details:not([open])');
  do {
    await page.evaluate(() => {
      for (const fold of document.querySelectorAll<HTMLDetailsElement>('main details')) fold.open = true;
    });
    await expect(page.getByText('Getting it ready.')).toHaveCount(0);
  } while ((await closed.count()) > 0);
}

/** On a bench that is awake: take the first wiring that works for its two jacks. */
export async function takeFirstWiring(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Which lead?' }).click();
  await page
    .getByRole('button', { name: /^Use this wiring/ })
    .first()
    .click();
}
