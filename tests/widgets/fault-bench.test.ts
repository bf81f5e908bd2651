import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import {
  answerFaults,
  benchTable,
  faultName,
  gradeFault,
  guide,
  hideNumberedFault,
  remedyFor,
  sayBoardFault,
  USUAL_FREQUENCIES,
} from '../../src/core/faults/index.ts';
import type { Seen } from '../../src/core/faults/index.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { followGuide } from '../support/guided.ts';
import { wakeIslands, watch } from '../support/watch.ts';

const bench = (page: Page) => page.getByRole('region', { name: 'Find the fault' });
const ending = (page: Page) => page.getByRole('region', { name: 'What it was' });
const helper = (page: Page) => page.getByRole('region', { name: 'Nothing arrives' });
const question = (page: Page) => page.getByRole('region', { name: 'Next question' });

/** A part of the drawn board. */
const part = (page: Page, place: string) =>
  bench(page).getByRole('list', { name: 'The board' }).getByRole('button', { name: place });

async function open(page: Page): Promise<void> {
  await page.goto('./fault-bench/');
  await wakeIslands(page);
  await expect(bench(page).getByRole('heading', { name: 'Name the fault' })).toBeVisible();
  await expect(question(page)).toBeVisible();
}

/** Let the guide ask for readings too. */
const haveMeter = (page: Page) => helper(page).getByLabel('I have a meter at hand').check();

/** Set the number by keyboard, as a class would. */
async function setNumber(page: Page, number: string): Promise<void> {
  await bench(page).getByLabel('Fault number').fill(number);
  await page.keyboard.press('Enter');
}

/** Everything on a board that takes a meter. */
const measured = (board: 'link' | 'chain') =>
  benchTable(board).observations.flatMap(({ id, effort }) => (effort === 3 ? [id] : []));

/** The part that a numbered fault is in, as the core says it. */
function partOf(board: 'link' | 'chain', hidden: number): string {
  const answer = answerFaults({ kind: 'round', board, hidden, made: [], end: 'shown' });
  return (answer.kind === 'round' && answer.end?.part) || 'no part';
}

test('a numbered fault is found by keyboard, proved, and counted as the core counts', async ({ page }) => {
  await open(page);
  await bench(page).getByLabel('Board', { exact: true }).selectOption({ label: 'two pedals in a chain' });
  await setNumber(page, '5');
  const hidden = hideNumberedFault('chain', 5);
  await expect(bench(page).getByText('And pedal 1 does nothing; pedal 2 does nothing.')).toBeVisible();
  const made = followGuide(hidden);
  expect(made.length).toBeGreaterThan(0);
  for (const { id, seen } of made) {
    const { words = '', place = '' } = benchTable('chain').observations.find((one) => one.id === id) ?? {};
    await part(page, place).press('Enter');
    await bench(page).getByRole('button', { name: words, exact: true }).press('Enter');
    await expect(bench(page).locator('.last')).toContainText(`${words} Seen: ${seen}.`);
  }
  await bench(page).getByLabel('It is').selectOption(faultName(hidden.fault));
  await bench(page).getByRole('button', { name: 'Name it' }).press('Enter');
  await expect(ending(page)).toBeFocused();
  const grade = gradeFault(hidden, hidden.fault, made);
  expect(grade.proved).toBe(true);
  await expect(ending(page)).toContainText(grade.sentence);
  await expect(ending(page)).toContainText(`It was: ${sayBoardFault(hidden.fault)}.`);
  await expect(ending(page)).toContainText(partOf('chain', 5));
  await expect(ending(page)).toContainText(remedyFor(hidden.fault.kind));
  // What is taken after the end would spoil the count.
  await part(page, 'sender').press('Enter');
  const left = bench(page).getByRole('region', { name: 'At the sender' }).getByRole('button');
  for (const action of await left.all()) await expect(action).toBeDisabled();
  await ending(page).getByRole('button', { name: 'Find another fault' }).press('Enter');
  await expect(bench(page).getByLabel('Fault number')).toHaveValue('6');
  await expect(page.getByRole('region', { name: 'Symptoms' })).toBeFocused();
  await expect(bench(page).locator('.last')).toHaveText('Nothing taken yet.');
  // The round stands in the record of what was practised.
  await page.goto('./practice/');
  await page.getByText('Your record: 1 answers').click();
  await expect(
    page.getByText(
      'Find the fault, two pedals in a chain: 1 tried, 1 found at the first name, 1 of them settled by checks',
    ),
  ).toBeVisible();
});

