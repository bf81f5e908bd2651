import { describe, expect, it } from 'vitest';
import {
  ADAPTER_METRES,
  DRAWER,
  GOODS,
  diameterOf,
  familyOf,
  goodsLike,
  makeJack,
  makeLead,
  turnLead,
  wires,
  words,
} from '../../../src/core/wiring/index.ts';
import { checkLink } from '../../../src/core/verdict/index.ts';
import type { Connector, Lead, Style } from '../../../src/core/wiring/index.ts';

const goods = (id: string): Lead => {
  const found = GOODS.find((one) => one.id === id);
  if (found === undefined) throw new Error(`expected goods '${id}'`);
  return found.lead;
};

/** The outcome of goods between two jacks. */
function outcomeOf(output: [Connector, Style], input: [Connector, Style], ...ids: readonly string[]): string {
  return checkLink({
    output: makeJack('out', ...output),
    branches: [{ input: makeJack('in', ...input), leads: ids.map(goods) }],
  }).outcome;
}

describe('what a shop sells', () => {
  it('has names and keys that are all different', () => {
    for (const names of [
      GOODS.map(({ id }) => id),
      GOODS.map(({ name }) => name),
      DRAWER.map(({ yours }) => yours),
      GOODS.map(({ lead: { from, to, conductors } }) => JSON.stringify([from, to, conductors])),
    ])
      expect(new Set(names).size).toBe(names.length);
  });

  it('names the connectors that it has at its ends', () => {
    for (const { name, lead } of GOODS)
      for (const { connector } of [lead.from, lead.to]) {
        const said = familyOf(connector) === 'din' ? words(connector) : `${String(diameterOf(connector))} mm`;
        expect(name).toContain(said);
        if (familyOf(connector) !== 'din') expect(name).toContain(familyOf(connector).toUpperCase());
      }
  });

  it('is an adapter where one end takes a plug, and then shorter than the 2 m of the recommendation', () => {
    // MMA RP-054, item 3: adapter cables of at most 2 m, a TRS plug and a DIN socket.
    for (const { name, lead } of GOODS) {
      const adapter = name.includes('adapter');
      expect([lead.from.form, lead.to.form], name).toEqual([adapter ? 'jack' : 'plug', 'plug']);
      if (adapter) expect(lead.lengthMetres).toBeLessThanOrEqual(ADAPTER_METRES);
    }
  });

  it('does what its name says between the jacks that it is for', () => {
    expect(outcomeOf(['din5', 'din'], ['din5', 'din'], 'din')).toBe('flows');
    for (const [size, plug] of [
      ['small', 'trs-3.5'],
      ['large', 'trs-6.35'],
    ] as const)
      for (const type of ['a', 'b'] as const) {
        const lead = `din-${size}-${type}`;
        const [same, opposite] =
          type === 'a' ? (['type-a', 'type-b'] as const) : (['type-b', 'type-a'] as const);
        expect(outcomeOf(['din5', 'din'], [plug, same], lead), lead).toBe('flows');
        expect(outcomeOf(['din5', 'din'], [plug, opposite], lead), lead).toBe('backwards');
      }
  });

  it('makes the same of a lead and of a DIN lead with the adapter of that type', () => {
    for (const type of ['a', 'b'] as const)
      for (const style of ['type-a', 'type-b'] as const)
        // The adapter's socket is its first end: the lead from the output must be plugged into it.
        expect(outcomeOf(['din5', 'din'], ['trs-3.5', style], 'din', `adapter-${type}`)).toBe(
          outcomeOf(['din5', 'din'], ['trs-3.5', style], `din-small-${type}`),
        );
  });

  it('keeps the type with a straight lead and swaps it with the crossed one', () => {
    for (const [from, to] of [
      ['type-a', 'type-a'],
      ['type-b', 'type-b'],
    ] as const) {
      const opposite = to === 'type-a' ? 'type-b' : 'type-a';
      expect(outcomeOf(['trs-3.5', from], ['trs-3.5', to], 'trs-small')).toBe('flows');
      expect(outcomeOf(['trs-3.5', from], ['trs-3.5', opposite], 'trs-small')).toBe('backwards');
      expect(outcomeOf(['trs-3.5', from], ['trs-3.5', opposite], 'trs-small-crossed')).toBe('flows');
      expect(outcomeOf(['trs-3.5', from], ['trs-3.5', to], 'trs-small-crossed')).toBe('backwards');
      expect(outcomeOf(['trs-3.5', from], ['trs-6.35', to], 'trs-small-large')).toBe('flows');
    }
  });

  it('carries all three contacts from one size to another', () => {
    for (const id of ['adapter-up', 'adapter-down', 'trs-small', 'trs-large', 'trs-small-large'])
      expect(goods(id).conductors.map(({ from, to }) => `${from}-${to}`)).toEqual([
        'tip-tip',
        'ring-ring',
        'sleeve-sleeve',
      ]);
  });
});

describe('the name of a lead in a shop', () => {
  it('is found for all goods, either end first, in any order of conductors and at any length', () => {
    for (const one of GOODS) {
      expect(goodsLike(one.lead)?.id).toBe(one.id);
      expect(goodsLike(turnLead(one.lead))?.id).toBe(one.id);
      const shuffled = { ...one.lead, conductors: one.lead.conductors.toReversed(), lengthMetres: 3 };
      expect(goodsLike(shuffled)?.id).toBe(one.id);
    }
  });

  it('is none for a lead with a conductor more, less or elsewhere', () => {
    expect(goodsLike(makeLead('din5', 'din5', wires('4-4', '5-5')))).toBeUndefined();
    expect(goodsLike(makeLead('din5', 'din5', wires('4-4', '5-5', '2-2', '1-1')))).toBeUndefined();
    expect(goodsLike(makeLead('din5', 'din5', wires('4-5', '5-4', '2-2')))).toBeUndefined();
    expect(goodsLike(makeLead('din7', 'din5', wires('4-4', '5-5', '2-2')))).toBeUndefined();
    expect(goodsLike(makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve')))).toBeUndefined();
  });

  it('tells a lead with a socket from one with two plugs', () => {
    const plugs = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'));
    expect(goodsLike(plugs)?.id).toBe('din-small-a');
    expect(goodsLike({ ...plugs, from: { connector: 'din5', form: 'jack' } })?.id).toBe('adapter-a');
    expect(goodsLike({ ...plugs, to: { connector: 'trs-3.5', form: 'jack' } })).toBeUndefined();
  });
});

describe('a drawer', () => {
  it('holds goods of the shop, each called as a player calls it', () => {
    expect(DRAWER.map(({ id, yours }) => `${id}: ${yours}`)).toEqual([
      'din: DIN lead',
      'trs-large: large TRS lead',
      'trs-small: small TRS lead',
      'ts-large: guitar lead',
      'adapter-a: Type A adapter',
      'adapter-b: Type B adapter',
    ]);
    for (const { id, lead } of DRAWER) expect(lead).toBe(goods(id));
  });
});
