import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  breakoutCost,
  csvText,
  leadWords,
  readConductors,
  sayConductors,
  sayDelay,
  sayMilliseconds,
  sayPrice,
  shoppingList,
  usualConductors,
} from '../../../src/core/board/index.ts';
import { cableSheet } from '../../../src/core/making/index.ts';
import { linkOf, makePlan, planJack } from '../../../src/core/plan/index.ts';
import { CONNECTORS, GOODS, contactsOf, makeLead, mate, wires } from '../../../src/core/wiring/index.ts';
import type { Connector, End, Lead } from '../../../src/core/wiring/index.ts';

const end = (connector: Connector): End => ({ connector, form: 'plug' });

describe('Times in words', () => {
  test('are milliseconds with as many digits as mean something', () => {
    for (const [seconds, words] of [
      [0, '0.000 ms'],
      [1.2e-6, '0.001 ms'],
      [320e-6, '0.320 ms'],
      [1e-3, '1.00 ms'],
      [2.5648e-3, '2.56 ms'],
      [99.994e-3, '99.99 ms'],
      [0.1, '100 ms'],
      [1.5, '1500 ms'],
    ] as const)
      expect(sayMilliseconds(seconds)).toBe(words);
  });

  test('are microseconds where a message is passed on at once, and milliseconds where it is sent again', () => {
    expect(sayDelay(4.8e-6)).toBe('4.8 µs');
    expect(sayDelay(320e-6)).toBe('320.0 µs');
    expect(sayDelay(1.3224e-3)).toBe('1.32 ms');
    expect(sayDelay(0)).toBe('0.0 µs');
  });
});

describe('Rows as CSV', () => {
  /** A reader of RFC 4180 of our own: fields in quotes may hold anything, two quotes are one. */
  function read(text: string): readonly (readonly string[])[] {
    const rows: string[][] = [[]];
    let field = '';
    let quoted = false;
    for (let at = 0; at < text.length; at++) {
      const sign = text.charAt(at);
      if (quoted) {
        if (sign !== '"') field += sign;
        else if (text.charAt(at + 1) === '"') field += text.charAt(++at);
        else quoted = false;
      } else if (sign === '"') quoted = true;
      else if (sign === ',' || (sign === '\r' && text.charAt(at + 1) === '\n')) {
        rows.at(-1)?.push(field);
        field = '';
        if (sign === '\r') {
          at++;
          rows.push([]);
        }
      } else field += sign;
    }
    return rows.slice(0, -1);
  }

  test('come back as they were, whatever text is in them, a quote before what a sheet would run', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.string(), fc.string({ unit: 'grapheme' })), { minLength: 1, maxLength: 5 }),
        (pairs) => {
          const rows = pairs.map(([one, other]) => ({ one, other }));
          const safe = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);
          expect(read(csvText(rows))).toEqual([
            ['one', 'other'],
            ...pairs.map(([one, other]) => [safe(one), safe(other)]),
          ]);
        },
      ),
      { seed: 31 },
    );
  });

  test('write numbers plainly, to a millionth, and nothing for what is missing', () => {
    expect(csvText([{ a: 0.1 + 0.2, b: -3, c: undefined, d: true, e: 1e-9 }])).toBe(
      'a,b,c,d,e\r\n0.3,-3,,true,0\r\n',
    );
  });

  test('take their columns from the first row', () => {
    expect(csvText([{ a: 1 }, { a: 2, b: 3 }])).toBe('a\r\n1\r\n2\r\n');
  });
});