test('a wrong name is told from a right one, and the fault may be shown without a name', async ({ page }) => {
  await open(page);
  await setNumber(page, '2');
  const hidden = hideNumberedFault('link', 2);
  await bench(page).getByRole('button', { name: 'Name it' }).click();
  await expect(bench(page).getByRole('alert')).toHaveText('Choose a fault from the list first.');
  await bench(page).getByLabel('It is').selectOption('pedal 1: supply-off');
  await bench(page).getByRole('button', { name: 'Name it' }).click();
  await expect(ending(page).getByRole('heading')).toHaveText('Missed');
  await expect(ending(page)).toContainText(`It was: ${sayBoardFault(hidden.fault)}.`);
  const { fewest } = gradeFault(hidden, hidden.fault, []);
  await expect(ending(page)).toContainText(`You took 0; the best way takes ${fewest.toFixed(1)} on average`);
  await setNumber(page, '7');
  await bench(page).getByRole('button', { name: 'Show me the fault' }).click();
  await expect(ending(page)).toContainText(`It was: ${sayBoardFault(hideNumberedFault('link', 7).fault)}.`);
  await setNumber(page, '0');
  await expect(bench(page).getByRole('alert')).toHaveText(
    "Fault number: expected a number from 1 to 9999, got '0'. The value stays 7.",
  );
});

test('an answer that is pressed while the same question is asked again counts', async ({ page }) => {
  await open(page);
  const meter = helper(page).getByLabel('I have a meter at hand');
  await meter.check();
  await expect(helper(page)).toHaveAttribute('aria-busy', 'false');
  const cannotTell = await question(page).getByRole('button', { name: 'I cannot tell' }).elementHandle();
  // Ticked twice, so that the question is the same again, and pressed before a worker can have answered.
  await meter.evaluate(async (box: HTMLInputElement, button) => {
    for (const press of [box, box, button as HTMLElement]) {
      press.click();
      await new Promise((done) => queueMicrotask(() => done(undefined)));
    }
  }, cannotTell);
  await expect(helper(page).getByText('Seen: cannot tell.')).toHaveCount(1);
});

test('the guide asks what the core asks, down to one fault and what to do', async ({ page }) => {
  await open(page);
  // Without a meter it begins with what the eyes tell.
  await expect(question(page).getByRole('status')).toHaveText(
    guide('link', ['nothing'], [], undefined, measured('link')).words,
  );
  await haveMeter(page);
  const hidden = hideNumberedFault('link', 6);
  const made: Seen[] = [];
  for (const seen of followGuide(hidden)) {
    await expect(question(page).getByRole('status')).toHaveText(guide('link', ['nothing'], made).words);
    const wanted = new RegExp(`^${seen.seen}( \\(in order\\))?$`);
    await question(page).getByRole('button', { name: wanted }).press('Enter');
    made.push(seen);
    await expect(helper(page).getByText(`Seen: ${seen.seen}.`)).toHaveCount(
      made.filter((one) => one.seen === seen.seen).length,
    );
  }
  await expect(question(page).getByRole('status')).toHaveText(guide('link', ['nothing'], made).words);
  await expect(helper(page).getByRole('row')).toHaveText(['faultchance', /100 %/]);
  await expect(helper(page).getByRole('row').last()).toContainText(remedyFor(hidden.fault.kind));
  await helper(page).getByRole('button', { name: 'Start again' }).click();
  await expect(question(page).getByRole('status')).toHaveText(guide('link', ['nothing'], []).words);
  const first = guide('link', ['nothing'], []).observation?.id ?? '';
  await question(page).getByRole('button', { name: 'I cannot tell' }).click();
  await expect(question(page).getByRole('status')).toHaveText(
    guide('link', ['nothing'], [], undefined, [first]).words,
  );
});

