/** Bounds of what a class hands round, seeds counted by hand, and the number of a kind by published values of its hash. */
import { describe, expect, it } from 'vitest';
import { CLASS_LIMITS, SHOWS } from '../../../src/core/class/limits.ts';
import { readResult } from '../../../src/core/class/result.ts';
import { kindNumber } from '../../../src/core/class/set-code.ts';
import { takenFile, takenIn } from '../../../src/core/class/taken.ts';
import { readSet, sameWork, tasksOfSet } from '../../../src/core/class/work-set.ts';
import type { WorkSet } from '../../../src/core/class/work-set.ts';
import { sayProblem } from '../../../src/core/plan/index.ts';

const SET: WorkSet = {
  format: 'five-milliamps-set',
  version: 1,
  title: 'Bounds',
  seed: 100,
  perStudent: true,
  items: [
    { kind: 'lay-lead', level: 1, count: 2 },
    { kind: 'ts-plug', level: 2, count: 1 },
    { kind: 'lay-lead', level: 3, count: 3 },
  ],
  show: 'each',
};

const saidOf = (reading: ReturnType<typeof readSet> | ReturnType<typeof readResult>): readonly string[] =>
  reading.ok ? [] : reading.problems.map(sayProblem);

describe('a Set at its bounds', () => {
  it('is read with the longest title, the most tasks of a kind and in all, and refused one beyond', () => {
    const items = (...counts: readonly number[]) =>
      counts.map((count) => ({ kind: 'lay-lead', level: 2, count }));
    const whole = [
      { title: 'x'.repeat(60) },
      { items: items(20, 20) },
      { items: items(...Array<number>(40).fill(1)) },
      { seed: 0 },
      ...SHOWS.map((show) => ({ show })),
    ];
    for (const change of whole) expect(saidOf(readSet({ ...SET, ...change }))).toEqual([]);
    const beyond = [
      [{ title: 'x'.repeat(61) }, /^title: expected text of 1 to 60 characters/],
      [{ items: items(21) }, /^items\[0\]\.count: expected a whole number from 1 to 20, got 21/],
      [{ items: items(0) }, /^items\[0\]\.count: expected a whole number from 1 to 20, got 0/],
      [{ items: items(20, 20, 1) }, /^items: expected at most 40 tasks in all, got 41/],
      [{ items: items(...Array<number>(41).fill(1)) }, /^items: expected a list of 1 to 40/],
      [{ seed: -1 }, /^seed: expected a whole number from 0/],
      [{ seed: 0.5 }, /^seed: expected a whole number from 0/],
    ] as const;
    for (const [change, words] of beyond) expect(saidOf(readSet({ ...SET, ...change }))[0]).toMatch(words);
  });

  it('says what is wrong with every field at once', () => {
    expect(saidOf(readSet({ ...SET, title: 7, seed: 'a', show: 'now' }))).toHaveLength(3);
  });
});

describe('a result at its bounds', () => {
  const attempt = { task: 'lay-lead.1.3G', answer: '', hints: 0, day: 0 };
  const result = (change: object, one: object = {}): object => ({
    format: 'five-milliamps-result',
    version: 1,
    set: SET,
    number: 1,
    name: '',
    attempts: [{ ...attempt, ...one }],
    ...change,
  });

  it('holds an empty answer and an empty name, numbers from 1 to 999, no hint to three', () => {
    for (const change of [{}, { number: CLASS_LIMITS.number }, { name: 'n'.repeat(60) }, { attempts: [] }])
      expect(saidOf(readResult(result(change)))).toEqual([]);
    for (const one of [{ hints: 3 }, { answer: 'a'.repeat(300) }, { day: 100_000 }])
      expect(saidOf(readResult(result({}, one)))).toEqual([]);
    expect(CLASS_LIMITS.number).toBe(999);
  });

  it.each([
    [{ number: 0 }, {}, 'number: expected a whole number from 1 to 999, got 0'],
    [{ number: 1000 }, {}, 'number: expected a whole number from 1 to 999, got 1000'],
    [{}, { hints: 4 }, 'attempts[0].hints: expected a whole number from 0 to 3, got 4'],
    [{}, { day: -1 }, 'attempts[0].day: expected a whole number from 0 to 100000, got -1'],
    [
      {},
      { task: 'lay-lead' },
      "attempts[0].task: expected a kind, a level and a seed such as 'lay-lead.2.7F3K', got 'lay-lead'",
    ],
  ])('with %o and %o is refused', (change, one, words) => {
    expect(saidOf(readResult(result(change, one)))).toEqual([words]);
  });

  it('is refused with a Set that is none, by the field of the Set', () => {
    expect(saidOf(readResult(result({ set: { ...SET, title: '' } })))[0]).toMatch(/^set\.title: /);
    for (const value of [null, 7, 'text', [], {}]) expect(readResult(value).ok).toBe(false);
  });
});

