import { expect, test } from 'vitest';
import RoundsDone from '../../../components/practice/RoundsDone.svelte';
import { faultName, hideNumberedFault } from '../../../src/core/faults/index.ts';
import { NO_RECORD, attemptOfRound } from '../../../src/core/learn/index.ts';
import { allOf, htmlOf } from '../../support/rendered.ts';

test('Rounds of the fault page are told by board: tried, found, and settled by checks', () => {
  const named = faultName(hideNumberedFault('chain', 4).fault);
  const attempts = [
    attemptOfRound({ board: 'chain', number: 4, named, made: [] }, 1),
    attemptOfRound({ board: 'chain', number: 5, named: 'pedal 2: supply-off', made: [] }, 1),
  ];
  const [only, ...more] = allOf(htmlOf(RoundsDone, { record: { ...NO_RECORD, attempts } }), 'li');
  expect(more).toEqual([]);
  expect(only).toMatch(
    /^Find the fault, two pedals in a chain: 2 tried, 1 found at the first name, 0 of them settled by checks$/,
  );
  expect(allOf(htmlOf(RoundsDone, { record: NO_RECORD }), 'li')).toEqual([]);
});
