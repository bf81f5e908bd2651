/** What the pages keep, when the browser's store is full, refused, spoiled, emptied or shared by two tabs: nothing goes without a word. */
import { writeFileSync } from 'node:fs';
import { expect, test } from '../support/test.ts';
import type { Locator, Page } from '@playwright/test';
import { demoBoard } from '../../src/core/board/index.ts';
import { planOfLink, readPlanText, writePlanText, writeSharedLink } from '../../src/core/plan/index.ts';
import type { Plan } from '../../src/core/plan/index.ts';
import { makeJack, makeLead, wires } from '../../src/core/wiring/index.ts';
import { resultHash, setHash } from '../../src/core/class/index.ts';
import { testShelf } from '../../components/making/test-state.ts';
import { enter, taskOf } from '../support/answering.ts';
import { CLASS_SET, studentResult } from '../support/classroom.ts';
import { fillStore, keptText, keptVersions, savedBy } from '../support/stores.ts';
import { wakeIslands, watch } from '../support/watch.ts';

/** A DIN link of this title, as it is read from a file; a long title makes a plan that takes more room than another. */
function dinPlan(title: string): Plan {
  const leads = [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))];
  const plan = planOfLink(makeJack('out', 'din5', 'din'), makeJack('in', 'din5', 'din'), leads, title);
  const reading = readPlanText(writePlanText(plan));
  if (!reading.ok) throw new Error('test: the plan of a link cannot be read');
  return reading.plan;
}

/** Pages that hold a whole plan, each with the shelf that keeps it. */
const PLAN_PAGES = [
  ['/bench/', 'bench'],
  ['/cable-sheet/', 'bench'],
  ['/in-time/', 'bench'],
  ['/board/', 'board'],
] as const;

/** What a page says now: some have places that are empty until there is something to say. */
const alert = (page: Page): Locator => page.locator('[role=alert]:not(:empty)');
const button = (page: Page, name: string | RegExp): Locator => page.getByRole('button', { name });

async function open(page: Page, address: string): Promise<void> {
  await page.goto(`.${address}`);
  await wakeIslands(page);
}

/** Open a page by a link that holds a plan, as if for the first time. */
async function openLink(page: Page, address: string, plan: Plan): Promise<void> {
  await page.goto('./safety/');
  await open(page, `${address}#plan=${await writeSharedLink(plan)}`);
}

async function secondTab(page: Page, address: string): Promise<Page> {
  const tab = await page.context().newPage();
  await open(tab, address);
  return tab;
}

/** Emulate a store that takes nothing, from before the page is opened. */
async function refuse(page: Page): Promise<void> {
  await page.addInitScript(() => {
    Storage.prototype.setItem = () => {
      throw new DOMException('not allowed', 'SecurityError');
    };
  });
}

for (const [address, shelf] of PLAN_PAGES) {
  test(`where the store is full, a link to ${address} asks before it takes the place of what is there`, async ({
    page,
  }) => {
    const [mine, theirs] = [dinPlan('a long title, '.repeat(5).trim()), dinPlan('short')];
    await openLink(page, address, mine);
    await expect.poll(() => keptText(page, shelf)).toBe(writePlanText(mine));
    await fillStore(page);
    await openLink(page, address, theirs);
    await expect(alert(page)).toContainText('cannot keep it as an earlier version');
    expect(await savedBy(page, button(page, 'Save it to a file'))).toBe(writePlanText(mine));
    await button(page, 'Leave it as it is').click();
    await expect(alert(page)).toHaveCount(0);
    expect(await keptText(page, shelf)).toBe(writePlanText(mine));
    await openLink(page, address, theirs);
    await button(page, 'Go on without it').click();
    await expect.poll(() => keptText(page, shelf)).toBe(writePlanText(theirs));
  });

  test(`what ${address} keeps may be emptied under it: the page says so and keeps it again`, async ({
    page,
  }) => {
    const mine = dinPlan('mine');
    await openLink(page, address, mine);
    await expect.poll(() => keptText(page, shelf)).toBe(writePlanText(mine));
    const other = await secondTab(page, '/safety/');
    await other.evaluate(() => localStorage.clear());
    await expect(alert(page)).toContainText('was emptied while this page was open');
    expect(await savedBy(page, button(page, 'Save the plan to a file'))).toBe(writePlanText(mine));
    await button(page, 'Keep it again').click();
    await expect(alert(page)).toHaveCount(0);
    expect(await keptText(page, shelf)).toBe(writePlanText(mine));
  });

  test(`a browser that keeps nothing says so on ${address}, hands over a file and asks before it leaves`, async ({
    page,
  }) => {
    await refuse(page);
    const mine = dinPlan('mine');
    await openLink(page, address, mine);
    await expect(alert(page)).toContainText('does not keep your work');
    expect(await savedBy(page, button(page, 'Save the plan to a file'))).toBe(writePlanText(mine));
    // Told not to leave, the browser stays: what the reader did there is not lost.
    const asked = page.waitForEvent('dialog');
    const leaving = page.evaluate(() => void location.assign('../safety/'));
    const question = await asked;
    expect(question.type()).toBe('beforeunload');
    await question.dismiss();
    await leaving;
    await expect(alert(page)).toContainText('does not keep your work');
  });
}

