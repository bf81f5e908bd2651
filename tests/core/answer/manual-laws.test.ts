/** Laws of reading a manual: what is written from a type is read back as that type, in any order, language and way of drawing. */
import { describe, expect, test } from 'vitest';
import { readManual } from '../../../src/core/answer/index.ts';
import { STYLES, styleEntry } from '../../../src/core/wiring/index.ts';
import type { Line, Style } from '../../../src/core/wiring/index.ts';

type PhoneContact = 'tip' | 'ring' | 'sleeve';
const CONTACTS: readonly PhoneContact[] = ['tip', 'ring', 'sleeve'];
/** DIN pins of the lines: MIDI 1.0 and MMA CA-033. */
const PINS: Readonly<Record<Line, string>> = { source: '4', sink: '5', shield: '2' };

/** How a language names the contacts, a pin, and a contact without a wire (common practice, no source). */
interface Language {
  readonly contacts: Readonly<Record<PhoneContact, string>>;
  readonly pin: string;
  readonly nothing: string;
}
const LANGUAGES: Readonly<Record<string, Language>> = {
  English: { contacts: { tip: 'tip', ring: 'ring', sleeve: 'sleeve' }, pin: 'pin', nothing: 'not connected' },
  French: {
    contacts: { tip: 'pointe', ring: 'anneau', sleeve: 'manchon' },
    pin: 'broche',
    nothing: 'non connectée',
  },
  German: {
    contacts: { tip: 'Spitze', ring: 'Ring', sleeve: 'Hülse' },
    pin: 'Stift',
    nothing: 'nicht belegt',
  },
  Spanish: {
    contacts: { tip: 'punta', ring: 'anillo', sleeve: 'manga' },
    pin: 'clavija',
    nothing: 'sin conexión',
  },
};

/** Ways to draw one contact and what is on it. */
const DRAWN: readonly ((contact: string, what: string) => string)[] = [
  (contact, what) => `${contact} = ${what}`,
  (contact, what) => `${contact}: ${what}`,
  (contact, what) => `${contact} - ${what}`,
  (contact, what) => `${what} → ${contact}`,
  (contact, what) => `${what} -> ${contact}`,
];
const JOINED = [', ', '; ', '\n', '. ', ' / '];

const carriedBy = (style: Style, contact: PhoneContact): Line | undefined =>
  (['source', 'sink', 'shield'] as const).find((line) => styleEntry(style).lines[line] === contact);

/** What a language writes for a type, contact by contact. */
function writtenBy(
  language: Language,
  style: Style,
  order: readonly PhoneContact[],
  draw: (typeof DRAWN)[number],
  join: string,
): string {
  return order
    .map((contact) => {
      const line = carriedBy(style, contact);
      return draw(language.contacts[contact], line ? `${language.pin} ${PINS[line]}` : language.nothing);
    })
    .join(join);
}

const ORDERS: readonly (readonly PhoneContact[])[] = CONTACTS.flatMap((first) =>
  CONTACTS.filter((one) => one !== first).map((second) => [
    first,
    second,
    ...CONTACTS.filter((one) => one !== first && one !== second),
  ]),
);
/** Types of a phone jack whose contacts tell them: one that takes both directions is wired as Type A. */
const PHONE_STYLES = STYLES.filter((style) => style !== 'din' && style !== 'both-ways');

describe('A type written out contact by contact', () => {
  for (const [name, language] of Object.entries(LANGUAGES))
    test(`is read back in ${name}, in every order and every way of drawing it`, () => {
      for (const style of PHONE_STYLES)
        for (const order of ORDERS)
          for (const draw of DRAWN)
            for (const join of JOINED) {
              const text = writtenBy(language, style, order, draw, join);
              const reading = readManual(text, 'in');
              expect([text, reading.state, reading.type]).toEqual([text, 'said', style]);
              expect(reading.questions).toEqual([]);
            }
    });

  test('is the other type of the two when 4 and 5 change places', () => {
    const swapped = (text: string): string => text.replace(/[45]/g, (digit) => (digit === '4' ? '5' : '4'));
    const other = { 'type-a': 'type-b', 'type-b': 'type-a' } as const;
    for (const style of ['type-a', 'type-b'] as const)
      for (const language of Object.values(LANGUAGES))
        for (const draw of DRAWN) {
          const text = swapped(writtenBy(language, style, CONTACTS, draw, ', '));
          expect(readManual(text, 'in').type, text).toBe(other[style]);
        }
  });

  test('is the same for an output, but that no output takes both directions', () => {
    for (const style of PHONE_STYLES) {
      const text = writtenBy(LANGUAGES['English'] as Language, style, CONTACTS, DRAWN[0] ?? String, ', ');
      expect(readManual(text, 'out')).toEqual(readManual(text, 'in'));
    }
  });
});

