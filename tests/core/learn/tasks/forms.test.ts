/** Ways to put a question: what each makes of right answers and of mistakes, whatever it is asked about. */
import { describe, expect, it, test } from 'vitest';
import { chanceOf } from '../../../../src/core/learn/tasks/chance.ts';
import {
  AS_THEY_STAND,
  aNumber,
  aText,
  casesAt,
  eachOf,
  inBits,
  inOrder,
  inRows,
  met,
  oneOf,
  plainNumber,
  theBytes,
  whichOf,
  whichText,
} from '../../../../src/core/learn/tasks/forms.ts';
import { capital } from '../../../../src/core/verdict/index.ts';

const SEEDS = Array.from({ length: 50 }, (_, at) => at * 7);

describe('One of several answers', () => {
  const OFFERED = [
    { text: 'four', right: true },
    { text: 'five', slip: 'one too many', says: 'Count again.' },
    { text: 'three', slip: 'one too few', says: 'Look for one more.' },
  ] as const;

  it('keeps each sentence with its own answer, in whatever order it is shown', () => {
    const orders = new Set<string>();
    for (const seed of SEEDS) {
      const { form, right, slips } = oneOf(OFFERED, chanceOf(seed));
      if (form.form !== 'choice') throw new Error('task: needs choices');
      const text = (answer: string): string => form.options[Number(answer)] ?? '';
      orders.add(form.options.join());
      expect(text(right)).toBe('four');
      expect(new Map(slips.map(({ name, answer }) => [name, text(answer)]))).toEqual(
        new Map([
          ['one too many', 'five'],
          ['one too few', 'three'],
        ]),
      );
    }
    expect(orders.size).toBe(6);
  });

  it('needs exactly one that is right', () => {
    const [right, wrong] = OFFERED;
    expect(() => oneOf([right, right], AS_THEY_STAND)).toThrow('task: needs one right answer, got 2');
    expect(() => oneOf([wrong], AS_THEY_STAND)).toThrow('task: needs one right answer, got 0');
    expect(() => whichOf([1, 2], 3, String, () => ['a', 'b'], AS_THEY_STAND)).toThrow('got 0');
  });

  it('out of a table is offered as the table stands, with a mistake for every other answer', () => {
    const texts = { up: 'It goes up.', down: 'It goes down.', rest: 'It rests.' };
    expect(whichText(texts, 'down', (one) => [`says ${one}`, `Not ${one}.`], AS_THEY_STAND)).toEqual({
      form: { form: 'choice', options: ['It goes up.', 'It goes down.', 'It rests.'] },
      right: '1',
      slips: [
        { name: 'says up', answer: '0', sentence: 'Not up.' },
        { name: 'says rest', answer: '2', sentence: 'Not rest.' },
      ],
    });
    expect(met<'early' | 'late'>({ early: 'Wait.', late: 'Hurry.' }, 'late')).toEqual(['late', 'Hurry.']);
  });
});

describe('A number', () => {
  const SAID = { half: 'Not half.', double: 'Not double.', same: 'The same.' };

  it('leaves out a mistake that cannot be told from the right number', () => {
    // Shares of 5 % on either side: 100 and 110 overlap, 100 and 112 do not.
    const slips = (value: number) =>
      aNumber(100, 'ohm', 0.05, { near: 'Near.' }, { near: value }).slips.map(({ answer }) => answer);
    expect(slips(100)).toEqual([]);
    expect(slips(110)).toEqual([]);
    expect(slips(90)).toEqual([]);
    expect(slips(112)).toEqual(['112']);
    expect(slips(88)).toEqual(['88']);
  });

  it('leaves out a mistake that cannot be told from one before it, and one that gives nothing here', () => {
    const { slips } = aNumber(100, 'ohm', 0.01, SAID, { half: 50, double: false, same: 50.5 });
    expect(slips).toEqual([{ name: 'half', answer: '50', sentence: 'Not half.' }]);
  });

  it('is written with four digits that mean something, and no more', () => {
    // 5 / 660 = 0.0075757…, 1e6 / 3 = 333333.3….
    for (const [value, text] of [
      [5 / 660, '0.007576'],
      [1e6 / 3, '333300'],
      [5.4, '5.4'],
      [0.1 + 0.2, '0.3'],
      [-12.3456, '-12.35'],
      [0, '0'],
    ] as const)
      expect(plainNumber(value)).toBe(text);
    expect(aNumber(5 / 660, 'A', 0.05, {}, {})).toMatchObject({
      form: { unit: 'A', share: 0.05 },
      right: '0.007576',
    });
  });
});

