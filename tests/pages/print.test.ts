/** Pages as they are printed, read back from the PDF. That no line of any page lies on another is judged where every page is opened. */
import type { Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import { readFileSync } from 'node:fs';
import { ON_PAPER, overprints, readPdf } from '../support/pdf.ts';
import { wakeIslands } from '../support/watch.ts';

async function printed(page: Page): Promise<ReturnType<typeof readPdf>> {
  await page.evaluate(() => document.fonts.ready);
  return readPdf(await page.pdf(ON_PAPER));
}

/** How far down words stand from the top of the first page, points. */
function placeOf({ text, letters, size: [, height] }: ReturnType<typeof readPdf>, words: string): number {
  let left = text.indexOf(words);
  for (const [at, page] of letters.entries())
    for (const { letter, y } of page) {
      if (left <= 0) return at * height + y;
      left -= letter.length;
    }
  throw new Error(`pdf: needs the words '${words}', got none`);
}

const unspaced = (text: string): string => text.replace(/\s/g, '');

test('a line that is moved onto another is found', async ({ page }) => {
  await page.goto('./safety/');
  await page.evaluate(() => {
    const heading = document.querySelector('h1');
    if (heading) Object.assign(heading.style, { position: 'relative', top: '34px' });
  });
  expect(overprints(await printed(page)).length).toBeGreaterThan(0);
});

test('every caution of the safety page stands whole on one page', async ({ page }) => {
  await page.goto('./safety/');
  const { texts } = await printed(page);
  const cautions = JSON.parse(readFileSync('content/reference/cautions.json', 'utf8')) as readonly {
    readonly title: string;
    readonly steps: readonly string[];
  }[];
  for (const { title, steps } of cautions) {
    const words = [title, ...steps].map(unspaced);
    expect(
      texts.some((text) => words.every((one) => text.includes(one))),
      title,
    ).toBe(true);
  }
});

test('the bench prints its plugs with their contacts, and the answer below them', async ({ page }) => {
  await page.goto('./bench/');
  await wakeIslands(page);
  await page.emulateMedia({ media: 'print' });
  const contacts = page.locator('svg [data-contact]');
  for (const contact of ['1', '2', '3', '4', '5', 'tip', 'ring', 'sleeve'])
    await expect(contacts.filter({ hasText: new RegExp(`^\\s*${contact}\\s*$`) })).toBeVisible();
  const paper = await printed(page);
  expect(placeOf(paper, 'Nowiresyet')).toBeGreaterThan(placeOf(paper, 'plugattheinput'));
});

test('a lesson prints each figure under its question, unanswered too, and as a hand-out from a page of its own', async ({
  page,
}) => {
  await page.addInitScript(() => {
    window.print = () => document.documentElement.toggleAttribute('data-asked-to-print', true);
  });
  await page.goto('./lessons/contacts-and-where-to-look-from/');
  const whole = await printed(page);
  const captions = (await page.locator('figcaption').allTextContents()).map(unspaced);
  expect(captions.length).toBeGreaterThan(4);
  for (const caption of captions) expect(whole.text).toContain(caption);
  for (const words of ['Chooseone,and', 'verdictstandshere']) expect(whole.text).not.toContain(words);
  expect(whole.text).not.toContain('Name____');

  await page.getByRole('button', { name: 'Print a hand-out' }).click();
  await expect(page.locator('html[data-asked-to-print]')).toHaveCount(1);
  const handOut = await printed(page);
  expect(overprints(handOut)).toEqual([]);
  expect(handOut.text).toContain('Name____');
  const questions = (await page.locator('.predict > fieldset > legend').allTextContents()).map((one) =>
    unspaced(one.replace('Before you look', '')),
  );
  const start = handOut.texts.findIndex((text) => text.includes('whatexplainstheanswers'));
  expect(handOut.texts[start]?.startsWith('Contacts,andwheretolookfrom:whatexplainstheanswers')).toBe(true);
  const [asked, explained] = [handOut.texts.slice(0, start).join(''), handOut.texts.slice(start).join('')];
  for (const question of questions) {
    expect(asked).toContain(question);
    expect(explained).toContain(question);
  }
  for (const words of ['Chooseone,and', 'verdictstandshere']) expect(handOut.text).not.toContain(words);
  expect(asked).not.toContain('Right:');
  expect(explained.match(/Right:/g)).toHaveLength(questions.length);
});
