/** Browsers without a screen stop painting now and then; what waits for a frame then waits for ever. This sets them going again. */
import type { Browser, BrowserContext, Page } from '@playwright/test';

/** How often the pages of a test are asked whether they paint, milliseconds: most tests are over by then. */
const BETWEEN_LOOKS = 3000;

/** Turns that a page takes without a frame before it counts as one that does not paint, and the length of one, milliseconds. */
const TURNS = 8;
const TURN = 250;

/** How often a browser may be set going again: Chromium ends itself at the sixth loss of the process that paints. */
const MOST_RESTARTS = 4;

const restarts = new WeakMap<Browser, number>();

/** The number of the process that paints for every page of a browser. Throws when there is none. */
export async function painter(browser: Browser): Promise<number> {
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const found = processInfo.find(({ type }) => type === 'GPU');
  if (found === undefined) throw new Error('browser: needs a process that paints, got none');
  return found.id;
}

/**
 * Whether a page comes to a frame. One that is busy gets its turns late, and its frame with them; one that is hidden, on its way
 * to another address or behind a question of the browser cannot be asked, and counts as painting.
 */
async function paints(page: Page): Promise<boolean> {
  const asking = page.evaluate(
    ([turns, turn]) =>
      new Promise<boolean>((answer) => {
        if (document.visibilityState !== 'visible') answer(true);
        requestAnimationFrame(() => answer(true));
        const take = (left: number): void =>
          void (left === 0 ? answer(false) : setTimeout(take, turn, left - 1));
        take(turns);
      }),
    [TURNS, TURN] as const,
  );
  return asking.catch(() => true);
}

/**
 * Watch that the pages of a context, but for one `besides`, are painted until what is handed back is called: where one is not, the
 * process that paints is ended, and the browser starts it anew, which no page notices. Nothing that a test did or saw is done again.
 */
export function keepPainting(context: BrowserContext, besides?: Page): () => void {
  const asked = new Set<Page>();
  async function look(page: Page): Promise<void> {
    if (asked.has(page)) return;
    const browser = context.browser();
    if (browser === null) return;
    const before = restarts.get(browser) ?? 0;
    asked.add(page);
    const does = await paints(page);
    asked.delete(page);
    // Two pages that stand still have one process that paints: what one look set going, another leaves alone.
    const isSetGoing = (restarts.get(browser) ?? 0) !== before;
    if (does || stopped || isSetGoing || before >= MOST_RESTARTS) return;
    restarts.set(browser, before + 1);
    console.warn(`browser: no frame in ${TURNS} turns on ${page.url()}; what paints is started anew`);
    process.kill(await painter(browser), 'SIGKILL');
  }
  let stopped = false;
  const timer = setInterval(() => {
    // A browser that ends meanwhile needs nothing any more, and its test says so itself.
    for (const page of context.pages()) if (page !== besides) look(page).catch(() => undefined);
  }, BETWEEN_LOOKS);
  return () => {
    stopped = true;
    clearInterval(timer);
  };
}
