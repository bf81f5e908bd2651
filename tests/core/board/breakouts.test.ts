import { describe, expect, test } from 'vitest';
import { breakoutCost, breakoutsOf } from '../../../src/core/board/breakouts.ts';
import { checkBoard } from '../../../src/core/board/check.ts';
import { inAndOut, planJack } from '../../../src/core/plan/library.ts';
import { planBoard } from '../../../src/core/planner/plan-it.ts';
import type { PlanAnswer } from '../../../src/core/planner/plan-it.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import { WISH_DEFAULTS } from '../../../src/core/plan/plan.ts';
import type { Device, Plan } from '../../../src/core/plan/plan.ts';
import { cableSchedule, leadLabels } from '../../../src/core/board/schedule.ts';
import { shoppingList } from '../../../src/core/board/shopping.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

/** A pedal whose one hole receives on the tip and passes on at the ring. */
const pedal = (name: string, channel: number): Device => ({
  name,
  kind: 'pedal',
  channel,
  jacks: inAndOut('CONTROL', 'tip').map((jack) =>
    jack.direction === 'out' ? { ...jack, role: 'thru' } : jack,
  ),
});

/** A controller with one output on the tip, and three such pedals: only a chain can reach them all. */
const BOARD: Plan = makePlan({
  devices: [
    { name: 's', kind: 'controller', jacks: [planJack('OUT', 'out', 'trs-6.35', 'tip-signal')] },
    pedal('a', 1),
    pedal('b', 2),
    pedal('c', 3),
  ],
  making: { plugs: { 'trs-6.35': 3 }, plug: 2, wirePerMetre: 2, perLead: 1 },
});

function answerTo(plan: Plan): PlanAnswer {
  return runThrough(planBoard(plan));
}

function bestOf(plan: Plan) {
  const answer = answerTo(plan);
  if (!answer.ok) throw new Error(answer.why);
  return answer.best;
}

describe('In-and-out jacks that receive and send at once', () => {
  test('cost a breakout lead each: three ends, two tails of 0.15 m, and all else', () => {
    // 3 plugs of 3, 0.3 m at 2, and 1.
    expect(breakoutCost(BOARD.making, 'trs-6.35')).toBeCloseTo(10.6, 9);
    const best = bestOf(BOARD);
    expect(best.check.passes).toBe(true);
    // Three leads of 1 m (2 plugs of 3, 1.12 m to cut at 2, 1) and two breakouts: the last pedal of the chain sends nothing on.
    expect(best.cost).toBeCloseTo(3 * 9.24 + 2 * 10.6, 9);
    expect(best.proven).toBe(true);
  });

  test('stand on the shopping list, so that it adds up to what the plan was said to cost', () => {
    const { plan, cost } = bestOf(BOARD);
    const list = shoppingList(plan);
    expect(list.total).toBeCloseTo(cost, 9);
    expect(list.rows.at(-1)).toMatchObject({
      what: 'breakout lead: 6.35 mm TRS plug to two 6.35 mm TRS jacks',
      amount: 2,
    });
  });

  test('are told how to wire it, in the check and in the cable schedule, with labels for its ends', () => {
    const { plan } = bestOf(BOARD);
    const [first] = breakoutsOf(plan);
    expect(first).toMatchObject({
      intoWires: 'tip to tip, sleeve to sleeve',
      outWires: 'ring to ring, sleeve to sleeve',
    });
    const notes = checkBoard(plan).findings.filter(({ kind }) => kind === 'breakout');
    expect(notes).toHaveLength(2);
    expect(notes[0]?.mend).toContain(
      `Wire tip to tip, sleeve to sleeve to the jack for ${first?.intoLead ?? ''}`,
    );
    const rows = cableSchedule(plan);
    expect(rows.map(({ lead }) => lead)).toEqual(['lead 1', 'lead 2', 'lead 3', 'breakout 1', 'breakout 2']);
    const comes = rows.find(({ lead }) => lead === first?.intoLead);
    expect(comes?.to).toBe(`${first?.device ?? ''}: CONTROL in, by breakout 1`);
    expect(leadLabels(plan)).toHaveLength(10);
  });

  test('are not asked for where nothing is passed on, nor planned where nobody solders', () => {
    const one = bestOf({ ...BOARD, devices: BOARD.devices.slice(0, 2) }).plan;
    expect(breakoutsOf(one)).toEqual([]);
    const wishes = { ...WISH_DEFAULTS, noSoldering: true };
    const stock = bestOf(BOARD).plan.leads.map((lead, at) => ({
      lead: { ...lead, name: `offer ${at}` },
      price: 1,
      owned: 0,
    }));
    expect(answerTo({ ...BOARD, stock, wishes })).toMatchObject({ ok: false });
  });
});
