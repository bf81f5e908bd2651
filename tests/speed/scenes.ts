/** What is done on each page of a tool to see how long a reader waits: its main actions, each as a hand would do it. */
import type { Locator, Page } from '@playwright/test';
import { demoBoard } from '../../src/core/board/index.ts';
import { planOfLink, writePlanText, writeSharedLink } from '../../src/core/plan/index.ts';
import { makeJack, makeLead, newJack } from '../../src/core/wiring/index.ts';
import type { Hand } from './hand.ts';

/** A page of the site, what is made ready on it before, and what is done on it in each round. */
export interface Scene {
  readonly address: string;
  readonly prepare?: (page: Page) => Promise<void>;
  readonly round: (hand: Hand, page: Page, round: number) => Promise<void>;
}

const button = (where: Page | Locator, name: string | RegExp): Locator =>
  where.getByRole('button', { name }).first();
const fold = (page: Page, words: string | RegExp): Locator =>
  page.locator('summary', { hasText: words }).first();
const open = (page: Page, words: string | RegExp): Promise<void> => fold(page, words).click();
const undo = (hand: Hand): Promise<void> =>
  hand.act('undo', () => hand.press(hand.page.getByRole('button', { name: 'Undo', exact: true }).first()));

const WILL_THEY_TALK: Scene = {
  address: '/',
  async round(hand, page, round) {
    const sender = page.getByRole('group', { name: /^The jack on the sender/ });
    const listener = page.getByRole('group', { name: /^The jack on the listener/ });
    const sockets = ['large jack', 'small jack, 3.5 mm'] as const;
    await hand.act('jack chosen', async () => {
      await hand.press(sender.getByText(sockets[round % 2] ?? sockets[0]).first());
      await hand.press(listener.getByText(sockets[(round + 1) % 2] ?? sockets[0]).first());
    });
    await hand.act('type chosen', () =>
      hand.press(page.getByRole('radio', { name: round % 2 ? /^Type A/ : /^Type B/ }).first()),
    );
    await hand.act('lead of the drawer ticked', () =>
      hand.press(page.getByRole('checkbox', { name: 'guitar lead' })),
    );
  },
};

const contact = (page: Page, name: string): Locator => button(page, new RegExp(`^plug at the ${name}`));

/** A DIN output, a Type A input, and the lead between them. */
const TWO_JACKS = planOfLink(makeJack('out', 'din5', 'din'), newJack('in', 'trs-3.5', 'type-a'), [
  makeLead('din5', 'trs-3.5', []),
]);

const BENCH: Scene = {
  address: '/bench/',
  async prepare(page) {
    const input = page.getByRole('group', { name: 'Input jack' });
    await input.getByText('I know more about the circuit').click();
    await open(page, 'Length, gauge, plugs and faults');
  },
  async round(hand, page, round) {
    await hand.act('plan file opened', () =>
      hand.file(page.getByLabel('Plan file to open'), 'plan.json', writePlanText(TWO_JACKS)),
    );
    const [from, to] = [
      ['output, pin 4', 'input, ring'],
      ['output, pin 5', 'input, tip'],
      ['output, pin 2', 'input, sleeve'],
    ][round % 3] as [string, string];
    await hand.act('two contacts joined', async () => {
      await hand.press(contact(page, from));
      await hand.press(contact(page, to));
    });
    await undo(hand);
    await hand.act('redo', () => hand.press(button(page, 'Redo')));
    await hand.act('lead asked for', () => hand.press(button(page, 'Which lead?')));
    await hand.act('lead chosen', () => hand.press(button(page, /^Use this wiring/)));
    await hand.act('answer closed', () => hand.press(button(page, 'Which lead?')));
    await hand.act('number typed', () =>
      hand.type(page.getByLabel('Lead 1, length'), String((round % 9) + 1)),
    );
    await hand.act('part chosen', () => hand.choose(page.getByLabel('Protection diode').first()));
    await hand.act('jack chosen', () =>
      hand.choose(page.getByRole('group', { name: 'Input jack' }).getByLabel('Type', { exact: true })),
    );
    await hand.act('fault put in', () => hand.press(button(page, 'Put this fault in')));
    await hand.act('fault repaired', () => hand.press(button(page, /^Mend/)));
  },
};

const IN_TIME: Scene = {
  address: '/in-time/',
  async round(hand, page, round) {
    await hand.act('number typed', () =>
      hand.type(page.getByLabel('links in a chain'), String((round % 3) + 1)),
    );
    await hand.act('wiring chosen', () => hand.choose(page.getByLabel('wiring', { exact: true })));
    await hand.act('byte sent', () => hand.press(button(page, 'Add this message')));
    await hand.act('message taken out', () => hand.press(button(page, 'Remove program change, number 2')));
    await hand.act('message changed', () =>
      hand.type(page.getByLabel('program, from 1').first(), String((round % 99) + 1)),
    );
  },
};

const drawn = (page: Page): Locator => page.getByRole('group', { name: 'Drawn board' });

