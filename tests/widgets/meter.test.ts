import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import { lineByLine } from '../../src/core/verdict/index.ts';
import { makeJack, makeLead } from '../../src/core/wiring/index.ts';
import { meterProfile, readUnder, sayReading } from '../../src/core/readings/index.ts';
import type { Contact } from '../../src/core/wiring/index.ts';
import type { MeterFunction, Power as MeterPower, UnderTest } from '../../src/core/readings/index.ts';
import { accessibilityFaults, faintFaults } from '../support/accessible.ts';
import { wakeIslands } from '../support/watch.ts';

const tool = (page: Page) => page.getByRole('region', { name: 'Meter' });
const said = (page: Page) => tool(page).getByRole('status');
const contact = (page: Page, name: string) =>
  tool(page).getByRole('button', { name: new RegExp(`^${name}(,|$)`) });

async function open(page: Page): Promise<void> {
  await page.goto('./meter/');
  await wakeIslands(page);
}

/** What the core has a Type A output on 3.5 mm show. */
function typeA(meter: MeterFunction, power: MeterPower, red: Contact, black: Contact): string {
  const under: UnderTest = {
    kind: 'jack',
    jack: { kind: 'control', jack: makeJack('out', 'trs-3.5', 'type-a') },
  };
  const at = {
    meter,
    power,
    red: { side: 'from', contact: red },
    black: { side: 'from', contact: black },
  } as const;
  return sayReading(readUnder(under, at, meterProfile('usual')));
}

test('probes are put down with the pointer, one after the other, dragged, and swapped', async ({ page }) => {
  await open(page);
  // MMA CA-033, fig. 1: ring is the source of Type A, at 5 V behind its resistor.
  await expect(said(page)).toContainText('Red probe on ring, black probe on sleeve: 5.00 V.');
  await contact(page, 'tip').click();
  await expect(said(page)).toContainText(
    `Red probe on tip, black probe on sleeve: ${typeA('volts', 'idle', 'tip', 'sleeve')}`,
  );
  await contact(page, 'ring').click();
  await expect(said(page)).toContainText(
    `Red probe on tip, black probe on ring: ${typeA('volts', 'idle', 'tip', 'ring')}`,
  );
  await page.getByRole('button', { name: 'Swap probes' }).click();
  await expect(said(page)).toContainText('Red probe on ring, black probe on tip');

  const handle = tool(page).locator('.handle.black');
  await handle.scrollIntoViewIfNeeded();
  await handle.hover();
  await page.mouse.down();
  await contact(page, 'sleeve').hover({ force: true });
  await page.mouse.up();
  await expect(said(page)).toContainText('Red probe on ring, black probe on sleeve: 5.00 V.');
});

test('probes are put down by keyboard, and the dial and the power are changed by keyboard', async ({
  page,
}) => {
  await open(page);
  await contact(page, 'tip').focus();
  await page.keyboard.press('b');
  await expect(said(page)).toContainText('Red probe on ring, black probe on tip');
  // The black probe gives way: two probes are never on one contact.
  await page.keyboard.press('r');
  await expect(said(page)).toContainText('Red probe on tip, black probe on ring');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText('Red probe on tip, black probe on sleeve');

  await tool(page).getByLabel('power on, nothing sent').focus();
  await page.keyboard.press('ArrowDown');
  const clock = typeA('volts', 'clock', 'tip', 'sleeve');
  expect(clock).not.toBe(typeA('volts', 'idle', 'tip', 'sleeve'));
  await expect(said(page)).toContainText(`: ${clock}. At rest it is 5.00 V`);
  await tool(page).getByLabel('DC volts').focus();
  await page.keyboard.press('ArrowDown');
  await expect(said(page)).toContainText('switch off and read again');
  await tool(page).getByLabel('power off').check();
  await expect(said(page)).toContainText(typeA('ohms', 'off', 'tip', 'sleeve'));
});

test('a lead alone is probed from the two lists: right, swapped, and with an open joint', async ({
  page,
}) => {
  await open(page);
  await page.getByLabel('Under test').selectOption('a lead alone');
  await expect(tool(page).getByLabel('continuity')).toBeChecked();
  await page.getByLabel('Red probe on').selectOption('pin 4 of the output plug');
  // DIN 4 goes to ring for Type A (MMA CA-033, fig. 2).
  await page.getByLabel('Black probe on').selectOption('ring of the input plug');
  await expect(said(page)).toContainText('beeps');
  await page.getByLabel('The lead is').selectOption('two conductors swapped');
  await expect(said(page)).toContainText('stays silent');
  await page.getByLabel('The lead is').selectOption('one joint open at the input plug');
  await tool(page).getByLabel('resistance').check();
  await expect(said(page)).toContainText('overload: more than the meter can show');
  await expect(tool(page).locator('svg .value')).toHaveText('OL');
});

test('on a cabled link a plain LED shows what the core says, and every view is free of accessibility faults', async ({
  page,
}) => {
  await open(page);
  const clean = async (): Promise<void> => {
    expect(await accessibilityFaults(page)).toEqual([]);
    expect(await faintFaults(page)).toEqual([]);
  };
  await clean();
  await page.getByLabel('Under test').selectOption('two devices and a lead');
  await tool(page).getByLabel('plain LED with a resistor').check();
  await page.getByLabel('Red probe on').selectOption('pin 4 of the output plug');
  await page.getByLabel('Black probe on').selectOption('pin 2 of the output plug');
  const output = makeJack('out', 'din5', 'din');
  const input = makeJack('in', 'trs-3.5', 'type-a');
  const lead = makeLead('din5', 'trs-3.5', lineByLine(output, input));
  const reading = readUnder(
    { kind: 'link', link: { output, branches: [{ input, leads: [lead] }] }, grounding: 'separate' },
    {
      meter: 'led',
      power: 'idle',
      red: { side: 'from', contact: '4' },
      black: { side: 'from', contact: '2' },
    },
    meterProfile('usual'),
  );
  // 5 V less about 1.8 V of a red LED over 440 ohm is some 7 mA: it glows.
  expect(reading.shows).toBe('glows');
  await expect(said(page)).toContainText(sayReading(reading));
  await clean();
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
});