describe('the tasks of a student', () => {
  const seedsOf = (set: WorkSet, number: number): readonly string[] =>
    tasksOfSet(set, number).map(({ kind, level, seed }) => `${kind} ${level} ${seed}`);

  it('have seeds that follow one another, kind by kind: so many for each student as the Set has of the kind', () => {
    // By hand: five of the one kind a student, from 100 + 5 n on; one of the other, at 100 + n.
    expect(seedsOf(SET, 1)).toEqual([
      'lay-lead 1 105',
      'lay-lead 1 106',
      'ts-plug 2 101',
      'lay-lead 3 107',
      'lay-lead 3 108',
      'lay-lead 3 109',
    ]);
    expect(seedsOf(SET, 2)[0]).toBe('lay-lead 1 110');
    expect(seedsOf({ ...SET, perStudent: false }, 2)[0]).toBe('lay-lead 1 100');
  });

  it('are the same work under another title, and other work with another show, seed, level or order', () => {
    expect(sameWork({ ...SET, title: 'Other' })).toBe(sameWork(SET));
    const others: readonly WorkSet[] = [
      { ...SET, show: 'never' },
      { ...SET, seed: 101 },
      { ...SET, perStudent: false },
      { ...SET, items: SET.items.toReversed() },
    ];
    expect(new Set([SET, ...others].map(sameWork)).size).toBe(5);
  });
});

describe('the number of a kind', () => {
  it('is the 32-bit FNV-1a hash of its name, folded to 15 bits', () => {
    // Published values of the hash (Fowler, Noll and Vo, test vectors): '' 811c9dc5, 'a' e40c292c, 'foobar' bf9cf968.
    // Folded by hand: the low 15 bits exclusive-or the next 15; e40c292c gives 292c ^ 4818 = 6134.
    expect(kindNumber('')).toBe(0x1dc5 ^ 0x0239);
    expect(kindNumber('a')).toBe(0x6134);
    expect(kindNumber('foobar')).toBe(0x7968 ^ 0x7f39);
  });
});

describe('a file of several pieces of work', () => {
  const PROBLEM = { place: 'the file', expected: 'JSON', got: 'other text' };

  it('comes back as it was written, and counts what is not whole', () => {
    const taken = [
      { source: 'one.json', result: { any: 'thing' } },
      { source: 'two.json', problems: [PROBLEM] },
    ];
    const file = JSON.parse(JSON.stringify(takenFile(taken))) as { results: unknown[] };
    expect(takenIn(file)).toEqual({ taken, spoiled: 0 });
    const spoiled = [
      7,
      null,
      {},
      { source: 'three.json' },
      { source: 4, result: {} },
      { source: 'x', problems: [{}] },
    ];
    expect(takenIn({ ...file, results: [...file.results, ...spoiled] })).toEqual({ taken, spoiled: 6 });
  });

  it('is none with another format, another version, or no list', () => {
    const file = takenFile([]);
    expect(takenIn(file)).toEqual({ taken: [], spoiled: 0 });
    for (const other of [
      { ...file, format: 'x' },
      { ...file, version: 2 },
      { ...file, results: {} },
      null,
      'text',
      [],
    ])
      expect(takenIn(other)).toBeUndefined();
  });
});
