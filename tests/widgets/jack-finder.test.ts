import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import {
  answerFinder,
  meterProfile,
  readJack,
  safeReadings,
  sayJackReading,
  sayReading,
} from '../../src/core/readings/index.ts';
import { makeJack } from '../../src/core/wiring/index.ts';
import type { JackReading, Reading as MeterReading, TakenReading } from '../../src/core/readings/index.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { jackEvidence } from '../support/evidence.ts';
import { wakeIslands } from '../support/watch.ts';

/** What the page starts with. */
const EVIDENCE = jackEvidence({ canStreamClock: false });

const standing = (page: Page) => page.locator('.standing');
const proposal = (page: Page) => page.getByRole('region', { name: 'Next reading' });

async function open(page: Page): Promise<void> {
  await page.goto('./jack-finder/');
  await wakeIslands(page);
  // The first predictions for a connector are hundreds of solved circuits: long on two busy cores.
  await expect(standing(page)).toContainText('Not sure yet', { timeout: 60_000 });
}

/** A Type B input under the usual meter, rounded as a display rounds. */
function read(at: JackReading): MeterReading {
  const reading = readJack(
    { kind: 'control', jack: makeJack('in', 'trs-3.5', 'type-b') },
    at,
    meterProfile('usual'),
  );
  return reading.shows === 'value' ? { ...reading, value: Number(reading.value.toPrecision(4)) } : reading;
}

test('following the readings that are asked for names the jack, and ends in a lead on the bench', async ({
  page,
}) => {
  await open(page);
  const taken: TakenReading[] = [];
  const list = page.getByRole('region', { name: 'Readings so far' }).getByRole('listitem');
  // Between readings of equal worth two engines may choose differently, so the page's own choice is followed.
  while (await proposal(page).locator('.what').isVisible()) {
    const words = await proposal(page).locator('.what').textContent();
    const at = safeReadings(EVIDENCE).find((one) => sayJackReading(one) === words);
    if (!at) throw new Error(`the page asked for a reading that is not permitted: ${words}`);
    const reading = read(at);
    if (reading.shows === 'value') {
      await proposal(page).getByLabel('The meter shows').fill(String(reading.value));
      await page.keyboard.press('Enter');
    } else await proposal(page).getByRole('button', { name: 'It shows overload (OL)' }).click();
    taken.push({ at, reading });
    await expect(list).toHaveCount(taken.length);
    await expect(list.last()).toContainText(sayReading(reading));
    await expect(page.locator('.finder')).toHaveAttribute('aria-busy', 'false');
    expect(taken.length).toBeLessThanOrEqual(6);
  }
  const answer = answerFinder(EVIDENCE, taken);
  expect(answer.state).toBe('sure');
  await expect(standing(page)).toContainText(answer.sentence);
  await expect(standing(page)).toContainText('This is Type B in');
  await expect(page.getByRole('row', { name: /^Type B in sure/ })).toBeVisible();

  const lead = page.getByRole('region', { name: 'Which lead?' });
  // DIN 4, 5, 2 to Type B tip, ring, sleeve (MMA CA-033 names Type A; B has tip and ring the other way round).
  await expect(lead).toContainText('pin 2 to sleeve, pin 4 to tip, pin 5 to ring');
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await faintFaults(page)).toEqual([]);
  await lead.getByRole('button', { name: 'Add it to the board plan' }).click();
  await expect(lead.getByRole('alert')).toContainText('expected the name of a device, got nothing');
  await lead.getByLabel('Device that the jack is on').fill('Reverb');
  await page.keyboard.press('Enter');
  await expect(lead).toContainText("The jack is on the board plan, on a new device 'Reverb'.");
  const board = await page.context().newPage();
  await board.goto('./board/');
  await wakeIslands(board);
  await expect(board.locator('main')).toContainText('Reverb');
  await board.close();
  await lead.getByRole('link', { name: 'Open on the bench' }).click();
  await expect(page).toHaveURL(/\/bench\/#plan=/);
  await wakeIslands(page);
  await expect(page.getByRole('group', { name: 'Input jack' }).getByLabel('Type')).toHaveValue('type-b');
  await expect(page.locator('.outcome').first()).toContainText('Works');
});

