import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from '../support/test.ts';
import type { Page, TestInfo } from '@playwright/test';
import { checkLink, sayAmperes } from '../../src/core/verdict/index.ts';
import {
  linkOf,
  planOfLink,
  readSharedLink,
  readPlanText,
  writePlanText,
  writeSharedLink,
} from '../../src/core/plan/index.ts';
import { makeJack, makeLead, newJack, wires } from '../../src/core/wiring/index.ts';
import { SITE_BASE } from '../support/site.ts';
import { takeFirstWiring, wakeIslands } from '../support/watch.ts';

/** A value that the test cannot go on without. */
function there<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('test: needs a value, got none');
  return value;
}

/** What the core says of the lead that these tests wire: a DIN output into a Type A input. */
const OUTPUT = makeJack('out', 'din5', 'din');
const INPUT = newJack('in', 'trs-3.5', 'type-a');
const WIRED = planOfLink(OUTPUT, INPUT, [makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'))]);
const FLOWS = checkLink(linkOf(WIRED, there(WIRED.links[0])));

const outcome = (page: Page) => page.locator('.headline .outcome');
const sentence = (page: Page) => page.locator('.verdict [role="status"]');
const contact = (page: Page, name: string) =>
  page.getByRole('button', { name: new RegExp(`^plug at the ${name},`) });

async function open(page: Page, hash = ''): Promise<void> {
  await page.goto(`./bench/${hash}`);
  await settled(page);
}

/** Wait until the bench is live and holds what was kept: from then on it keeps each change. */
async function settled(page: Page): Promise<void> {
  await wakeIslands(page);
  await expect(page.getByRole('region', { name: 'Bench', exact: true })).toHaveAttribute(
    'aria-busy',
    'false',
  );
}

test('what a builder knows of the circuit changes the verdict, and a foreign supply is told before any good word', async ({
  page,
}) => {
  await open(page, `#plan=${await writeSharedLink(WIRED)}`);
  const input = page.getByRole('group', { name: 'Input jack' });
  await input.getByText('I know more about the circuit').click();
  await input.getByLabel('Protection diode').selectOption({ label: 'fitted the wrong way round' });
  const [link] = WIRED.links;
  const judged = (more: Partial<typeof INPUT>) => {
    const plain = linkOf(WIRED, there(link));
    return checkLink({
      ...plain,
      branches: plain.branches.map((one) => ({ ...one, input: { ...one.input, ...more } })),
    });
  };
  await expect(sentence(page)).toHaveText(judged({ extras: ['turned-diode'] }).sentence);
  await expect(page.getByText('At the input: turn the protection diode round.')).toBeVisible();
  await input.getByLabel('Protection diode').selectOption({ label: 'usual (1N914, 1N4148)' });
  await expect(sentence(page)).toHaveText(FLOWS.sentence);
  await input.getByLabel('sleeve tied to this device').check();
  await expect(page.getByText('pin 2 tied at the input')).toBeVisible();
  await input.getByLabel('foreign supply on ring against tip').fill('12');
  await input.getByLabel('foreign supply on ring against tip').press('Enter');
  await expect(outcome(page)).toHaveText('Do not connect');
  await expect(sentence(page)).toHaveText(
    judged({ extras: ['shield-tied'], values: { foreignAcrossVolts: 12 } }).sentence,
  );
});

test('a lead is wired by pointer alone and the verdict is the one of the core', async ({ page }) => {
  await open(page);
  await expect(outcome(page)).toHaveText('No wires yet');
  for (const [from, to] of [
    ['pin 4', 'ring'],
    ['pin 5', 'tip'],
    ['pin 2', 'sleeve'],
  ] as const) {
    await contact(page, `output, ${from}`).click();
    await contact(page, `input, ${to}`).click();
  }
  await expect(outcome(page)).toHaveText('Works');
  await expect(sentence(page)).toHaveText(FLOWS.sentence);
  await expect(page.locator('.headline')).toContainText(sayAmperes(there(FLOWS.inputs[0]).active));
  await contact(page, 'output, pin 4').click();
  await contact(page, 'input, ring').click();
  await expect(outcome(page)).toHaveText('No path');
});

test('a lead is wired by dragging', async ({ page }) => {
  await open(page);
  for (const [from, to] of [
    ['pin 4', 'ring'],
    ['pin 5', 'tip'],
  ] as const) {
    await contact(page, `output, ${from}`).dragTo(contact(page, `input, ${to}`), { steps: 8 });
  }
  await expect(outcome(page)).toHaveText('Works');
});

test('a lead is wired, undone and mended by keyboard alone', async ({ page }) => {
  await open(page);
  const tabTo = async (name: RegExp): Promise<void> => {
    for (let press = 0; press < 80; press++) {
      const label = await page.evaluate(
        () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
      );
      if (name.test(label)) return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`keyboard: no control ${String(name)} is reached by Tab`);
  };
  /** Walk with the arrow keys over the contacts of the end that has the focus until this one has it. */
  const walkTo = async (name: string): Promise<void> => {
    const here = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
    for (const key of ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'] as const) {
      for (let press = 0; press < 8; press++) {
        if ((await here()).includes(`, ${name},`)) return;
        const before = await here();
        await page.keyboard.press(key);
        if (before.slice(0, 18) !== (await here()).slice(0, 18))
          await page.keyboard.press(key === 'ArrowLeft' ? 'ArrowRight' : 'ArrowLeft');
        if (before === (await here())) break;
      }
    }
    if (!(await here()).includes(`, ${name},`))
      throw new Error(`keyboard: ${name} is not reached by arrow keys, at ${await here()}`);
  };
  for (const [from, to] of [
    ['pin 4', 'ring'],
    ['pin 5', 'tip'],
    ['pin 2', 'sleeve'],
  ] as const) {
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await tabTo(/^plug at the output,/);
    await walkTo(from);
    await page.keyboard.press('Enter');
    await tabTo(/^plug at the input,/);
    await walkTo(to);
    await page.keyboard.press('Enter');
  }
  await expect(outcome(page)).toHaveText('Works');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  await expect(outcome(page)).toHaveText('No path');
  await page.keyboard.press('Control+Shift+z');
  await expect(outcome(page)).toHaveText('Works');
});

test('the table of choices wires the same lead', async ({ page }) => {
  await open(page);
  await page.getByText('The lead as a table').click();
  for (const [from, to] of [
    ['pin 4', 'ring'],
    ['pin 5', 'tip'],
    ['pin 2', 'sleeve'],
  ] as const) {
    await page.getByLabel(`Lead 1, ${from} to`).selectOption({ label: to });
  }
  await expect(sentence(page)).toHaveText(FLOWS.sentence);
  await page.getByLabel('Lead 1, pin 5 to').selectOption('');
  await expect(outcome(page)).toHaveText('No path');
});

test('swapped lines are called backwards, and the steps follow the current through the protection diode', async ({
  page,
}) => {
  await open(page);
  await page.getByText('The lead as a table').click();
  await page.getByLabel('Lead 1, pin 4 to').selectOption('tip');
  await page.getByLabel('Lead 1, pin 5 to').selectOption('ring');
  await expect(outcome(page)).toHaveText('Reversed');
  const steps = page.locator('.steps li');
  await expect(steps.filter({ hasText: 'protection diode' })).toHaveCount(1);
  const next = page.getByRole('button', { name: 'Next step' });
  for (let step = 0; step < (await steps.count()); step++) await next.click();
  await expect(next).toBeDisabled();
  await expect(page.locator('.steps [aria-current="step"]')).toHaveCount(1);
});

test("'Which lead?' lays a lead that flows, and says when none can", async ({ page }) => {
  await open(page);
  await takeFirstWiring(page);
  await expect(outcome(page)).toHaveText('Works');
  await page.getByRole('group', { name: 'Output jack' }).getByLabel('Connector').selectOption('trs-3.5');
  await page.getByRole('group', { name: 'Output jack' }).getByLabel('Type').selectOption('ring-signal');
  await expect(page.locator('.which [role="status"]')).toContainText('No passive lead can');
});

test('a contact that was picked is let go when a lead is laid or a change is taken back', async ({
  page,
}) => {
  await open(page);
  const hint = page.locator('.hint');
  const waiting = /^Now the contact at the other end/;
  await page.getByRole('button', { name: 'Which lead?' }).click();
  await contact(page, 'output, pin 1').click();
  await expect(hint).toHaveText(waiting);
  await page
    .getByRole('button', { name: /^Use this wiring/ })
    .first()
    .click();
  await expect(outcome(page)).toHaveText('Works');
  await expect(hint).toHaveText(/^Press a contact/);
  await contact(page, 'output, pin 1').click();
  await expect(hint).toHaveText(waiting);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(hint).toHaveText(/^Press a contact/);
  await contact(page, 'input, tip').click();
  await expect(outcome(page)).toHaveText('No wires yet');
});

test('a fault and a second lead change the verdict, and undo brings it back', async ({ page }) => {
  await open(page);
  await takeFirstWiring(page);
  await page.getByText('Length, gauge, plugs and faults').click();
  await page.getByLabel('Contact', { exact: true }).selectOption('4');
  await page.getByRole('button', { name: 'Put this fault in' }).click();
  await expect(outcome(page)).toHaveText('No path');
  await page.getByRole('button', { name: /^Mend/ }).click();
  await expect(outcome(page)).toHaveText('Works');
  await page.getByRole('button', { name: 'Add a second lead' }).click();
  await expect(outcome(page)).toHaveText('Works');
  await expect(page.getByText('Lead 2, length')).toBeVisible();
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await expect(page.getByText('Lead 2, length')).toHaveCount(0);
});

test('a length out of bounds is refused in words and the old one stays', async ({ page }) => {
  await open(page);
  await page.getByText('Length, gauge, plugs and faults').click();
  const length = page.getByLabel('Lead 1, length');
  await length.fill('-2');
  await length.press('Enter');
  await expect(page.getByRole('alert')).toHaveText(
    "Lead 1, length: expected a number from 0.01 to 100 m, got '-2'. The value stays 1 m.",
  );
  await expect(length).toHaveValue('1');
});

test('the last work survives a reload, and can be changed after it', async ({ page }) => {
  await open(page);
  await contact(page, 'output, pin 4').click();
  await contact(page, 'input, tip').click();
  await page.reload();
  await settled(page);
  await expect(contact(page, 'output, pin 4')).toHaveAccessibleName(/joined to tip/);
  await contact(page, 'output, pin 5').click();
  await contact(page, 'input, ring').click();
  await expect(outcome(page)).toHaveText('Reversed');
  await page.reload();
  await settled(page);
  await expect(outcome(page)).toHaveText('Reversed');
});

test('the saved file opens again, and a bad one is named and leaves the work as it was', async ({
  page,
}, info: TestInfo) => {
  await open(page);
  const good = info.outputPath('good.json');
  writeFileSync(good, writePlanText(WIRED));
  await page.getByLabel('Plan file to open').setInputFiles(good);
  await expect(outcome(page)).toHaveText('Works');
  await page.getByText('Title, and your number in the class').click();
  await page.getByLabel('Title', { exact: true }).fill('First loop');
  await page.getByLabel('Your number in the class').fill('7');
  await page.getByLabel('Your number in the class').blur();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save to a file' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('first-loop-07.json');
  expect(readPlanText(readFileSync(await download.path(), 'utf8'))).toEqual({
    ok: true,
    plan: { ...WIRED, title: 'First loop', student: 7 },
  });
  const bad = info.outputPath('bad.json');
  writeFileSync(bad, writePlanText(WIRED).replace('"type-a"', '"type-q"'));
  await page.getByLabel('Plan file to open').setInputFiles(bad);
  await expect(page.getByRole('alert')).toContainText(
    'devices[1].jacks[0].style: expected one of din, type-a',
  );
  await expect(page.getByRole('alert')).toContainText("got 'type-q'");
  await expect(page.getByRole('alert')).toContainText('Your work is as it was.');
  await expect(page.getByRole('alert'), 'seen by who pressed the button').toBeInViewport();
  await expect(outcome(page)).toHaveText('Works');
});

test('the lead on the bench goes along to the build sheet', async ({ page }) => {
  await open(page);
  const onward = page.getByRole('link', { name: 'Build sheet for this lead' });
  await expect(onward, 'nothing to take along yet').toHaveCount(0);
  await contact(page, 'output, pin 4').click();
  await contact(page, 'input, tip').click();
  await onward.click();
  await expect(page).toHaveURL(/\/cable-sheet\/#plan=/);
  const taken = await readSharedLink(new URL(page.url()).hash.slice('#plan='.length));
  expect(taken.ok && taken.plan.leads.map(({ conductors }) => conductors)).toEqual([wires('4-tip')]);
});

test('a link that holds the whole plan opens it, and a broken one leaves the work as it was', async ({
  page,
}) => {
  const link = await writeSharedLink(WIRED);
  await open(page, `#plan=${link}`);
  await expect(outcome(page)).toHaveText('Works');
  await page.getByRole('button', { name: 'Copy a link' }).click();
  const copied = new URL(await page.getByLabel('Link to this plan').inputValue());
  expect(copied.pathname).toBe(`${SITE_BASE}bench/`);
  expect(await readSharedLink(copied.hash.slice('#plan='.length))).toEqual({ ok: true, plan: WIRED });
  await page.evaluate((broken) => (location.hash = `plan=${broken}`), link.slice(0, 30));
  await expect(page.getByRole('alert')).toContainText('expected a whole link');
  await expect(outcome(page)).toHaveText('Works');
});

test('the bench answers to a finger on a narrow screen', async ({ browser, baseURL }) => {
  const context = await browser.newContext({
    baseURL: there(baseURL),
    viewport: { width: 390, height: 844 },
    hasTouch: true,
  });
  const page = await context.newPage();
  await open(page);
  for (const [from, to] of [
    ['pin 4', 'ring'],
    ['pin 5', 'tip'],
  ] as const) {
    await contact(page, `output, ${from}`).tap();
    await contact(page, `input, ${to}`).tap();
  }
  await expect(outcome(page)).toHaveText('Works');
  await context.close();
});

test('on an empty bench nothing is judged, and on a phone the answer stays in sight and comes into view', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await open(page);
  const answer = page.getByRole('region', { name: 'What it does' });
  await expect(answer).toHaveText(
    /^\s*No wires yet\s*Join a contact of the output to one of the input, or press ‘Which lead\?’\.\s*$/,
  );
  await expect(page.getByText('Every reading, idle and active side by side')).toHaveCount(0);
  await page.getByRole('button', { name: 'Which lead?' }).click();
  const bar = page.getByRole('button', { name: /to the whole answer$/ });
  await expect(bar).toHaveCount(0);
  await page
    .getByRole('button', { name: /^Use this wiring/ })
    .first()
    .click();
  await expect(answer).toBeFocused();
  await expect(answer.locator('.outcome')).toBeInViewport();
  await expect(bar).toHaveText(/Works: 5(?:\.\d)? mA/);
  await page.getByRole('combobox', { name: 'Connector' }).first().scrollIntoViewIfNeeded();
  await expect(bar).toBeInViewport();
  // A source that meets the shield in the plug: 5 V over 220 ohm, 22.7 mA, and none of it through the input.
  const shorted = planOfLink(OUTPUT, INPUT, [makeLead('din5', 'trs-3.5', wires('4-sleeve', '2-sleeve'))]);
  await page.goto('about:blank');
  await open(page, `#plan=${await writeSharedLink(shorted)}`);
  await expect(answer).toContainText(/past the input\s*23 mA/);
});

test('two benches that are open at once never overwrite each other, and the work not chosen stays as a version', async ({
  page,
  context,
}) => {
  await open(page);
  await contact(page, 'output, pin 4').click();
  await contact(page, 'input, ring').click();
  await expect(contact(page, 'output, pin 4')).toHaveAccessibleName(/joined to ring/);
  await expect
    .poll(() => page.evaluate(() => localStorage.getItem('five-milliamps bench')))
    .toContain('"ring"');
  const other = await context.newPage();
  await open(other);
  await expect(contact(other, 'output, pin 4')).toHaveAccessibleName(/joined to ring/);
  await contact(other, 'output, pin 5').click();
  await contact(other, 'input, tip').click();
  await expect(page.getByRole('alert')).toContainText('changed in another tab');
  await page.getByRole('button', { name: 'Use the other tab’s version' }).click();
  await expect(contact(page, 'output, pin 5')).toHaveAccessibleName(/joined to tip/);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await page.getByText('Earlier versions of this work').click();
  await page
    .getByRole('button', { name: /^Open the version/ })
    .first()
    .click();
  await expect(contact(page, 'output, pin 5')).not.toHaveAccessibleName(/joined to tip/);
});
