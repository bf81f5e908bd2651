import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readLine } from '../../../src/core/signal/quick-reader.ts';
import { receive, receivedBytes } from '../../../src/core/signal/receiver.ts';
import { ONE_LOOK } from '../../../src/core/signal/bit-budget.ts';
import { anyWave } from './arbitrary.ts';

test('the quick reader reads of any line what the receiver that keeps its samples hears', () => {
  const phase = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });
  const clockError = fc.double({ min: -0.2, max: 0.2, noNaN: true });
  fc.assert(
    fc.property(anyWave, phase, clockError, fc.boolean(), (wave, at, error, once) => {
      const options = { phase: at, clockError: error, ...(once ? ONE_LOOK : {}) };
      expect(readLine(wave, options)).toEqual(receivedBytes(receive(wave, options).heard));
    }),
    { numRuns: 400 },
  );
});

test('a sampling that describes no receiver is refused by both in the same words', () => {
  const options = { voteSamples: [8, 9] };
  const line = { before: true, edges: [] };
  const words = 'vote samples must be an odd count of rising whole numbers from 1 to 16, got 8, 9';
  expect(() => readLine(line, options)).toThrow(words);
  expect(() => receive(line, options)).toThrow(words);
});
