import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  BEEPS,
  COLOUR_CODES,
  PIN_GAP_METRES,
  bareEnd,
  colourWords,
  fullRows,
  fullTable,
  madeLead,
  sayBareEnd,
  sayPlace,
  tableOf,
} from '../../../src/core/making/index.ts';
import {
  CODE_LETTERS,
  MOST_LETTERS,
  checkLetters,
  withChecks,
} from '../../../src/core/making/check-letters.ts';
import { GOODS, contactsOf, makeLead, wires } from '../../../src/core/wiring/index.ts';

const anyLetters = fc.array(fc.integer({ min: 0, max: 31 }), { minLength: 1, maxLength: MOST_LETTERS - 2 });

describe('the check letters of a code', () => {
  it('are right behind every code that there can be, from one letter to the longest', () => {
    fc.assert(
      fc.property(anyLetters, (letters) => {
        const code = withChecks(letters);
        expect(code.slice(0, -2)).toEqual(letters);
        expect(code).toHaveLength(letters.length + 2);
        for (const letter of code) expect(letter >= 0 && letter < 32).toBe(true);
        expect(checkLetters(code)).toEqual({ kind: 'right' });
      }),
      { seed: 41 },
    );
  });

  it('find every single slip, its place and what it must be', () => {
    // Reed and Solomon, 1960: two check symbols correct one error.
    fc.assert(
      fc.property(anyLetters, fc.nat(), fc.integer({ min: 1, max: 31 }), (letters, place, change) => {
        const code = withChecks(letters);
        const at = place % code.length;
        const slipped = code.map((letter, here) => (here === at ? letter ^ change : letter));
        expect(checkLetters(slipped)).toEqual({ kind: 'slip', at, letter: code[at] });
      }),
      { seed: 42 },
    );
  });

  it('catch every two neighbours that changed places', () => {
    fc.assert(
      fc.property(anyLetters, fc.nat(), (letters, place) => {
        const code = withChecks(letters);
        const at = place % (code.length - 1);
        const [one, other] = [code[at] as number, code[at + 1] as number];
        const swapped = code.with(at, other).with(at + 1, one);
        const answer = checkLetters(swapped);
        if (one === other) expect(answer).toEqual({ kind: 'right' });
        else expect(answer.kind).not.toBe('right');
        if (answer.kind === 'swap') {
          // Where a swap is named, changing those two back makes a right code.
          const back = swapped.with(answer.at, swapped[answer.at + 1] as number);
          expect(checkLetters(back.with(answer.at + 1, swapped[answer.at] as number))).toEqual({
            kind: 'right',
          });
        }
      }),
      { seed: 43 },
    );
  });

  it('catch every two slips: a code of two checks has a distance of three', () => {
    fc.assert(
      fc.property(
        anyLetters,
        fc.nat(),
        fc.integer({ min: 1, max: 31 }),
        fc.integer({ min: 1, max: 31 }),
        (letters, place, change, other) => {
          const code = withChecks(letters);
          const at = place % (code.length - 1);
          const slipped = code
            .with(at, (code[at] as number) ^ change)
            .with(at + 1, (code[at + 1] as number) ^ other);
          expect(checkLetters(slipped).kind).not.toBe('right');
        },
      ),
      { seed: 44 },
    );
  });

  it('refuse a code that is too long or too short', () => {
    expect(() => withChecks(Array.from({ length: 30 }, () => 0))).toThrow(
      'code: must have at most 29 letters before its checks, got 30',
    );
    expect(checkLetters([0, 0])).toEqual({ kind: 'wrong' });
    expect(checkLetters(Array.from({ length: 32 }, () => 0))).toEqual({ kind: 'wrong' });
  });

  it('are 32 letters that are not read as one another', () => {
    expect(CODE_LETTERS).toHaveLength(32);
    expect(new Set(CODE_LETTERS).size).toBe(32);
    for (const letter of 'ILOU') expect(CODE_LETTERS).not.toContain(letter);
  });
});

