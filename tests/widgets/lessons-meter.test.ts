import { readFileSync } from 'node:fs';
import { expect, test, type Locator } from '@playwright/test';
import {
  sayMeter,
  type LessonJacks,
  type MeterSetting,
  type ProbePair,
} from '../../components/page/lesson-jacks.ts';
import type { MeterProfileName } from '../../src/core/index.ts';
import { openPart } from '../support/lesson-page.ts';

const ASK = '/lessons/ask-the-jack/';
const JACKS = JSON.parse(readFileSync('content/lessons/07-ask-the-jack/jacks.json', 'utf8')) as LessonJacks;

/** What the widget has to say of a jack: where the probes are, and what the core reads there. */
function reading(name: string, setting: MeterSetting, probes: ProbePair, profile?: MeterProfileName): string {
  const jack = JACKS[name];
  if (jack === undefined) throw new Error(`lesson 07: needs a jack '${name}', got none`);
  const [red, black] = probes.split('-');
  const says = sayMeter(jack, setting, probes, profile).replaceAll('\u00a0', ' ');
  return `Red on ${red}, black on ${black}: ${says}. `;
}

const statusOf = (part: Locator): Locator => part.locator('.probe-jack').getByRole('status');

test('in lesson 7 the probes go round a silent input by keyboard, and every pair shows nothing', async ({
  page,
}) => {
  const part = await openPart(page, ASK, 1);
  await expect(statusOf(part)).toContainText(reading('out', 'volts idle', 'ring-sleeve'));
  await part.getByRole('radio', { name: 'jack 1' }).focus();
  await page.keyboard.press('ArrowRight');
  await expect(statusOf(part)).toContainText(reading('in', 'volts idle', 'ring-sleeve'));
  await part.getByRole('button', { name: 'tip', exact: true }).press('b');
  await expect(statusOf(part)).toContainText(reading('in', 'volts idle', 'ring-tip'));
  await part.getByRole('button', { name: 'sleeve', exact: true }).press('r');
  await expect(statusOf(part)).toContainText(reading('in', 'volts idle', 'sleeve-tip'));
});

test('in lesson 7 the sign under clock changes with the type, and with the probes', async ({ page }) => {
  const part = await openPart(page, ASK, 2);
  await expect(statusOf(part)).toContainText(reading('out', 'volts idle', 'ring-tip'));
  await part.getByRole('radio', { name: /clock running/ }).press('Space');
  await expect(statusOf(part)).toContainText(reading('out', 'volts clock', 'ring-tip'));
  await part.getByRole('radio', { name: 'Type B' }).press('Space');
  await expect(statusOf(part)).toContainText(reading('outTurned', 'volts clock', 'ring-tip'));
  await part.getByRole('button', { name: 'Swap probes' }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('outTurned', 'volts clock', 'tip-ring'));
});

test('in lesson 7 the diode test reads both ways, and a weaker meter shows overload', async ({ page }) => {
  const part = await openPart(page, ASK, 3);
  await expect(statusOf(part)).toContainText(reading('in', 'diode off', 'ring-tip'));
  await part.getByRole('button', { name: 'Swap probes' }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('in', 'diode off', 'tip-ring'));
  await part.getByRole('button', { name: 'Swap probes' }).press('Enter');
  await part.getByRole('radio', { name: /ends at 1\.5 V/ }).press('Space');
  await expect(statusOf(part)).toContainText(reading('in', 'diode off', 'ring-tip', 'low-diode'));
});

test('in lesson 7 the LED glows once the black probe is on the sleeve', async ({ page }) => {
  const part = await openPart(page, ASK, 4);
  await expect(statusOf(part)).toContainText(reading('out', 'led clock', 'ring-tip'));
  await part.getByRole('button', { name: 'sleeve', exact: true }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('out', 'led clock', 'ring-sleeve'));
  await part.getByRole('button', { name: 'tip', exact: true }).press('Enter');
  await expect(statusOf(part)).toContainText(reading('out', 'led clock', 'tip-sleeve'));
  await part.getByRole('radio', { name: '3.3 V output' }).press('Space');
  await expect(statusOf(part)).toContainText(reading('outLow', 'led clock', 'tip-sleeve'));
});

test('in lesson 7 resistance parts what volts could not', async ({ page }) => {
  const part = await openPart(page, ASK, 5);
  await expect(statusOf(part)).toContainText(reading('switches', 'volts idle', 'ring-sleeve'));
  await part.getByRole('radio', { name: /^resistance/ }).press('Space');
  await expect(statusOf(part)).toContainText(reading('switches', 'ohms off', 'ring-sleeve'));
  await part.getByRole('radio', { name: '3.3 V output' }).press('Space');
  await expect(statusOf(part)).toContainText(reading('outLow', 'ohms off', 'ring-sleeve'));
});
