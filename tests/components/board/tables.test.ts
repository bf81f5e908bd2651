/** The tables of the board page, rendered: every row stands there, in the words and numbers of the core. */
import { describe, expect, test } from 'vitest';
import DeviceTable from '../../../components/board/DeviceTable.svelte';
import Findings from '../../../components/board/Findings.svelte';
import LinkTable from '../../../components/board/LinkTable.svelte';
import ListsPaper from '../../../components/board/ListsPaper.svelte';
import PressItems from '../../../components/board/PressItems.svelte';
import PressTable from '../../../components/board/PressTable.svelte';
import WhoHears from '../../../components/board/WhoHears.svelte';
import {
  LENGTH_NOTE,
  cableSchedule,
  checkBoard,
  demoBoard,
  hearers,
  sayMilliseconds,
  sayPrice,
  senders,
  shoppingList,
  timePress,
} from '../../../src/core/board/index.ts';
import { LIBRARY, makePlan } from '../../../src/core/plan/index.ts';
import type { Plan } from '../../../src/core/plan/index.ts';
import { hexOf } from '../../../src/core/signal/index.ts';
import { linkWords } from '../../../src/core/verdict/index.ts';
import { allOf, htmlOf, tablesOf, wordsOf } from '../../support/rendered.ts';

const plan = demoBoard();
const check = checkBoard(plan, new Map());
const empty = makePlan({});
const nothing = (): void => undefined;

describe('The table of devices', () => {
  const [table] = tablesOf(htmlOf(DeviceTable, { plan, onchange: nothing, onchoose: nothing }));

  test('has a row for each, with its number in the drawing, its place and every jack', () => {
    expect(table?.rows.map(([number, name]) => [number, name])).toEqual(
      plan.devices.map(({ name }, at) => [String(at + 1), name]),
    );
    plan.devices.forEach(({ xCentimetres, yCentimetres, jacks }, at) => {
      const row = table?.rows[at] ?? [];
      expect(row[4]).toBe(`${xCentimetres ?? 0}, ${yCentimetres ?? 0} cm`);
      for (const { name, direction } of jacks) expect(row[6]).toContain(`${name} (${direction})`);
    });
  });

  test('tells a channel only of those that listen', () => {
    const channels = new Map(table?.rows.map((row) => [row[1], row[3]]));
    expect(channels.get('hub')).toBe('needs none');
    const drive = plan.devices.find(({ name }) => name === 'drive');
    expect(channels.get('drive')).toBe(String(drive?.channel));
  });
});

describe('The table of links', () => {
  const props = { onjoin: nothing, onchoose: nothing };
  const [table] = tablesOf(htmlOf(LinkTable, { plan, check, ...props }));

  test('has a row for each input with the outcome that was solved', () => {
    const expected = plan.links.flatMap(({ name, inputs }, at) =>
      inputs.map(({ device, jack }) => {
        const outcome = check.outcomes[at];
        return [name, outcome ? linkWords(outcome).label : '', `${device}: ${jack}`];
      }),
    );
    expect(table?.rows.map((row) => [row[0], row[1], row[3]])).toEqual(expected);
  });

  test('offers outputs on one side and inputs on the other', () => {
    const options = allOf(htmlOf(LinkTable, { plan, check, ...props }), 'option');
    const names = (direction: 'in' | 'out') =>
      plan.devices.flatMap(({ name, jacks }) =>
        jacks.filter((jack) => jack.direction === direction).map((jack) => `${name}: ${jack.name}`),
      );
    expect(options).toEqual([...names('out'), ...names('in')]);
  });

  test('says that there are none, and has no choice then', () => {
    const html = htmlOf(LinkTable, { plan: empty, check: checkBoard(empty, new Map()), ...props });
    expect(wordsOf(html)).toContain('no links yet');
    expect(allOf(html, 'button')).toEqual([]);
  });
});

