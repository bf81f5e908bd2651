import { expect, test } from '../support/test.ts';
import { links as loop } from '../../content/lessons/01-five-milliamp-loop/data.ts';
import { links as makers } from '../../content/lessons/03-why-makers-differ/data.ts';
import { links as long } from '../../content/lessons/06-how-long-is-too-long/data.ts';
import { links as chain, press } from '../../content/lessons/07-why-a-chain-wears-bits-out/data.ts';
import { links as inside, note } from '../../content/lessons/08-inside-the-input/data.ts';
import { readManual, sayType } from '../../src/core/answer/index.ts';
import { sayHeard, sendOver, solve, type AuthoredLink } from '../../src/core/learn/index.ts';
import { sendingInWords } from '../../src/core/signal/index.ts';
import type { Journey } from '../../src/core/signal/index.ts';
import { openPart } from '../support/lesson-page.ts';
import { lessonFolders } from '../support/lesson-text.ts';
import { wakeIslands } from '../support/watch.ts';

const sentence = (link: AuthoredLink): string => solve(link).sentence;

/** What the core says of a program change sent over a link of a lesson. */
const arrival = (link: AuthoredLink, journey: Partial<Journey>): string =>
  sendingInWords(sendOver(link, press, journey).sending);

test('in the lesson of the loop the way back is laid by keyboard alone, and the current flows', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/five-milliamp-loop/', 1);
  await expect(part).toContainText('Change the wiring, and the verdict stands here.');
  await expect(part).not.toContainText(sentence(loop.noWayBack));
  await part.getByRole('button', { name: /^plug at the output, pin 5/ }).press('Enter');
  await part.getByRole('button', { name: /^plug at the input, pin 5/ }).press('Enter');
  await expect(part).toContainText(sentence(loop.whole));
});

test('in the lesson of the loop a bit is turned by keyboard, and the current follows', async ({ page }) => {
  const part = await openPart(page, '/lessons/five-milliamp-loop/', 2);
  const line = part.getByRole('img', { name: /^Current in the order of sending/ });
  await expect(line).toHaveAccessibleName(/: on, off, off, off, off, off, off, off, off, off\.$/);
  await part.getByRole('button', { name: 'Bit 2: 1' }).press('Space');
  await expect(line).toHaveAccessibleName(/: on, off, on, off, off, off, off, off, off, off\.$/);
  await expect(part.getByRole('button', { name: 'Bit 2: 0' })).toBeFocused();
  await expect(part.locator('.byte').getByRole('status')).toHaveText(/^Bit 2 is 0: \d\.\d mA\.$/);
});

test('in the lesson of the loop the pair is swapped with an arrow key, and the core says the same', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/five-milliamp-loop/', 3);
  const status = part.locator('.ways').getByRole('status');
  await expect(status).toHaveText('Choose one, and the verdict stands here.');
  await part.getByRole('radio', { name: 'pair right' }).click();
  await expect(status).toHaveText(sentence(loop.whole));
  await page.keyboard.press('ArrowRight');
  await expect(status).toHaveText(sentence(loop.swapped));
  await expect(part.getByRole('img', { name: /source and sink crossed/ })).toBeVisible();
});

test('in the lesson of contacts the plug is turned over with an arrow key, and pin 4 changes sides', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/contacts-and-where-to-look-from/', 1);
  const status = part.locator('.turn').getByRole('status');
  await expect(status).toHaveText('mating face, key down, left to right: pin 3, pin 5, pin 2, pin 4, pin 1.');
  await part.getByRole('radio', { name: 'mating face' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(status).toHaveText('solder side, key down, left to right: pin 1, pin 4, pin 2, pin 5, pin 3.');
});

test('in the lesson of makers the missing wire of the adapter is laid by keyboard alone', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/why-makers-differ/', 2);
  await part.getByRole('button', { name: /^jack of lead 2, tip/ }).press('Enter');
  await part.getByRole('button', { name: /^plug at the input, ring/ }).press('Enter');
  await expect(part).toContainText(sentence(makers.adapter));
});

test('in the lesson of bits the byte 80 is typed in place of 01, and its 1 leaves last', async ({ page }) => {
  const part = await openPart(page, '/lessons/bits-on-the-wire/', 2);
  const bits = part.locator('svg .bit');
  await expect(bits.nth(1)).toHaveText('1');
  await part.getByLabel('bytes, hex').fill('80');
  await part.getByLabel('bytes, hex').press('Tab');
  await expect(bits.nth(1)).toHaveText('0');
  await expect(bits.nth(8)).toHaveText('1');
});

test('in the lesson of length a second link garbles what one very long lead delivers', async ({ page }) => {
  const part = await openPart(page, '/lessons/how-long-is-too-long/', 4);
  const status = part.locator('.send').getByRole('status');
  await expect(status).toHaveText(arrival(long.lowFar, {}));
  await part.getByLabel('links in a chain').fill('2');
  await part.getByLabel('links in a chain').press('Tab');
  await expect(status).toHaveText(arrival(long.lowFar, { hops: 2 }));
});

