import { describe, expect, test } from 'vitest';
import {
  addHub,
  addPress,
  addStock,
  changeHub,
  changePress,
  changeStock,
  movePress,
  pressItem,
  removeHub,
  removePress,
  removeStock,
  setMaking,
  setWishes,
} from '../../../src/core/plan/edit-lists.ts';
import { edited, sayEdit } from '../../../src/core/plan/edited.ts';
import { PLAN_LIMITS } from '../../../src/core/plan/kinds.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { readConductors, usualConductors } from '../../../src/core/board/conductors.ts';
import { readPlan } from '../../../src/core/plan/read-plan.ts';
import { GOODS } from '../../../src/core/wiring/goods.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { fromLibrary } from '../board/boards.ts';

/** The plan, after its file has been read back whole: what a change makes can be kept. */
function kept(plan: Plan): Plan {
  expect(readPlan(JSON.parse(JSON.stringify(plan)))).toEqual({ ok: true, plan });
  return plan;
}

/** What is said of a plan that cannot be kept. */
function refusal(plan: Plan): string {
  const edit = edited(plan);
  return edit.ok ? 'kept' : sayEdit(edit.problem);
}

const lead = makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { name: 'DIN lead' });

describe('What is on offer', () => {
  test('gets a number where a name is taken, and is changed and taken off by its place', () => {
    const two = kept(addStock(addStock(makePlan({}), lead, 9), lead, 0, 2));
    expect(two.stock?.map((one) => [one.lead.name, one.price, one.owned])).toEqual([
      ['DIN lead', 9, 0],
      ['DIN lead 2', 0, 2],
    ]);
    const renamed = kept(changeStock(two, 1, { lead: { ...lead, lengthMetres: 3 }, owned: 1 }));
    expect(renamed.stock?.[1]).toMatchObject({ lead: { name: 'DIN lead 2', lengthMetres: 3 }, owned: 1 });
    expect(kept(removeStock(renamed, 0)).stock).toEqual(renamed.stock?.slice(1));
    const hub = fromLibrary('hub with five');
    const hubs = kept(changeHub(addHub(addHub(two, hub), hub), 1, { price: 12.5 }));
    expect(hubs.hubs?.map(({ name, price }) => [name, price])).toEqual([
      [hub.name, 90],
      [`${hub.name} 2`, 12.5],
    ]);
    expect(kept(removeHub(hubs, 0)).hubs).toHaveLength(1);
  });

  test('ends at the bound of a plan file: one more is refused aloud', () => {
    let plan = makePlan({});
    for (let count = 0; count < PLAN_LIMITS.stock; count++) plan = addStock(plan, lead);
    expect(refusal(addStock(plan, lead))).toBe(
      'stock: expected a list of 0 to 64, got a list of 65. The plan is as it was.',
    );
    for (let count = 0; count < PLAN_LIMITS.hubs; count++) plan = addHub(plan, fromLibrary('hub'));
    expect(refusal(addHub(plan, fromLibrary('hub')))).toBe(
      'hubs: expected a list of 0 to 16, got a list of 17. The plan is as it was.',
    );
    kept(plan);
  });

  test('has no price and no wish that a file could not hold', () => {
    expect(refusal(setMaking(makePlan({}), { perLead: 2e9 }))).toBe(
      'making, everything else, per lead: expected a number from 0 to 1000000000, got 2000000000. The plan is as it was.',
    );
    expect(refusal(setWishes(makePlan({}), { mostHops: 65 }))).toBe(
      'wishes, most links to any device: expected a whole number from 0 to 64, got 65. The plan is as it was.',
    );
    expect(
      refusal(changeStock(addStock(makePlan({}), lead), 0, { lead: { ...lead, lengthMetres: 0 } })),
    ).toBe('stock 1, lead, length: expected a number from 0.01 to 100 m, got 0. The plan is as it was.');
  });

  test('has prices and wishes that start from the defaults', () => {
    expect(kept(setMaking(makePlan({}), { plug: 2.5 })).making).toEqual({
      plugs: {},
      plug: 2.5,
      wirePerMetre: 1,
      perLead: 0,
    });
    expect(kept(setWishes(makePlan({}), { noHub: true })).wishes).toEqual({
      noHub: true,
      noSoldering: false,
      mostHops: 0,
      spareOutlets: 0,
    });
  });
});

