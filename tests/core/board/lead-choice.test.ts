/** Which leads a new link takes: worked out by hand from a few prices, each time with one thing changed. */
import { describe, expect, test } from 'vitest';
import { boardOfLink, connect } from '../../../src/core/board/index.ts';
import { leadLengthMetres, makingCost } from '../../../src/core/board/lead-offers.ts';
import { MAKING_DEFAULTS, WISH_DEFAULTS, makePlan, planOfLink } from '../../../src/core/plan/index.ts';
import type { Plan, StockLead } from '../../../src/core/plan/index.ts';
import { planJack } from '../../../src/core/plan/library.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Jack } from '../../../src/core/wiring/index.ts';
import { stockLead } from './boards.ts';

/** A DIN plug costs 4 and any other 3, a metre 2, the rest 1: a DIN lead of a metre, 1.12 m to cut, 4 + 4 + 2.24 + 1 = 11.24. */
const MAKING = { plugs: { din5: 4 }, plug: 3, wirePerMetre: 2, perLead: 1 } as const;
const STRAIGHT = ['4-4', '5-5', '2-2'];
const OUTPUT = planJack('OUT', 'out', 'din5', 'din');

const shopLead = (price: number, pairs = STRAIGHT): StockLead =>
  stockLead(`lead at ${price}`, 'din5', 'din5', pairs, price);
const ownLead = (owned: number): StockLead => stockLead('my lead', 'din5', 'din5', STRAIGHT, 0, owned);

/** A sender with two outputs and two pedals, none of which has a place, and what is on offer. */
function board(stock: readonly StockLead[], more: Partial<Plan> = {}): Plan {
  const pedal = (name: string) =>
    ({ name, kind: 'pedal', jacks: [planJack('IN', 'in', 'din5', 'din')] }) as const;
  const sender = {
    name: 'sender',
    kind: 'controller',
    jacks: [OUTPUT, { ...OUTPUT, name: 'OUT 2' }],
  } as const;
  return makePlan({ devices: [sender, pedal('one'), pedal('two')], stock, making: MAKING, ...more });
}

/** The link from an output to the first pedal, or the second. */
function join(plan: Plan, pedal = 'one', jack = 'OUT') {
  const made = connect(plan, { device: 'sender', jack }, { device: pedal, jack: 'IN' });
  if (!made.ok) throw new Error(`${made.problem.place}: ${made.problem.got}`);
  return made;
}
const taken = (plan: Plan) => join(plan).leads.map(({ origin, price }) => [origin, price]);

describe('A lead made by hand', () => {
  test('costs both its plugs, the cable that is cut for it and the rest', () => {
    const lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip'), { lengthMetres: 1.5 });
    // 4 + 3 + 2 x 1.63 + 1: 2 % of 1.5 m and 5 cm a plug more.
    expect(makingCost(MAKING, lead)).toBeCloseTo(11.26, 9);
  });

  test('counts each plug and each metre as one as long as the reader has put in no figures', () => {
    const lead = makeLead('din5', 'din5', wires(...STRAIGHT), { lengthMetres: 2 });
    // Two plugs, and 2.14 m to cut.
    expect(makingCost(MAKING_DEFAULTS, lead)).toBeCloseTo(4.14, 9);
  });

  test('is as long as its way, rounded up to 5 cm, and a metre where no way is known', () => {
    expect([0, 0.01, 0.3, 1, 1.001, 2.449].map(leadLengthMetres)).toEqual([1, 0.05, 0.3, 1, 1.05, 2.45]);
  });
});

describe('A new link', () => {
  test('takes the lead of the shop where it is cheaper than making one, and makes one where it is dearer', () => {
    expect(taken(board([shopLead(10)]))).toEqual([['shop', 10]]);
    expect(taken(board([shopLead(12)]))).toEqual([['made', 11.24]]);
  });

  test('takes a lead of one’s own at no cost, and the next link another one once the drawer is empty', () => {
    const first = join(board([ownLead(1), shopLead(10)]));
    expect(first.leads.map(({ origin, price }) => [origin, price])).toEqual([['owned', 0]]);
    const second = join(first.plan, 'two', 'OUT 2');
    expect(second.leads.map(({ origin, price }) => [origin, price])).toEqual([['shop', 10]]);
    expect(join(join(board([ownLead(2)])).plan, 'two', 'OUT 2').leads[0]?.origin).toBe('owned');
  });

  test('takes a lead without a price for dearer than any that has one, not for free', () => {
    expect(taken(board([shopLead(0)]))).toEqual([['made', 11.24]]);
    expect(taken(board([shopLead(0), shopLead(10)]))).toEqual([['shop', 10]]);
  });

  test('takes no lead that does not work, however cheap', () => {
    expect(taken(board([shopLead(1, ['4-5', '5-4', '2-2']), shopLead(2, ['4-4'])]))).toEqual([
      ['made', 11.24],
    ]);
  });

  test('is made without soldering where the owner wishes so and it can be, and says so where it cannot', () => {
    const wishes = { ...WISH_DEFAULTS, noSoldering: true };
    expect(taken(board([shopLead(50)], { wishes }))).toEqual([['shop', 50]]);
    const { leads, works, notes } = join(board([], { wishes }));
    expect([leads[0]?.origin, works]).toEqual(['made', true]);
    expect(notes).toEqual(['no available lead fits, so this one has to be made']);
  });

  test('that no lead can make work has one that fits, for the check to explain', () => {
    const plan = board([]);
    const jacks = [planJack('OUT', 'out', 'trs-6.35', 'tip-signal')];
    const devices = plan.devices.map((one) => (one.name === 'sender' ? { ...one, jacks } : one));
    const { leads, works } = join({ ...plan, devices });
    expect(works).toBe(false);
    expect(leads.map(({ from, to }) => [from.connector, to.connector])).toEqual([['trs-6.35', 'din5']]);
  });
});

describe('A board that begins with two jacks in hand', () => {
  const jacks: readonly [Jack, Jack] = [makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', 'type-a')];
  const lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));

  test('has both devices apart from each other, the sender as its controller, and the link as it was', () => {
    const plan = planOfLink(...jacks, [lead]);
    const made = boardOfLink(plan);
    expect(made?.devices.map(({ kind }) => kind)).toEqual(['controller', 'pedal']);
    expect(made?.links).toEqual(plan.links);
    expect(made?.leads).toEqual(plan.leads);
    const [one, other] = made?.devices ?? [];
    expect(Math.abs((one?.xCentimetres ?? 0) - (other?.xCentimetres ?? 0))).toBeGreaterThanOrEqual(10);
  });

  test('is none where there is no link', () => {
    expect(boardOfLink(makePlan({}))).toBeUndefined();
  });
});
