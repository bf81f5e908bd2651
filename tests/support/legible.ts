/** What makes a page hard to follow by headings or to read in its figures. */
import type { Page } from '@playwright/test';

/** Least size of text in a figure on the screen, pixels, less what rounding takes. */
const LEAST_TEXT = 11 - 0.05;

/** Headings shown that skip a level, and a page with another number of first headings than one. */
export function headingFaults(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const shown = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((one) =>
      one.checkVisibility(),
    );
    const levels = shown.map((one) => Number(one.tagName[1]));
    const skips = shown
      .filter((_, at) => (levels[at] ?? 0) > (levels[at - 1] ?? 0) + 1)
      .map(
        (one) =>
          `${one.tagName} '${one.textContent.trim()}' comes under no ${one.tagName[0] ?? ''}${Number(one.tagName[1]) - 1}`,
      );
    const firsts = levels.filter((level) => level === 1).length;
    return firsts === 1 ? skips : [...skips, `${firsts} headings of level 1`];
  });
}

/** Texts of figures shown smaller than can be read. */
export function smallTexts(page: Page): Promise<readonly string[]> {
  return page.evaluate((least) => {
    const found = [...document.querySelectorAll<SVGTextElement>('svg text')].flatMap((text) => {
      const matrix = text.checkVisibility() && text.textContent.trim() !== '' ? text.getScreenCTM() : null;
      if (matrix === null) return [];
      const scale = Math.sqrt(Math.abs(matrix.a * matrix.d - matrix.b * matrix.c));
      const size = parseFloat(getComputedStyle(text).fontSize) * scale;
      return size < least ? [`'${text.textContent.trim()}': ${size.toFixed(1)} px`] : [];
    });
    return [...new Set(found)];
  }, LEAST_TEXT);
}
