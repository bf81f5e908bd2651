/** Seeded chance actions on one page of the site, and what must hold after each of them. */
import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { resultHash, setHash } from '../../src/core/class/index.ts';
import { CLASS_SET, studentResult } from './classroom.ts';
import { readerPages } from './site.ts';
import { wakeIslands } from './watch.ts';

/**
 * Pages that show again, when they are opened afresh, what was done on them, and what always stands there of its solution, or the
 * fields that it keeps: what a fold or a choice brings, such as a paper to print, is not there again on a page that is opened afresh.
 */
const SOLUTIONS: Readonly<Record<string, string>> = {
  '/': '[aria-label="The answer"]',
  '/bench/': '.headline .outcome, .verdict',
  '/board/': '.headline',
  '/cable-sheet/': '[aria-label="Build sheet"]',
  '/embed/bench/': '.headline .outcome, .verdict',
  '/jack-finder/': '.standing',
  '/mark/': '[aria-label^="Marks:"] table:not(details table)',
  '/what-arrived/': 'form :is(textarea, select, input)',
};

/** Ends of addresses of pages that have nothing to act on without: work to do, work to mark. It is typed into fields too. */
const OPENED_WITH: Readonly<Record<string, () => Promise<string>>> = {
  '/hand-in/': () => setHash({ ...CLASS_SET, show: 'each' }),
  '/mark/': () => resultHash(studentResult(1)),
};

/** One of the pages that stand inside a page of somebody else: they hold the tools of the reader's pages again. */
const EMBEDDED = '/embed/bench/';

/**
 * How much the heap may grow from the second quarter of the way to its last, bytes (our choice). The least of each quarter counts,
 * with everything undone: a page without undoing holds now more, now less, such as a paper for each of a hundred students.
 */
const MOST_GROWTH = 12_000_000;

/** How long two states that should be one may differ before that is a fault, milliseconds: only a fault waits for so long. */
const MOST_WAIT = 60_000;

/** Actions between two looks at the solution and the undoing; fewer than the steps that an undoing goes back. */
const STRETCH = 100;

declare global {
  interface Window {
    soak?: {
      /** So many actions; hands back the first slip on the screen. */
      readonly act: (count: number) => Promise<string>;
      /** Undo until nothing is left to undo; false where the page has no undoing. */
      readonly undoAll: () => Promise<boolean>;
      /** Let the page write what it holds, as it does when it is left, and take up again what a chance action stopped. */
      readonly rest: () => void;
    };
  }
}

/** Every page of the site that holds a widget, and of those for another page one. */
export function pagesWithWidgets(): readonly string[] {
  const own = readerPages().filter(({ file }) => readFileSync(file, 'utf8').includes('<astro-island'));
  return [...own.map(({ address }) => address), EMBEDDED];
}

