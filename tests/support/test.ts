/** The `test` of every browser test: each starts on an empty browser, but what was fetched and compiled once is not again. */
import { test as base, type BrowserContext, type Page } from '@playwright/test';
import { keepPainting } from './painting.ts';

export { expect } from '@playwright/test';

// Tests run as they are written, so that what stands where needs no map: to look for one at each step took a fiftieth of the time.
Reflect.deleteProperty(Error, 'prepareStackTrace');

/** A context that tests of one kind use after each other, and the page that keeps its process, with what that has compiled. */
interface Kept {
  readonly key: string;
  readonly context: BrowserContext;
  readonly keeper: Page;
}

/** What a worker keeps between its tests. */
interface Shelf {
  kept: Kept | undefined;
}

/** Stands on the site, holds nothing and runs no script. */
const KEEPER_PAGE = './robots.txt';

/** What a test may leave in the store of the site. */
const STORES = 'cookies,local_storage,indexeddb,cache_storage,service_workers';

/** Make the kept context as a new one is. Throws when it cannot be emptied: the next test would start on what this one left. */
async function empty({ context, keeper }: Kept): Promise<void> {
  for (const page of context.pages()) if (page !== keeper) await page.close();
  await context.unrouteAll({ behavior: 'ignoreErrors' });
  await context.setOffline(false);
  await context.clearPermissions();
  await context.clearCookies();
  const session = await context.newCDPSession(keeper);
  const { origin } = new URL(keeper.url());
  await session.send('Storage.clearDataForOrigin', { origin, storageTypes: STORES });
  await session.detach();
  // Through a page of the same process, so that a page opened next cannot read what its process still remembers.
  const left = await keeper.evaluate(() => {
    localStorage.clear();
    return localStorage.length;
  });
  if (left > 0) throw new Error(`browser store: must be empty after a test, got ${left} entries`);
}

/**
 * A test whose `page` and `context` are empty at its start: no other page, store, cookie, permission or route. The context is
 * the one of the test before where both ask for the same screen, hands and permissions, so that the scripts of the site are
 * not fetched and compiled anew. A test with a service worker, which keeps the site, has a context to itself.
 */
export const test = base.extend<object, { shelf: Shelf }>({
  shelf: [
    async ({ browser }, use) => {
      const shelf: Shelf = { kept: undefined };
      await use(shelf);
      if (browser.isConnected()) await shelf.kept?.context.close();
    },
    { scope: 'worker' },
  ],
  context: async (
    { browser, shelf, baseURL, viewport, hasTouch, isMobile, colorScheme, permissions, serviceWorkers },
    use,
  ) => {
    if (serviceWorkers === 'allow') {
      const own = await browser.newContext();
      const stop = keepPainting(own);
      await use(own);
      stop();
      await own.close();
      return;
    }
    const key = JSON.stringify([baseURL, viewport, hasTouch, isMobile, colorScheme, permissions]);
    if (shelf.kept?.key !== key) {
      await shelf.kept?.context.close();
      shelf.kept = undefined;
      // A new context takes up what the configuration and the test ask for.
      const context = await browser.newContext();
      const keeper = await context.newPage();
      await keeper.goto(KEEPER_PAGE);
      shelf.kept = { key, context, keeper };
    }
    const stop = keepPainting(shelf.kept.context, shelf.kept.keeper);
    await use(shelf.kept.context);
    stop();
    await empty(shelf.kept);
  },
  page: async ({ context }, use) => {
    const page = await context.newPage();
    // A page behind another may be painted no more, and nothing on it comes to rest.
    await page.bringToFront();
    await use(page);
  },
});