describe('An order', () => {
  const RIGHT = ['wake', 'wash', 'eat', 'go'];
  const SAID = { backwards: 'Turn it round.', 'one late': 'Not so late.' };

  it('is never shown as it has to be, and its mistakes are told in the places that are shown', () => {
    for (const seed of SEEDS) {
      const { form, right, slips } = inOrder(RIGHT, chanceOf(seed), SAID, {
        backwards: [RIGHT.toReversed()],
        'one late': [
          ['wash', 'wake', 'eat', 'go'],
          ['wash', 'eat', 'wake', 'go'],
        ],
      });
      if (form.form !== 'order') throw new Error('task: needs an order');
      const read = (answer: string) => answer.split(' ').map((place) => form.items[Number(place)]);
      expect(form.items).not.toEqual(RIGHT);
      expect(read(right)).toEqual(RIGHT);
      expect(slips.map(({ name }) => name)).toEqual(['backwards', 'one late', 'one late']);
      expect(slips.map(({ answer }) => read(answer)?.[0])).toEqual(['go', 'wash', 'wash']);
    }
  });

  it('leaves out a mistake that comes to the right order, or to that of another', () => {
    const { slips } = inOrder(RIGHT, chanceOf(3), SAID, {
      backwards: [RIGHT],
      'one late': [RIGHT.toReversed(), RIGHT.toReversed()],
    });
    expect(slips).toHaveLength(1);
  });
});

describe('Each of several that is so', () => {
  const isEven = (one: number): boolean => one % 2 === 0;
  const asked = (list: readonly number[], seed: number) =>
    eachOf(list, chanceOf(seed), {
      text: (one) => `number ${one}`,
      right: isEven,
      said: { all: 'Not all.', none: 'Some are.', odd: 'The others.', small: 'Size says nothing.' },
      ticks: { all: () => true, none: () => false, odd: (one) => !isEven(one), small: (one) => one < 3 },
    });

  it('ticks what is so by its place, the lowest place first', () => {
    for (const seed of SEEDS) {
      const { form, right, slips } = asked([1, 2, 3, 4], seed);
      if (form.form !== 'several') throw new Error('task: needs several');
      const ticked = (answer: string) =>
        answer === '-' ? [] : answer.split(' ').map((place) => Number(form.options[Number(place)]?.slice(7)));
      expect(ticked(right).toSorted()).toEqual([2, 4]);
      expect(right).toBe(right.split(' ').toSorted().join(' '));
      expect(Object.fromEntries(slips.map(({ name, answer }) => [name, ticked(answer).toSorted()]))).toEqual({
        all: [1, 2, 3, 4],
        none: [],
        odd: [1, 3],
        small: [1, 2],
      });
    }
  });

  it('may be all or none of them, and then the mistake that says so is none', () => {
    expect(asked([2, 4], 5)).toMatchObject({ right: '0 1' });
    expect(asked([2, 4], 5).slips.map(({ name }) => name)).toEqual(['none', 'small']);
    expect(asked([1, 3], 5)).toMatchObject({ right: '-' });
    // All of them are the odd ones: the first name stands.
    expect(asked([1, 3], 5).slips.map(({ name }) => name)).toEqual(['all', 'small']);
  });
});

describe('Bytes', () => {
  test('are written in hex of two digits, and a mistake that gives the right ones is left out', () => {
    const { form, right, slips } = theBytes(
      [0xc0, 4],
      { kind: 'Another kind.', same: 'The same.', none: 'Nothing.', twice: 'Once is enough.' },
      { kind: [0xb0, 4], same: [192, 4], none: false, twice: [0xc0, 4, 4] },
    );
    expect([form, right]).toEqual([{ form: 'bytes' }, 'C0 04']);
    expect(slips.map(({ name, answer }) => [name, answer])).toEqual([
      ['kind', 'B0 04'],
      ['twice', 'C0 04 04'],
    ]);
  });
});

describe('A text of the reader’s own', () => {
  const POINTS = [
    { text: 'It counts.', wanted: true, slip: 'no count', says: 'Count.' },
    { text: 'It says why.', wanted: true, slip: 'no reason', says: 'Say why.' },
    { text: 'It only grumbles.', wanted: false, slip: 'grumbles', says: 'Do not grumble.' },
  ];

  it('has a mistake for every way to tick but the right one: what spoils it before what it lacks', () => {
    const { right, slips } = aText(
      POINTS,
      'A model of a text.',
      AS_THEY_STAND as ReturnType<typeof chanceOf>,
    );
    expect(right).toBe('0 1 | A model of a text.');
    expect(Object.fromEntries(slips.map(({ answer, name }) => [answer.split(' | ')[0], name]))).toEqual({
      '-': 'no count',
      '0': 'no reason',
      '1': 'no count',
      '2': 'grumbles',
      '0 2': 'grumbles',
      '1 2': 'grumbles',
      '0 1 2': 'grumbles',
    });
  });
});

describe('What is shown', () => {
  test('is a table without the rows that do not belong to it', () => {
    expect(inRows([['a', '1'], false, ['b', '2']])).toEqual({
      shows: 'rows',
      rows: [
        ['a', '1'],
        ['b', '2'],
      ],
    });
  });

  test('of a byte is a start bit, eight bits with the lowest first, and a stop bit', () => {
    // MIDI 1.0: 35 is 0011 0101; a 0 is current on.
    expect(inBits(0x35).levels.map(Number).join('')).toBe('0101011001');
  });

  test('is the easier part of the cases at the lower levels', () => {
    const at = (level: 0 | 1 | 2 | 3) => casesAt(level, ['a', 'b', 'c', 'd'], [2, 3]).join('');
    expect(([0, 1, 2, 3] as const).map(at)).toEqual(['ab', 'ab', 'abc', 'abcd']);
  });

  test('begins with a capital where a sentence begins', () => {
    expect(capital('less than 2 %')).toBe('Less than 2 %');
    expect(capital('')).toBe('');
  });
});
