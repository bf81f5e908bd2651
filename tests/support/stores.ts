/** What browser tests do to the browser's store: fill it, empty it, read what is kept in it. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';

/** Characters that Chromium keeps for a site, names and values together: 10 MiB of two bytes each. */
const STORE_CHARACTERS = 5 * 1024 * 1024;

/** Fill the store of the page to its last character, and a little less where `spare` says so. Throws when more could be kept. */
export async function fillStore(page: Page, spare = 0): Promise<void> {
  const isFull = await page.evaluate(
    ([most, room]) => {
      localStorage.removeItem('filler');
      const used = Object.entries({ ...localStorage })
        .flat()
        .join('').length;
      const filler = 'x'.repeat(most - used - 'filler'.length);
      localStorage.setItem('filler', filler.slice(room));
      try {
        localStorage.setItem('filler', `${filler}x`);
        return false;
      } catch {
        return true;
      }
    },
    [STORE_CHARACTERS, spare] as const,
  );
  if (!isFull) throw new Error(`store: needs to be full at ${STORE_CHARACTERS} characters, took one more`);
}

/** What is kept under a name, below the line about it; empty when nothing is. */
export async function keptText(page: Page, name: string): Promise<string> {
  const text = await page.evaluate((key) => localStorage.getItem(key) ?? '', `five-milliamps ${name}`);
  return text.slice(text.indexOf('\n') + 1);
}

/** The texts of the versions that are kept of a plan, newest first. */
export async function keptVersions(page: Page, name: string): Promise<readonly string[]> {
  const text = await page.evaluate((key) => localStorage.getItem(key), `five-milliamps ${name} versions`);
  return (JSON.parse(text ?? '[]') as { readonly text: string }[]).map((version) => version.text);
}

/** Press a button that hands over a file, and read the file. */
export async function savedBy(page: Page, button: Locator): Promise<string> {
  const downloading = page.waitForEvent('download');
  await button.click();
  return readFileSync(await (await downloading).path(), 'utf8');
}