test('an address opens a board with its numbered fault, and the link beside it names the one in hand', async ({
  page,
}) => {
  await page.goto('./fault-bench/#board=chain&number=5');
  await wakeIslands(page);
  await expect(bench(page).getByLabel('Board', { exact: true })).toHaveValue('chain');
  await expect(bench(page).getByLabel('Fault number')).toHaveValue('5');
  await expect(bench(page).getByText('And pedal 1 does nothing; pedal 2 does nothing.')).toBeVisible();
  await setNumber(page, '8');
  await expect(bench(page).getByRole('link', { name: 'A link to this fault' })).toHaveAttribute(
    'href',
    '#board=chain&number=8',
  );
});

test('an address that names no board says what was expected, in view on a phone', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('./fault-bench/#board=hat&number=5');
  const alert = bench(page).getByRole('alert');
  await expect(alert).toHaveText("Address: expected a board of link or chain, got 'hat'.");
  await expect(alert).toBeInViewport();
  // The board that the page begins with is there, and nothing else is lost.
  await expect(bench(page).getByLabel('Board', { exact: true })).toHaveValue('link');
  await setNumber(page, '8');
  await expect(alert).toHaveCount(0);
});

test.describe('on the drawing, 390 px wide', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  const checks = (page: Page, heading: string) =>
    bench(page).getByRole('region', { name: heading }).getByRole('button');
  const LEAD_1 = 'lead 1 as it should be';

  test('a contact, a wire, a plug and a jack that are touched leave their own checks', async ({ page }) => {
    await open(page);
    await part(page, 'lead 1').tap();
    const drawn = bench(page).getByRole('group', { name: LEAD_1 });
    await expect(checks(page, 'At lead 1')).toHaveCount(11);
    await drawn.getByRole('button', { name: /^receiving plug, ring/ }).tap();
    await expect(bench(page).getByText('At ring of the receiving plug: 4 checks.')).toBeVisible();
    // Two along the wire, two volts on the free plug, and the swap of the whole lead.
    await expect(checks(page, 'At lead 1')).toHaveCount(5);
    // The middle of what is round a bent wire is not on it: its label is.
    const wire = drawn.getByRole('button', { name: /^conductor from tip to tip/ });
    await wire.locator('rect').first().tap();
    await expect(bench(page).getByText('At the wire from tip to tip: 2 checks.')).toBeVisible();
    await checks(page, 'At lead 1').filter({ hasText: 'ohms from tip to tip' }).tap();
    await expect(bench(page).locator('.last')).toContainText('ohms from tip to tip. Seen:');
    // Likewise a plug: it answers at its body and at its printed name.
    const printed = drawn.getByText('sending plug', { exact: true });
    await printed.scrollIntoViewIfNeeded();
    const name = await printed.boundingBox();
    if (!name) throw new Error('drawing: needs the name of the sending plug');
    await page.touchscreen.tap(name.x + name.width / 2, name.y + name.height / 2);
    await expect(bench(page).getByText('At the sending plug: 3 checks.')).toBeVisible();
    await part(page, 'pedal 1').tap();
    await bench(page).getByRole('button', { name: 'IN of pedal 1' }).tap();
    await expect(bench(page).getByText('At the jack: 2 checks.')).toBeVisible();
    await bench(page).getByRole('button', { name: 'Show all of pedal 1' }).tap();
    await expect(checks(page, 'At pedal 1')).toHaveCount(7);
  });

  test('the same by keyboard: arrows from contact to contact, Enter to touch', async ({ page }) => {
    await open(page);
    await part(page, 'lead 1').press('Enter');
    const drawn = bench(page).getByRole('group', { name: LEAD_1 });
    await drawn.getByRole('button', { name: /^sending plug, tip/ }).focus();
    await page.keyboard.press('ArrowRight');
    await expect(drawn.getByRole('button', { name: /^sending plug, ring/ })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(drawn.getByRole('button', { name: /^sending plug, ring/ })).toHaveAttribute(
      'aria-pressed',
      'true',
    );
    // Along the wire in ohms and by its beep, and across to the tip.
    await expect(bench(page).getByText('At ring of the sending plug: 3 checks.')).toBeVisible();
    await drawn.getByRole('button', { name: /^conductor from ring/ }).press('Enter');
    await expect(bench(page).getByText('At the wire from ring to ring: 2 checks.')).toBeVisible();
    await drawn.getByRole('button', { name: 'receiving plug', exact: true }).press(' ');
    await expect(bench(page).getByText('At the receiving plug: 3 checks.')).toBeVisible();
    await part(page, 'sender').press('Enter');
    await bench(page).getByRole('button', { name: 'display of the sender' }).press('Enter');
    await expect(checks(page, 'At the sender')).toHaveCount(3);
  });
});