/** Runs in the page: hands over nothing to the disk or the printer, and acts on what can be pressed, chosen and typed into. */
function prepare([seed, given]: readonly [number, string]): void {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(next() * list.length)];
  const typed = [
    '',
    '0',
    '1',
    '-1',
    '0.5',
    '3,3',
    '1e9',
    '1e-9',
    'abc',
    '7F 90 3C',
    'data on ring',
    '舞台',
    '12',
    '100',
    given,
  ];
  window.print = () => undefined;
  HTMLAnchorElement.prototype.click = () => undefined;
  // A control that opens another page is pressed like any other, and the page stays.
  navigation.addEventListener('navigate', (event) => {
    if (!event.destination.sameDocument) event.preventDefault();
  });
  const settled = (): Promise<void> => new Promise((done) => setTimeout(() => setTimeout(done)));
  const visible = (one: Element): boolean => one.checkVisibility() && !one.matches(':disabled, [type=file]');
  const change = (one: Element): void => {
    one.dispatchEvent(new Event('input', { bubbles: true }));
    one.dispatchEvent(new Event('change', { bubbles: true }));
    one.dispatchEvent(new FocusEvent('blur'));
    one.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
  };
  const isTravel = (one: Element): boolean => /^(undo|redo)$/i.test(one.textContent.trim());
  const press = (one: Element, key: string): boolean =>
    one.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));

  function act(one: Element): string {
    const name = one.getAttribute('aria-label') ?? one.textContent.trim().slice(0, 40);
    if (one instanceof HTMLSelectElement) {
      one.selectedIndex = Math.floor(next() * one.options.length);
      change(one);
    } else if (
      one instanceof HTMLTextAreaElement ||
      (one instanceof HTMLInputElement && !/radio|checkbox/.test(one.type))
    ) {
      one.value =
        one instanceof HTMLInputElement && one.type === 'range'
          ? String(next() * Number(one.max || 1))
          : (pick(typed) ?? '');
      change(one);
    } else if (one instanceof HTMLElement) one.click();
    else {
      const key = pick(['Enter', 'ArrowRight', 'ArrowDown', 'Escape', ' ']) ?? 'Enter';
      press(one, key);
      one.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }));
    }
    return `${one.tagName.toLowerCase()} '${name}'`;
  }

  const controls = (): readonly Element[] =>
    [
      ...document.querySelectorAll(
        'main :is(button, select, textarea, input, summary, [role=button], [tabindex="0"])',
      ),
    ].filter((one) => visible(one) && !isTravel(one));

  window.soak = {
    async act(count) {
      const done: string[] = [];
      for (let number = 0; number < count; number += 1) {
        const one = pick(controls());
        if (one === undefined) break;
        done.push(act(one));
        await settled();
        // An address that holds a packed plan may spell anything.
        const html = (document.querySelector('main')?.innerHTML ?? '').replaceAll(/ (href|src)="[^"]*"/g, '');
        const slip = /undefined|NaN|\[object /.exec(html);
        if (slip) {
          return `after ${done.slice(-4).join(', ')}: … ${html.slice(Math.max(0, slip.index - 120), slip.index + 60)}`;
        }
      }
      return '';
    },
    async undoAll() {
      const undo = [...document.querySelectorAll<HTMLButtonElement>('main button')].find(
        (one) => one.textContent.trim() === 'Undo',
      );
      if (undo === undefined) return false;
      for (let step = 0; step < 400 && !undo.disabled; step += 1) {
        undo.click();
        await settled();
      }
      return undo.disabled;
    },
    rest() {
      const solve = [...document.querySelectorAll<HTMLButtonElement>('main button')].find(
        (one) => one.textContent.trim() === 'Solve the links',
      );
      solve?.click();
      window.dispatchEvent(new PageTransitionEvent('pagehide'));
    },
  };
}

/** What can be told apart of two pages: what is shown of the solution outside folds, what stands in its fields, and what is kept. */
interface State {
  readonly shown: string;
  readonly kept: string;
}