test('in the lesson of chains the fourth link garbles, and the base resistor mends', async ({ page }) => {
  const part = await openPart(page, '/lessons/why-a-chain-wears-bits-out/', 2);
  const status = part.locator('.send').getByRole('status');
  const say = (hops: number, baseResistor: boolean): string =>
    arrival(
      { ...chain.bare, input: { ...chain.bare.input, values: { loadOhms: 1200 } } },
      { hops, baseResistor },
    );
  await expect(status).toHaveText(say(3, false));
  await part.getByLabel('links in a chain').fill('4');
  await part.getByLabel('links in a chain').press('Tab');
  await expect(status).toHaveText(say(4, false));
  await part.getByRole('checkbox', { name: /base resistor/ }).press('Space');
  await expect(status).toHaveText(say(4, true));
  // So many links are sent through in the background.
  await part.getByLabel('links in a chain').fill('64');
  await part.getByLabel('links in a chain').press('Tab');
  await expect(status).toHaveText(say(64, true));
});

test('inside the input pull-up, sender and row are changed by keyboard, and what is heard is what the core hears', async ({
  page,
}) => {
  const heard = (link: AuthoredLink, hops = 1): string => `Heard ${sayHeard(link, note, hops)}.`;
  const pulled = (loadOhms: number): AuthoredLink => ({
    ...inside.small,
    input: { ...inside.small.input, values: { loadOhms, baseOhms: 0 } },
  });
  const second = await openPart(page, '/lessons/inside-the-input/', 2);
  const status = second.locator('.inside').getByRole('status');
  await expect(status).toContainText(heard(inside.small));
  const slider = second.getByRole('slider', { name: 'Pull-up' });
  await slider.focus();
  await page.keyboard.press('Home');
  await expect(slider).toHaveAttribute('aria-valuetext', '220 ohm');
  await expect(status).toContainText(heard(pulled(220)));
  await page.keyboard.press('End');
  await expect(status).toContainText(heard(pulled(10e3)));
  const third = await openPart(page, '/lessons/inside-the-input/', 3);
  await expect(third.locator('.inside').getByRole('status')).toContainText(heard(inside.unheard));
  await third.getByLabel('Sender').selectOption('5 V');
  await expect(third.locator('.inside').getByRole('status')).toContainText(heard(inside.heard));
  const fourth = await openPart(page, '/lessons/inside-the-input/', 4);
  await expect(fourth.locator('.inside').getByRole('status')).toContainText(heard(inside.slow, 2));
  await fourth.getByLabel('Inputs in a row').selectOption('1');
  await expect(fourth.locator('.inside').getByRole('status')).toContainText(heard(inside.slow));
});

test('a player who has chosen the way is led past the lessons that are not on it, and finds it again', async ({
  page,
}) => {
  await page.goto('./lessons/');
  await wakeIslands(page);
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(lessonFolders().length);
  await page.getByRole('radio', { name: /^Player: / }).check();
  await expect(page.getByRole('heading', { level: 2, name: 'Bits on the wire' })).toHaveCount(0);
  await page.getByRole('link', { name: 'Reading a manual' }).click();
  await wakeIslands(page);
  await expect(page.getByRole('link', { name: 'Next, 5 of 8: Ask the jack' })).toBeVisible();
  await expect(page.getByRole('link', { name: /^Next/ })).toHaveCount(1);
  await page.getByRole('link', { name: 'All lessons' }).click();
  await wakeIslands(page);
  await expect(page.getByRole('radio', { name: /^Player: / })).toBeChecked();
  await page.goto('./lessons/#all');
  await page.reload();
  await wakeIslands(page);
  await expect(page.getByRole('radio', { name: /^Builder or student: / })).toBeChecked();
});

test('in reading a manual words are chosen and typed, and a letter stands where something is open', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/reading-a-manual/', 3);
  const status = part.locator('.read-manual').getByRole('status');
  await expect(status).toHaveText('Choose some words, and see what they tell.');
  await part.getByRole('radio', { name: '‘tip = pin 5’' }).press('Space');
  await expect(status).toContainText(readManual('tip = pin 5', 'in').questions[0] ?? 'a question');
  await expect(part.getByText('Which DIN pin is on the tip, which on the ring')).toBeVisible();
  await part.getByRole('textbox').fill('tip = pin 5, ring = pin 4');
  await expect(status).toContainText(sayType('type-a'));
  await expect(part.getByText('A letter to the maker')).toHaveCount(0);
});

test('in setting up a message is sent by keyboard, and a channel of its own parts two pedals', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/setting-up-once/', 1);
  const status = part.locator('.who-acts').getByRole('status');
  await part.getByRole('button', { name: 'Send it' }).press('Enter');
  await expect(status).toHaveText('A program change on channel 1 leaves as C0 04. echo and drive act on it.');
  await part.getByRole('group', { name: 'drive' }).getByLabel('channel').selectOption('2');
  await expect(status).toHaveText('A program change on channel 1 leaves as C0 04. echo acts on it.');
});
