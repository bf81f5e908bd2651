/** The front page: two jacks, what the manuals say and a drawer, by touch on a phone and by keyboard, judged against the core. */
import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import { sayAnswer, sayWhatToDo, willTheyTalk } from '../../src/core/answer/index.ts';
import { decidingReadings } from '../../src/core/readings/index.ts';
import { wakeIslands } from '../support/watch.ts';
import { stylesFor } from '../../src/core/wiring/index.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const sender = (page: Page): Locator => page.getByRole('group', { name: /^The jack on the sender/ });
const listener = (page: Page): Locator => page.getByRole('group', { name: /^The jack on the listener/ });
const answer = (page: Page): Locator => page.getByRole('region', { name: 'The answer' });

async function open(page: Page): Promise<void> {
  await page.goto('./');
  await wakeIslands(page);
}

/** A picture of a jack is pressed, for its round button is not seen; what the manual says has a button of its own. */
const tapJack = (group: Locator, words: string): Promise<void> => group.getByText(words).tap();
const tapSays = (group: Locator, name: RegExp): Promise<void> => group.getByRole('radio', { name }).tap();

test('DIN to Type B on 3.5 mm is named after three touches', async ({ page }) => {
  await open(page);
  await expect(answer(page)).toContainText('Choose the two jacks');
  await tapJack(sender(page), 'round, five holes (DIN)');
  await tapJack(listener(page), 'small jack, 3.5 mm');
  await tapSays(listener(page), /^Type B/);
  const expected = willTheyTalk(
    { direction: 'out', socket: 'din5', type: 'din' },
    { direction: 'in', socket: 'trs-3.5', type: 'type-b' },
    [],
  );
  await expect(answer(page)).toContainText(sayAnswer(expected));
  await expect(answer(page)).toContainText(sayWhatToDo(expected));
  await expect(answer(page)).toContainText('5-pin DIN to 3.5 mm TRS lead, Type B');
  // The drawing says the same, for eyes and for a listener.
  await expect(answer(page).getByRole('img', { name: /pin 4 to tip, pin 5 to ring/ })).toBeVisible();
});

test('the same by keyboard alone', async ({ page }) => {
  await open(page);
  await sender(page).getByRole('radio', { name: /DIN/ }).focus();
  await page.keyboard.press('Space');
  await listener(page).getByRole('radio', { name: /DIN/ }).focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  await expect(listener(page).getByRole('radio', { name: /3.5 mm/ })).toBeChecked();
  await listener(page)
    .getByRole('radio', { name: /^Type A/ })
    .focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowDown');
  await expect(answer(page)).toContainText('5-pin DIN to 3.5 mm TRS lead, Type B');
});

test('a manual that says ‘data on ring’ is read, with what is still open', async ({ page }) => {
  await open(page);
  await tapJack(sender(page), 'round, five holes (DIN)');
  await tapJack(listener(page), 'large jack');
  await tapSays(listener(page), /^My manual says/);
  await listener(page).getByRole('textbox').fill('data on ring');
  await expect(listener(page)).toContainText('Most likely data on the ring');
  await expect(listener(page)).toContainText('Still open: What is on the tip');
  await listener(page).getByRole('textbox').fill('signal on ring, tip not connected');
  await expect(listener(page)).not.toContainText('Still open');
  await expect(answer(page)).toContainText(/Yes/);
});

test('‘may I use my guitar lead?’ is answered with the harm it can do', async ({ page }) => {
  await open(page);
  await tapJack(sender(page), 'large jack');
  await tapSays(sender(page), /^Type A/);
  await tapJack(listener(page), 'large jack');
  await tapSays(listener(page), /^Type A/);
  await page.getByRole('checkbox', { name: 'guitar lead' }).tap();
  await expect(answer(page)).toContainText('Do not connect your guitar lead: it may damage a device.');
  // The bar that stays in sight on a phone says the harm too, and no good word.
  await expect(
    page.getByRole('button', { name: /^Do not connect your guitar lead.*to the whole answer$/ }),
  ).toBeVisible();
  await expect(answer(page)).toContainText('straight TRS lead, 6.35 mm');
});

test('what was told is there after a reload and in a link', async ({ page, context }) => {
  await open(page);
  await tapJack(sender(page), 'round, five holes (DIN)');
  await tapJack(listener(page), 'small jack, 3.5 mm');
  await tapSays(listener(page), /^Type A/);
  await page.getByRole('checkbox', { name: 'Type A adapter' }).tap();
  await page.getByRole('checkbox', { name: 'DIN lead' }).tap();
  await expect(answer(page)).toContainText('Yes, with your DIN lead, then your Type A adapter');
  await page.reload();
  await wakeIslands(page);
  await expect(answer(page)).toContainText('Yes, with your DIN lead, then your Type A adapter');
  const other = await context.newPage();
  await other.goto(page.url());
  await expect(answer(other)).toContainText('Yes, with your DIN lead, then your Type A adapter');
});

test('an address that tells what cannot be is taken as far as it can, and what is refused stands in view', async ({
  page,
}) => {
  await page.goto('./#out-socket=hat&in-socket=trs-3.5&in-says=type-b&drawer=spoon+din');
  await wakeIslands(page);
  await expect(listener(page).getByRole('radio', { name: /3.5 mm/ })).toBeChecked();
  await expect(answer(page)).toContainText('Now the sender');
  const refused = page.getByRole('alert');
  await expect(refused).toBeInViewport();
  await expect(refused.getByRole('listitem')).toHaveText([
    "Jack on the sender: expected one of din5, trs-6.35, trs-3.5, trs-2.5, got 'hat'.",
    /^Drawer: expected one of .*, got 'spoon'\.$/,
  ]);
  await expect(page.getByRole('checkbox', { name: 'DIN lead' })).toBeChecked();
  // A link that is opened in the page that is open already.
  await page.goto('./#out-socket=din5&in-socket=trs-3.5&in-says=type-b');
  await expect(answer(page)).toContainText('5-pin DIN to 3.5 mm TRS lead, Type B');
  await expect(refused).toHaveCount(0);
});

