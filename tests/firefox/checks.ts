/** What is done by keyboard alone in Firefox, and what the page must say of it. */
import type { Keyboard } from './keyboard.ts';

/** A page, and what is done on it. */
export interface Check {
  readonly title: string;
  readonly address: string;
  readonly work: (keyboard: Keyboard) => Promise<void>;
}

/** Join a contact of the output's plug with one of the input's. */
async function join(keyboard: Keyboard, from: string, to: string, way: 'on' | 'back'): Promise<void> {
  for (const [end, contact, there] of [
    [/^plug at the output/, from, way],
    [/^plug at the input/, to, 'on'],
  ] as const) {
    await keyboard.reach(end, there);
    await keyboard.walkTo(end, new RegExp(`put, ${contact}\\b`));
    await keyboard.press('Enter');
  }
}

/** Every check. */
export const CHECKS: readonly Check[] = [
  {
    title: 'on the bench a lead is wired, undone and laid again, and a length is typed',
    address: 'bench/',
    async work(keyboard) {
      await join(keyboard, 'pin 4', 'ring', 'on');
      await join(keyboard, 'pin 5', 'tip', 'back');
      await keyboard.says('.headline .outcome', /^Works$/);
      await keyboard.press('Control+z');
      await keyboard.says('.headline .outcome', /^No path$/);
      await keyboard.press('Control+Shift+z');
      await keyboard.says('.headline .outcome', /^Works$/);
      await keyboard.reach(/^Length, gauge, plugs and faults/);
      await keyboard.press('Enter');
      await keyboard.reach(/^Lead 1, length/);
      await keyboard.type('abc');
      await keyboard.press('Tab');
      await keyboard.says('[role=alert]', /expected a number .*, got 'abc'/);
    },
  },
  {
    title: 'in a lesson a question is answered, and the lead that it hides is mended',
    address: 'lessons/five-milliamp-loop/',
    async work(keyboard) {
      await keyboard.page.evaluate(() => document.querySelector('.predict')?.scrollIntoView());
      await keyboard.says('body', /Before you look/);
      await keyboard.page.waitForFunction(
        () => document.querySelector('.predict')?.closest('astro-island')?.hasAttribute('ssr') === false,
      );
      const question = '.predict:first-of-type';
      for (const key of [' ', 'ArrowDown'] as const) {
        await keyboard.page.focus(`${question} input[type=radio]`);
        await keyboard.press(key);
        await keyboard.reach(/^Answer$/);
        await keyboard.press('Enter');
        await keyboard.says(`${question} > .press [role=status]`, /^(Right|Not quite)\. /);
        const open = await keyboard.page.evaluate(
          () => document.querySelector('.predict > .explanation')?.checkVisibility() ?? false,
        );
        if (open) break;
      }
      await join(keyboard, 'pin 5', 'pin 5', 'on');
      await keyboard.says('#part-1 .headline .outcome', /^Works$/);
    },
  },
  {
    title: 'on the board the demo is opened, a device moved and taken off, and brought back',
    address: 'board/',
    async work(keyboard) {
      await keyboard.reach(/^Open the demo board$/);
      await keyboard.press('Enter');
      await keyboard.says('.headline', /8 devices/);
      await keyboard.reach(/^drive, device/);
      await keyboard.press('ArrowRight');
      await keyboard.press('Enter');
      await keyboard.reach(/^Remove drive$/);
      await keyboard.press('Enter');
      await keyboard.says('.headline', /7 devices/);
      await keyboard.press('Control+z');
      await keyboard.says('.headline', /8 devices/);
    },
  },
];
