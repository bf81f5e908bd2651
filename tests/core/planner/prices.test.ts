import { describe, expect, test } from 'vitest';
import { planJack } from '../../../src/core/plan/library.ts';
import { makePlan } from '../../../src/core/plan/parts.ts';
import type { Device, Plan, StockLead } from '../../../src/core/plan/plan.ts';
import { connect } from '../../../src/core/board/edit-links.ts';
import { planBoard } from '../../../src/core/planner/plan-it.ts';
import type { PlannedBoard } from '../../../src/core/planner/plan-it.ts';
import { fromLibrary, stockLead } from '../board/boards.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

const DIN = ['4-4', '5-5', '2-2'];

function best(plan: Plan): PlannedBoard {
  const end = runThrough(planBoard(plan));
  if (!end.ok) throw new Error(end.why);
  return end.best;
}

/** A switcher with one output and two pedals with a THRU each, none of them placed. */
function board(stock: readonly StockLead[], more: Partial<Plan> = {}): Plan {
  const pedal = (name: string): Device => ({
    name,
    kind: 'pedal',
    jacks: [
      planJack('IN', 'in', 'din5', 'din', { part: 'H11L1' }),
      planJack('THRU', 'out', 'din5', 'din', { role: 'thru' }),
    ],
  });
  return makePlan({
    devices: [
      { name: 'switcher', kind: 'controller', jacks: [planJack('OUT', 'out', 'din5', 'din')] },
      pedal('pedal 1'),
      pedal('pedal 2'),
    ],
    stock,
    making: { plugs: {}, plug: 5, wirePerMetre: 1, perLead: 2 },
    ...more,
  });
}

describe('What has no price', () => {
  test('is not free: a lead with a price goes first, in a plan and in a link made by hand', () => {
    const plan = board([
      stockLead('unpriced', 'din5', 'din5', DIN, 0),
      stockLead('priced', 'din5', 'din5', DIN, 9),
    ]);
    const { plan: made, cost, unpriced } = best(plan);
    // Two links, a lead at 9 each; a made one would be 5 + 5 + 1 + 2.
    expect([cost, unpriced]).toEqual([18, 0]);
    expect(made.leads.map(({ origin, price }) => [origin, price])).toEqual([
      ['shop', 9],
      ['shop', 9],
    ]);
    const linked = connect(plan, { device: 'switcher', jack: 'OUT' }, { device: 'pedal 1', jack: 'IN' });
    expect(linked.ok && linked.leads.map(({ price }) => price)).toEqual([9]);
  });

  test('is taken where nothing with a price will do, and counted', () => {
    const wishes = { noHub: false, noSoldering: true, mostHops: 0, spareOutlets: 0 };
    const { cost, unpriced } = best(board([stockLead('unpriced', 'din5', 'din5', DIN, 0)], { wishes }));
    expect([cost, unpriced]).toEqual([0, 2]);
  });

  test('makes no hub free: without a price for it the chain is cheaper, with one it is weighed', () => {
    const hub = { ...fromLibrary('hub with five'), price: 0 };
    const chain = best(board([], { hubs: [hub] }));
    expect([chain.facts.hubs, chain.unpriced]).toEqual([0, 0]);
  });

  test('goes to the fewest links where two plans cost the same', () => {
    // All leads are the owner's: a chain of two links and a hub with three cost nothing both.
    const stock = [stockLead('mine', 'din5', 'din5', DIN, 0, 8)];
    const hub: Device = { ...fromLibrary('hub with five'), name: 'hub', price: 0, toBuy: false };
    const plan = board(stock);
    const { plan: made, cost } = best({ ...plan, devices: [...plan.devices, hub] });
    expect([cost, made.links.length]).toEqual([0, 2]);
  });
});
