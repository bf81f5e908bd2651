import { describe, expect, test } from 'vitest';
import {
  addHub,
  addStock,
  changeHub,
  changeStock,
  removeHub,
  removeStock,
  setMaking,
  setWishes,
} from '../../../src/core/plan/edit-offers.ts';
import {
  addPress,
  changePress,
  movePress,
  pressItem,
  removePress,
} from '../../../src/core/plan/edit-press.ts';
import { PLAN_LIMITS } from '../../../src/core/plan/kinds.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { READY_LEADS, readConductors, usualConductors } from '../../../src/core/board/ready-leads.ts';
import { readPlan } from '../../../src/core/plan/read-plan.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import { fromLibrary } from '../board/boards.ts';

/** The plan, after its file has been read back whole: what a change makes can be kept. */
function kept(plan: Plan): Plan {
  expect(readPlan(JSON.parse(JSON.stringify(plan)))).toEqual({ ok: true, plan });
  return plan;
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
    const hub = fromLibrary('hub with four');
    const hubs = kept(changeHub(addHub(addHub(two, hub), hub), 1, { price: 12.5 }));
    expect(hubs.hubs?.map(({ name, price }) => [name, price])).toEqual([
      [hub.name, 90],
      [`${hub.name} 2`, 12.5],
    ]);
    expect(kept(removeHub(hubs, 0)).hubs).toHaveLength(1);
  });

  test('ends at the bound of a plan file', () => {
    let plan = makePlan({});
    for (let count = 0; count < PLAN_LIMITS.stock + 3; count++) plan = addStock(plan, lead);
    expect(plan.stock).toHaveLength(PLAN_LIMITS.stock);
    for (let count = 0; count < PLAN_LIMITS.hubs + 3; count++) plan = addHub(plan, fromLibrary('hub'));
    expect(plan.hubs).toHaveLength(PLAN_LIMITS.hubs);
    kept(plan);
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
    for (const ready of READY_LEADS) {
      if (ready.from.form === 'jack') continue;
      const style = ready.name.endsWith('Type B') ? 'type-b' : 'type-a';
      const styleAt = (connector: typeof ready.from.connector) =>
        connector === 'din5' ? ('din' as const) : style;
      const output = makeJack('out', ready.from.connector, styleAt(ready.from.connector));
      const input = makeJack('in', ready.to.connector, styleAt(ready.to.connector));
      expect([
        ready.name,
        checkLink({ output, branches: [{ input, leads: [ready] }] }, 'outcome').outcome,
      ]).toEqual([ready.name, 'flows']);
    }
  });

  test('and adapters make it flow behind a lead that ends in their jack', () => {
    const adapters = READY_LEADS.filter(({ from }) => from.form === 'jack');
    expect(adapters).toHaveLength(4);
    for (const adapter of adapters) {
      const type = adapter.name.endsWith('Type B') ? 'type-b' : 'type-a';
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

  test('end at the bound of a plan file', () => {
    let plan = start;
    for (let count = 0; count < PLAN_LIMITS.press + 2; count++)
      plan = addPress(plan, pressItem(echo, 'program'));
    expect(kept(plan).press).toHaveLength(PLAN_LIMITS.press);
  });
});
