/** The widgets of lessons 11 to 13, by role and keyboard, judged against the core. */
import { expect, test } from '../support/test.ts';
import { four } from '../../content/lessons/16-everything-at-one-press/data.ts';
import { boardFrom, splitFrom, type AuthoredBoard, type AuthoredSplit } from '../../src/core/learn/index.ts';
import { boardFacts } from '../../src/core/planner/index.ts';
import { checkBoard, timePress } from '../../src/core/board/index.ts';
import { checkLink, sayAmperesFinely } from '../../src/core/verdict/index.ts';
import { openPart } from '../support/lesson-page.ts';

const SPLITS: readonly AuthoredSplit[] = [
  { parts: ['6N138'] },
  { parts: ['6N138', '6N138'] },
  { parts: ['6N138', '6N138', '6N138'] },
];

test('in splitting an output each input more is chosen with an arrow key, and each LED has the current that the core solves', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/one-output-one-input/', 1);
  const status = part.locator('.show-ways').getByRole('status');
  await part.getByRole('radio', { name: 'one input' }).click();
  for (const split of SPLITS) {
    const { sentence, inputs } = checkLink(splitFrom(split));
    await expect(status).toContainText(sentence);
    await expect(part.locator('.show-ways .number')).toHaveText(
      inputs.map(({ active }) => sayAmperesFinely(active)),
    );
    await page.keyboard.press('ArrowRight');
  }
});

test('in splitting an output two outputs on one input fail the check, and a merger passes it', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/one-output-one-input/', 3);
  const status = part.locator('.show-ways').getByRole('status');
  const [finding] = checkBoard(boardFrom({ layout: 'two senders', pedals: 4 })).findings;
  expect(finding?.kind).toBe('fed-twice');
  await part.getByRole('radio', { name: 'joined by wire' }).click();
  await expect(status).toContainText(finding?.why ?? 'a finding');
  expect(checkBoard(boardFrom({ layout: 'merger', pedals: 4 })).passes).toBe(true);
  await part.getByRole('radio', { name: 'joined by a merger' }).press('Space');
  await expect(part.locator('.show-ways')).toContainText('Nothing stands in the way');
});

test('in the lesson of chain or hub the reader puts prices in by keyboard, and the sums follow', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/chain-or-hub/', 1);
  const status = part.locator('.price-leads').getByRole('status');
  await part.getByRole('spinbutton', { name: 'One lead' }).fill('12');
  await part.getByRole('spinbutton', { name: 'The hub' }).fill('50');
  // Four leads at 12; five leads at 12 and the hub at 50.
  await expect(status).toHaveText('Chain: 4 leads, 48.00 in all. Hub: 5 leads, 110.00 in all.');
});

test('in the lesson of chain or hub each row names the pedals that the core finds silent', async ({
  page,
}) => {
  const part = await openPart(page, '/lessons/chain-or-hub/', 2);
  await part.getByRole('radio', { name: 'chain' }).click();
  for (const layout of ['chain', 'hub', 'both'] as const) {
    const { silentWithout } = boardFacts(boardFrom({ layout, pedals: 4 }));
    const most = Math.max(...silentWithout.map(({ silent }) => silent.length));
    await expect(part.locator('.show-ways .state')).toContainText(`At worst ${most} of 4`);
    for (const { device, silent } of silentWithout)
      await expect(part.getByText(`${device} off`, { exact: true }).locator('..')).toContainText(
        silent.join(', '),
      );
    await page.keyboard.press('ArrowRight');
  }
});

test('in one press a program change takes two bytes of 320 µs, and far first is sooner with software', async ({
  page,
}) => {
  const board: AuthoredBoard = { layout: 'chain', pedals: 4, thru: 'software', press: four };
  const near = timePress(boardFrom(board));
  const far = timePress(boardFrom({ ...board, press: four.toReversed() }));
  expect(near.sendSeconds).toBeCloseTo(8 * 320e-6, 9);
  // By hand: 8 bytes, three software THRUs of a byte and 1 ms each, four inputs of 1.2 µs.
  expect(near.seconds).toBeCloseTo(8 * 320e-6 + 3 * 1.32e-3 + 4 * 1.2e-6, 9);
  expect(far.seconds).toBeCloseTo(2 * 320e-6 + 3 * 1.32e-3 + 4 * 1.2e-6, 9);
  const part = await openPart(page, '/lessons/everything-at-one-press/', 4);
  const headline = part.locator('.show-ways .state');
  await part.getByRole('radio', { name: 'software, near pedal first' }).click();
  await expect(headline).toContainText(`${Number(((near.seconds ?? 0) * 1e3).toPrecision(3))} ms`);
  await page.keyboard.press('ArrowRight');
  await expect(headline).toContainText(`${Number(((far.seconds ?? 0) * 1e3).toPrecision(3))} ms`);
});
