/** Whose a price is, and what is said of it beside a sum. */
import { describe, expect, test } from 'vitest';
import { demoBoard, shoppingList } from '../../../src/core/board/index.ts';
import {
  devicePriceSource,
  leadPriceSource,
  makingSource,
  priceNote,
  sumNote,
} from '../../../src/core/board/prices.ts';
import { LIBRARY, makePlan, readPlanText, setMaking, writePlanText } from '../../../src/core/plan/index.ts';
import { makeLead, wires } from '../../../src/core/wiring/index.ts';

describe('Whose a price is', () => {
  test('of the library: invented as it comes, the reader’s own once changed, and none at nought', () => {
    const priced = LIBRARY.filter(({ price = 0 }) => price > 0);
    // Hubs, a merger and a converter come with a price.
    expect(new Set(priced.map(({ kind }) => kind))).toEqual(new Set(['hub', 'merger', 'converter']));
    for (const { kind = 'other', price = 0 } of priced) {
      expect(devicePriceSource({ kind, price })).toBe('invented');
      expect(devicePriceSource({ kind, price: price + 1 })).toBe('your own');
      expect(devicePriceSource({ kind, price: 0 })).toBe('none');
    }
    expect(devicePriceSource({ kind: 'pedal' })).toBe('none');
  });

  test('of a lead made by hand: invented until the reader puts in a figure', () => {
    const plan = makePlan({});
    expect(makingSource(plan)).toBe('invented');
    expect(makingSource(setMaking(plan, { plug: 3 }))).toBe('your own');
  });

  test('of a lead from the shop: the reader’s own, but on the demo board that of the demo', () => {
    const lead = { ...makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { name: 'a' }), price: 9 };
    expect(leadPriceSource(makePlan({}), lead)).toBe('your own');
    expect(leadPriceSource(makePlan({}), { ...lead, price: 0 })).toBe('none');
    const demo = demoBoard();
    expect(leadPriceSource(demo, lead)).toBe('invented');
    expect(leadPriceSource(demo, { ...lead, price: 9.5 })).toBe('your own');
  });

  test('of the demo board is invented throughout, also when it was saved and opened again', () => {
    const reading = readPlanText(writePlanText(demoBoard()));
    if (!reading.ok) throw new Error('the demo board is not read');
    const { rows, note } = shoppingList(reading.plan);
    expect(rows.length).toBeGreaterThan(3);
    expect(new Set(rows.map(({ whosePrice }) => whosePrice))).toEqual(new Set(['invented']));
    expect(note).not.toContain('your own figures');
  });
});

describe('Beside a sum', () => {
  test('nothing is called the reader’s own that is not', () => {
    expect(priceNote(['your own', 'none'])).toMatch(/^Prices are your own figures/);
    expect(priceNote(['invented'])).toMatch(/put in your own before you count on a sum\.$/);
    expect(priceNote(['invented', 'your own'])).toMatch(/The others are your own figures\.$/);
  });

  test('stands that it has invented prices in it, and how many things have none', () => {
    expect(sumNote(['your own'])).toBe('');
    expect(sumNote(['invented', 'your own'])).toBe(', with invented prices in it');
    expect(sumNote(['none', 'none'])).toBe(', without 2 things that have no price yet');
    expect(sumNote(['none', 'invented'])).toBe(
      ', with invented prices in it, without 1 thing that has no price yet',
    );
  });

  test('a hub of the library in a plan of the reader’s own prices is told from the rest', () => {
    const [hub] = LIBRARY.filter(({ kind }) => kind === 'hub');
    const plan = makePlan({
      making: { plugs: {}, plug: 2, wirePerMetre: 1, perLead: 0 },
      devices: [
        { name: 'hub 2', ...hub, jacks: [], toBuy: true },
        { name: 'pad', jacks: [], toBuy: true, price: 30 },
      ],
    });
    expect(shoppingList(plan).rows.map(({ whosePrice }) => whosePrice)).toEqual(['invented', 'your own']);
    expect(shoppingList(plan).inSum).toBe(', with invented prices in it');
  });
});
