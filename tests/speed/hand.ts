/** A hand on a page: it acts through the browser's own input, and Event Timing tells how long each act waited for its paint. */
import type { CDPSession, Locator, Page } from '@playwright/test';

/** Event Timing names no interaction shorter than this, milliseconds: one that it leaves out counts as half of it. */
const LEAST_NAMED = 16;

/** Between two keys of a quick typist, milliseconds. */
const KEY_GAP = 120;

/** Lines of the reference work: some milliseconds of a slowed processor, as an act takes (our choice). */
const REFERENCE_LINES = 400;

/** What one act took: the wait of its slowest interaction, and the time of the page's thread until the page is idle, milliseconds. */
export interface Act {
  readonly wait: number;
  readonly processor: number;
}

interface Entry {
  readonly start: number;
  readonly duration: number;
}

declare global {
  interface Window {
    interactions?: Entry[];
  }
}

/** Runs in the page from its start: notes every interaction; a file that is chosen is none, so its change is timed by hand. */
function watchInteractions(least: number): void {
  const found: Entry[] = [];
  window.interactions = found;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as PerformanceEventTiming[])
      if (entry.interactionId > 0) found.push({ start: entry.startTime, duration: entry.duration });
  }).observe({ type: 'event', durationThreshold: least, buffered: true } as PerformanceObserverInit);
  addEventListener(
    'change',
    ({ target, timeStamp }) => {
      if (!(target instanceof HTMLInputElement) || target.type !== 'file') return;
      requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () =>
          found.push({ start: timeStamp, duration: performance.now() - timeStamp });
        channel.port2.postMessage(undefined);
      });
    },
    { capture: true },
  );
}

/** Runs in the page: makes lines, lays them out and takes them away again; always the same work. Gives the milliseconds that it took. */
function referenceWork(lines: number): number {
  const start = performance.now();
  const list = document.createElement('ul');
  for (let line = 0; line < lines; line += 1) {
    const one = document.createElement('li');
    one.textContent = `line ${line}`;
    list.append(one);
  }
  document.body.append(list);
  void list.offsetHeight;
  list.remove();
  return performance.now() - start;
}

/** Runs in the page: resolves when two frames are painted and nothing waits. */
function idle(): Promise<void> {
  return new Promise((done) =>
    requestAnimationFrame(() =>
      requestAnimationFrame(() => {
        requestIdleCallback(() => done(), { timeout: 5000 });
      }),
    ),
  );
}

/** The hand of a measurement. Looking a place up is not measured; pressing, typing and choosing are. */
export class Hand {
  readonly page: Page;
  readonly #session: CDPSession;
  readonly #begun: { readonly name: string; readonly at: number; processor: number }[] = [];

  private constructor(page: Page, session: CDPSession) {
    this.page = page;
    this.#session = session;
  }

  /** A hand for a page that is not open yet, on a processor slowed by `rate`. */
  static async on(page: Page, rate: number): Promise<Hand> {
    await page.addInitScript(watchInteractions, LEAST_NAMED);
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate });
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    return new Hand(page, session);
  }

  /** Press what stands there with the mouse. */
  async press(target: Locator): Promise<void> {
    await target.scrollIntoViewIfNeeded();
    const box = await target.boundingBox();
    if (box === null) throw new Error(`hand: ${String(target)} is not on the page`);
    await this.#timed(() => this.page.mouse.click(box.x + box.width / 2, box.y + box.height / 2));
  }

  /** Press a key where the focus is to be. */
  async key(target: Locator, key: string): Promise<void> {
    await target.focus();
    await this.#timed(() => this.page.keyboard.press(key));
  }

  /** Type over what stands in a field and leave it with `last`. */
  async type(field: Locator, text: string, last = 'Tab'): Promise<void> {
    await field.focus();
    await field.evaluate((one) => {
      if (one instanceof HTMLInputElement || one instanceof HTMLTextAreaElement) one.select();
    });
    await this.#timed(async () => {
      await this.page.keyboard.type(text, { delay: KEY_GAP });
      await this.page.keyboard.press(last);
    });
  }

  /** Choose the next of a list, or the first where it stands at its end. */
  async choose(list: Locator): Promise<void> {
    const atEnd = await list.evaluate(
      (one) => one instanceof HTMLSelectElement && one.selectedIndex === one.options.length - 1,
    );
    await this.key(list, atEnd ? 'Home' : 'ArrowDown');
  }

  /** Hand a file to a field. */
  async file(field: Locator, name: string, text: string): Promise<void> {
    await this.#timed(() =>
      field.setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) }),
    );
  }

  /** Do something under a name. */
  async act(name: string, work: () => Promise<void>): Promise<void> {
    this.#begun.push({ name, at: await this.page.evaluate(() => performance.now()), processor: 0 });
    await work();
  }

  /** How long the reference work takes here and now, milliseconds: waits of one run are read against it, whatever else the machine does. */
  async reference(): Promise<number> {
    await this.page.evaluate(idle);
    return this.page.evaluate(referenceWork, REFERENCE_LINES);
  }

  /** Everything done so far, by name. */
  async acts(): Promise<ReadonlyMap<string, readonly Act[]>> {
    await this.page.evaluate(idle);
    const entries = await this.page.evaluate(() => window.interactions ?? []);
    const found = new Map<string, Act[]>();
    for (const [number, { name, at, processor }] of this.#begun.entries()) {
      const end = this.#begun[number + 1]?.at ?? Number.POSITIVE_INFINITY;
      const waits = entries.filter(({ start }) => start >= at && start < end);
      const wait = Math.max(LEAST_NAMED / 2, ...waits.map(({ duration }) => duration));
      found.set(name, [...(found.get(name) ?? []), { wait, processor }]);
    }
    return found;
  }

  async #timed(work: () => Promise<void>): Promise<void> {
    await this.page.evaluate(idle);
    const before = await this.#processor();
    await work();
    await this.page.evaluate(idle);
    const act = this.#begun.at(-1);
    if (act) act.processor += (await this.#processor()) - before;
  }

  /** What the page's thread has worked so far, milliseconds. */
  async #processor(): Promise<number> {
    const { metrics } = await this.#session.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * 1e3;
  }
}
