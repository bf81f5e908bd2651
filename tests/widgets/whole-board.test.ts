import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import { checkBoard, sayPrice, shoppingList } from '../../src/core/board/index.ts';
import { planBoard } from '../../src/core/planner/index.ts';
import { readPlanText } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { countTouches, keysOf, touchIn } from '../support/hands.ts';
import { wakeIslands } from '../support/watch.ts';
import { runThrough } from '../../src/core/signal/index.ts';

const KEY = 'five-milliamps board';
const SWITCHER = 'foot controller with DIN OUT';
const ECHO = 'echo with DIN IN and THRU';
const CHORUS = 'chorus with TRS IN and THRU, Type B';
const DRIVE = 'drive with TRS IN, Type A';
const OWN = 'spring tank';

const OFFERS = /^Leads and hubs available/;
const PRESS = /^One footswitch press$/;
const RESULTS = /^Results to take away/;
const DEVICE_FIELDS = /^Name, kind, channel/;

/** The plan of a small board takes well under a second on a free machine, and more on a busy one. */
const PLANNED = { timeout: 30_000 } as const;

const headline = (page: Page): Locator => page.locator('.headline').first();
const word = (page: Page): Locator => page.locator('p.word');
const region = (page: Page, name: string): Locator => page.getByRole('region', { name });
const take = (page: Page): Locator => page.getByRole('button', { name: /^Take this plan/ }).first();
const total = (page: Page): Locator =>
  page.getByRole('article', { name: 'Lists' }).getByRole('row', { name: /^in all/ });

/** A device in the drawing of the demo board: its middle in the window, and its width without the line round it, pixels. */
async function drive(page: Page): Promise<{ x: number; y: number; width: number }> {
  const outline = page.locator('[data-device="drive"].device > rect');
  const box = await outline.boundingBox();
  if (!box) throw new Error("test: needs 'drive' in the drawing, got none");
  const width = Number(await outline.getAttribute('width'));
  return { x: box.x + box.width / 2, y: box.y + box.height / 2, width };
}

/** The plan that the page keeps in the browser, when it is kept with what `holds` asks for. */
async function keptPlan(page: Page, holds: (plan: Plan) => boolean): Promise<Plan> {
  let kept: Plan | undefined;
  const look = async (): Promise<boolean> => {
    const text = (await page.evaluate((key) => localStorage.getItem(key), KEY)) ?? '';
    const reading = readPlanText(text.slice(text.indexOf('\n') + 1));
    kept = reading.ok ? reading.plan : undefined;
    return kept !== undefined && holds(kept);
  };
  await expect.poll(look).toBe(true);
  if (!kept) throw new Error('test: needs a kept plan, got none');
  return kept;
}

/** Least cost of a board, planned by the core to the end. */
function leastCost(plan: Plan): number {
  const end = runThrough(planBoard(plan));
  if (!end.ok) throw new Error(end.why);
  return end.best.cost;
}

/** The board is planned, and the list on the page says what the core says of the plan that is kept. */
async function expectPlanned(page: Page, channels: Readonly<Record<string, number>>): Promise<void> {
  const plan = await keptPlan(page, ({ links, press = [] }) => links.length >= 3 && press.length > 0);
  expect(Object.fromEntries(plan.devices.map(({ name, channel = 0 }) => [name, channel]))).toMatchObject(
    channels,
  );
  const { passes, outcomes } = checkBoard(plan);
  expect(passes).toBe(true);
  expect(new Set(outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['flows']));
  const list = shoppingList(plan);
  expect(list.total).toBeGreaterThan(0);
  expect(list.total).toBeCloseTo(leastCost(plan), 6);
  await expect(total(page)).toContainText(sayPrice(list.total, 'thalers'));
  await expect(headline(page)).toContainText('This board works');
}

