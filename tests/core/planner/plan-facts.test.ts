import { describe, expect, test } from 'vitest';
import { boardFacts, factRows, headWords, kindWords } from '../../../src/core/planner/index.ts';
import { boardFrom } from '../../../src/core/learn/index.ts';
import { checkBoard } from '../../../src/core/board/index.ts';
import { stockLead } from '../board/boards.ts';
import type { PlannedBoard } from '../../../src/core/planner/plan-it.ts';
import type { AuthoredBoard } from '../../../src/core/learn/index.ts';

const STRAIGHT = ['4-4', '5-5', '2-2'];

/** A board of a lesson as if it had been planned at a cost. */
function planned(board: AuthoredBoard, more: Partial<PlannedBoard> = {}): PlannedBoard {
  const plan = boardFrom(board);
  return {
    plan,
    cost: 50,
    bound: 50,
    proven: true,
    exact: true,
    unpriced: 0,
    check: checkBoard(plan),
    facts: boardFacts(plan),
    ...more,
  };
}
const row = (board: PlannedBoard, name: string, best = true): readonly string[] =>
  factRows(board, '€', best).find((one) => one.name === name)?.lines ?? [];

const CHAIN = planned({ layout: 'chain', pedals: 4 });
const HUB = planned({ layout: 'hub', pedals: 4 });
const BOTH = planned({ layout: 'both', pedals: 6 });

describe('The kind of a plan in a few words', () => {
  test('is a chain, a hub, or a hub with chains behind', () => {
    expect(kindWords(CHAIN)).toBe('chain, no hub');
    expect(kindWords(HUB)).toBe('a hub');
    expect(kindWords(BOTH)).toBe('a hub, with chains behind');
    expect(kindWords({ ...BOTH, facts: { ...BOTH.facts, hubs: 2 } })).toBe('2 hubs, with chains behind');
  });

  test('heads a plan as the cheapest only where everything in it has a price', () => {
    expect(headWords(CHAIN, true)).toBe('Cheapest: chain, no hub');
    expect(headWords({ ...CHAIN, unpriced: 2 }, true)).toBe('Fewest things without a price: chain, no hub');
    expect(headWords(HUB, false)).toBe('The other kind: a hub');
  });
});

describe('Whether a plan could cost less', () => {
  const less = (more: Partial<PlannedBoard>, best = true) =>
    row({ ...CHAIN, ...more }, 'could it cost less?', best)[0];

  test('is certain where bound and cost meet', () => {
    expect(less({})).toMatch(/^Certain: no plan costs less than .*50/);
    expect(less({}, false)).toMatch(/^Certain: no plan of this kind costs less than /);
  });

  test('is told with the gap that is left, and whether a search with chance found it', () => {
    // (50 - 49) / 50 = 2 %.
    expect(less({ proven: false, bound: 49 })).toMatch(
      /^Not every board was tried: no plan costs less than .*49.*, 2\.0 % below this one\.$/,
    );
    expect(less({ proven: false, exact: false, bound: 40 })).toMatch(
      /^Found by a search with chance: .*, 20\.0 % below this one\.$/,
    );
    expect(less({ proven: false, cost: 0, bound: 0 })).toMatch(/, 0\.0 % below this one\.$/);
  });

  test('is not known while something has no price', () => {
    expect(less({ unpriced: 1 })).toBe('Not known: give what is to be bought a price, and plan again.');
  });
});