for (const [address, shelf] of [
  ['/bench/', 'bench'],
  ['/board/', 'board'],
] as const) {
  test(`four files opened on ${address} one after the other leave each one among the versions`, async ({
    page,
  }, testInfo) => {
    await open(page, address);
    const plans = ['one', 'two', 'three', 'four'].map(dinPlan);
    for (const plan of plans) {
      const file = testInfo.outputPath(`${plan.title}.json`);
      writeFileSync(file, writePlanText(plan));
      await page.getByLabel('Plan file to open').setInputFiles(file);
      await expect(page.getByText(`Opened '${plan.title}.json'.`)).toBeVisible();
    }
    await expect.poll(() => keptText(page, shelf)).toContain('"four"');
    expect((await keptVersions(page, shelf)).slice(0, 3)).toEqual(
      [plans[2], plans[1], plans[0]].map((plan) => plan && writePlanText(plan)),
    );
  });

  test(`a spoiled list of versions on ${address} is put aside and can be saved`, async ({
    page,
  }, testInfo) => {
    // Spoiled from a page that keeps nothing: one that keeps it would put it aside itself as it leaves.
    await page.goto('./safety/');
    await page.evaluate(
      (key) => localStorage.setItem(key, '[{"at":5}, "half'),
      `five-milliamps ${shelf} versions`,
    );
    await open(page, address);
    await expect(alert(page)).toContainText(
      'The list of earlier versions kept in this browser cannot be read',
    );
    for (const title of ['one', 'two']) {
      const file = testInfo.outputPath(`${title}.json`);
      writeFileSync(file, writePlanText(dinPlan(title)));
      await page.getByLabel('Plan file to open').setInputFiles(file);
      await expect(page.getByText(`Opened '${title}.json'.`)).toBeVisible();
    }
    expect(await keptVersions(page, shelf)).toContain(writePlanText(dinPlan('one')));
    await page.reload();
    await wakeIslands(page);
    expect(await savedBy(page, button(page, 'Save what is there to a file'))).toBe('[{"at":5}, "half');
    await button(page, 'Let it go').click();
    await expect(alert(page)).toHaveCount(0);
  });
}

for (const address of ['/bench/', '/board/', '/cable-sheet/']) {
  test(`a file that cannot be read is named on ${address}, and the work stays`, async ({
    page,
    baseURL,
  }, testInfo) => {
    const seen = await watch(page, baseURL ?? '');
    await page.addInitScript(() => {
      File.prototype.text = () => Promise.reject(new DOMException('it was moved', 'NotReadableError'));
    });
    await open(page, address);
    const file = testInfo.outputPath('gone.json');
    writeFileSync(file, writePlanText(dinPlan('gone')));
    await page.getByLabel('Plan file to open').setInputFiles(file);
    await expect(page.getByText("The file 'gone.json' was not opened. Why: it was moved.")).toBeVisible();
    expect(seen.complaints).toEqual([]);
  });
}

test('a sheet that was opened by a link is the same after a reload and after a walk over the other pages', async ({
  page,
}) => {
  const paper = page.getByRole('article', { name: 'Build sheet' });
  await openLink(page, '/cable-sheet/', dinPlan('mine'));
  await expect(paper).toBeVisible();
  await page.getByText('Length, plugs, cable, colours').click();
  await expect(paper).not.toContainText('right-angle');
  await page.getByLabel('Plug, output end').selectOption({ index: 1 });
  // The square code of the sheet before goes when the plug comes: read no sooner.
  await expect(paper).toContainText('right-angle');
  await expect(paper).toContainText('Opens this lead at');
  const before = await paper.innerText();
  await page.reload();
  await wakeIslands(page);
  await expect(paper).toBeVisible();
  await expect(paper).toContainText('Opens this lead at');
  expect(await paper.innerText()).toBe(before);
  await open(page, '/bench/');
  await open(page, '/cable-sheet/');
  await expect(paper).toBeVisible();
  await expect(paper).toContainText('Opens this lead at');
  expect(await paper.innerText()).toBe(before);
});