test('a whole board is planned by keyboard alone, from empty to shopping list', async ({ page }) => {
  const touches = await countTouches(page);
  await page.goto('./board/');
  await wakeIslands(page);
  const keys = keysOf(page);

  for (const name of [SWITCHER, ECHO, CHORUS]) {
    // From the button that was pressed last, the list is one step back.
    await keys.reach('combobox', 'From the library', name === SWITCHER ? 'on' : 'back');
    await keys.type(name);
    await keys.reach('button', 'Add it');
    await keys.press('Enter');
    await expect(word(page)).toContainText(`'${name}' is on the board`);
    await keys.isAt('button', 'Add it');
  }
  await keys.reach('button', 'Add your own device');
  await keys.press('Space');
  await keys.reach('textbox', 'Name');
  await keys.type(OWN);
  await keys.reach('textbox', 'Channel (0: none)');
  await keys.type('3');
  await keys.reach('button', 'Put it on the board');
  await keys.press('Enter');
  await expect(word(page)).toContainText(`'${OWN}' is on the board`);
  // The button is gone with the form; the focus is where the form was opened.
  await keys.isAt('button', 'Add your own device');

  // A channel for each of the other two, each in its own panel.
  await keys.reach('button', new RegExp(`^${ECHO}, device`), 'back');
  await keys.press('Enter');
  await keys.reach('fold', DEVICE_FIELDS);
  await keys.press('Enter');
  await keys.reach('textbox', 'Channel (0: none)');
  await keys.type('1');
  await keys.press('Enter');
  await keys.reach('button', new RegExp(`^${CHORUS}, device`), 'back');
  await keys.press('Enter');
  await keys.reach('textbox', 'Channel (0: none)');
  await keys.type('2');
  await keys.press('Enter');

  await keys.reach('fold', OFFERS);
  await keys.press('Enter');
  await keys.reach('combobox', 'Commonly ready made');
  await keys.press('ArrowDown');
  await keys.reach('button', 'Add this lead');
  await keys.press('Enter');
  await keys.isAt('button', 'Add this lead');
  await keys.reach('textbox', 'price', 'back');
  await keys.type('7,5');
  await keys.reach('textbox', /^Sign or letters/);
  await keys.type('thalers');
  await keys.reach('textbox', 'Any plug');
  await keys.type('4');
  await keys.press('Enter');

  await keys.reach('fold', /^Plan it for me$/);
  await keys.press('Enter');
  await keys.reach('button', 'Plan it for me');
  await keys.press('Enter');
  await expect(take(page)).toBeVisible(PLANNED);
  await keys.isAt('button', 'Plan it for me');
  await keys.reach('button', /^Take this plan/);
  await keys.press('Enter');
  await keys.isAt('button', 'Plan it for me');

  await keys.reach('fold', PRESS);
  await keys.press('Enter');
  await keys.reach('combobox', 'Send a');
  await keys.reach('combobox', 'to');
  await keys.type(CHORUS);
  await keys.reach('button', 'Add this message');
  await keys.press('Enter');
  await keys.reach('textbox', 'program, from 1', 'back');
  await keys.type('12');
  await keys.press('Enter');
  await expect(page.locator('.press .state')).toContainText('Every device has its last message after');

  await keys.reach('fold', RESULTS);
  await keys.press('Enter');
  await keys.reach('radio', /^board sheet/);
  await keys.press('ArrowDown');
  await keys.isAt('radio', /^lists/);
  await expect(total(page)).toBeVisible();

  await expectPlanned(page, { [ECHO]: 1, [CHORUS]: 2, [OWN]: 3 });
  const { press = [] } = await keptPlan(page, () => true);
  expect(press).toEqual([{ device: CHORUS, send: 'program', program: 12 }]);
  const { mouse, finger } = await touches();
  expect({ mouse, finger }).toEqual({ mouse: 0, finger: 0 });
});

