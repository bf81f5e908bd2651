import { expect, type Locator, type Page } from '@playwright/test';

/** A role, or the heading of a fold, which has none. */
type Kind = Parameters<Page['getByRole']>[0] | 'fold';

/** Presses of Tab within which every control of a page is reached from any other. */
const MOST_PRESSES = 150;

/** What a page was touched with, counted by the page itself. */
interface Touched {
  readonly mouse: number;
  readonly finger: number;
  readonly keys: number;
}

declare global {
  interface Window {
    touched?: { mouse: number; finger: number; keys: number };
  }
}

/** Let a page count what it is touched with; to be called before it is opened. */
export async function countTouches(page: Page): Promise<() => Promise<Touched>> {
  await page.addInitScript(() => {
    const touched = { mouse: 0, finger: 0, keys: 0 };
    window.touched = touched;
    addEventListener(
      'pointerdown',
      ({ pointerType }) => void (touched[pointerType === 'mouse' ? 'mouse' : 'finger'] += 1),
      true,
    );
    addEventListener('keydown', () => void (touched.keys += 1), true);
  });
  return () => page.evaluate(() => window.touched ?? { mouse: NaN, finger: NaN, keys: NaN });
}

/** A hand that has nothing but a keyboard. */
interface Keys {
  /**
   * Press Tab, or Shift and Tab, until the control of this kind and name has the focus, and no further than once round the
   * page. Throws with the way that the focus went where it never comes there.
   */
  readonly reach: (kind: Kind, name: string | RegExp, way?: 'on' | 'back') => Promise<void>;
  /** Press a key or keys together. */
  readonly press: (key: string) => Promise<void>;
  readonly type: (text: string) => Promise<void>;
  /** Expect the control with the focus to be of this kind and name: the focus was not lost with what was pressed. */
  readonly isAt: (kind: Kind, name: string | RegExp) => Promise<void>;
}

/** A keyboard for a page. */
export function keysOf(page: Page): Keys {
  const focused = page.locator(':focus');
  const control = (kind: Kind, name: string | RegExp): Locator =>
    kind === 'fold' ? page.locator('summary', { hasText: name }) : page.getByRole(kind, { name });
  return {
    async reach(kind, name, way = 'on') {
      const wanted = control(kind, name);
      await wanted.first().waitFor();
      // Found once: to look the whole page through at each press would take most of the time.
      const handles = await wanted.elementHandles();
      const path: string[] = [];
      for (let press = 0; press < MOST_PRESSES; press += 1) {
        await page.keyboard.press(way === 'on' ? 'Tab' : 'Shift+Tab');
        const { there, says } = await page.evaluate((targets) => {
          const here = document.activeElement;
          return {
            there: targets.some((target) => target === here),
            says: here?.getAttribute('aria-label') ?? (here?.textContent ?? '').trim().slice(0, 30),
          };
        }, handles);
        if (there) return;
        path.push(says);
      }
      throw new Error(
        `keyboard: ${kind} ${String(name)} is not reached by Tab; the way: ${path.join(' | ')}`,
      );
    },
    press: (key) => page.keyboard.press(key),
    type: (text) => page.keyboard.type(text),
    isAt: (kind, name) => expect(control(kind, name).and(focused)).toHaveCount(1),
  };
}

/**
 * Touch a field and put text in its place, as the keyboard on the screen does: without a key of a real one. The field must
 * let what it holds be replaced by typing when it is touched.
 */
export async function touchIn(page: Page, field: Locator, text: string): Promise<void> {
  await field.tap();
  await page.keyboard.insertText(text);
  await field.evaluate((input: HTMLElement) => input.blur());
}