/** Enter a reading that every jack may give: overload between two contacts, the power off. */
async function addReading(page: Page): Promise<void> {
  const other = page.locator('.other');
  if (!(await other.isVisible())) await page.getByText('Enter another reading').click();
  await other.getByLabel('Dial and power').selectOption('resistance, power off');
  await other.getByRole('button', { name: 'It shows overload (OL)' }).click();
}

/** A sheet to choose for, of the lead in a link. */
async function openSheet(page: Page): Promise<void> {
  await openLink(page, '/cable-sheet/', dinPlan('mine'));
  await page.getByText('Length, plugs, cable, colours').click();
}

/** How many of these choices are not the first of their list any more. */
const chosen = (choices: Locator): Promise<number> =>
  choices.evaluateAll(
    (all: HTMLSelectElement[]) => all.filter(({ selectedIndex }) => selectedIndex > 0).length,
  );

/** What pages keep as notes: how one is opened and changed, and what shows how often that was done. */
const NOTES = [
  {
    name: 'list of readings',
    key: 'jack finder',
    start: (page: Page) => open(page, '/jack-finder/'),
    change: addReading,
    shows: (page: Page, times: number) =>
      expect(page.getByRole('region', { name: 'Readings so far' }).getByRole('listitem')).toHaveCount(times),
  },
  {
    name: 'set of choices',
    key: 'sheet',
    start: openSheet,
    change: async (page: Page) => {
      const choices = page.getByLabel(/^(Plug|Colour), /);
      await choices.nth(await chosen(choices)).selectOption({ index: 1 });
    },
    shows: (page: Page, times: number) =>
      expect.poll(() => chosen(page.getByLabel(/^(Plug|Colour), /))).toBe(times),
  },
  {
    name: 'test of this lead',
    key: dinPlan('mine').leads.map(testShelf).join(''),
    start: openSheet,
    change: async (page: Page) => {
      const rows = page.locator('.test select');
      const said = await rows.evaluateAll(
        (all: HTMLSelectElement[]) => all.filter(({ value }) => value !== '').length,
      );
      await rows.nth(said).selectOption('silent');
    },
    shows: (page: Page, times: number) =>
      expect
        .poll(() =>
          page
            .locator('.test select')
            .evaluateAll((all: HTMLSelectElement[]) => all.filter(({ value }) => value !== '').length),
        )
        .toBe(times),
  },
  {
    name: 'log',
    key: 'what arrived',
    start: (page: Page) => open(page, '/what-arrived/'),
    change: async (page: Page) => {
      const seen = page.getByLabel('What was seen');
      await seen.fill(`${await seen.inputValue()}F8 `);
    },
    shows: (page: Page, times: number) =>
      expect(page.getByLabel('What was seen')).toHaveValue('F8 '.repeat(times)),
  },
  {
    name: 'list of results',
    key: 'handed-in',
    start: (page: Page) => open(page, '/mark/'),
    change: async (page: Page) => {
      await page.getByLabel(/^Or paste links/).fill(await resultHash(studentResult(2)));
      await button(page, 'Read the links').click();
    },
    shows: (page: Page, times: number) =>
      expect(page.getByText(`${times} of ${times} marked.`)).toBeVisible(),
  },
] as const;

