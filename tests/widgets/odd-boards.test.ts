import { expect, test } from '../support/test.ts';
import type { Page } from '@playwright/test';
import { demoBoard } from '../../src/core/board/index.ts';
import { makePlan, planJack, readPlanText, writeSharedLink } from '../../src/core/plan/index.ts';
import { makeLead, wires } from '../../src/core/wiring/index.ts';
import { unfold, wakeIslands, watch } from '../support/watch.ts';

/**
 * Names that are the same once they are joined by a gap or a colon, two banks for one device, one lead in two links: all of it
 * can be written in a file, so every list of the page has to hold it.
 */
function oddBoard() {
  const straight = wires('4-4', '5-5', '2-2');
  const link = (name: string, from: [string, string], to: [string, string], lead: string) => ({
    name,
    output: { device: from[0], jack: from[1] },
    inputs: [{ device: to[0], jack: to[1], leads: [lead] }],
  });
  const bank = (number: number) => ({ device: 'a', send: 'bank', bank: number }) as const;
  return makePlan({
    title: 'odd',
    devices: [
      {
        name: 'one',
        kind: 'controller',
        jacks: [1, 2].map((number) => planJack(`OUT ${number}`, 'out', 'din5', 'din')),
      },
      { name: 'a', kind: 'pedal', jacks: [planJack('b: c', 'in', 'din5', 'din')] },
      { name: 'a: b', kind: 'pedal', jacks: [planJack('c', 'in', 'din5', 'din')] },
      { name: 'a b', kind: 'pedal', jacks: [planJack('c', 'in', 'din5', 'din')] },
    ],
    leads: [
      makeLead('din5', 'din5', straight, { name: 'lead' }),
      makeLead('din5', 'din5', [], { name: 'le ad' }),
    ],
    links: [
      link('x', ['one', 'OUT 1'], ['a', 'b: c'], 'lead'),
      link('x y', ['one', 'OUT 2'], ['a: b', 'c'], 'lead'),
      link('y', ['one', 'OUT 2'], ['a b', 'c'], 'le ad'),
    ],
    press: [bank(1), bank(2), bank(2)],
  });
}

async function keptDevices(page: Page): Promise<number> {
  const text = (await page.evaluate(() => localStorage.getItem('five-milliamps board'))) ?? '';
  const reading = readPlanText(text.slice(text.indexOf('\n') + 1));
  return reading.ok ? reading.plan.devices.length : -1;
}

test('a board of odd names shows in every part of the page, and what is changed on it is kept', async ({
  page,
  baseURL,
}) => {
  const seen = await watch(page, baseURL ?? '');
  await page.goto(`./board/#plan=${await writeSharedLink(oddBoard())}`);
  await wakeIslands(page);
  await expect(page.locator('.headline')).toContainText('4 devices');
  await unfold(page);
  await page.getByLabel('From the library').selectOption('echo with DIN IN and THRU');
  await page.getByRole('button', { name: 'Add it' }).click();
  await expect(page.locator('.headline')).toContainText('5 devices');
  await expect.poll(() => keptDevices(page)).toBe(5);
  expect(seen.complaints).toEqual([]);
});

test('a link that is empty, spoiled or too dear to solve is refused in words, and the board stays', async ({
  page,
}) => {
  const dear = makePlan({
    devices: [
      { name: 'from', jacks: [planJack('out', 'out', 'din5', 'din')] },
      ...Array.from({ length: 16 }, (_, at) => ({
        name: `to ${at}`,
        jacks: [planJack('in', 'in', 'din5', 'din')],
      })),
    ],
    leads: Array.from({ length: 16 }, (_, at) => makeLead('din5', 'din5', [], { name: `lead ${at}` })),
    links: [
      {
        name: 'link',
        output: { device: 'from', jack: 'out' },
        inputs: Array.from({ length: 16 }, (_, at) => ({
          device: `to ${at}`,
          jack: 'in',
          leads: [`lead ${at}`],
        })),
      },
    ],
  });
  await page.goto(`./board/#plan=${await writeSharedLink(demoBoard())}`);
  await wakeIslands(page);
  await expect(page.locator('.headline')).toContainText('8 devices');
  for (const [link, words] of [
    ['ayyvNyQEA', 'the link: expected a plan, got null'],
    ['', 'the link: expected a link made by this workbook, got nothing'],
    [await writeSharedLink(makePlan({})), 'it has no device and no lead'],
    [await writeSharedLink(dear), 'links[0].inputs: expected a list of 1 to 4, got a list of 16'],
  ] as const) {
    await page.evaluate((hash) => (location.hash = hash), `plan=${link}`);
    await expect(page.locator('p.word')).toContainText(words);
    await expect(page.locator('.headline')).toContainText('8 devices');
  }
});

test('a board that takes long to solve is solved in the background: it can be stopped and taken up again, and nothing is called good before', async ({
  page,
}) => {
  await page.addInitScript(() => {
    // A clock that runs away stands for a slow machine, a worker that does not hear its first order for a long search.
    const real = performance.now.bind(performance);
    let ahead = 0;
    performance.now = () => real() + (ahead += 1000);
    const Real = window.Worker;
    let orders = 0;
    window.Worker = class extends Real {
      override postMessage(order: unknown): void {
        if (orders++ > 0) super.postMessage(order);
      }
    };
  });
  const plan = demoBoard();
  await page.goto(`./board/#plan=${await writeSharedLink(plan)}`);
  await wakeIslands(page);
  const headline = page.locator('.headline');
  const progress = page.getByRole('progressbar', { name: 'Links being solved' });
  await expect(headline).toContainText('Links not solved');
  await expect(headline).not.toContainText('work');
  await expect(page.getByRole('region', { name: 'What the check found' })).toContainText('not solved yet');
  await expect(progress).toBeVisible();
  await page.getByRole('button', { name: 'Stop solving' }).click();
  await expect(progress).toHaveCount(0);
  await expect(headline).toContainText('Links not solved');
  await page.getByRole('button', { name: 'Solve the links' }).click();
  await expect(headline).toContainText('This board works');
  await expect(headline).toContainText('every one works');
});
