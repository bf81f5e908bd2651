import { expect, test } from 'vitest';
import { above, between } from '../../src/core/learn/index.ts';
import { brokenPairs } from '../support/claims.ts';

test('a claim holds when what the core gives is equal or within the bounds', () => {
  expect(
    brokenPairs([
      ['0 mA', '0 mA'],
      [
        ['a', 1],
        ['a', 1],
      ],
      [0.99, between(0.98, 1)],
      [2, above(1)],
      [undefined, undefined],
    ]),
  ).toEqual([]);
});

test('a claim that does not hold says which pair, what the text needs and what the core gives', () => {
  expect(
    brokenPairs([
      [1, 1],
      [1, between(1, 2)],
      ['2', above(1)],
      [NaN, above(0)],
      [{ a: 1 }, { a: 2 }],
    ]),
  ).toEqual([
    'pair 2: the text needs {"above":1,"below":2}, the core gives 1',
    'pair 3: the text needs {"above":1,"below":null}, the core gives "2"',
    'pair 4: the text needs {"above":0,"below":null}, the core gives null',
    'pair 5: the text needs {"a":2}, the core gives {"a":1}',
  ]);
});
