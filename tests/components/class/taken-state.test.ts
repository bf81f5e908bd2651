/** What a teacher has taken in, as it is kept and as a file: what was read and what was not come back as they were. */
import { expect, test } from 'vitest';
import { NOTHING, TAKEN_KIND } from '../../../components/class/taken-state.ts';
import { handedInOf, markResults, resultsIn, takenOf } from '../../../src/core/class/index.ts';
import { handedIn } from '../../support/classroom.ts';

const inputs = (
  await Promise.all((await handedIn()).map(({ source, text }) => resultsIn(source, text)))
).flat();
const taken = inputs.map(takenOf);
const text = TAKEN_KIND.write(taken);

test('A class that was taken in comes back as it was, and is marked the same', () => {
  const { value, problem } = TAKEN_KIND.read(text);
  expect(problem).toBeUndefined();
  expect(value).toEqual(taken);
  expect(markResults((value ?? []).map(handedInOf))).toEqual(markResults(inputs));
});

test('What was taken in is a file that is taken in again, each piece under its own name', async () => {
  expect(await resultsIn('saved.json', text)).toEqual(inputs);
});

test('A list of which a part is spoiled gives the rest, and says that it is not all', async () => {
  const whole = JSON.parse(text) as { readonly results: readonly object[] };
  const spoiled = JSON.stringify({ ...whole, results: [5, { source: 7 }, ...whole.results.slice(0, 2)] });
  expect(TAKEN_KIND.read(spoiled)).toEqual({
    value: taken.slice(0, 2),
    problem: 'some of it is not known here',
  });
  expect(await resultsIn('saved.json', spoiled)).toEqual([
    ...inputs.slice(0, 2),
    {
      source: 'saved.json',
      reading: {
        ok: false,
        problems: [{ place: 'results', expected: 'work that was handed in', got: '2 that are none' }],
      },
    },
  ]);
});

test('What is no list is none, and work in a list that is none is refused when it is marked', () => {
  expect(TAKEN_KIND.read('{"half').value).toBeUndefined();
  expect(TAKEN_KIND.read('{}')).toEqual({ value: NOTHING, problem: 'some of it is not known here' });
  const [row] = markResults([
    handedInOf({ source: 'a', result: { format: 'five-milliamps-result', version: 2 } }),
  ]).rows;
  expect(row).toMatchObject({
    source: 'a',
    problem: expect.stringContaining('made by a newer workbook') as string,
  });
});