test('a slip is refused in words, and readings that fit nothing are said to fit nothing', async ({
  page,
}) => {
  await open(page);
  await page.getByText('Enter another reading').click();
  const other = page.locator('.other');
  await other.getByLabel('Dial and power').selectOption('DC volts, power on, nothing sent');
  await other.getByLabel('The meter shows').fill('OL');
  await other.getByRole('button', { name: 'Add this reading' }).click();
  await expect(other.getByRole('alert')).toHaveText(
    "reading: expected a number from -60 to 60 V, got 'OL'. Nothing was added.",
  );
  // No jack of the catalogue has 20 V anywhere: supplies are 3.3 V and 5 V.
  await other.getByLabel('The meter shows').fill('20');
  await page.keyboard.press('Enter');
  await expect(standing(page)).toContainText(
    'Reading 1 does not fit the others and is set aside as doubtful',
  );
  const list = page.getByRole('region', { name: 'Readings so far' }).getByRole('listitem');
  await expect(list.first()).toContainText('(doubtful, set aside)');
  for (const count of [2, 3]) {
    await other.getByLabel('The meter shows').fill('20');
    await page.keyboard.press('Enter');
    await expect(list).toHaveCount(count);
  }
  await expect(standing(page)).toContainText('These readings fit nothing');
  await expect(page.getByRole('heading', { name: 'What to do' })).toBeVisible();
  await expect(page.getByRole('table')).toHaveCount(0);
  for (const left of [2, 1, 0]) {
    await page.getByRole('button', { name: 'Take out reading 1' }).click();
    await expect(list).toHaveCount(left);
  }
  await expect(standing(page)).toContainText('Not sure yet');
});

test('no power, no reading with the power on; what is marked comes first', async ({ page }) => {
  await open(page);
  await page.getByLabel('I can switch the device on while I measure').uncheck();
  await page.getByText('Enter another reading').click();
  await expect(page.getByLabel('Dial and power').getByRole('option')).toHaveText([
    'resistance, power off',
    'diode test, power off',
  ]);
  await page.getByLabel('Connector', { exact: true }).selectOption('5-pin DIN');
  await page.getByLabel('Printed beside it').selectOption('OUT');
  // Predictions for another connector are hundreds of solved circuits again.
  await expect(page.locator('.finder')).toHaveAttribute('aria-busy', 'false', { timeout: 60_000 });
  await expect(page.getByRole('row').nth(1)).toHaveAccessibleName(/^DIN out likely/);
});

test('what was entered is there again after a reload; a fresh start and a browser that keeps nothing are said', async ({
  page,
}) => {
  await open(page);
  await page.getByLabel('Printed beside it').selectOption('IN');
  await page.getByText('Enter another reading').click();
  const other = page.locator('.other');
  await other.getByLabel('Dial and power').selectOption('resistance, power off');
  await other.getByRole('button', { name: 'It shows overload (OL)' }).click();
  const list = page.getByRole('region', { name: 'Readings so far' }).getByRole('listitem');
  await expect(list).toHaveText([/^resistance.*overload/i]);
  const words = await list.first().textContent();
  await page.reload();
  await wakeIslands(page);
  await expect(list).toHaveText([words ?? '']);
  await expect(page.getByLabel('Printed beside it')).toHaveValue('in');
  // What somebody else wrote there is no reading, and the rest is as on a first visit.
  await page.evaluate(() =>
    localStorage.setItem(
      'five-milliamps jack finder',
      '{"evidence":{"connector":"din9","menu":3},"taken":[{"at":{"meter":"led","power":"off","red":"tip","black":"ring"}},7]}',
    ),
  );
  await page.reload();
  await wakeIslands(page);
  await expect(standing(page)).toContainText('Not sure yet');
  await expect(list).toHaveCount(0);
  await expect(page.getByLabel('Connector', { exact: true })).toHaveValue('trs-3.5');

  await expect(page.getByRole('alert')).toContainText('cannot be read (some of it is not known here)');
  await page.getByRole('button', { name: 'Let it go' }).click();
  await page.evaluate(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await page.getByLabel('Printed beside it').selectOption('OUT');
  await expect(page.getByRole('alert')).toHaveText(
    /This browser’s store is full: your work is not kept \(full\)/,
  );
  await expect(page.getByRole('row').nth(1)).toHaveAccessibleName(/out/);
  await page.getByRole('button', { name: 'Start over' }).click();
  await expect(page.getByText('Everything that was entered is gone.')).toBeVisible();
  await expect(page.getByLabel('Printed beside it')).toHaveValue('nothing');
});

test('on a phone the meter figure of each next reading stands whole above the line of the answer', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page);
  const figure = proposal(page).getByRole('img');
  const bar = page.getByRole('button', { name: /to the whole answer$/ });
  await proposal(page).getByLabel('The meter shows').fill('0.8');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('region', { name: 'Readings so far' }).getByRole('listitem')).toHaveCount(1);
  await expect(page.locator('.finder')).toHaveAttribute('aria-busy', 'false');
  await expect(proposal(page)).toBeFocused();
  const [drawn, line] = [await figure.boundingBox(), await bar.boundingBox()];
  if (!drawn || !line) throw new Error('finder: needs a figure and the line of the answer');
  expect(drawn.y).toBeGreaterThanOrEqual(0);
  expect(drawn.y + drawn.height).toBeLessThanOrEqual(line.y);
  // A reading of the reader's own choice has its figure too, with the probes where they are said to be.
  await page.getByText('Enter another reading').click();
  const other = page.locator('.other');
  await other.getByRole('combobox', { name: 'Red probe on' }).selectOption('sleeve');
  await other.getByRole('combobox', { name: 'Black probe on' }).selectOption('tip');
  await expect(other.getByRole('img')).toHaveAccessibleName(/red probe on sleeve, black probe on tip/);
});