describe('A type half written', () => {
  test('leaves open exactly the types that put what is told where it is told', () => {
    const english = LANGUAGES['English'] as Language;
    for (const style of PHONE_STYLES)
      for (const contacts of [
        ['tip'],
        ['ring'],
        ['sleeve'],
        ['tip', 'ring'],
        ['tip', 'sleeve'],
        ['ring', 'sleeve'],
      ] as const) {
        const text = writtenBy(english, style, contacts, (contact, what) => `${contact} = ${what}`, ', ');
        const left = PHONE_STYLES.filter((one) =>
          contacts.every((contact) => carriedBy(one, contact) === carriedBy(style, contact)),
        );
        const reading = readManual(text, 'in');
        expect(new Set(reading.could), text).toEqual(new Set(left));
        expect(reading.state, text).toBe(left.length === 1 ? 'said' : 'half');
        expect(reading.questions.length, text).toBe(left.length === 1 ? 0 : 1);
        expect(reading.could[0]).toBe(reading.type);
      }
  });

  test('asks for a contact that was not told', () => {
    expect(readManual('tip = pin 5', 'in').questions).toEqual([
      'What is on the ring: DIN pin 4, or nothing?',
    ]);
    expect(readManual('pin 4 on the tip', 'in').questions).toEqual([
      'What is on the ring: DIN pin 5, or nothing?',
    ]);
    expect(readManual('signal on tip, ring unused', 'in').questions).toEqual([
      'What is on the sleeve: pin 2 (ground), or one of the pins 4 and 5?',
    ]);
  });

  test('takes a pin for the loop and a mere signal for a signal to ground', () => {
    expect(readManual('tip = pin 5', 'in').type).toBe('type-a');
    expect(readManual('data on the tip', 'in').type).toBe('tip-signal');
    expect(readManual('data on the ring', 'in').type).toBe('ring-signal');
  });
});

describe('A text that says two things', () => {
  test('of one contact contradicts itself, with both told', () => {
    expect(readManual('tip = pin 4. Later: tip = pin 5', 'in')).toEqual({
      state: 'contradicts',
      type: undefined,
      could: [],
      reason: 'it says tip = pin 4 and tip = pin 5',
      questions: ['Which DIN pin is on the tip, and which on the ring: 4, 5, or neither?'],
    });
  });

  test('that are the same, said twice, is sure of it', () => {
    expect(readManual('tip = pin 5, ring = pin 4. Again: ring = pin 4, tip = pin 5', 'in')).toMatchObject({
      state: 'said',
      type: 'type-a',
    });
  });

  test('in its drawing and its name contradicts itself, and in agreement is surer for it', () => {
    const both = readManual('Type B: tip = pin 4, ring = pin 5', 'in');
    expect(both).toMatchObject({ state: 'said', type: 'type-b', questions: [] });
    expect(both.reason).toBe(
      '‘Type B’ is named: pin 4 on the tip, pin 5 on the ring, pin 2 on the sleeve; it says tip = pin 4, ring = pin 5',
    );
    const apart = readManual('Type A: tip = pin 4, ring = pin 5', 'in');
    expect(apart.state).toBe('contradicts');
    expect(apart.reason).toBe(
      'it says tip = pin 4, ring = pin 5, and that is not Type A: the drawing and the name disagree',
    );
  });

  test('puts pins where no type known here has them', () => {
    const reading = readManual('tip = pin 2, ring = pin 4, sleeve = pin 5', 'in');
    expect(reading.state).toBe('contradicts');
    expect(reading.reason).toBe(
      'it says tip = pin 2, ring = pin 4, sleeve = pin 5, which no type known here does',
    );
  });
});

describe('Numbers that are no pins', () => {
  const NUMBERS = [
    '3.5 mm',
    '2.5 mm',
    '6,35 mm',
    '1/4"',
    '1/4 inch',
    '4-pole',
    '5-pin',
    '5-polig',
    '2 m',
    '2 cm',
    '24 V',
  ];

  test.each(NUMBERS)('such as %s put nothing on a contact, wherever they stand', (number) => {
    for (const text of [
      `a ${number} jack with tip and ring`,
      `the ring of a ${number} plug`,
      `tip and sleeve, ${number} lead`,
      `ring: see the ${number} plug`,
    ]) {
      const { type, state } = readManual(text, 'in');
      expect([
        text,
        type === undefined || type === 'din',
        state === 'half' || state === 'contradicts',
      ]).toEqual([text, true, false]);
    }
  });

  test('leave the pins beside them alone', () => {
    expect(readManual('1/4" jack: tip = 5, ring = 4', 'in')).toMatchObject({ state: 'said', type: 'type-a' });
    expect(readManual('tip/ring = 4/5', 'in')).toMatchObject({ state: 'said', type: 'type-b' });
    expect(readManual('3.5 mm, tip 4, ring 5, 2 m lead', 'in')).toMatchObject({
      state: 'said',
      type: 'type-b',
    });
    expect(readManual('pin 4 may be tip, pin 5 ring', 'in')).toMatchObject({ state: 'said', type: 'type-b' });
  });
});