const BOARD: Scene = {
  address: '/board/',
  async prepare(page) {
    await page.getByRole('button', { name: 'Open the demo board' }).first().click();
    await page.getByText('8 devices').first().waitFor();
    await open(page, 'Plan it for me');
  },
  async round(hand, page) {
    await hand.act('demo board opened', () => hand.press(button(page, 'Open the demo board')));
    const add = page.getByLabel('From the library');
    if (!(await add.isVisible())) await page.keyboard.press('Escape');
    await hand.act('device added', async () => {
      await hand.choose(add);
      await hand.press(button(page, 'Add it'));
    });
    await hand.act('device moved', () =>
      hand.key(drawn(page).getByRole('button', { name: /^drive, device/ }), 'ArrowRight'),
    );
    await hand.act('device removed', async () => {
      await hand.press(drawn(page).getByRole('button', { name: /^drive, device/ }));
      await hand.press(button(page, 'Remove drive'));
    });
    await undo(hand);
    await hand.act('link removed', async () => {
      await hand.press(page.getByRole('button', { name: 'link 2', exact: true }).first());
      await hand.press(button(page, 'Remove link 2'));
    });
    await undo(hand);
    await hand.act('two jacks linked', async () => {
      await hand.press(drawn(page).getByRole('button', { name: /^THRU of tape echo/ }));
      await hand.press(drawn(page).getByRole('button', { name: /^IN of drive/ }));
    });
    await hand.act('plan made', () => hand.press(page.locator('.plan-it').getByRole('button').first()));
    await hand.act('plan file opened', () =>
      hand.file(page.getByLabel('Plan file to open'), 'plan.json', writePlanText(demoBoard())),
    );
  },
};

const SHEET: Scene = {
  address: '/cable-sheet/',
  async prepare(page) {
    await page.goto(`${page.url().replace(/#.*/, '')}#plan=${await writeSharedLink(demoBoard())}`);
    await open(page, /^Length, plugs, cable/);
  },
  async round(hand, page) {
    await hand.act('lead chosen', () => hand.choose(page.getByLabel('Lead of this plan')));
    await hand.act('plug chosen', () => hand.choose(page.getByLabel('Plug, output end')));
    await hand.act('reading told', () => hand.choose(page.getByLabel(/^row 2, /).first()));
  },
};

const METER: Scene = {
  address: '/meter/',
  async round(hand, page) {
    await hand.act('probes swapped', () => hand.press(button(page, 'Swap probes')));
    await hand.act('probe moved', () => hand.choose(page.getByLabel('Red probe on')));
    await hand.act('dial turned', () => hand.press(page.getByLabel('DC volts').first()));
    await hand.act('dial turned back', () => hand.press(page.getByLabel('resistance').first()));
  },
};

const FINDER: Scene = {
  address: '/jack-finder/',
  async round(hand, page) {
    await hand.act('jack told', () => hand.choose(page.getByLabel('Printed beside it')));
    await hand.act('reading typed', () =>
      hand.type(page.getByLabel('The meter shows').first(), '1.5', 'Enter'),
    );
    await hand.act('reading taken out', () => hand.press(button(page, 'Take out reading 1')));
  },
};

const FAULTS: Scene = {
  address: '/fault-bench/',
  async round(hand, page, round) {
    await hand.act('fault number typed', () =>
      hand.type(page.getByLabel('Fault number'), String((round % 40) + 2)),
    );
    await hand.act('board looked at', () => hand.press(button(page, /^Look at the switch/)));
    await hand.act('fault named', async () => {
      await hand.choose(page.getByLabel('It is', { exact: true }));
      await hand.press(button(page, 'Name it'));
    });
    await hand.act('next fault', () => hand.press(button(page, /^(Find another|Another) fault/)));
    await hand.act('question answered', () => hand.press(button(page, 'I cannot tell')));
    await hand.act('helper started again', () => hand.press(button(page, 'Start again')));
  },
};

const ARRIVED: Scene = {
  address: '/what-arrived/',
  async round(hand, page, round) {
    await hand.act('log typed', async () => {
      await hand.type(page.getByLabel('What was sent'), '90 88 00');
      await hand.type(page.getByLabel('What was seen'), round % 2 ? 'F3* FE 00*' : '90 88 00');
    });
    await hand.act('log answered', () => hand.press(button(page, 'Find the cause')));
  },
};

const SEARCH: Scene = {
  address: '/search/',
  async round(hand, page, round) {
    await hand.act('search typed', () =>
      hand.type(page.getByRole('searchbox'), ['optocoupler', 'ring', 'lead'][round % 3] ?? ''),
    );
  },
};

const PRACTICE: Scene = {
  address: '/practice/',
  async round(hand, page, round) {
    await page.evaluate((task) => (location.hash = task), `#task=loop-current.2.${round}`);
    const answer = page.getByRole('textbox', { name: 'Your answer' });
    await answer.waitFor();
    await hand.act('hint asked for', () => hand.press(button(page, 'Hint')));
    await hand.act('task checked', async () => {
      await hand.type(answer, '900');
      await hand.press(button(page, 'Hand in'));
    });
    await hand.act('task answered again', async () => {
      await hand.type(answer, '901');
      await hand.press(button(page, 'Hand in'));
    });
    await hand.act('next task', () => hand.press(button(page, 'Go on')));
  },
};

const LESSON: Scene = {
  address: '/lessons/five-milliamp-loop/',
  async round(hand, page) {
    const question = page.locator('.predict').first();
    await hand.act('answer ticked', () => hand.press(question.getByRole('radio').first()));
    if (await button(question, 'Answer').isVisible())
      await hand.act('answer given', () => hand.press(button(question, 'Answer')));
  },
};

/** Every scene. */
export const SCENES: readonly Scene[] = [
  WILL_THEY_TALK,
  BENCH,
  IN_TIME,
  BOARD,
  SHEET,
  METER,
  FINDER,
  FAULTS,
  ARRIVED,
  SEARCH,
  PRACTICE,
  LESSON,
];