describe('Leads ready made', () => {
  test('each make current flow between two jacks that they are said to join', () => {
    for (const { lead: ready } of GOODS) {
      if (ready.from.form === 'jack') continue;
      const [first, last] = ready.name.match(/Type [AB]/g) ?? ['Type A'];
      const styleAt = (connector: typeof ready.from.connector, type = first) =>
        connector === 'din5'
          ? 'din'
          : connector.startsWith('ts')
            ? 'two-contact'
            : type === 'Type B'
              ? 'type-b'
              : 'type-a';
      const output = makeJack('out', ready.from.connector, styleAt(ready.from.connector));
      const input = makeJack('in', ready.to.connector, styleAt(ready.to.connector, last));
      expect([
        ready.name,
        checkLink({ output, branches: [{ input, leads: [ready] }] }, 'outcome').outcome,
      ]).toEqual([ready.name, 'flows']);
    }
  });

  test('and adapters make it flow behind a lead that ends in their jack', () => {
    const adapters = GOODS.map(({ lead: one }) => one).filter(({ from }) => from.form === 'jack');
    expect(adapters).toHaveLength(5);
    for (const adapter of adapters) {
      const type = adapter.name.includes('Type B') ? 'type-b' : 'type-a';
      const first = makeLead('din5', adapter.from.connector, usualConductors(lead.from, { ...adapter.from }));
      const output = makeJack('out', 'din5', 'din');
      const input = makeJack('in', adapter.to.connector, type);
      const { outcome } = checkLink({ output, branches: [{ input, leads: [first, adapter] }] }, 'outcome');
      expect([adapter.name, outcome]).toEqual([adapter.name, 'flows']);
    }
  });
});

describe('Conductors as a person writes them', () => {
  const din = { connector: 'din5', form: 'plug' } as const;
  const trs = { connector: 'trs-3.5', form: 'plug' } as const;

  test('are read with hyphens, with words, with commas', () => {
    const typeA = wires('4-ring', '5-tip', '2-sleeve');
    for (const text of [
      '4-ring 5-tip 2-sleeve',
      'pin 4 to ring, pin 5 to tip and 2 to sleeve',
      '4 - Ring; 5–tip;2-SLEEVE',
    ])
      expect(readConductors(text, din, trs)).toEqual(typeA);
  });

  test.each([
    ['', "conductors: expected at least one pair such as 'tip-tip', got nothing"],
    ['4', "conductors: expected pairs such as 'tip-tip', got '4'"],
    ['4-ring-5', "conductors: expected pairs such as 'tip-tip', got '4-ring-5'"],
    ['9-ring', "conductors: expected a contact of 5-pin DIN (1, 2, 3, 4, 5, shell), got '9' in '9-ring'"],
    ['4-4', "conductors: expected a contact of 3.5 mm TRS (tip, ring, sleeve), got '4' in '4-4'"],
    ['4-ring 4-ring', "conductors: expected each pair once, got '4-ring' twice"],
  ])('of %j say what was expected and what came', (text, message) => {
    expect(readConductors(text, din, trs)).toBe(message);
  });
});

describe('The messages of a press', () => {
  const start = makePlan({ devices: [fromLibrary('echo'), fromLibrary('drive')] });
  const [echo = '', drive = ''] = start.devices.map(({ name }) => name);

  test('are added, changed, moved and removed by their place', () => {
    const three = [pressItem(echo, 'bank'), pressItem(echo, 'program'), pressItem(drive, 'control')].reduce(
      addPress,
      start,
    );
    const kinds = (plan: Plan): readonly string[] => (kept(plan).press ?? []).map(({ send }) => send);
    expect(kinds(three)).toEqual(['bank', 'program', 'control']);
    expect(kinds(movePress(three, 2, -1))).toEqual(['bank', 'control', 'program']);
    expect(kinds(movePress(three, 0, 1))).toEqual(['program', 'bank', 'control']);
    expect(movePress(three, 0, -1)).toBe(three);
    expect(movePress(three, 2, 1)).toBe(three);
    expect(kinds(removePress(three, 1))).toEqual(['bank', 'control']);
    const changed = changePress(three, 1, { device: drive, send: 'program', program: 128 });
    expect(kept(changed).press?.[1]).toEqual({ device: drive, send: 'program', program: 128 });
  });

  test('end at the bound of a plan file: one more is refused aloud', () => {
    let plan = start;
    for (let count = 0; count < PLAN_LIMITS.press; count++) plan = addPress(plan, pressItem(echo, 'program'));
    kept(plan);
    expect(refusal(addPress(plan, pressItem(echo, 'program')))).toBe(
      'press: expected a list of 0 to 256, got a list of 257. The plan is as it was.',
    );
    expect(refusal(addPress(start, pressItem('nobody', 'bank')))).toBe(
      "press 1, device: expected the name of a device in this plan, got 'nobody'. The plan is as it was.",
    );
  });
});
