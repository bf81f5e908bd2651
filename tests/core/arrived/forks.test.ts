/** A log followed through every way in which its line may be read. */
import { describe, expect, test } from 'vitest';
import type { LineCandidate } from '../../../src/core/arrived/causes.ts';
import { SURE } from '../../../src/core/arrived/compare.ts';
import { forksOf } from '../../../src/core/arrived/forks.ts';
import { lineCandidates } from '../../../src/core/arrived/line-causes.ts';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { readLine } from '../../../src/core/signal/quick-reader.ts';
import { ask } from './ask.ts';

/** A receiver 5 % slow stands at the edge of what 16 samples a bit bear. */
const slow = lineCandidates().find(
  ({ cause, amount }) => cause === 'clock off' && amount === -0.05,
) as LineCandidate;
const bytes = [0x00, 0x55, 0x00, 0x55, 0x00];
const { wave } = sendBytes(bytes, { gapSeconds: 5e-3, startSeconds: 1e-3 });
const same = Math.log(1 - SURE.changed - SURE.lost - SURE.extra);

describe('a line that is read one way or another', () => {
  // One of four phases looks at the last data bit so late that it sees the stop bit: 80 and D5 for 00 and 55.
  const mixed = [0x80, 0x55, 0x00, 0xd5, 0x00];

  test('explains a log in which each byte took a way of its own', () => {
    const reads = [0.1, 0.4, 0.7, 0.95].map((phase) =>
      readLine(wave, { ...slow.receiver, phase }).map(({ value }) => value),
    );
    expect(reads).toEqual([bytes, bytes, bytes, [0x80, 0xd5, 0x80, 0xd5, 0x80]]);
    // By hand: two bytes by the one phase of four, three by the others.
    const chance = 5 * same + 2 * Math.log(1 / 4) + 3 * Math.log(3 / 4);
    expect(forksOf(slow, wave)('marked', mixed, -Infinity)).toBeCloseTo(chance, 10);
  });

  test('leaves a log that falls below the floor, and one that is nothing like it', () => {
    expect(forksOf(slow, wave)('marked', mixed, -3)).toBe(-Infinity);
    expect(forksOf(slow, wave)('marked', [1, 2, 3, 4, 5, 6, 7, 8, 9], -Infinity)).toBe(-Infinity);
  });

  test('says nothing where no phase matters: that is for the one reading to say', () => {
    const whole: LineCandidate = { kind: 'line', cause: 'clock off', amount: 0, change: (line) => line };
    expect(forksOf(whole, wave)('marked', bytes, -Infinity)).toBe(-Infinity);
  });
});

test('a port at 9600 baud is found by its pauses', () => {
  // The bytes of four messages 5 ms apart with 40 µs after each byte, as the simulation reads them at 9600 baud.
  const sent = [0x90, 0x3c, 0x40, 0x91, 0x40, 0x22, 0x82, 0x24, 0x40, 0x92, 0x11, 0x13];
  const gapSeconds = sent.map((_, place) => (place % 3 === 2 ? 5e-3 : 40e-6));
  const seen = readLine(sendBytes(sent, { gapSeconds }).wave, { baud: 9600 });
  const text = (list: readonly number[]): string =>
    list.map((one) => one.toString(16).padStart(2, '0')).join(' ');
  const { causes } = ask(text(sent), text(seen.map(({ value }) => value)));
  expect(causes[0]?.cause).toBe('wrong speed');
});