describe('The lists on paper', () => {
  const html = htmlOf(ListsPaper, { plan });
  const [schedule, shopping] = tablesOf(html);

  test('schedule every lead of the board once', () => {
    expect(schedule?.rows.map(([lead]) => lead)).toEqual(cableSchedule(plan).map(({ lead }) => lead));
    expect(schedule?.rows).toHaveLength(plan.leads.length);
  });

  test('sum up what is to be bought, row by row and in all', () => {
    const list = shoppingList(plan);
    expect(shopping?.rows.map((row) => [row[0], row[3]])).toEqual(
      list.rows.map(({ what, sum }) => [what, sayPrice(sum, list.currency)]),
    );
    expect(wordsOf(html)).toContain(
      `in all, with invented prices in it ${sayPrice(list.total, list.currency)}`,
    );
    for (const [, , each] of shopping?.rows ?? []) expect(each).toMatch(/ \(invented\)$/);
    expect(list.rows.reduce((sum, row) => sum + row.sum, 0)).toBeCloseTo(list.total, 9);
  });

  test('say of a price that there is none, and where lengths come from', () => {
    const [hub] = LIBRARY.filter(({ kind }) => kind === 'hub');
    const free = { ...plan, devices: [{ ...hub, name: 'hub', toBuy: true, price: 0 }], leads: [], links: [] };
    const words = wordsOf(htmlOf(ListsPaper, { plan: free as Plan }));
    expect(words).toContain('no price yet');
    expect(words).toContain('in all, without 1 thing that has no price yet');
    expect(wordsOf(html)).toContain(LENGTH_NOTE);
  });

  test('say so where there is nothing to buy', () => {
    expect(wordsOf(htmlOf(ListsPaper, { plan: empty }))).toContain('Nothing to buy.');
  });
});

describe('One press as tables', () => {
  const timing = timePress(plan);
  const [messages, devices] = tablesOf(htmlOf(PressTable, { timing, running: false }));

  test('gives every message with its bytes and times', () => {
    expect(messages?.caption).toBe(`${timing.bytes} bytes, without running status`);
    timing.items.forEach(({ item, bytes, endSeconds }, at) => {
      const row = messages?.rows[at] ?? [];
      expect([row[0], row[1], row[3]]).toEqual([String(at + 1), item.device, bytes.map(hexOf).join(' ')]);
      expect(row[4]?.endsWith(sayMilliseconds(endSeconds))).toBe(true);
    });
    expect(messages?.rows).toHaveLength(timing.items.length);
  });

  test('counts programs from 1 and says what goes over the wire', () => {
    const program = timing.items.findIndex(({ item }) => item.send === 'program');
    const item = timing.items[program]?.item;
    if (item?.send !== 'program') throw new Error('needs a program in the press of the demo board');
    expect(messages?.rows[program]?.[2]).toBe(`program ${item.program} (${item.program - 1} on the wire)`);
    // The byte on the wire is the last of the message.
    expect(timing.items[program]?.bytes.at(-1)).toBe(item.program - 1);
  });

  test('gives every device with the time of its last message', () => {
    expect(devices?.rows.map(([device]) => device)).toEqual(timing.arrivals.map(({ device }) => device));
  });
});

describe('Who hears a message', () => {
  test('lists those that hear the first sender, in the order in which they do', () => {
    const [sender] = senders(plan);
    const [table] = tablesOf(htmlOf(WhoHears, { plan, onshow: nothing }));
    expect(table?.rows.map(([device]) => device)).toEqual(
      hearers(plan, sender ?? '').hearings.map(({ device }) => device),
    );
  });

  test('asks for a controller where nothing sends', () => {
    expect(wordsOf(htmlOf(WhoHears, { plan: empty, onshow: nothing }))).toContain('Add a controller.');
  });
});

describe('What the check found', () => {
  test('is said finding by finding: what, why and how to mend it', () => {
    const broken = { ...plan, links: plan.links.slice(1) };
    const { findings } = checkBoard(broken, new Map());
    expect(findings.length).toBeGreaterThan(0);
    const words = wordsOf(
      htmlOf(Findings, { check: checkBoard(broken, new Map()), shown: undefined, onshow: nothing }),
    );
    for (const { what, why, mend } of findings)
      for (const part of [what, why, mend]) expect(words).toContain(part.replace(/\s+/g, ' '));
  });
});

describe('The messages of a press', () => {
  const offer = (press: Plan['press']) =>
    allOf(htmlOf(PressItems, { plan: { ...plan, press: press ?? [] }, onchange: nothing }), 'button').at(-1);

  test('are offered for each device that has none, and for the others where some have one', () => {
    // The demo board has six devices that listen.
    expect(offer([])).toBe('Add one for each of the 6 devices');
    expect(offer(plan.press?.slice(0, 2))).toBe('Add one for each of the other 4 devices');
  });
});
