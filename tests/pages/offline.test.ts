import { readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import { dropRelease, host, nextRelease } from '../support/releases.ts';
import { readerPages, SITE_BASE, SITE_FOLDER } from '../support/site.ts';
import { takeFirstWiring, unfold, wakeIslands, watch } from '../support/watch.ts';

test.use({ serviceWorkers: 'allow' });

const PAGES = readerPages()
  .map(({ address }) => address)
  .filter((address) => address !== '/404.html');

const isKept = (page: Page): Promise<void> =>
  page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));

const release = (page: Page): Promise<string | null> =>
  page.evaluate(() => document.querySelector('meta[name=release]')?.getAttribute('content') ?? null);

/** Names of the stores of files that the browser has. */
const stores = (page: Page): Promise<readonly string[]> => page.evaluate(() => caches.keys());

/** One page of each kind: each kind brings scripts of its own. */
const OF_EACH_KIND = ['/', '/glossary/', '/lessons/inside-the-input/', '/practice/', '/board/'];

/** What the worker does not keep: itself, and what is for hosts, search engines and the README alone. */
const NOT_KEPT = ['sw.js', '_headers', 'bench-picture.png', 'social-card.png'];

/** The address of every other file of the built site. */
const FILES = readdirSync(SITE_FOLDER, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => relative(SITE_FOLDER, join(entry.parentPath, entry.name)).split(sep).join('/'))
  .filter((name) => !NOT_KEPT.includes(name))
  .map((name) => `${SITE_BASE}${name.replace(/(^|\/)index\.html$/, '$1')}`);

/** The address of every file that the browser keeps. */
const kept = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const found: string[] = [];
    for (const name of await caches.keys())
      for (const { url } of await (await caches.open(name)).keys()) found.push(new URL(url).pathname);
    return found.map(decodeURI);
  });

/** Open pages and wake each of their widgets. */
async function openEach(page: Page, site: string, addresses: readonly string[]): Promise<void> {
  for (const address of addresses) {
    await page.goto(`${site}${address}`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    await wakeIslands(page);
  }
}

test('after one visit every file is kept, each kind of page opens with the network off, and the bench still works', async ({
  page,
  context,
}) => {
  await page.goto('./');
  await isKept(page);
  expect([...(await kept(page))].sort()).toEqual([...FILES].sort());
  await context.setOffline(true);
  await openEach(page, '.', OF_EACH_KIND);
  await page.goto('./bench/');
  await wakeIslands(page);
  await takeFirstWiring(page);
  await expect(page.locator('.headline .outcome')).toHaveText('Works');
});

test('the site is kept only once the page that is being opened is awake', async ({ page }) => {
  let give = (): void => undefined;
  const given = new Promise<void>((resolve) => (give = resolve));
  await page.route(/\/_astro\/WithTasks\.[^/]*\.js$/, async (route) => {
    await given;
    await route.continue();
  });
  await page.goto('./bench/', { waitUntil: 'load' });
  await page.evaluate(() => new Promise((done) => requestIdleCallback(done)));
  const workers = () => page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length);
  expect(await workers()).toBe(0);
  give();
  await isKept(page);
  expect(await workers()).toBe(1);
});

test('across a new release every widget wakes, on and off line; an open tab goes on, and the reader is told', async ({
  page,
  context,
}) => {
  const next = nextRelease(SITE_FOLDER);
  const site = await host(SITE_FOLDER);
  try {
    await page.goto(`${site.address}/board/`);
    await isKept(page);
    await page.reload();
    await wakeIslands(page);
    await page.getByRole('button', { name: 'Open the demo board' }).first().click();
    await expect(page.locator('.headline')).toContainText('8 devices');
    const seen = await watch(page, site.address);
    const other = await context.newPage();
    await other.goto(`${site.address}/bench/`);

    // By now the browser's own cache holds each page of the release before, for ten minutes.
    site.release(next);
    await other.evaluate(() =>
      navigator.serviceWorker.ready.then((one) => one.update()).then(() => undefined),
    );
    const offer = page.getByRole('status').filter({ hasText: 'A newer version of this workbook is ready' });
    await expect(offer).toBeVisible();
    await page.locator('summary', { hasText: 'Plan it for me' }).click();
    await expect(page.getByRole('button', { name: 'Plan it for me' })).toBeVisible();
    await other.getByRole('button', { name: 'Use the newer version' }).click();
    await expect.poll(() => release(other).catch(() => null)).toBe('next');
    await expect(
      page.getByRole('status').filter({ hasText: 'Another tab uses a newer version' }),
    ).toBeVisible();
    await unfold(page);
    expect(seen.complaints).toEqual([]);
    await expect(page.locator('.headline')).toContainText('8 devices');
    expect(await stores(page)).toHaveLength(2);

    await page.getByRole('button', { name: 'Reload with the newer version' }).click();
    await expect.poll(() => release(page).catch(() => null)).toBe('next');
    await wakeIslands(page);
    await expect(page.locator('.headline')).toContainText('8 devices');
    await other.close();
    await openEach(page, site.address, OF_EACH_KIND);
    expect(await release(page)).toBe('next');
    expect(await stores(page)).toHaveLength(1);
    // What is kept is given on line too: off line nothing else could be.
    await context.setOffline(true);
    await openEach(page, site.address, PAGES);
    expect(await release(page)).toBe('next');
  } finally {
    await site.close();
    dropRelease(next);
  }
});

test('a file that is missing from the store is fetched again, and a page that is not to be had says so', async ({
  page,
  context,
}) => {
  await page.goto('./');
  await isKept(page);
  const drop = (address: string) =>
    page.evaluate(async (path) => {
      for (const name of await caches.keys()) await (await caches.open(name)).delete(path);
    }, SITE_BASE + address);
  const has = (address: string) =>
    page.evaluate(async (path) => (await caches.match(path)) !== undefined, SITE_BASE + address);
  await drop('safety/');
  expect(await has('safety/')).toBe(false);
  await page.goto('./safety/');
  await expect.poll(() => has('safety/')).toBe(true);
  await drop('glossary/');
  await context.setOffline(true);
  await page.goto('./glossary/');
  await expect(page.getByRole('heading', { name: 'You are offline' })).toBeVisible();
  await page.goto('./safety/');
  await expect(page.getByRole('heading', { name: 'Safety', exact: true })).toBeVisible();
});

test('a widget that cannot be fetched says so above the page', async ({ page }) => {
  await page.route(/_astro\/BoardPlan\./, (route) => route.abort());
  await page.goto('./board/');
  await expect(page.getByRole('status').filter({ hasText: 'could not be fetched' })).toBeVisible();
  await page.unrouteAll();
  await page.getByRole('button', { name: 'Reload the page' }).click();
  await wakeIslands(page);
});
