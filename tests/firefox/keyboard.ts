/** A hand with nothing but a keyboard, in a browser that speaks WebDriver BiDi. */
import type { KeyInput, Page } from 'puppeteer-core';

/** Presses of Tab within which every control of a page is reached from any other. */
const MOST_PRESSES = 200;

/** Contacts of one end in a row. */
const MOST_STEPS = 8;

/** What a page may take to show what was done, on a busy machine, milliseconds. */
const MOST_WAIT = 15_000;

/** Keys that wait for what the page shows. */
export class Keyboard {
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
  }

  /** Wait until each widget that wakes by itself is awake. */
  async awake(): Promise<void> {
    await this.page.waitForFunction(
      () =>
        document.querySelector('astro-island[ssr][client="load"]') === null &&
        document.querySelector('[aria-busy=true]') === null,
      { timeout: MOST_WAIT },
    );
  }

  /** Press a key, with Control or Shift held where so said: 'Control+z'. */
  async press(keys: string): Promise<void> {
    const held = keys.split('+') as KeyInput[];
    const last = held.pop();
    for (const key of held) await this.page.keyboard.down(key);
    if (last !== undefined) await this.page.keyboard.press(last);
    for (const key of held) await this.page.keyboard.up(key);
  }

  /** Type over what stands in the field with the focus. */
  async type(text: string): Promise<void> {
    await this.press('Control+a');
    await this.page.keyboard.type(text);
  }

  /**
   * Press Tab, or Shift and Tab, until what has the focus is called so. Throws with the way where it never comes there before the
   * end of the page: beyond it the focus is the browser's own, and the driver's keys press nothing more.
   */
  async reach(name: RegExp, way: 'on' | 'back' = 'on'): Promise<void> {
    const path: string[] = [];
    for (let press = 0; press < MOST_PRESSES; press += 1) {
      await this.press(way === 'on' ? 'Tab' : 'Shift+Tab');
      const here = await this.focused();
      if (name.test(here)) return;
      path.push(here.slice(0, 30));
      if (await this.page.evaluate(() => document.activeElement === document.body)) break;
    }
    throw new Error(`keyboard: ${String(name)} is not reached by Tab; the way: ${path.join(' | ')}`);
  }

  /** Walk with the arrow keys over the contacts of one end until that of this name has the focus. Throws where it never comes there. */
  async walkTo(end: RegExp, name: RegExp): Promise<void> {
    for (const [key, back] of [
      ['ArrowLeft', 'ArrowRight'],
      ['ArrowRight', 'ArrowLeft'],
      ['ArrowUp', 'ArrowDown'],
      ['ArrowDown', 'ArrowUp'],
    ] as const) {
      for (let press = 0; press < MOST_STEPS; press += 1) {
        const before = await this.focused();
        if (name.test(before)) return;
        await this.page.keyboard.press(key);
        if (!end.test(await this.focused())) await this.page.keyboard.press(back);
        if ((await this.focused()) === before) break;
      }
    }
    throw new Error(`keyboard: ${String(name)} is not reached by arrow keys, at '${await this.focused()}'`);
  }

  /** What is told of the control with the focus. */
  focused(): Promise<string> {
    return this.page.evaluate(() => {
      const here = document.activeElement;
      const labels =
        here instanceof HTMLInputElement || here instanceof HTMLSelectElement ? here.labels : null;
      return (here?.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? here?.textContent ?? '').trim();
    });
  }

  /** Wait until the part of the page that `selector` names says so. Throws with what it says where it does not. */
  async says(selector: string, words: RegExp): Promise<void> {
    const text = (): Promise<string> =>
      this.page.evaluate(
        (where) => [...document.querySelectorAll(where)].map((one) => one.textContent.trim()).join(' '),
        selector,
      );
    const end = performance.now() + MOST_WAIT;
    while (!words.test(await text())) {
      if (performance.now() > end)
        throw new Error(`${selector}: expected ${String(words)}, got '${(await text()).slice(0, 300)}'`);
      await this.page.evaluate(() => new Promise(requestAnimationFrame));
    }
  }
}