test.describe('on a narrow screen with nothing but fingers', () => {
  test.use({ hasTouch: true, isMobile: true, viewport: { width: 390, height: 844 } });

  test('a whole board is planned by touch alone, from empty to shopping list', async ({ page }) => {
    const touches = await countTouches(page);
    await page.goto('./board/');
    await wakeIslands(page);
    const press = (name: string | RegExp): Promise<void> =>
      page.getByRole('button', { name, exact: true }).tap();
    const unfold = (name: string | RegExp): Promise<void> => page.locator('summary', { hasText: name }).tap();

    // The list of a select is drawn by the device, not by the page: what it chose is handed over as it hands it over.
    for (const name of [SWITCHER, ECHO, CHORUS, DRIVE]) {
      await page.getByLabel('From the library').tap();
      await page.getByLabel('From the library').selectOption(name);
      await press('Add it');
      await expect(word(page)).toContainText(`'${name}' is on the board`);
      // It was pressed far below: the page goes to what is said, above the drawing.
      await expect(word(page)).toBeInViewport();
    }
    const drawn = page.getByRole('group', { name: 'Drawn board' });
    for (const [at, name] of [ECHO, CHORUS, DRIVE].entries()) {
      await drawn.getByRole('button', { name: new RegExp(`^${name}, device`) }).tap();
      const panel = region(page, `Device ${name}`);
      if (at === 0) await panel.locator('summary', { hasText: DEVICE_FIELDS }).tap();
      await touchIn(page, panel.getByLabel('Channel (0: none)'), String(at + 4));
      await expect(panel.getByLabel('Channel (0: none)')).toHaveValue(String(at + 4));
    }

    await unfold(OFFERS);
    const leads = region(page, 'Leads available');
    await leads.getByLabel('Commonly ready made').selectOption({ index: 1 });
    await press('Add this lead');
    await touchIn(page, leads.getByLabel('I own'), '1');
    await expect(leads).toContainText('no cost');
    await touchIn(page, page.getByLabel(/^Sign or letters/), 'thalers');
    await touchIn(page, page.getByLabel('Cable, by the metre'), '2,5');

    await unfold(/^Plan it for me$/);
    await press('Plan it for me');
    await expect(take(page)).toBeVisible(PLANNED);
    await take(page).tap();

    await unfold(PRESS);
    await press(/^Add one for each of the/);
    await expect(page.getByText('Added 3 messages.')).toBeAttached();
    await touchIn(page, page.getByLabel('program, from 1').first(), '12');
    await expect(page.locator('.press .state')).toContainText('Every device has its last message after');

    await unfold(RESULTS);
    await page.getByText('cable schedule and shopping list').tap();
    await expect(total(page)).toBeVisible();
    const hidden = await page
      .getByRole('article', { name: 'Lists' })
      .locator('.scroll')
      .evaluateAll((all) => all.map((one) => one.scrollWidth - one.clientWidth));
    expect(hidden).toEqual([0, 0]);

    await expectPlanned(page, { [ECHO]: 4, [CHORUS]: 5, [DRIVE]: 6 });
    const plan = await keptPlan(page, () => true);
    expect(plan.press?.map(({ device }) => device)).toEqual([ECHO, CHORUS, DRIVE]);
    expect(plan.press?.[0]).toMatchObject({ send: 'program', program: 12 });
    const { mouse, keys } = await touches();
    expect({ mouse, keys }).toEqual({ mouse: 0, keys: 0 });
  });

  test('two fingers spread on the drawing zoom it by as much, about the point between them', async ({
    page,
  }) => {
    await page.goto('./board/');
    await wakeIslands(page);
    await page.getByRole('button', { name: 'Open the demo board' }).first().tap();
    const drawn = page.getByRole('group', { name: 'Drawn board' });
    await drawn.locator('.view').scrollIntoViewIfNeeded();
    const before = await drive(page);
    // 40 pixels to the right of the middle of the device, so that its way from the fingers is seen to grow with it.
    const middle = { x: before.x + 40, y: before.y };
    const touch = await page.context().newCDPSession(page);
    const fingers = (apart: number): Promise<unknown> =>
      touch.send('Input.dispatchTouchEvent', {
        type: apart === 40 ? 'touchStart' : 'touchMove',
        touchPoints: [-1, 1].map((side, id) => ({ id, x: middle.x + (side * apart) / 2, y: middle.y })),
      });
    for (const apart of [40, 50, 60, 70, 80]) await fingers(apart);
    await touch.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
    // From 40 to 80 pixels apart: twice as large.
    await expect.poll(async () => (await drive(page)).width / before.width).toBeCloseTo(2, 2);
    const after = await drive(page);
    // A view scrolls by whole pixels.
    expect(Math.abs(after.x - middle.x + 80)).toBeLessThan(2);
    // It is the drawing that has grown, and not the page.
    expect(await page.evaluate(() => visualViewport?.scale)).toBe(1);
    await drawn.getByRole('button', { name: 'Whole board' }).tap();
    await expect.poll(async () => (await drive(page)).width).toBeCloseTo(before.width, 1);
  });
});

test('the wheel with Control zooms the drawing about the pointer, and without it scrolls the page', async ({
  page,
}) => {
  await page.goto('./board/');
  await wakeIslands(page);
  await page.getByRole('button', { name: 'Open the demo board' }).first().click();
  await page.getByRole('group', { name: 'Drawn board' }).locator('.view').scrollIntoViewIfNeeded();
  const before = await drive(page);
  const grown = async (): Promise<number> => (await drive(page)).width / before.width;
  // 30 pixels to the left of the middle of the device, so that its way from the pointer is seen to grow with it.
  const at = { x: before.x - 30, y: before.y };
  await page.mouse.move(at.x, at.y);
  await page.keyboard.down('Control');
  await page.mouse.wheel(0, -100);
  // By the square root of e for a hundred pixels of the wheel.
  await expect.poll(grown).toBeCloseTo(Math.sqrt(Math.E), 2);
  // A view scrolls by whole pixels.
  expect(Math.abs((await drive(page)).x - at.x - 30 * Math.sqrt(Math.E))).toBeLessThan(1);
  await page.mouse.wheel(0, 100);
  await page.keyboard.up('Control');
  await expect.poll(grown).toBeCloseTo(1, 2);
  const scrolled = (): Promise<number> => page.evaluate(() => scrollY);
  const top = await scrolled();
  await page.mouse.wheel(0, 100);
  await expect.poll(scrolled).toBeGreaterThan(top);
  expect(await grown()).toBeCloseTo(1, 2);
});
