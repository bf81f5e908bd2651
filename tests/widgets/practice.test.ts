import type { Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import { accessibilityFaults } from '../support/accessible.ts';
import { enter, taskOf, taskOn } from '../support/answering.ts';
import { keysOf } from '../support/hands.ts';
import { wakeIslands } from '../support/watch.ts';

async function open(page: Page, address: string): Promise<void> {
  await page.goto(`.${address}`);
  await wakeIslands(page);
}

test('a lead that truly works is right, whatever else is left out', async ({ page }) => {
  await open(page, '/practice/#task=lay-lead.2.7');
  const task = taskOf('lay-lead.2.7');
  const form = page.locator('form');
  expect(await accessibilityFaults(page, 'main')).toEqual([]);
  // The pair alone: the shield left out is worth saying, and not wrong.
  await enter(
    page,
    task,
    task.right
      .split(' ')
      .filter((pair) => !pair.includes('sleeve'))
      .join(' '),
  );
  await page.getByRole('button', { name: 'Hand in' }).click();
  await expect(form).toContainText('Right');
  await expect(form).toContainText('the shield is left out');
});

test('after three hints the way is shown on request, and counts as no answer', async ({ page }) => {
  await open(page, '/practice/#task=loop-current.2.0');
  const task = taskOf('loop-current.2.0');
  for (const hint of task.hints) {
    await page.getByRole('button', { name: /hint/i }).click();
    await expect(page.getByText(hint)).toBeVisible();
  }
  await expect(page.getByRole('button', { name: 'All 3 hints taken' })).toBeDisabled();
  await page.getByRole('button', { name: 'Show me the way' }).click();
  await expect(page.getByText(task.steps.at(-1) ?? '')).toBeVisible();
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByText('No task was answered.')).toBeVisible();
  await expect(page.getByText('Your record: 0 answers')).toBeVisible();
});

test('a mistake gets its own word and one more try, then the way to the answer', async ({ page }) => {
  await open(page, '/practice/#task=loop-current.2.0');
  const task = taskOf('loop-current.2.0');
  const slip = task.slips.find(({ name }) => name === 'LED forgotten');
  await page.getByRole('button', { name: 'Hand in' }).click();
  await expect(page.getByText('There is no answer yet. Needed: a number in mA.')).toBeVisible();
  await enter(page, task, slip?.answer ?? '');
  await page.getByRole('button', { name: 'Hand in' }).click();
  await expect(page.getByText(slip?.sentence ?? 'no sentence')).toBeVisible();
  await expect(page.getByText('Not yet: one more try')).toBeVisible();
  await page.getByRole('button', { name: 'Hint' }).click();
  await expect(page.getByText(task.hints[0])).toBeVisible();
  await enter(page, task, '99');
  await page.getByRole('button', { name: 'Hand in' }).click();
  await expect(page.getByText('Not right')).toBeVisible();
  await expect(page.getByText(task.steps.at(-1) ?? '')).toBeVisible();
});

test('nothing on the page gives the answer away before it is handed in', async ({ page }) => {
  for (const name of ['trace-to-hex.2.3', 'loop-current.2.0', 'message-bytes.2.5', 'list-time.2.9']) {
    await open(page, `/practice/#task=${name}`);
    const task = taskOf(name);
    await expect(page.getByText(task.ask)).toBeVisible();
    const tree = await page.locator('main').ariaSnapshot();
    const text = await page.locator('main').evaluate((main) => main.outerHTML);
    for (const said of [task.right, task.steps.at(-1) ?? '', ...task.slips.map(({ sentence }) => sentence)]) {
      const alone = new RegExp(
        `(^|[^0-9A-F.])${said.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}($|[^0-9A-F.])`,
      );
      expect(alone.test(tree), `${name}: '${said}' in the tree`).toBe(false);
      expect(alone.test(text), `${name}: '${said}' in the page`).toBe(false);
    }
  }
});

test('the record is saved, wiped after a question, and joined again from its file', async ({ page }) => {
  await open(page, '/practice/#task=loop-current.2.0');
  const task = taskOf('loop-current.2.0');
  for (const answer of [task.slips[0]?.answer ?? '', task.right]) {
    await enter(page, task, answer);
    await page.getByRole('button', { name: 'Hand in' }).click();
  }
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(page.getByText('1 right, 0 of them at once and without a hint; 0 not right.')).toBeVisible();
  await page.getByText('Your record: 2 answers').click();
  await page.getByRole('button', { name: 'Wipe it' }).click();
  await page.getByRole('button', { name: 'Keep them' }).click();
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  expect(saved.suggestedFilename()).toBe('practice-record.json');
  await page.getByRole('button', { name: 'Wipe it' }).click();
  await page.getByRole('button', { name: 'Yes, wipe them' }).click();
  await expect(page.getByText('Your record: 0 answers')).toBeVisible();
  await page.getByLabel('Record file to join').setInputFiles(await saved.path());
  await expect(page.getByText('Your record: 2 answers')).toBeVisible();
  await page
    .getByLabel('Record file to join')
    .setInputFiles({ name: 'x.json', mimeType: 'application/json', buffer: Buffer.from('{}') });
  await expect(
    page.getByText(
      "x.json: record: expected a file with the format 'five-milliamps-record'. Your record stays as it was.",
    ),
  ).toBeVisible();
});

test('a task is done by keyboard alone', async ({ page }) => {
  await open(page, '/practice/');
  const keys = keysOf(page);
  await keys.reach('checkbox', /^Bits on the wire/);
  await keys.press('Space');
  await keys.reach('button', 'Ten tasks from these');
  await keys.press('Enter');
  await expect(page.getByRole('heading', { name: 'Task 1 of 10' })).toBeVisible();
  await keys.reach('button', 'Leave it', 'back');
  await keys.press('Enter');
  await expect(page.getByRole('heading', { name: 'Task 2 of 10' })).toBeFocused();
});

test('an address that names no task says so to a student, and leads on to one of its kind or to practice', async ({
  page,
}) => {
  await open(page, '/bench/#task=nonsense');
  await expect(page.getByRole('alert')).toContainText(
    'There is no task at this address. It ends in ‘nonsense’',
  );
  await page.getByRole('link', { name: 'Choose a task in Practice' }).click();
  await page.waitForURL('**/practice/');
  await open(page, '/practice/#task=loop-current.9.1');
  const alert = page.getByRole('alert');
  await expect(alert).toContainText('It ends in ‘loop-current.9.1’');
  await expect(page.getByRole('checkbox', { name: 'The five-milliamp loop' })).toBeVisible();
  await alert.getByRole('link', { name: /^A new task of this kind/ }).click();
  await expect(page.getByRole('heading', { name: 'Task 1 of 1' })).toBeVisible();
  await expect(alert).toHaveCount(0);
  expect((await taskOn(page)).id).toMatchObject({ kind: 'loop-current', level: 0 });
});

test('a tool inside the page of somebody else takes a task too', async ({ page }) => {
  await open(page, '/embed/bench/#task=lay-lead.2.7');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('A task');
  await expect(page.getByText(taskOf('lay-lead.2.7').ask)).toBeVisible();
  await page.getByRole('checkbox', { name: 'No plain lead can' }).check();
  await page.getByRole('button', { name: 'Hand in' }).click();
  await expect(page.getByText('Not yet: one more try')).toBeVisible();
});
