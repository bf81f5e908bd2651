import { expect, test } from '../support/test.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { takeFirstWiring, wakeIslands } from '../support/watch.ts';

/** Most that a page may move while it opens, in the measure of the layout shift; beyond 0.1 a reader loses the line (web.dev, CLS). */
const MOST_MOVED = 0.05;

const PAPER = { light: 'rgb(250, 247, 240)', dark: 'rgb(20, 23, 29)' };

test('an address that leads nowhere gets the 404 page, with its way back', async ({ page }) => {
  const response = await page.goto('./nowhere/');
  expect(response?.status()).toBe(404);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('No path');
  await page.getByRole('link', { name: 'Go to the first page' }).click();
  await expect(page).toHaveURL(/\/$/);
});

test('the first press of Tab shows a link that skips to the text', async ({ page }) => {
  await page.goto('./glossary/');
  await page.keyboard.press('Tab');
  const skip = page.getByRole('link', { name: 'Skip to the text' });
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('main')).toBeFocused();
});

test('the header marks the part of the workbook that the reader is in', async ({ page }) => {
  await page.goto('./lessons/');
  const header = page.getByRole('navigation', { name: 'Parts of the workbook' });
  await expect(header.getByRole('link', { name: 'Lessons' })).toHaveAttribute('aria-current', 'page');
  await expect(header.getByRole('link', { name: 'Bench', exact: true })).not.toHaveAttribute('aria-current');
});

for (const width of [390, 1440])
  test(`the open list of all pages is accessible and fits at ${width} px`, async ({ page }) => {
    await page.setViewportSize({ width, height: 900 });
    await page.goto('./safety/');
    await page.getByRole('banner').getByText('All pages').click();
    await expect(page.getByRole('banner').getByRole('link', { name: 'Glossary' })).toBeVisible();
    expect(await accessibilityFaults(page, '.page-header')).toEqual([]);
    expect(await faintFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });

test('paper follows the system until the reader chooses, and the choice stays', async ({ page }) => {
  const background = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  await page.emulateMedia({ colorScheme: 'dark' });
  await page.goto('./');
  expect(await background()).toBe(PAPER.dark);
  const paper = page.getByRole('group', { name: 'Page colours' });
  await expect(paper.getByRole('radio', { name: 'as the system' })).toBeChecked();

  await paper.getByRole('radio', { name: 'light' }).check();
  expect(await background()).toBe(PAPER.light);
  await page.goto('./safety/');
  expect(await background()).toBe(PAPER.light);
  await expect(paper.getByRole('radio', { name: 'light' })).toBeChecked();

  await paper.getByRole('radio', { name: 'light' }).press('ArrowRight');
  await expect(paper.getByRole('radio', { name: 'dark' })).toBeChecked();
  await page.emulateMedia({ colorScheme: 'light' });
  expect(await background()).toBe(PAPER.dark);

  await paper.getByRole('radio', { name: 'as the system' }).check();
  expect(await background()).toBe(PAPER.light);
  await page.reload();
  await expect(paper.getByRole('radio', { name: 'as the system' })).toBeChecked();
});

test('where the reader forces colours, drawings take them too, whatever paper was chosen', async ({
  page,
}) => {
  await page.addInitScript(() => localStorage.setItem('five-milliamps.paper', 'light'));
  await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
  await page.goto('./bench/');
  await wakeIslands(page);
  await takeFirstWiring(page);
  const colours = await page.evaluate(() => {
    const probe = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    document.body.append(probe);
    const read = (colour: string): string => {
      probe.style.stroke = colour;
      return getComputedStyle(probe).stroke;
    };
    // A line that crosses another has a gap of paper around it; what is only there to be pressed shows nothing.
    const allowed = ['CanvasText', 'Canvas', 'transparent'].map(read);
    const paths = [...document.querySelectorAll('main figure svg path')];
    const strokes = paths.map((path) => getComputedStyle(path).stroke).filter((stroke) => stroke !== 'none');
    const others = [...new Set(strokes)].filter((stroke) => !allowed.includes(stroke));
    return { others, count: strokes.filter((stroke) => stroke === allowed[0]).length };
  });
  expect(colours.count).toBeGreaterThan(10);
  expect(colours.others).toEqual([]);
});

test('the chosen paper is set before anything is drawn', async ({ page }) => {
  await page.addInitScript(() => localStorage.setItem('five-milliamps.paper', 'dark'));
  await page.addInitScript(() => {
    new MutationObserver((_, observer) => {
      if (document.body === null) return;
      document.documentElement.dataset['atBody'] = document.documentElement.dataset['paper'] ?? 'none';
      observer.disconnect();
    }).observe(document, { childList: true, subtree: true });
  });
  await page.goto('./');
  await expect(page.locator('html')).toHaveAttribute('data-at-body', 'dark');
});

test('a page prints black on white, without its controls', async ({ page }) => {
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.goto('./safety/');
  const colours = await page.evaluate(() => {
    const { backgroundColor, color } = getComputedStyle(document.documentElement);
    return { backgroundColor, color };
  });
  expect(colours).toEqual({ backgroundColor: 'rgb(255, 255, 255)', color: 'rgb(0, 0, 0)' });
  await expect(page.locator('.page-header')).toBeHidden();
  await expect(page.locator('.page-footer')).toBeHidden();
});

test('the text is set in the fonts of the workbook, from its own address', async ({ page, baseURL }) => {
  const fonts: string[] = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'font') fonts.push(response.url());
  });
  await page.goto('./');
  await page.evaluate(() => document.fonts.ready);
  const loaded = await page.evaluate(() =>
    [...document.fonts]
      .filter(({ status }) => status === 'loaded')
      .map(({ family }) => family.replaceAll('"', '')),
  );
  expect(loaded).toContain('Literata Variable');
  expect(loaded).toContain('Atkinson Hyperlegible Next Variable');
  expect(fonts.length).toBeGreaterThan(0);
  expect(fonts.every((url) => url.startsWith(baseURL ?? 'none'))).toBe(true);
});

