/** A learner from the front page through two lessons, and back on another day: once with a keyboard alone, once with a finger alone. */
import type { Page } from '@playwright/test';
import { expect, test } from '../support/test.ts';
import type { Task } from '../../src/core/learn/index.ts';
import { taskOn } from '../support/answering.ts';
import { countTouches, keysOf, touchIn } from '../support/hands.ts';
import { wakeIslands } from '../support/watch.ts';

/** What a learner does with a page, whatever the hand. */
interface Hand {
  /** Press a control; `way` is where a keyboard looks for it. */
  readonly press: (kind: 'link' | 'button', name: string | RegExp, way?: 'on' | 'back') => Promise<void>;
  /** Go on from a task that is over, where its last press has led. */
  readonly goOn: () => Promise<void>;
  /** Enter an answer; `before` is what was entered and handed in, so that the hand stands behind the fields. */
  readonly enter: (task: Task, answer: string, before?: string) => Promise<void>;
}

const exactly = (name: string): RegExp => new RegExp(`^${name.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')}$`);
const placesOf = (answer: string): readonly number[] => (answer === '-' ? [] : answer.split(' ').map(Number));

/** How often each item of an order is moved up, and when, so that it comes to its place. */
function movesUp(task: Task, answer: string): readonly string[] {
  if (task.form.form !== 'order') throw new Error('task: needs an order');
  const { items } = task.form;
  const shown = items.map((_, at) => at);
  return placesOf(answer).flatMap((item, to) => {
    const from = shown.indexOf(item);
    shown.splice(to, 0, ...shown.splice(from, 1));
    return Array.from({ length: from - to }, () => `${items[item] ?? ''}: up`);
  });
}

function keyboard(page: Page): Hand {
  const keys = keysOf(page);
  return {
    async press(kind, name, way) {
      await keys.reach(kind, name, way);
      await keys.press('Enter');
    },
    async goOn() {
      await keys.isAt('button', 'Go on');
      await keys.press('Enter');
    },
    async enter(task, answer, before) {
      const { form } = task;
      const way = before === undefined ? 'on' : 'back';
      if (form.form === 'choice') {
        // A group of radio buttons is entered at the one that is chosen, or at its first.
        const [from, to] = [Number(before ?? 0), Number(answer)];
        await keys.reach('radio', exactly(form.options[from] ?? ''), way);
        if (from === to) await keys.press('Space');
        for (let at = from; at !== to; at = (at + 1) % form.options.length) await keys.press('ArrowDown');
      } else if (form.form === 'several') {
        const changed = form.options.filter(
          (_, at) => placesOf(answer).includes(at) !== placesOf(before ?? '-').includes(at),
        );
        for (const option of way === 'on' ? changed : changed.toReversed()) {
          await keys.reach('checkbox', exactly(option), way);
          await keys.press('Space');
        }
      } else if (form.form === 'order') {
        for (const name of movesUp(task, answer)) {
          await keys.reach('button', exactly(name));
          await keys.press('Enter');
        }
      } else {
        await keys.reach('textbox', 'Your answer', way);
        await keys.press('Control+A');
        await keys.type(answer);
      }
    },
  };
}

function finger(page: Page): Hand {
  return {
    press: (kind, name) => page.getByRole(kind, { name }).tap(),
    goOn: () => page.getByRole('button', { name: 'Go on' }).tap(),
    async enter(task, answer, before) {
      const { form } = task;
      if (form.form === 'choice') {
        await page.getByRole('radio', { name: form.options[Number(answer)] ?? '', exact: true }).tap();
      } else if (form.form === 'several') {
        for (const [at, name] of form.options.entries())
          if (placesOf(answer).includes(at) !== placesOf(before ?? '-').includes(at))
            await page.getByRole('checkbox', { name, exact: true }).tap();
      } else if (form.form === 'order') {
        for (const name of movesUp(task, answer)) await page.getByRole('button', { name, exact: true }).tap();
      } else {
        const field = page.getByRole('textbox', { name: 'Your answer' });
        await field.fill('');
        await touchIn(page, field, answer);
      }
    },
  };
}

