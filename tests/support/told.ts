/** All that a page tells, to eyes, ears and whoever reads its source: where an answer could be found. */
import type { Page } from '@playwright/test';

/** Attributes that hold places, shapes and sizes alone. */
const SHAPES = [
  ...['d', 'x', 'y', 'x1', 'x2', 'y1', 'y2', 'cx', 'cy', 'r', 'rx', 'points', 'transform'],
  ...['width', 'height', 'viewBox', 'font-size', 'stroke-width', 'style', 'size'],
];

/**
 * Every text, attribute and value in the document, hidden or not, and the accessibility tree, a line each. Scripts, styles and
 * pictures' shapes are left out.
 */
export async function toldOn(page: Page): Promise<readonly string[]> {
  const inDocument = await page.evaluate((shapes) => {
    const found: string[] = [document.title];
    for (const element of document.querySelectorAll('body, body *')) {
      if (element.matches('script, style')) continue;
      for (const { name, value } of element.attributes)
        if (!shapes.includes(name)) found.push(`${name}=${value}`);
      if ('value' in element) found.push(`value=${String(element.value)}`);
      for (const node of element.childNodes)
        if (node.nodeType !== Node.ELEMENT_NODE && node.textContent !== null) found.push(node.textContent);
      // A sentence may be made of several pieces of text.
      if (
        element.children.length === 0 ||
        element.matches('p, li, td, th, dd, figcaption, label, button, summary')
      )
        found.push(element.textContent ?? '');
    }
    return found;
  }, SHAPES);
  const tree = await page.locator('body').ariaSnapshot();
  return [...inDocument, ...tree.split('\n')]
    .map((line) => line.replace(/\s+/g, ' ').trim())
    .filter((line) => line !== '');
}

/** Something that must not be told: a word or number that stands alone, or a pattern. */
export type Secret = string | RegExp;

/** Which of some secrets are told, each with the line that tells it. `open` are lines that may hold them: the question itself. */
export function givenAway(
  told: readonly string[],
  secrets: readonly Secret[],
  open: readonly string[],
): readonly string[] {
  const rest = told.map((line) => open.reduce((left, one) => left.replaceAll(one, ''), line));
  return secrets.flatMap((secret) => {
    const pattern =
      typeof secret === 'string'
        ? new RegExp(
            `(?<![0-9A-Za-z]|\\d\\.)${secret.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}(?![0-9A-Za-z]|\\.\\d)`,
          )
        : secret;
    return rest.filter((line) => pattern.test(line)).map((line) => `${String(secret)} in '${line}'`);
  });
}