describe('The rows of a plan', () => {
  test('have the same names in the same order for every plan', () => {
    const names = (board: PlannedBoard) => factRows(board, '', true).map(({ name }) => name);
    expect(names(CHAIN)).toEqual(names(HUB));
    expect(new Set(names(CHAIN)).size).toBe(names(CHAIN).length);
  });

  test('count what has no price beside what has', () => {
    expect(row({ ...CHAIN, cost: 0, unpriced: 1 }, 'cost')).toEqual(['1 thing without a price']);
    expect(row({ ...CHAIN, cost: 0, unpriced: 3 }, 'cost')).toEqual(['3 things without a price']);
    expect(row({ ...CHAIN, cost: 12, unpriced: 3 }, 'cost')[0]).toMatch(
      /12.*, and 3 things without a price$/,
    );
  });

  test('say which leads and hubs were left out because they have no price, and what mends that', () => {
    const stock = [
      stockLead('mine', 'din5', 'din5', STRAIGHT, 0, 2),
      stockLead('found', 'din5', 'din5', STRAIGHT, 0),
      stockLead('priced', 'din5', 'din5', STRAIGHT, 4),
    ];
    const hub = { name: 'old hub', kind: 'hub' as const, jacks: [] };
    const board = { ...CHAIN, plan: { ...CHAIN.plan, stock, hubs: [hub] } };
    expect(row(board, 'leads')[1]).toBe(
      "Left out, as without a price: 'found'. Give it a price, or say how many of it you own, and plan again.",
    );
    expect(row(board, 'hubs and converters')[1]).toBe(
      "Left out, as without a price: 'old hub'. Give it a price, and plan again.",
    );
    expect(row(board, 'could it cost less?')[0]).toMatch(/^Certain: of what has a price, no plan costs less/);
    // Where the plan had to take such a thing, that is told instead, and nothing was left out.
    expect(row({ ...board, unpriced: 1 }, 'leads')).toHaveLength(1);
    expect(row(CHAIN, 'leads')).toHaveLength(1);
  });

  test('say beside the cost that prices in it are invented, until the reader puts in some', () => {
    const plan = {
      ...CHAIN.plan,
      leads: CHAIN.plan.leads.map((lead) => ({ ...lead, origin: 'made' as const })),
    };
    expect(row({ ...CHAIN, plan }, 'cost')).toEqual(['€ 50.00, with invented prices in it']);
    const own = { ...plan, making: { plugs: {}, plug: 3, wirePerMetre: 2, perLead: 0 } };
    expect(row({ ...CHAIN, plan: own }, 'cost')).toEqual(['€ 50.00']);
  });

  test('count leads, hubs and links', () => {
    // The leads of a lesson's board come from a shop.
    expect(row(CHAIN, 'leads')).toEqual(['4: 0 to make, 4 to buy, 0 of your own']);
    expect(row(HUB, 'leads')).toEqual(['5: 0 to make, 5 to buy, 0 of your own']);
    expect(row(HUB, 'hubs and converters')).toEqual(['1']);
    expect(row(CHAIN, 'longest way')).toEqual(['4 links from the controller']);
    expect(row(planned({ layout: 'chain', pedals: 1 }), 'longest way')).toEqual([
      '1 link from the controller',
    ]);
  });

  test('tell where each lead comes from', () => {
    const origins = ['made', 'owned', 'shop', 'made'] as const;
    const plan = {
      ...CHAIN.plan,
      leads: CHAIN.plan.leads.map((lead, at) => ({ ...lead, origin: origins[at] ?? 'shop' })),
    };
    expect(row({ ...CHAIN, plan }, 'leads')).toEqual(['4: 2 to make, 1 to buy, 1 of your own']);
  });

  test('name who falls silent with whom, or that nobody does', () => {
    expect(row(planned({ layout: 'chain', pedals: 3 }), 'silent when one is off')).toEqual([
      'echo off: drive, chorus silent',
      'drive off: chorus silent',
    ]);
    expect(row(planned({ layout: 'chain', pedals: 1 }), 'silent when one is off')).toEqual([
      'Each device hears, whatever other one is off.',
    ]);
  });

  test('tell when one press is through, or that nothing is sent', () => {
    expect(row(CHAIN, 'one press')).toEqual(['nothing is sent yet']);
    const press = [{ device: 'echo', send: 'program', program: 1 }] as const;
    // Two bytes of 320 µs and the 1.2 µs of one H11L1.
    expect(row(planned({ layout: 'chain', pedals: 1, press }), 'one press')[0]).toMatch(
      /^everyone has it after 0\.6\d* ms$/,
    );
    const lost = planned({ layout: 'chain', pedals: 1, press });
    expect(row({ ...lost, plan: { ...lost.plan, links: [], leads: [] } }, 'one press')).toEqual([
      'does not reach every device',
    ]);
  });

  test('tell whether the checks pass, and how many warnings there are to read', () => {
    const check = (severities: readonly ('error' | 'warning' | 'note')[]) =>
      row(
        {
          ...CHAIN,
          check: {
            outcomes: [],
            passes: !severities.includes('error'),
            findings: severities.map((severity) => ({
              kind: 'weak',
              severity,
              where: { links: [], devices: [] },
              what: '',
              why: '',
              mend: '',
            })),
          },
        },
        'checks',
      );
    expect(check([])).toEqual(['passes every check']);
    expect(check(['note', 'note'])).toEqual(['passes every check']);
    expect(check(['warning'])).toEqual(['passes; 1 warning to read']);
    expect(check(['warning', 'warning', 'note'])).toEqual(['passes; 2 warnings to read']);
    expect(check(['error', 'warning'])).toEqual(['does not pass']);
  });
});