describe('Conductors as a person writes them', () => {
  test('are read back from what is said of them, for every lead that shops sell', () => {
    for (const { lead } of GOODS) {
      expect(readConductors(sayConductors(lead.conductors), lead.from, lead.to)).toEqual(lead.conductors);
      const short = lead.conductors.map(({ from, to }) => `${from}-${to}`).join(' ');
      expect(readConductors(short, lead.from, lead.to)).toEqual(lead.conductors);
    }
  });

  test('may be written in many ways', () => {
    const wanted = wires('4-ring', '5-tip');
    for (const text of [
      '4-ring 5-tip',
      '4 to ring, 5 to tip',
      'pin 4 to ring and pin 5 to tip',
      '4–ring; 5–tip',
      'PIN 4 - RING, 5 - TIP',
      '  4-ring,5-tip  ',
    ])
      expect(readConductors(text, end('din5'), end('trs-3.5')), text).toEqual(wanted);
  });

  test('are refused with the first pair that cannot be', () => {
    const read = (text: string) => readConductors(text, end('din5'), end('trs-3.5'));
    expect(read(' , ')).toBe("conductors: expected at least one pair such as 'tip-tip', got nothing");
    expect(read('4')).toBe("conductors: expected pairs such as 'tip-tip', got '4'");
    expect(read('4-ring-tip')).toBe("conductors: expected pairs such as 'tip-tip', got '4-ring-tip'");
    expect(read('4-ring 6-tip')).toBe(
      "conductors: expected a contact of 5-pin DIN (1, 2, 3, 4, 5, shell), got '6' in '6-tip'",
    );
    expect(read('4-5')).toBe(
      "conductors: expected a contact of 3.5 mm TRS (tip, ring, sleeve), got '5' in '4-5'",
    );
    expect(read('4-ring 4-ring')).toBe("conductors: expected each pair once, got '4-ring' twice");
  });

  test('are the usual ones between any two connectors: contacts that both have, and no other', () => {
    for (const from of CONNECTORS)
      for (const to of CONNECTORS) {
        const usual = usualConductors(end(from), end(to));
        expect(usual.length, `${from} ${to}`).toBeGreaterThan(1);
        for (const one of usual) {
          expect(contactsOf(from)).toContain(one.from);
          expect(contactsOf(to)).toContain(one.to);
        }
        // Turned end for end it is the same lead.
        const turned = usualConductors(end(to), end(from)).map((one) => `${one.to}-${one.from}`);
        expect(usual.map((one) => `${one.from}-${one.to}`).sort()).toEqual([...turned].sort());
      }
  });

  test('are the pins of the standard from DIN to DIN, and Type A from DIN to a phone plug', () => {
    // MMA CA-033: 4, 5 and 2; RP-054: tip is DIN 5, ring is DIN 4, sleeve is DIN 2.
    expect(sayConductors(usualConductors(end('din5'), end('din7')))).toBe('4 to 4, 5 to 5, 2 to 2');
    expect(sayConductors(usualConductors(end('din5'), end('trs-3.5')))).toBe(
      '4 to ring, 5 to tip, 2 to sleeve',
    );
    expect(sayConductors(usualConductors(end('trs-6.35'), end('ts-6.35')))).toBe(
      'tip to tip, sleeve to sleeve',
    );
    expect(sayConductors(usualConductors(end('din5'), end('ts-3.5')))).toBe('5 to tip, 2 to sleeve');
  });
});

describe('Prices and leads in words', () => {
  test('have two decimals, and the reader’s sign before them where there is one', () => {
    expect(sayPrice(7, '')).toBe('7.00');
    expect(sayPrice(0.005, '€')).toMatch(/^€ 0\.0[01]$/);
    expect(sayPrice(1234.5, 'CHF')).toBe('CHF 1234.50');
  });

  test('name a lead in full: plugs, length, wiring', () => {
    const adapter: Lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip'), {
      from: { connector: 'din5', form: 'jack' },
      lengthMetres: 0.15,
    });
    expect(leadWords(adapter)).toBe('5-pin DIN jack to 3.5 mm TRS plug, 0.15 m, wired 4-ring 5-tip');
  });
});

describe('What a breakout lead costs', () => {
  test('is a plug and two jacks, two tails of 15 cm, and the rest, at the reader’s own figures', () => {
    const making = { plugs: { 'trs-3.5': 4 }, plug: 2, wirePerMetre: 10, perLead: 5 };
    expect(breakoutCost(making, 'trs-3.5')).toBeCloseTo(3 * 4 + 2 * 0.15 * 10 + 5, 9);
    expect(breakoutCost(making, 'trs-6.35')).toBeCloseTo(3 * 2 + 3 + 5, 9);
    // One unit a plug and a metre where nothing is given.
    expect(breakoutCost(undefined, 'trs-6.35')).toBeCloseTo(3.3, 9);
  });

  test('is never more than a plan may hold', () => {
    expect(breakoutCost({ plugs: {}, plug: 1e9, wirePerMetre: 0, perLead: 0 }, 'trs-3.5')).toBe(1e9);
  });
});

