/** The site built for a folder of its host: no address leaves the folder, every one leads somewhere, and it works off line too. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { expect, test } from '../support/test.ts';
import { attributeValues } from '../support/html.ts';
import { serve, type Site } from '../support/serve.ts';
import { builtPages } from '../support/site.ts';
import { takeFirstWiring, wakeIslands, watch } from '../support/watch.ts';

test.use({ serviceWorkers: 'allow', permissions: ['clipboard-read', 'clipboard-write'] });
// One build for both tests.
test.describe.configure({ mode: 'serial' });

const BASE = '/course/loop/';
const HOST = 'https://school.invalid';
let folder = '';
let site: Site;

test.beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'five-milliamps-folder-'));
  const astro = resolve('node_modules/astro/bin/astro.mjs');
  execFileSync(process.execPath, [astro, 'build', '--outDir', folder], {
    env: { ...process.env, BASE_PATH: BASE, SITE_URL: HOST },
    stdio: 'pipe',
  });
  site = await serve({ folder, base: BASE });
});

test.afterAll(async () => {
  await site.close();
  rmSync(folder, { recursive: true });
});

/** Attributes that hold an address. */
const ADDRESSES = ['href', 'src', 'component-url', 'renderer-url', 'before-hydration-url'] as const;

/** What is wrong with an address of a page, or undefined where it stays in the folder and leads somewhere. */
function astray(page: string, link: string): string | undefined {
  const url = new URL(link, new URL(page, 'http://site.invalid'));
  if (url.host !== 'site.invalid' && url.origin !== HOST) return undefined;
  if (!url.pathname.startsWith(BASE)) return `${page}: ${link}: leaves the folder`;
  const file = join(folder, decodeURIComponent(url.pathname.slice(BASE.length)));
  const isThere = existsSync(file) && (statSync(file).isFile() || existsSync(join(file, 'index.html')));
  return isThere ? undefined : `${page}: ${link}: there is no such page or file`;
}

test('built for a folder, no address on any page leaves it, and every one leads somewhere', () => {
  const links = builtPages(folder).flatMap(({ address, file }) => {
    const html = readFileSync(file, 'utf8');
    const page = BASE + address.slice(1);
    return ADDRESSES.flatMap((name) => attributeValues(html, name)).map((link) => ({ page, link }));
  });
  expect(links.length).toBeGreaterThan(500);
  expect(links.flatMap(({ page, link }) => astray(page, link) ?? [])).toEqual([]);
});

test('built for a host, each page names itself, and search engines get a map and a card', () => {
  const read = (name: string): string => readFileSync(join(folder, name), 'utf8');
  expect(read('bench/index.html')).toContain(`<link rel="canonical" href="${HOST}${BASE}bench/">`);
  expect(read('bench/index.html')).toContain(`content="${HOST}${BASE}social-card.png"`);
  expect(read('robots.txt')).toContain(`Sitemap: ${HOST}${BASE}sitemap-index.xml`);
  expect(read('sitemap-0.xml')).toContain(`<loc>${HOST}${BASE}bench/</loc>`);
  expect(read('sitemap-0.xml')).not.toContain('/embed/');
  const about: unknown = JSON.parse(
    /<script type="application\/ld\+json">(.*?)<\/script>/.exec(read('lessons/index.html'))?.[1] ?? '',
  );
  expect(about).toMatchObject({ '@type': 'Course', inLanguage: 'en' });
  const app = JSON.parse(read('manifest.webmanifest')) as { icons: readonly { src: string }[] };
  expect(app.icons.map(({ src }) => existsSync(join(folder, src)))).not.toContain(false);
});

test('built for a folder, hosts are told the headers of its files, and our server sends the same', async () => {
  expect(readFileSync(join(folder, '_headers'), 'utf8')).toContain(
    `${BASE}*\n  Cross-Origin-Opener-Policy: same-origin\n`,
  );
  const script = builtPages(folder).flatMap(({ file }) =>
    attributeValues(readFileSync(file, 'utf8'), 'component-url'),
  )[0];
  const answer = await fetch(new URL(script ?? '', site.address));
  expect(answer.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
  expect(answer.headers.get('content-security-policy')).toBe("frame-ancestors 'none'");
  expect((await fetch(new URL('/', site.address))).status).toBe(404);
  expect((await fetch(site.address.slice(0, -1), { redirect: 'manual' })).headers.get('location')).toBe(BASE);
});

test('built for a folder, the bench works there, its link opens there, and both do so off line', async ({
  page,
  context,
}) => {
  const seen = await watch(page, site.address);
  await page.goto(site.address);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.goto(`${site.address}bench/`);
  await wakeIslands(page);
  await takeFirstWiring(page);
  await page.getByRole('button', { name: 'Copy a link' }).click();
  await expect(page.getByText('The link is copied.')).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  expect(link.startsWith(`${site.address}bench/#plan=`)).toBe(true);
  await context.setOffline(true);
  await page.goto('about:blank');
  await page.goto(link);
  await wakeIslands(page);
  await expect(page.locator('.headline .outcome')).toHaveText('Works');
  await page.getByRole('link', { name: 'Board plan' }).click();
  await expect(page).toHaveURL(`${site.address}board/`);
  await wakeIslands(page);
  expect(seen.complaints).toEqual([]);
});