for (const { name, key, start, change, shows } of NOTES) {
  test(`the ${name} in two tabs: the last one does not win, and the reader chooses`, async ({ page }) => {
    await start(page);
    const other = await page.context().newPage();
    await start(other);
    await change(page);
    await shows(page, 1);
    await expect(alert(other)).toContainText(`This ${name} was changed in another tab`);
    await change(other);
    await shows(other, 1);
    const before = await keptText(page, key);
    await change(page);
    await shows(page, 2);
    await expect.poll(() => keptText(page, key)).not.toBe(before);
    await button(other, 'Use the other tab’s version').click();
    await button(other, 'Go on without it').click();
    await shows(other, 2);
    await expect(alert(other)).toHaveCount(0);
  });

  test(`the ${name} is not lost where the store is emptied, spoiled or refused`, async ({ page }) => {
    await start(page);
    await change(page);
    await shows(page, 1);
    await expect.poll(() => keptText(page, key)).not.toBe('');
    await page.evaluate((kept) => localStorage.removeItem(`five-milliamps ${kept}`), key);
    await change(page);
    await expect(alert(page)).toContainText('was emptied while this page was open');
    expect(await savedBy(page, button(page, `Save the ${name} to a file`))).toContain('{');
    await button(page, 'Keep it again').click();
    await shows(page, 2);
    const kept = await keptText(page, key);
    await start(page);
    await shows(page, 2);
    expect(await keptText(page, key)).toBe(kept);
    await page.evaluate((at) => localStorage.setItem(`five-milliamps ${at}`, '{"half'), key);
    await start(page);
    await expect(alert(page)).toContainText(`The ${name} kept in this browser cannot be read`);
    expect(await savedBy(page, button(page, 'Save what is there to a file'))).toBe('{"half');
    await button(page, 'Let it go').click();
    await expect(alert(page)).toHaveCount(0);
    await start(page);
    await expect(alert(page)).toHaveCount(0);
    await change(page);
    await fillStore(page);
    await change(page);
    await expect(alert(page)).toContainText('store is full: your work is not kept');
    expect(await savedBy(page, button(page, `Save the ${name} to a file`))).toContain('{');
    await page.evaluate(() => localStorage.removeItem('filler'));
    await change(page);
    await expect(alert(page)).toHaveCount(0);
    await refuse(page);
    await start(page);
    await change(page);
    await expect(alert(page).filter({ hasText: 'does not keep your work' }).first()).toBeVisible();
    await expect(button(page, `Save the ${name} to a file`)).toBeVisible();
  });
}

/** An answer on the practice page, the way that hand in takes it: any will do for the record. */
async function answerTask(page: Page): Promise<void> {
  await open(page, '/practice/#task=loop-current.2.0');
  const task = taskOf('loop-current.2.0');
  await enter(page, task, task.slips[0]?.answer ?? '');
  await button(page, 'Hand in').click();
}

test('the practice record is not lost where the store is emptied by another tab', async ({ page }) => {
  await answerTask(page);
  await expect.poll(() => keptText(page, 'record')).toContain('loop-current');
  await open(page, '/');
  await open(page, '/practice/');
  await expect(page.getByText('Your record: 1 answers')).toBeVisible();
  const other = await secondTab(page, '/safety/');
  await other.evaluate(() => localStorage.clear());
  await expect(alert(page)).toContainText('was emptied while this page was open');
  expect(await savedBy(page, button(page, 'Save the record to a file'))).toContain('loop-current');
  await button(page, 'Keep it again').click();
  await expect(alert(page)).toHaveCount(0);
  await expect(page.getByText('Your record: 1 answers')).toBeVisible();
  expect(await keptText(page, 'record')).toContain('loop-current');
});

test('a browser that keeps nothing says so with an answer, hands over the record and asks before it leaves', async ({
  page,
}) => {
  await refuse(page);
  await answerTask(page);
  await expect(alert(page)).toContainText('This browser keeps nothing for this page');
  expect(await savedBy(page, button(page, 'Save your record to a file'))).toContain('loop-current');
  const asked = page.waitForEvent('dialog');
  const leaving = page.evaluate(() => void location.assign('../safety/'));
  await (await asked).dismiss();
  await leaving;
  await expect(alert(page)).toContainText('This browser keeps nothing for this page');
});

test('a Set that a link or another tab takes the place of stands among those that stood here before', async ({
  page,
}) => {
  const openSet = async (tab: Page, title: string): Promise<void> => {
    await tab.goto('./safety/');
    await open(tab, `/class/${await setHash({ ...CLASS_SET, title })}`);
    await expect(tab.getByText(`Opened: ${title}.`)).toBeVisible();
  };
  const titles = page.getByRole('listitem').filter({ has: button(page, /^Open /) });
  await openSet(page, 'one');
  await openSet(page, 'two');
  await page.getByText('Sets that stood here before').click();
  await expect(titles).toHaveText([/^one, /]);
  const other = await page.context().newPage();
  await openSet(other, 'three');
  await page.getByLabel('Title').fill('two again');
  await page.getByLabel('Title').blur();
  await expect(page.getByText('Another tab had kept another Set.')).toBeVisible();
  await expect(titles).toHaveText([/^three, /, /^two, /, /^one, /]);
  expect(await keptText(page, 'class-set')).toContain('"two again"');
  await button(page, /^Open one of/).click();
  await expect(page.getByLabel('Title')).toHaveValue('one');
});