describe('the table of a lead', () => {
  it('has every two contacts once, lying still and with each plug moved', () => {
    for (const { lead } of GOODS) {
      const contacts = contactsOf(lead.from.connector).length + contactsOf(lead.to.connector).length;
      const places = fullTable(lead);
      expect(places).toHaveLength(3 * ((contacts * (contacts - 1)) / 2));
      expect(new Set(places.map(sayPlace)).size).toBe(places.length);
    }
  });

  it('beeps along each conductor of a good lead and between contacts joined at one end, and nowhere else', () => {
    for (const { lead } of GOODS) {
      const says = tableOf(madeLead(lead, []));
      for (const place of fullTable(lead)) {
        const wired = lead.conductors.some(
          ({ from, to }) =>
            place.a.side === 'from' &&
            place.b.side === 'to' &&
            place.a.contact === from &&
            place.b.contact === to,
        );
        expect(says(place), sayPlace(place)).toBe(wired ? 'beep' : 'silent');
      }
    }
  });

  it('beeps between two contacts that share one, and does not care which probe is where', () => {
    const fork = makeLead('din5', 'din5', wires('4-4', '4-5', '2-2'));
    const says = tableOf(madeLead(fork, []));
    const at = (side: 'from' | 'to', contact: '4' | '5' | '2') => ({ side, contact });
    expect(says({ a: at('to', '4'), b: at('to', '5'), hold: 'still' })).toBe('beep');
    expect(says({ a: at('from', '4'), b: at('to', '2'), hold: 'still' })).toBe('silent');
    for (const place of fullTable(fork)) expect(says({ ...place, a: place.b, b: place.a })).toBe(says(place));
  });

  it('is what the rows of the sheet ask for: a place for each, silent ones lying still only', () => {
    for (const { lead } of GOODS.slice(0, 6)) {
      const says = tableOf(madeLead(lead, []));
      for (const { expects, places } of fullRows(lead)) {
        expect(BEEPS).toContain(expects);
        expect(places.map(({ hold }) => hold)).toEqual(
          expects === 'silent' ? ['still'] : ['still', 'from', 'to'],
        );
        for (const place of places) expect(says(place)).toBe(expects);
      }
    }
  });

  it('says each place by its contacts and ends, and the plug that is moved', () => {
    const place = { a: { side: 'from', contact: '4' }, b: { side: 'to', contact: 'ring' } } as const;
    expect(sayPlace({ ...place, hold: 'still' })).toBe('pin 4 at the output end to ring at the input end');
    expect(sayPlace({ ...place, hold: 'to' })).toBe(
      'pin 4 at the output end to ring at the input end, the plug at the input end moved',
    );
    expect(sayPlace({ ...place, hold: 'from' })).toMatch(/, the plug at the output end moved$/);
  });
});

describe('colours of cores', () => {
  it('are the codes of IEC 60757 in the order of its table, each in a word of its own', () => {
    // IEC 60757 by a national adoption: BK BN RD OG YE GN BU VT GY WH PK GD TQ SR GNYE.
    expect(COLOUR_CODES.join(' ')).toBe('BK BN RD OG YE GN BU VT GY WH PK GD TQ SR GNYE');
    expect(COLOUR_CODES.map(colourWords)).toEqual([
      'black',
      'brown',
      'red',
      'orange',
      'yellow',
      'green',
      'blue',
      'violet',
      'grey',
      'white',
      'pink',
      'gold',
      'turquoise',
      'silver',
      'green and yellow',
    ]);
  });
});

describe('a bare end in the cup of a pin', () => {
  it('has the room between two pins that their circle leaves', () => {
    // Facts sheet, section 5: 7.0 mm circle, 45 degree steps, pins of 1.45 mm: 7 sin(22.5 deg) - 1.45 = 1.229 mm.
    expect(PIN_GAP_METRES * 1e3).toBeCloseTo(7 * Math.sin(Math.PI / 8) - 1.45, 6);
    expect(PIN_GAP_METRES * 1e3).toBeCloseTo(1.229, 3);
  });

  it('goes from too short by way of right and too long to a touch, and never back', () => {
    // Facts sheet, section 9: cups of about 3 mm.
    const order = ['too short', 'right', 'too long', 'can touch'];
    const fits = Array.from({ length: 51 }, (_, at) => bareEnd(1e-3 + at * 1e-4).fit);
    expect(new Set(fits)).toEqual(new Set(order));
    const places = fits.map((fit) => order.indexOf(fit));
    expect(places).toEqual([...places].sort((one, other) => one - other));
    expect(bareEnd(3e-3)).toEqual({ fit: 'right', outsideMetres: 0 });
    expect(bareEnd(3e-3 + PIN_GAP_METRES + 1e-5).fit).toBe('can touch');
    expect(bareEnd(3e-3 + PIN_GAP_METRES - 1e-5).fit).toBe('too long');
  });

  it('says how much stays bare, and how near the next pin is', () => {
    expect(sayBareEnd(bareEnd(4e-3))).toBe(
      'Too long: 1.0 mm stays bare above the cup. It bends where it is stiff, and breaks there.',
    );
    expect(sayBareEnd(bareEnd(5e-3))).toBe(
      'It can touch: 2.0 mm stays bare, and the next pin is only 1.2 mm away.',
    );
    expect(sayBareEnd(bareEnd(3e-3))).toBe('Right: all the bare metal is in the cup.');
    expect(sayBareEnd(bareEnd(1e-3))).toMatch(/^Too short: /);
  });

  it('is refused where nobody would strip so much or so little', () => {
    expect(() => bareEnd(0.5e-3)).toThrow('bare end: length must be from 0.001 m to 0.006 m, got 0.0005 m');
    expect(() => bareEnd(NaN)).toThrow('got NaN m');
    expect(bareEnd(6e-3).fit).toBe('can touch');
  });
});