/** Take a choice by keyboard: come to it, then press the space bar. */
async function press(page: Page, choice: Locator): Promise<void> {
  await choice.focus();
  await page.keyboard.press('Space');
}

test('by keyboard a manual that says ‘data on ring’ is read, and the guitar lead is answered with its harm', async ({
  page,
}) => {
  await open(page);
  await press(page, sender(page).getByRole('radio', { name: /^large jack/ }));
  await press(page, sender(page).getByRole('radio', { name: /^Type A/ }));
  await press(page, listener(page).getByRole('radio', { name: /^large jack/ }));
  await press(page, listener(page).getByRole('radio', { name: /^My manual says/ }));
  await page.keyboard.press('Tab');
  await page.keyboard.type('data on ring');
  await expect(listener(page)).toContainText('Most likely data on the ring');
  await expect(listener(page)).toContainText('Still open');
  await press(page, listener(page).getByRole('radio', { name: /^Type A/ }));
  await press(page, page.getByRole('checkbox', { name: 'guitar lead' }));
  await expect(answer(page)).toContainText('Do not connect your guitar lead: it may damage a device.');
});

test('where the manual says nothing, readings with a meter name the type, and the answer follows', async ({
  page,
}) => {
  await open(page);
  await tapJack(sender(page), 'round, five holes (DIN)');
  await tapJack(listener(page), 'small jack');
  await tapSays(listener(page), /^Nothing, or there is no manual/);
  await answer(page)
    .getByText(/^Find out the type of the listener/)
    .tap();
  // The first readings for a connector are thousands of solved circuits: long on two busy cores.
  await expect(answer(page).getByText(/^Reading 3/)).toBeVisible({ timeout: 60_000 });
  const deciding = decidingReadings('in', 'trs-3.5', stylesFor('in', 'trs-3.5'), false);
  // What a meter would show on a Type B listener, as the core counts its devices.
  const wanted = [...deciding.shown].sort(
    (one, other) => (other.shares['type-b'] ?? 0) - (one.shares['type-b'] ?? 0),
  )[0];
  for (const [at, { displays }] of deciding.readings.slice(0, 3).entries()) {
    const words = displays[wanted?.displays[at] ?? 0] ?? '';
    const reading = answer(page).getByRole('group', { name: new RegExp(`^Reading ${at + 1}`) });
    await reading
      .getByRole('radio', { name: words.replace(/\bOL$/, 'OL (overload: no number)'), exact: true })
      .tap();
    await expect(reading.getByRole('radio', { checked: true })).toHaveCount(1);
  }
  await expect(answer(page)).toContainText('Type B: pin 4 on the tip.');
  await answer(page).getByRole('button', { name: 'Answer for this type' }).tap();
  await expect(listener(page).getByRole('radio', { name: /^Type B/ })).toBeChecked();
  await expect(answer(page)).toContainText('Ask for: a 5-pin DIN to 3.5 mm TRS lead, Type B.');
});

test('two tabs do not clash: what the newer one puts in hand is in hand, and the older one keeps its own answer', async ({
  page,
  context,
}) => {
  await open(page);
  await tapJack(sender(page), 'round, five holes (DIN)');
  await tapJack(listener(page), 'small jack');
  await tapSays(listener(page), /^Type A/);
  const other = await context.newPage();
  await open(other);
  await tapSays(listener(other), /^Type B/);
  await expect(answer(other)).toContainText('3.5 mm TRS lead, Type B');
  await expect(answer(page)).toContainText('3.5 mm TRS lead, Type A');
  const sheet = await context.newPage();
  await sheet.goto('./cable-sheet/');
  await wakeIslands(sheet);
  // Pin 4 to the tip is Type B: the lead of the tab that was worked in last.
  await expect(sheet.getByRole('row', { name: 'source pin 4 tip' })).toBeVisible();
});

/** Words that ask for electronics: none of them before 'Why?' or 'I know more' is opened. */
const ELECTRONICS =
  /\b(?:current|milliamp\w*|amperes?|mA|volts?|voltage|ohms?|circuits?|optocouplers?|resistors?|diodes?|LEDs?|source line|sink|impedance|isolated|supply|6N138)\b/i;

test('no word of electronics stands on the page before ‘Why?’ is opened', async ({ page }) => {
  await open(page);
  await tapJack(sender(page), 'small jack');
  await tapSays(sender(page), /^Nothing, or there is no manual/);
  await tapJack(listener(page), 'large jack');
  await tapSays(listener(page), /^Nothing, or there is no manual/);
  for (const name of ['DIN lead', 'guitar lead', 'Type B adapter'])
    await page.getByRole('checkbox', { name }).tap();
  await expect(answer(page)).toContainText('What each type it can be would need');
  const text = await page.getByRole('main').innerText();
  expect(ELECTRONICS.exec(text)?.[0]).toBeUndefined();
  await answer(page).getByText('Why?').tap();
  expect(ELECTRONICS.test(await page.getByRole('main').innerText())).toBe(true);
});