/** How a page stands now, with all that it holds written. */
function stateOf(page: Page, address: string): Promise<State> {
  return page.evaluate((parts) => {
    window.soak?.rest();
    const isFolded = (one: Element | null | undefined): boolean => {
      const fold = one?.closest('details');
      if (!fold) return false;
      return one?.closest('summary')?.parentElement !== fold || isFolded(fold.parentElement);
    };
    const shown: string[] = [];
    for (const part of document.querySelectorAll(parts ?? 'none')) {
      const walker = document.createTreeWalker(part, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
      for (let node: Node | null = part; node; node = walker.nextNode()) {
        const holder = node instanceof Element ? node : node.parentElement;
        if (!holder?.checkVisibility() || isFolded(holder)) continue;
        if (node instanceof Text) shown.push(node.data);
        else if (node instanceof HTMLInputElement && /radio|checkbox/.test(node.type))
          shown.push(` ${node.checked} `);
        else if (/^(INPUT|SELECT|TEXTAREA)$/.test(node.nodeName))
          shown.push(` ${(node as HTMLInputElement).value} `);
      }
    }
    return {
      shown: shown.join('').replaceAll(/\s+/g, ' '),
      kept: ['bench', 'board']
        .map((shelf) => localStorage.getItem(`five-milliamps ${shelf}`) ?? '')
        .map((text) => text.slice(text.indexOf('\n') + 1))
        .join('\n'),
    };
  }, SOLUTIONS[address]);
}

/** Ask until an answer is the one that is wanted, or until that is a fault; hands back the last pair. */
async function untilSame(
  is: () => Promise<string>,
  wanted: () => Promise<string>,
): Promise<readonly [string, string]> {
  const end = performance.now() + MOST_WAIT;
  for (;;) {
    const pair = [await is(), await wanted()] as const;
    if (pair[0] === pair[1] || performance.now() > end) return pair;
    await new Promise((done) => setTimeout(done, 100));
  }
}

/** How a page stands when nothing is at work on it any more; a page that never rests is handed back as it is. */
async function atRest(page: Page, address: string): Promise<State> {
  await untilSame(
    () =>
      page.evaluate(() => String(document.querySelectorAll('main :is(progress, [aria-busy=true])').length)),
    () => Promise.resolve('0'),
  );
  return stateOf(page, address);
}

async function heapOf(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize;
}

/** Whether a page that is opened afresh shows what this one shows: then nothing on it is of an earlier state. */
async function staleness(page: Page, address: string): Promise<readonly string[]> {
  // What is kept must be all that was done before another page reads it.
  await stateOf(page, address);
  const fresh = await page.context().newPage();
  try {
    await fresh.goto(page.url());
    await wakeIslands(fresh);
    const [here, there] = await untilSame(
      async () => (await stateOf(page, address)).shown,
      async () => (await stateOf(fresh, address)).shown,
    );
    return here === there ? [] : [`shown: ${here}\nfresh: ${there}`];
  } finally {
    await fresh.close();
  }
}

/** What of a page, all undone, is not as it was at the start; on a first visit nothing was kept then. */
async function notUndone(page: Page, address: string, start: State): Promise<readonly string[]> {
  const told = ({ shown, kept }: State): string => (start.kept.trim() === '' ? shown : `${shown}\n${kept}`);
  const [now, wanted] = await untilSame(
    async () => told(await stateOf(page, address)),
    () => Promise.resolve(told(start)),
  );
  return now === wanted ? [] : [`undone, it is not the start: ${now}\nstart: ${wanted}`];
}

/**
 * Act on a page by seeded chance. Hands back what did not hold: page errors, slips on the screen, a solution that is not that of
 * what is kept, an undoing that does not lead back to the start, a heap that grows. `page` is one on which nothing was done yet.
 */
export async function soakPage(
  page: Page,
  address: string,
  seed: number,
  actions: number,
): Promise<readonly string[]> {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(`page error: ${error.stack ?? String(error)}`));
  const given = (await OPENED_WITH[address]?.()) ?? '';
  await page.goto(`.${address}${given}`);
  await wakeIslands(page);
  await page.evaluate(prepare, [seed, given] as const);
  const heaps: number[] = [];
  for (let done = 0; done < actions && complaints.length === 0; done += STRETCH) {
    const travels = await page.evaluate(() => window.soak?.undoAll() ?? false);
    heaps.push(await heapOf(page));
    const start = await atRest(page, address);
    const slip = await page.evaluate(
      (count) => window.soak?.act(count) ?? '',
      Math.min(STRETCH, actions - done),
    );
    if (slip !== '') complaints.push(slip);
    if (address in SOLUTIONS) complaints.push(...(await staleness(page, address)));
    if (!travels || complaints.length > 0) continue;
    await page.evaluate(() => window.soak?.undoAll());
    complaints.push(...(await notUndone(page, address, start)));
  }
  const quarter = Math.floor(heaps.length / 4);
  const [warm, end] = [heaps.slice(quarter, 2 * quarter), heaps.slice(heaps.length - quarter)].map((some) =>
    Math.min(...some),
  ) as [number, number];
  if (quarter > 0 && end - warm > MOST_GROWTH)
    complaints.push(
      `memory: ${(warm / 1e6).toFixed(1)} MB in the second quarter, ${(end / 1e6).toFixed(1)} MB in the last`,
    );
  return complaints;
}