test('a line of reading text holds 60 to 70 characters on a wide screen', async ({ page }) => {
  // The first visit may be drawn before the font has come, and keeps the stand-in; the second is set in the font. Small print is no reading text.
  await page.goto('./safety/');
  await page.evaluate(() => document.fonts.ready);
  await page.reload();
  await page.evaluate(() => document.fonts.ready);
  const perLine = await page.evaluate(() => {
    const lines: number[] = [];
    for (const paragraph of document.querySelectorAll('main section > p:not(.status, .note)')) {
      const range = document.createRange();
      const text = paragraph.firstChild;
      if (text === null) continue;
      let [top, count] = [Number.NEGATIVE_INFINITY, 0];
      for (let place = 0; place < (text.textContent ?? '').length; place += 1) {
        range.setStart(text, place);
        range.setEnd(text, place + 1);
        const rect = range.getBoundingClientRect();
        if (rect.width === 0) continue;
        if (Math.abs(rect.top - top) > 5) {
          if (count > 0) lines.push(count);
          [top, count] = [rect.top, 0];
        }
        count += 1;
      }
    }
    return lines.reduce((sum, count) => sum + count, 0) / lines.length;
  });
  expect(perLine).toBeGreaterThanOrEqual(60);
  expect(perLine).toBeLessThanOrEqual(70);
});

test('no line moves when the fonts come after the page is drawn', async ({ page }) => {
  let release = (): void => undefined;
  const held = new Promise<void>((done) => {
    release = done;
  });
  await page.route('**/*.woff2', async (route) => {
    await held;
    await route.continue();
  });
  await page.setViewportSize({ width: 412, height: 823 });
  await page.addInitScript(() => {
    const moves: number[] = [];
    Object.assign(globalThis, { moves });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) moves.push((entry as unknown as { value: number }).value);
    }).observe({ type: 'layout-shift', buffered: true });
  });
  await page.goto('./quick-reference/', { waitUntil: 'commit' });
  await page.waitForFunction(
    () => performance.getEntriesByName('first-contentful-paint').length > 0 && document.fonts.size > 0,
  );
  const fetched = page.waitForResponse('**/atkinson.*.woff2');
  release();
  await (await fetched).finished();
  await page.waitForLoadState('load');
  await page.evaluate(
    () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
  );
  const moved = await page.evaluate(() =>
    (globalThis as unknown as { moves: readonly number[] }).moves.reduce((sum, one) => sum + one, 0),
  );
  expect(moved).toBeLessThan(MOST_MOVED);
});
