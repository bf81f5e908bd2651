import { describe, expect, test } from 'vitest';
import { planBoard } from '../../../src/core/planner/plan-it.ts';
import { planJack } from '../../../src/core/plan/library.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Plan } from '../../../src/core/plan/plan.ts';
import { csvText } from '../../../src/core/board/csv.ts';
import { cableSchedule, leadLabels } from '../../../src/core/board/schedule.ts';
import { shoppingList } from '../../../src/core/board/shopping.ts';
import { readSharedLink, writeSharedLink } from '../../../src/core/plan/shared-link.ts';
import { makeLead, wires } from '../../../src/core/wiring/link.ts';
import { randomBoard } from './boards.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

/** A board planned to the end. */
function planned(seed: number, count: number): Plan {
  const end = runThrough(planBoard(randomBoard(seed, count)));
  if (!end.ok) throw new Error(end.why);
  return end.best.plan;
}

/** Two links: a made lead of 2 m, and a shop adapter behind an owned lead. */
const SMALL: Plan = makePlan({
  currency: 'CHF',
  making: { plugs: { din5: 3 }, plug: 2, wirePerMetre: 1.5, perLead: 4 },
  devices: [
    { name: 'hub', kind: 'hub', toBuy: true, price: 90, jacks: [] },
    { name: 's', jacks: [planJack('OUT', 'out', 'din5', 'din')] },
    {
      name: 'p',
      jacks: [
        planJack('IN', 'in', 'trs-3.5', 'type-a'),
        planJack('THRU', 'out', 'din5', 'din', { role: 'thru' }),
      ],
    },
    { name: 'q', jacks: [planJack('IN', 'in', 'trs-3.5', 'type-a')] },
  ],
  leads: [
    makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'), { name: 'a', lengthMetres: 2 }),
    { ...makeLead('din5', 'din5', wires('4-4', '5-5'), { name: 'b' }), origin: 'owned' },
    {
      ...makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip'), { name: 'c', lengthMetres: 0.2 }),
      origin: 'shop',
      price: 7,
    },
  ],
  links: [
    {
      name: 'one',
      output: { device: 's', jack: 'OUT' },
      inputs: [{ device: 'p', jack: 'IN', leads: ['a'] }],
    },
    {
      name: 'two',
      output: { device: 'p', jack: 'THRU' },
      inputs: [{ device: 'q', jack: 'IN', leads: ['b', 'c'] }],
    },
  ],
});

describe('The lists of a board', () => {
  test('add up leads, plugs, wire and hubs at the reader’s own figures', () => {
    const list = shoppingList(SMALL);
    // 90 for the hub, 3 + 2 for plugs, 2.14 m cut for 2 m at 1.50, 4 for sundries, 7 for the adapter; the owned lead costs nothing.
    expect(list.total).toBeCloseTo(90 + 3 + 2 + 3.21 + 4 + 7, 9);
    expect(list.currency).toBe('CHF');
    expect(list.note).toContain('your own figures');
    expect(list.rows.find(({ unit }) => unit === 'm')).toEqual({
      what: 'cable of 2 cores and a shield, 26 AWG',
      amount: 2.14,
      unit: 'm',
      each: 1.5,
      sum: expect.closeTo(3.21, 9) as number,
      whosePrice: 'your own',
    });
  });

  test('name for each lead both ends, a lead in series by the lead it meets', () => {
    expect(cableSchedule(SMALL).map(({ lead, from, to }) => [lead, from, to])).toEqual([
      ['a', 's: OUT', 'p: IN'],
      ['b', 'p: THRU', 'c'],
      ['c', 'b', 'q: IN'],
    ]);
    expect(leadLabels(SMALL).slice(0, 2)).toEqual([
      { lead: 'a', end: 'first', here: 's: OUT', there: 'p: IN' },
      { lead: 'a', end: 'second', here: 'p: IN', there: 's: OUT' },
    ]);
  });

  test('cost what the plan was said to cost', () => {
    const end = runThrough(planBoard(randomBoard(2, 6)));
    if (!end.ok) throw new Error(end.why);
    const { best } = end;
    expect(shoppingList(best.plan).total).toBeCloseTo(best.cost, 6);
  });

  test('come as CSV with quotes where needed, and no text that a sheet would run', () => {
    expect(
      csvText([
        { name: 'a, "b"', sum: 1.5 },
        { name: '=1+1', sum: -2 },
      ]),
    ).toBe('name,sum\r\n"a, ""b""",1.5\r\n\'=1+1,-2\r\n');
    expect(csvText([])).toBe('');
    expect(csvText(cableSchedule(SMALL)).split('\r\n')).toHaveLength(5);
  });
});

describe('The link of a planned board', { timeout: 120_000 }, () => {
  test('of 20 devices stays under 2 000 characters, with its prices, stock, wishes and press, and comes back whole', async () => {
    for (const seed of [1, 2]) {
      const plan = planned(seed, 19);
      expect(plan.devices.length).toBeGreaterThanOrEqual(20);
      const text = await writeSharedLink(plan);
      expect(text.length).toBeLessThan(2000);
      expect(await readSharedLink(text)).toEqual({ ok: true, plan });
    }
  });
});