test('an answer that is pressed twice in a row is given once', async ({ page, baseURL }) => {
  const seen = await watch(page, baseURL ?? '');
  await page.goto('./fault-bench/');
  await wakeIslands(page);
  const guide = page.getByRole('region', { name: 'Nothing arrives' });
  await guide.getByRole('group', { name: 'What do you see?' }).getByRole('button').first().dblclick();
  await expect(guide.getByRole('region', { name: 'Answers so far' }).getByRole('listitem')).toHaveCount(1);
  expect(seen.complaints).toEqual([]);
});

test('a teacher changes how often a fault is met, within bounds, and the guide follows', async ({ page }) => {
  await open(page);
  await haveMeter(page);
  await helper(page).getByText('How often each fault happens').first().press('Enter');
  await expect(helper(page).getByText(/is invented for practice/)).toBeVisible();
  const field = helper(page).getByLabel('it listens on another channel');
  await field.fill('-3');
  await page.keyboard.press('Enter');
  await expect(helper(page).getByRole('alert')).toHaveText(
    "it listens on another channel: expected a number from 0 to 100 times, got '-3'. The value stays 8 times.",
  );
  await field.fill('100');
  await page.keyboard.press('Enter');
  const often = { ...USUAL_FREQUENCIES, 'wrong-channel': 100 };
  await expect(question(page).getByRole('status')).toHaveText(guide('link', ['nothing'], [], often).words);
  await helper(page).getByRole('button', { name: 'Back to the invented numbers' }).click();
  await expect(field).toHaveValue('8');
});

test('the page fits a phone and is accessible in both papers, with everything open', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page);
  await bench(page).getByLabel('Board', { exact: true }).selectOption({ label: 'two pedals in a chain' });
  await helper(page).getByLabel('Your board is like').selectOption({ label: 'two pedals in a chain' });
  await part(page, 'lead 1').click();
  await expect(bench(page).getByRole('group', { name: 'lead 1 as it should be' })).toBeVisible();
  expect(await accessibilityFaults(page)).toEqual([]);
  await part(page, 'pedal 2').click();
  await bench(page).getByRole('button', { name: 'Look at the lamp of pedal 2.' }).click();
  await expect(part(page, 'pedal 2')).toContainText('1 of 7');
  await question(page).getByRole('button').first().click();
  await expect(helper(page).getByRole('heading', { name: 'Answers so far' })).toBeVisible();
  await helper(page).getByText('How often each fault happens').first().click();
  await bench(page).getByRole('button', { name: 'Show me the fault' }).click();
  await expect(ending(page)).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await faintFaults(page)).toEqual([]);
});