test('a log in an address asks before it takes the place of what was entered, and a change takes it off the address', async ({
  page,
}) => {
  const seen = page.getByLabel('What was seen');
  await open(page, '/what-arrived/');
  await seen.fill('F8');
  await page.goto('./safety/');
  await open(page, '/what-arrived/#sent=90-3C-40&seen=00-30-00');
  await expect(alert(page).first()).toContainText('A log would be gone');
  expect(await savedBy(page, button(page, 'Save it to a file'))).toContain('"seen":"F8"');
  await button(page, 'Leave it as it is').click();
  await expect(seen).toHaveValue('F8');
  await page.reload();
  await wakeIslands(page);
  await button(page, 'Go on without it').click();
  await expect(seen).toHaveValue('00 30 00');
  await seen.fill('00 30');
  await expect(page).toHaveURL(/\/what-arrived\/$/);
  await page.reload();
  await wakeIslands(page);
  await expect(seen).toHaveValue('00 30');
});

test('a class that was taken in is there after a reload, is taken in once from a link, and comes back when it was cleared', async ({
  page,
}, testInfo) => {
  await open(page, `/mark/${await resultHash(studentResult(2))}`);
  await expect(page.getByText('1 of 1 marked.')).toBeVisible();
  await page.getByLabel(/^Or paste links/).fill(await resultHash(studentResult(3)));
  await button(page, 'Read the links').click();
  await expect(page.getByText('2 of 2 marked.')).toBeVisible();
  await page.reload();
  await expect(page.getByText('2 of 2 marked.')).toBeVisible();
  const kept = await keptText(page, 'handed-in');
  await button(page, 'Clear').click();
  await expect(page.getByText('All that was taken in is gone from this browser.')).toBeVisible();
  await expect(page.getByText('What you pasted is read.')).toHaveCount(0);
  await expect.poll(() => keptText(page, 'handed-in')).toContain('"results":[]');
  await button(page, 'Bring it back').click();
  await expect(page.getByText('2 of 2 marked.')).toBeVisible();
  await expect.poll(() => keptText(page, 'handed-in')).toBe(kept);
  await button(page, 'Clear').click();
  const file = testInfo.outputPath('saved.json');
  writeFileSync(file, kept);
  await page.getByLabel('Files to mark').setInputFiles(file);
  await expect(page.getByText('2 of 2 marked.')).toBeVisible();
});

/** A student at work on the Set of the class in a tab. */
async function beginWork(page: Page): Promise<void> {
  await open(page, `/hand-in/${await setHash(CLASS_SET)}`);
  const number = page.getByLabel('Your number in the class list');
  await expect(number.or(page.getByText(/^Number 2\./))).toBeVisible();
  if (!(await number.isVisible())) return;
  await number.fill('2');
  await button(page, 'Begin').click();
}

test('work that was handed in from another tab takes no more answers in this one, and says so', async ({
  page,
}) => {
  await beginWork(page);
  const other = await page.context().newPage();
  await beginWork(other);
  for (let task = 1; task <= 5; task += 1) await button(other, 'Leave it for now').click();
  await button(other, 'Show a QR code of my work').click();
  await expect(alert(page)).toContainText('This work was handed in from another tab');
  await expect(page.getByRole('heading', { name: /hand in$/ })).toBeVisible();
  await other.close();
  const third = await secondTab(page, '/safety/');
  await third.evaluate(() => localStorage.clear());
  await expect(alert(page).last()).toContainText('was emptied while this page was open');
  await button(page, 'Keep them again').click();
  await expect(alert(page)).toHaveCount(1);
  expect(await keptText(page, 'class-work')).toContain('"handedIn":true');
});

