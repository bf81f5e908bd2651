import { describe, expect, it } from 'vitest';
import { encode } from '../../../src/core/signal/encode.ts';
import { bitCells, bitSecondsOf, layFrames, sendBytes } from '../../../src/core/signal/frames.ts';

/** Rounding of sums of 32 us steps: far below a picosecond. */
const DIGITS = 14;

describe('bytes as bits on the wire', () => {
  it('takes 32 us a bit and 320 us a byte', () => {
    // MIDI 1.0 Detailed Specification 4.2.1, hardware; MMA CA-033, p. 2.
    expect(bitSecondsOf({})).toBeCloseTo(32e-6, DIGITS);
    expect(sendBytes([0]).bytes[0]?.endSeconds).toBeCloseTo(320e-6, DIGITS);
  });

  it('takes 640 us for a program change', () => {
    // Two bytes (MIDI 1.0 Detailed Specification 4.2.1, table I) of 320 us each.
    const bytes = encode([{ kind: 'program change', channel: 0, program: 5 }]);
    expect(sendBytes(bytes).bytes.at(-1)?.endSeconds).toBeCloseTo(640e-6, DIGITS);
  });

  it('takes 2.24 ms for the running-status example, against 2.88 ms without', () => {
    // Seven and nine bytes of 320 us: appendix A-1 of the same document.
    const example = [0x90, 0x3c, 0x27, 0x40, 0x2b, 0x43, 0x25];
    expect(sendBytes(example).bytes.at(-1)?.endSeconds).toBeCloseTo(2.24e-3, DIGITS);
    const plain = [0x90, 0x3c, 0x27, 0x90, 0x40, 0x2b, 0x90, 0x43, 0x25];
    expect(sendBytes(plain).bytes.at(-1)?.endSeconds).toBeCloseTo(2.88e-3, DIGITS);
  });

  it('sends start bit 0, data lowest bit first, stop bit 1', () => {
    // 0x05 = 00000101: start 0, then 1 0 1 0 0 0 0 0, then stop 1.
    const sent = sendBytes([0x05]);
    const levels = sent.bytes.flatMap(bitCells).map(({ level }) => Number(level));
    expect(levels).toEqual([0, 1, 0, 1, 0, 0, 0, 0, 0, 1]);
    expect(sent.wave.edges.map(({ seconds }) => Math.round(seconds * 1e6))).toEqual([
      0, 32, 64, 96, 128, 288,
    ]);
    expect(sent.wave.edges.map(({ level }) => level)).toEqual([false, true, false, true, false, true]);
  });

  it('shortens every bit when the clock runs fast', () => {
    // 1 % fast: 320 us / 1.01.
    expect(sendBytes([0], { clockError: 0.01 }).bytes[0]?.endSeconds).toBeCloseTo(320e-6 / 1.01, DIGITS);
  });

  it('leaves the gaps it is told to leave', () => {
    const starts = (gapSeconds: number | number[]): number[] =>
      sendBytes([1, 2, 3], { gapSeconds, startSeconds: 1e-3 }).bytes.map(({ startSeconds }) =>
        Math.round(startSeconds * 1e6),
      );
    expect(starts(0)).toEqual([1000, 1320, 1640]);
    expect(starts(100e-6)).toEqual([1000, 1420, 1840]);
    expect(starts([50e-6, 0])).toEqual([1000, 1370, 1690]);
  });

  it('refuses what cannot be sent', () => {
    expect(() => sendBytes([256])).toThrow('byte 0: must be a whole number from 0 to 255, got 256');
    expect(() => sendBytes([1, 2], { gapSeconds: -1 })).toThrow('byte 0: gap must be 0 s or more, got -1 s');
    expect(() => sendBytes([1], { clockError: -1 })).toThrow(
      'clock: bits a second must be more than 0, got 0',
    );
    expect(() =>
      layFrames([
        { value: 1, startSeconds: 0 },
        { value: 2, startSeconds: 1e-4 },
      ]),
    ).toThrow('byte 1: must start at 320.0 us or later, got 100.0 us');
  });
});
