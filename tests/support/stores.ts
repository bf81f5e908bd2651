/** What browser tests do to the browser's store: fill it, empty it, read what is kept in it. */
import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';

/** Fill the store of the page to its last character, and a little less where `spare` says so. */
export async function fillStore(page: Page, spare = 0): Promise<void> {
  await page.evaluate((room) => {
    const put = (text: string): boolean => {
      try {
        localStorage.setItem('filler', text);
        return true;
      } catch {
        return false;
      }
    };
    let [fits, tooMuch] = [0, 1 << 24];
    while (tooMuch - fits > 1) {
      const middle = (fits + tooMuch) >> 1;
      if (put('x'.repeat(middle))) fits = middle;
      else tooMuch = middle;
    }
    put('x'.repeat(Math.max(0, fits - room)));
  }, spare);
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