describe('The shopping list', () => {
  const lead = (name: string, more: object) => ({
    ...makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { name }),
    ...more,
  });
  const plan = (leads: readonly ReturnType<typeof lead>[]) =>
    makePlan({
      making: { plugs: {}, plug: 2, wirePerMetre: 3, perLead: 0 },
      devices: [
        { name: 's', jacks: [planJack('OUT', 'out', 'din5', 'din')] },
        { name: 'p', jacks: [planJack('IN', 'in', 'din5', 'din')] },
      ],
      leads,
      links: leads.map(({ name }) => ({
        name: `link ${name}`,
        output: { device: 's', jack: 'OUT' },
        inputs: [{ device: 'p', jack: 'IN', leads: [name] }],
      })),
    });

  test('puts like with like, and what has another price on a line of its own', () => {
    const shop = (name: string, price: number) => lead(name, { origin: 'shop', price });
    const { rows, total } = shoppingList(plan([shop('a', 9), shop('b', 9), shop('c', 12)]));
    expect(rows.map(({ what, amount, each, sum }) => [what, amount, each, sum])).toEqual([
      ['5-pin DIN lead, 1 m', 2, 9, 18],
      ['5-pin DIN lead, 1 m', 1, 12, 12],
    ]);
    expect(total).toBe(30);
  });

  test('counts plugs and metres of made leads together, and no sundries that cost nothing', () => {
    const made = (name: string, lengthMetres: number) => lead(name, { origin: 'made', lengthMetres });
    const { rows, total } = shoppingList(plan([made('a', 1), made('b', 2.5)]));
    expect(rows.map(({ what, amount, unit }) => [what, amount, unit])).toEqual([
      ['5-pin DIN plug to solder', 4, 'pieces'],
      // 1.02 + 0.10 m and 2.55 + 0.10 m.
      ['cable of 2 cores and a shield, 26 AWG', expect.closeTo(1.12 + 2.65, 9), 'm'],
    ]);
    expect(total).toBeCloseTo(4 * 2 + 3.77 * 3, 9);
  });

  test('asks for as much cable as the build sheets of the leads cut, of the kind that they name', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9000 }), { minLength: 1, maxLength: 6 }),
        (millimetres) => {
          const leads = millimetres.map((one, at) =>
            lead(`${at}`, { origin: 'made', lengthMetres: one / 1000 }),
          );
          const board = plan(leads);
          const sheets = board.links.flatMap((link) => {
            const joined = linkOf(board, link);
            return joined.branches.flatMap((branch) => branch.leads.map((one) => cableSheet(one, joined)));
          });
          const [row, ...more] = shoppingList(board).rows.filter(({ unit }) => unit === 'm');
          const pieces = sheets.reduce((sum, { cutMetres }) => sum + cutMetres, 0);
          expect(more).toEqual([]);
          expect(row?.amount).toBeCloseTo(pieces, 9);
          // As it is shown, to the centimetre, it is not short either.
          expect(Number(row?.amount.toFixed(2))).toBeGreaterThanOrEqual(pieces - 1e-9);
          for (const { cutWords } of sheets) expect(cutWords).toContain(row?.what.replace(', 26 AWG', ''));
        },
      ),
    );
  });

  test('leaves out what is owned and what no link uses', () => {
    const owned = plan([lead('a', { origin: 'owned', price: 9 })]);
    expect(shoppingList(owned)).toMatchObject({ rows: [], total: 0 });
    expect(shoppingList({ ...plan([lead('a', { origin: 'shop', price: 9 })]), links: [] }).total).toBe(0);
  });

  test('asks for an adapter by name without its length', () => {
    const adapter = GOODS.find(({ id }) => id === 'adapter-a')?.lead as Lead;
    expect(mate('din5', adapter.from.connector).fits).toBe(true);
    const { rows } = shoppingList(plan([{ ...adapter, name: 'a', origin: 'shop', price: 8 } as never]));
    expect(rows[0]?.what).toBe('Type A adapter: 5-pin DIN socket to 3.5 mm TRS plug');
  });
});
