/** Bytes and clock budgets that others publish, against ours. */
import { describe, expect, test } from 'vitest';
import { decode } from '../../../src/core/signal/decode.ts';
import { widestClockError } from '../../../src/core/signal/limits.ts';

const notes = (bytes: readonly number[]) =>
  decode(bytes).map((event) => (event.kind === 'message' ? event.message : event.kind));

describe('running status', () => {
  test('90 37 40 35 00 39 40 is three messages: on, velocity 0, on (a public question)', () => {
    expect(notes([0x90, 0x37, 0x40, 0x35, 0x00, 0x39, 0x40])).toEqual([
      { kind: 'note on', channel: 0, note: 0x37, velocity: 0x40 },
      { kind: 'note on', channel: 0, note: 0x35, velocity: 0x00 },
      { kind: 'note on', channel: 0, note: 0x39, velocity: 0x40 },
    ]);
  });

  test('a clock inside a message comes first, and changes neither message nor running status', () => {
    expect(notes([0x90, 0x37, 0xf8, 0x40, 0x35, 0xf8, 0x00])).toEqual([
      { kind: 'real-time', signal: 'clock' },
      { kind: 'note on', channel: 0, note: 0x37, velocity: 0x40 },
      { kind: 'real-time', signal: 'clock' },
      { kind: 'note on', channel: 0, note: 0x35, velocity: 0x00 },
    ]);
  });
});

describe('tables of serial receivers with 16 samples a bit and eight data bits', () => {
  test('allow a sender +4.58 % fast and -4.54 % slow', () => {
    // Fast: a controller family's table, 160 samples of a frame against the middle vote of the stop bit, number 153: 7 / 153.
    // Slow: (154 - 147) / 154 (KL27 reference manual rev 5, ch. 38), whose whole samples round the exact 7 / 151 = 4.64 %.
    const fast = widestClockError('fast', { receiver: { voteSamples: [9] } }).value;
    const slow = widestClockError('slow', { need: 'no doubt' }).value;
    expect(Math.abs(fast - 0.0458)).toBeLessThan(0.001);
    expect(Math.abs(slow - 0.0454)).toBeLessThan(0.001);
  });
});