test('a second student under the same number is asked, sees nothing of the first one’s work, and gets work of their own', async ({
  page,
}) => {
  const begin = async (name: string): Promise<void> => {
    await page.getByLabel('Your number in the class list').fill('7');
    await page.getByLabel('Your name').fill(name);
    await button(page, 'Begin').click();
  };
  await open(page, `/hand-in/${await setHash({ ...CLASS_SET, show: 'end' })}`);
  await begin('Robin');
  for (let task = 1; task <= 5; task += 1) await button(page, 'Leave it for now').click();
  await expect(page.getByText(/after that you cannot change your answers any more/)).toBeVisible();
  await button(page, 'Show a QR code of my work').click();
  await expect(page.getByText(/You have handed in, so your answers cannot be changed/)).toBeVisible();
  await button(page, 'Next student on this device').click();
  await begin('Pat');
  await expect(alert(page)).toContainText('under number 7, of Robin (handed in). Is it yours?');
  await expect(page.getByText(/of 5 right/)).toHaveCount(0);
  await button(page, 'Start new work for Pat, another student').click();
  await expect(page.getByText(/^Number 7, Pat\. 0 of 5 answered/)).toBeVisible();
  await button(page, 'I am someone else').click();
  await begin('');
  await expect(alert(page)).toContainText('of Pat (0 of 5 answered), and of Robin (handed in). Is it yours?');
  await button(page, 'Type number and name again').click();
  await begin('robin');
  await expect(page.getByText('0 of 5 right, 0 of them at once')).toBeVisible();
  expect(JSON.parse(await keptText(page, 'class-work'))).toHaveLength(2);
});

test('work of more than sixty students stays on a device until whoever teaches has it in a file', async ({
  page,
}) => {
  await page.goto('./safety/');
  const works = Array.from({ length: 61 }, (_, at) => ({
    result: { ...studentResult(1), number: at + 1, attempts: [] },
    handedIn: true,
  }));
  await page.evaluate(
    (text) => localStorage.setItem('five-milliamps class-work', text),
    JSON.stringify(works),
  );
  await open(page, `/hand-in/${await setHash(CLASS_SET)}`);
  const older = page.getByRole('group', { name: 'Older work on this device' });
  await expect(older).toContainText('keeps older work of 2 students');
  const file = await savedBy(page, older.getByRole('button', { name: 'Save the older work to a file' }));
  expect(file).toContain('"five-milliamps-results"');
  await older.getByRole('button', { name: /take the work of 2 students off this device/ }).click();
  await expect(older).toContainText('The work of 2 students is off this device.');
  expect(JSON.parse(await keptText(page, 'class-work'))).toHaveLength(59);
});

test('everything in the finder comes back after starting over by mistake', async ({ page }) => {
  await open(page, '/jack-finder/');
  await addReading(page);
  await button(page, 'Start over').click();
  await button(page, 'Bring it back').click();
  await expect(page.getByRole('region', { name: 'Readings so far' }).getByRole('listitem')).toHaveCount(1);
});

test('parts of a page that cannot be fetched say so, keep the work, and come when they are asked for again', async ({
  page,
}) => {
  await page.route(/_astro\/(keeping|WhichLead|SendPanel)\.[^/]*\.js/, (route) => route.abort());
  await page.goto('./bench/');
  await expect(alert(page)).toContainText('Saving and opening could not be loaded');
  await button(page, 'Which lead?').click();
  await expect(alert(page)).toHaveCount(2);
  await page.getByRole('group', { name: 'Input jack' }).getByLabel('Type').selectOption('type-b');
  expect(await savedBy(page, button(page, 'Save the plan to a file'))).toContain('type-b');
  await page.unrouteAll();
  await button(page, 'Try again when you are online').click();
  await page
    .getByRole('button', { name: /^Use this wiring/ })
    .first()
    .click();
  await button(page, 'Try again').click();
  await expect(alert(page)).toHaveCount(0);
  await expect(page.getByLabel('Plan file to open')).toBeAttached();
  await expect.poll(() => keptText(page, 'bench')).toContain('type-b');
});

test('a device and a link that are removed are named, undo brings them back, and the focus is not lost', async ({
  page,
  baseURL,
}) => {
  const seen = await watch(page, baseURL ?? '');
  await open(page, `/board/#plan=${await writeSharedLink(demoBoard())}`);
  const word = page.locator('p.word');
  await page
    .getByRole('group', { name: 'Drawn board' })
    .getByRole('button', { name: /^drive, device/ })
    .click();
  await button(page, 'Remove drive').click();
  await expect(word).toHaveText("'drive' and its links are off the board. Undo brings them back.");
  await expect(word).toBeFocused();
  await button(page, 'Undo').click();
  await page.getByRole('button', { name: 'link 2', exact: true }).click();
  await button(page, 'Remove link 2').click();
  await expect(word).toHaveText('link 2 is removed. Undo brings it back.');
  await expect(word).toBeFocused();
  await button(page, 'Undo').click();
  await expect(page.locator('.headline')).toContainText('8 devices');
  expect(seen.complaints).toEqual([]);
});
