import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { filesUnder } from '../support/imports.ts';
import { SITE_BASE, SITE_FOLDER } from '../support/site.ts';
import { wakeIslands } from '../support/watch.ts';

/** Serve the site, if so wished as a host that sends no policy of its own, with a page of somebody else at another address. */
async function withPageAround(page: Page, around: string, policy: 'policy' | 'no policy'): Promise<void> {
  await page.route('**/*', async (route) => {
    if (route.request().url().startsWith(AROUND))
      return route.fulfill({ contentType: 'text/html', body: around });
    const response = await route.fetch();
    const headers = { ...response.headers() };
    if (policy === 'no policy') delete headers['content-security-policy'];
    return route.fulfill({ response, headers });
  });
}

const ROOT = join(import.meta.dirname, '../..');
const AROUND = 'http://somebody-else.test/';

test('a worker stands under the content policy of its page, where the host sends no header', async ({
  page,
}) => {
  await withPageAround(page, '', 'no policy');
  const started = page.waitForEvent('worker');
  await page.goto('./jack-finder/');
  await wakeIslands(page);
  // The first answer comes from the build; the worker starts once the reader begins.
  await page.getByLabel('Printed beside it').focus();
  const worker = await started;
  const broken = await worker.evaluate(
    () =>
      new Promise<string>((done) => {
        addEventListener('securitypolicyviolation', (event) => done(event.effectiveDirective));
        const nothing = (): void => done('nothing was forbidden');
        fetch('http://somebody-else.test/').then(nothing, () => setTimeout(nothing));
      }),
  );
  expect(broken).toBe('connect-src');
});

test('every worker is started by the function that puts it under the policy', () => {
  const starters = filesUnder(ROOT, ['components', 'src', 'content']).filter((path) =>
    /new (Shared)?Worker\(/.test(readFileSync(join(ROOT, path), 'utf8')),
  );
  expect(starters).toEqual(['components/parts/start-worker.ts']);
});

test('a page that stands inside a page of somebody else shows a way out and nothing else', async ({
  page,
  baseURL,
}) => {
  await withPageAround(page, `<iframe src="${baseURL ?? ''}board/"></iframe>`, 'no policy');
  await page.goto(AROUND);
  const frame = page.frameLocator('iframe');
  await expect(frame.getByRole('link', { name: 'Open this page of Five Milliamps' })).toHaveAttribute(
    'target',
    '_blank',
  );
  await expect(frame.getByRole('button')).toHaveCount(0);
  await expect(frame.locator('astro-island')).toHaveCount(0);
});

test('a tool made to be embedded works inside a page of somebody else, and tells it its height and its answer', async ({
  page,
  baseURL,
}) => {
  const around = `<iframe src="${baseURL ?? ''}embed/bench/" width="800" height="600"></iframe>
    <script>const told = []; addEventListener('message', ({ data }) => told.push(data));</script>`;
  await withPageAround(page, around, 'policy');
  await page.goto(AROUND);
  const frame = page.frameLocator('iframe');
  await expect(frame.getByRole('heading', { name: 'Bench', level: 1 })).toBeVisible();
  await expect(frame.locator('astro-island[ssr]')).toHaveCount(0);
  await frame.getByRole('button', { name: 'Which lead?' }).click();
  await frame
    .getByRole('button', { name: /^Use this wiring/ })
    .first()
    .click();
  await expect(frame.locator('.headline .outcome')).toHaveText('Works');
  const told = (kind: string): Promise<unknown> =>
    page.evaluate(`told.filter((one) => one.kind === '${kind}').at(-1)`);
  await expect
    .poll(() => told('answer'))
    .toMatchObject({ from: 'five-milliamps', tool: 'bench', grade: 'good' });
  const inner = await frame.locator('body').evaluate((body) => body.scrollHeight);
  await expect
    .poll(() => told('size'))
    .toEqual({ from: 'five-milliamps', tool: 'bench', kind: 'size', height: inner });
  await expect(frame.getByRole('banner')).toHaveCount(0);
});

test('the licence of every library and font that is shipped is on the site', async ({ page }) => {
  const text = readFileSync(join(SITE_FOLDER, 'licences.txt'), 'utf8');
  const names = [...text.matchAll(/^(\S+) \d+\.\d+\.\d+\S* \(.+\)$/gm)].map(([, name]) => name);
  expect(names).toEqual(
    expect.arrayContaining([
      '@fontsource-variable/atkinson-hyperlegible-next',
      '@fontsource-variable/literata',
      'astro',
      'd3-shape',
      'qr',
      'svelte',
    ]),
  );
  expect(text.match(/SIL OPEN FONT LICENSE/gi)?.length).toBeGreaterThanOrEqual(2);
  await page.goto('./sources/');
  await expect(page.getByRole('link', { name: 'licences.txt' })).toHaveAttribute(
    'href',
    `${SITE_BASE}licences.txt`,
  );
});
