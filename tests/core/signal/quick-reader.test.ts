import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BEFORE_EDGES, readLine, stepLine } from '../../../src/core/signal/quick-reader.ts';
import { receive, receivedBytes } from '../../../src/core/signal/receiver.ts';
import { ONE_LOOK } from '../../../src/core/signal/bit-budget.ts';
import { sendBytes } from '../../../src/core/signal/frames.ts';
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

test('step by step it tells of each falling edge what is read there, and where the next one is looked for', () => {
  // By hand: FF has one stretch of 0, its start bit; 0F after it has two, its start bit and its four high bits.
  const { wave } = sendBytes([0xff, 0x0f], { startSeconds: 1e-3 });
  const step = stepLine(wave);
  expect(step(BEFORE_EDGES)).toEqual({ read: undefined, next: 0 });
  expect(step(0)).toMatchObject({ read: { value: 0xff, kind: 'byte' }, next: 2 });
  expect(step(2)).toMatchObject({ read: { value: 0x0f, kind: 'byte' }, next: wave.edges.length });
});

test('a sampling that describes no receiver is refused by both in the same words', () => {
  const options = { voteSamples: [8, 9] };
  const line = { before: true, edges: [] };
  const words = 'vote samples must be an odd count of rising whole numbers from 1 to 16, got 8, 9';
  expect(() => readLine(line, options)).toThrow(words);
  expect(() => receive(line, options)).toThrow(words);
});
