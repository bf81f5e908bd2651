import { describe, expect, it } from 'vitest';
import {
  CONNECTORS,
  STYLES,
  contactWords,
  contactsOf,
  diameterOf,
  familyOf,
  lineAt,
  mate,
  styleEntry,
  wires,
  wiringWords,
  words,
} from '../../../src/core/wiring/index.ts';
import { styleSuits } from '../../../src/core/wiring/styles.ts';
import type { Connector, Contact, Style } from '../../../src/core/wiring/index.ts';

const touches = (plug: Connector, jack: Connector): string => {
  const mating = mate(plug, jack);
  return mating.fits
    ? mating.touches
        .map((touch) => `${touch.plug}-${touch.jack}`)
        .sort()
        .join(' ')
    : mating.reason;
};

describe('a plug put into a jack', () => {
  it('goes in or not, for every plug and every jack', () => {
    const fits = CONNECTORS.map((plug) =>
      CONNECTORS.map((jack) => (mate(plug, jack).fits ? 'x' : '.')).join(''),
    );
    // Rows are plugs, columns jacks: din5 din7 trs-6.35 trs-3.5 trs-2.5 ts-6.35 ts-3.5.
    expect(fits).toEqual(['xx.....', '.x.....', '..x..x.', '...x..x', '....x..', '..x..x.', '...x..x']);
  });

  it('touches like with like where both have the same contacts', () => {
    for (const connector of CONNECTORS) {
      expect(touches(connector, connector)).toBe(
        [...contactsOf(connector)]
          .map((contact) => `${contact}-${contact}`)
          .sort()
          .join(' '),
      );
    }
  });

  it('joins ring and sleeve of a TRS jack by the long sleeve of a TS plug', () => {
    expect(touches('ts-3.5', 'trs-3.5')).toBe('sleeve-ring sleeve-sleeve tip-tip');
    expect(touches('ts-6.35', 'trs-6.35')).toBe('sleeve-ring sleeve-sleeve tip-tip');
  });

  it('leaves the ring of a TRS plug unconnected in a TS jack', () => {
    expect(touches('trs-3.5', 'ts-3.5')).toBe('sleeve-sleeve tip-tip');
  });

  it('lets a 5-pin plug into a 7-pin jack, and says why not the reverse', () => {
    expect(touches('din5', 'din7')).toBe('1-1 2-2 3-3 4-4 5-5 shell-shell');
    expect(touches('din7', 'din5')).toBe(
      'a 7-pin DIN plug does not go into a 5-pin DIN jack: there are no holes for pins 6 and 7',
    );
  });

  it('says which two do not fit, and whether it is the size', () => {
    expect(touches('trs-6.35', 'trs-3.5')).toBe(
      'a 6.35 mm TRS plug does not fit a 3.5 mm TRS jack: the sizes differ',
    );
    expect(touches('din5', 'trs-3.5')).toBe('a 5-pin DIN plug does not go into a 3.5 mm TRS jack');
    expect(touches('trs-2.5', 'din7')).toBe('a 2.5 mm TRS plug does not go into a 7-pin DIN jack');
  });

  it('never touches a contact that a connector does not have', () => {
    for (const plug of CONNECTORS) {
      for (const jack of CONNECTORS) {
        const mating = mate(plug, jack);
        if (!mating.fits) continue;
        for (const touch of mating.touches) {
          expect(contactsOf(plug)).toContain(touch.plug);
          expect(contactsOf(jack)).toContain(touch.jack);
        }
      }
    }
  });
});

describe('connectors in words', () => {
  it('have a family, a diameter where they are round, and a name of the trade', () => {
    expect(CONNECTORS.map(familyOf)).toEqual(['din', 'din', 'trs', 'trs', 'trs', 'ts', 'ts']);
    expect(CONNECTORS.map(diameterOf)).toEqual([undefined, undefined, 6.35, 3.5, 2.5, 6.35, 3.5]);
    expect(CONNECTORS.map(words)).toEqual([
      '5-pin DIN',
      '7-pin DIN',
      '6.35 mm TRS',
      '3.5 mm TRS',
      '2.5 mm TRS',
      '6.35 mm TS',
      '3.5 mm TS',
    ]);
    expect((['4', 'ring', 'shell'] as const).map(contactWords)).toEqual(['pin 4', 'ring', 'shell']);
  });

  it('draw conductors as a manual does, each by what it joins', () => {
    expect(wiringWords(wires('4-ring', '5-tip', '2-sleeve'))).toBe(
      'pin 4 to ring, pin 5 to tip, pin 2 to sleeve',
    );
    expect(wiringWords([])).toBe('');
  });
});

describe('jack styles', () => {
  it('carry the lines where the documents and common practice put them', () => {
    // DIN: MIDI 1.0 Detailed Specification and MMA CA-033. Type A: MMA RP-054 by two reports. The rest: common practice.
    const lines = Object.fromEntries(
      STYLES.map((style) => {
        const { source, sink, shield } = styleEntry(style).lines;
        return [style, [source, sink, shield]];
      }),
    );
    expect(lines).toEqual({
      din: ['4', '5', '2'],
      'type-a': ['ring', 'tip', 'sleeve'],
      'type-b': ['tip', 'ring', 'sleeve'],
      'two-contact': ['tip', 'sleeve', undefined],
      'two-contact-turned': ['sleeve', 'tip', undefined],
      'both-ways': ['ring', 'tip', 'sleeve'],
      'ring-signal': [undefined, 'ring', 'sleeve'],
      'tip-signal': [undefined, 'tip', 'sleeve'],
    });
  });

  it('suit only connectors that have the contacts of all their lines', () => {
    for (const style of STYLES) {
      for (const connector of CONNECTORS) {
        const contacts: readonly Contact[] = contactsOf(connector);
        if (styleSuits(style, connector))
          for (const contact of Object.values(styleEntry(style).lines)) expect(contacts).toContain(contact);
      }
    }
  });

  it('suit the connectors of their family, and the plain phone jack where two contacts are enough', () => {
    const row = (style: Style): string =>
      CONNECTORS.map((connector) => (styleSuits(style, connector) ? 'x' : '.')).join('');
    // Columns: din5 din7 trs-6.35 trs-3.5 trs-2.5 ts-6.35 ts-3.5.
    expect(Object.fromEntries(STYLES.map((style) => [style, row(style)]))).toEqual({
      din: 'xx.....',
      'type-a': '..xxx..',
      'type-b': '..xxx..',
      'two-contact': '..xxxxx',
      'two-contact-turned': '..xxxxx',
      'both-ways': '..xxx..',
      'ring-signal': '..xxx..',
      'tip-signal': '..xxxxx',
    });
  });

  it('tell the line of a contact, and nothing for a spare one', () => {
    expect(lineAt('din', '4')).toBe('source');
    expect(lineAt('din', '1')).toBeUndefined();
    expect(lineAt('tip-signal', 'ring')).toBeUndefined();
    expect(lineAt('type-b', 'sleeve')).toBe('shield');
  });

  it('name a source and a status, and never claim a document for common practice', () => {
    for (const style of STYLES) {
      const { status, source } = styleEntry(style);
      expect(source.length).toBeGreaterThan(0);
      expect(status === 'P').toBe(source === 'common practice, no source');
    }
  });
});