/** The same tasks at each run: what the page draws by chance is drawn from one number. */
async function withoutChance(page: Page): Promise<void> {
  await page.addInitScript(() => {
    crypto.getRandomValues = (list) => {
      if (list instanceof Uint32Array) list.fill(2026);
      return list;
    };
  });
}

/** Tasks of a lesson's own, at its end; those of earlier lessons come after them. */
const OWN_TASKS = 6;

/** Do every task of an open lesson's own: the second wrong at first, and where asked the fifth wrong twice. */
async function work(page: Page, hand: Hand, misses = false): Promise<void> {
  await wakeIslands(page);
  await hand.press('button', 'Begin', 'back');
  for (let at = 1; at <= OWN_TASKS; at += 1) {
    await expect(page.getByRole('heading', { name: new RegExp(`^Task ${at} of`) })).toBeVisible();
    const task = await taskOn(page);
    const slip = at === 2 || (misses && at === 5) ? task.slips[0] : undefined;
    if (slip) {
      await hand.enter(task, slip.answer);
      await hand.press('button', 'Hand in');
      await expect(page.getByText(slip.sentence)).toBeVisible();
    }
    const missed = slip !== undefined && at === 5;
    if (missed) await expect(page.getByText('Not yet: one more try')).toBeVisible();
    else await hand.enter(task, task.right, slip?.answer);
    await hand.press('button', 'Hand in');
    await expect(
      page.getByRole('status').getByText(missed ? 'Not right' : 'Right', { exact: true }),
    ).toBeVisible();
    await expect(page.getByText('The way to it')).toBeVisible();
    await hand.goOn();
  }
}

/** From the front page to a lesson. */
async function goTo(page: Page, hand: Hand, lesson: string): Promise<void> {
  await page.goto('./');
  await wakeIslands(page);
  await hand.press('link', 'Learn, lesson by lesson');
  await page.waitForURL('**/lessons/');
  await wakeIslands(page);
  await hand.press('link', lesson);
  await page.waitForURL('**/lessons/*/');
}

/** Two lessons on one day, each left after its own tasks; the next day all twelve are due, ten of them at a time. */
async function learn(page: Page, hand: Hand, second: string): Promise<void> {
  await withoutChance(page);
  await page.clock.setFixedTime(new Date('2026-03-02T10:00:00'));
  await goTo(page, hand, 'The five-milliamp loop');
  await work(page, hand);
  await goTo(page, hand, second);
  await work(page, hand, true);
  await page.clock.setFixedTime(new Date('2026-03-03T10:00:00'));
  await page.goto('./lessons/');
  await wakeIslands(page);
  await expect(page.getByText('Done: The five-milliamp loop.')).toBeVisible();
  await hand.press('link', `${2 * OWN_TASKS} due today: practise`);
  await page.waitForURL('**/practice/');
  await wakeIslands(page);
  await expect(page.getByText('6 of 6 tried, 6 right, 0 known, 6 due today')).toBeVisible();
  await expect(page.getByText('6 of 6 tried, 5 right, 0 known, 6 due today')).toBeVisible();
  await hand.press('button', 'Practise 10 of the 12 that are due today');
  await expect(page.getByRole('heading', { name: 'Task 1 of 10' })).toBeVisible();
}

test('a learner with a keyboard goes through two lessons, comes back the next day and finds what is due', async ({
  page,
}) => {
  const touched = await countTouches(page);
  await learn(page, keyboard(page), 'When nothing answers');
  expect(await touched()).toMatchObject({ mouse: 0, finger: 0 });
});

test.describe('on a small screen', () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

  test('a learner with a finger goes through two lessons, comes back the next day and finds what is due', async ({
    page,
  }) => {
    const touched = await countTouches(page);
    await learn(page, finger(page), 'Solder it');
    expect(await touched()).toMatchObject({ mouse: 0, keys: 0 });
  });
});
