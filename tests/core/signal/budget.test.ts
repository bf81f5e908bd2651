/** What a receiver bears of shifted edges, against the arithmetic of samples. */
import { describe, expect, it } from 'vitest';
import { STANDARD_EDGE_BUDGET, edgeBudget, shareOfBudget } from '../../../src/core/signal/bit-budget.ts';
import { WORST_CLOCKS, WORST_CLOCKS_EARLY } from '../../../src/core/signal/bit-budget.ts';
import { bitCells, bitSecondsOf, frameBit, layFrames, sendBytes } from '../../../src/core/signal/frames.ts';
import { delaysOf, edgeShiftSeconds } from '../../../src/core/signal/jack-delays.ts';
import { PARTS, makeJack, outputModel } from '../../../src/core/wiring/index.ts';
import type { Jack, Part } from '../../../src/core/wiring/index.ts';

const BIT = 32e-6;

describe('the budget of a receiver', () => {
  it('with right clocks is half a bit less the sample of the start edge, late, and a little more, early', () => {
    // 16 samples a bit; votes 8, 9, 10, the second decides, its edge known to a sample of 2 us. Late: the same at every bit,
    // (n x 16 + 9 - 1) x 2 us - n x 32 us = 16 us. Early: (n + 1) x 32 us - (n x 16 + 9) x 2 us = 14 us.
    const { lateSeconds, earlySeconds } = edgeBudget();
    expect(lateSeconds * 1e6).toBeCloseTo(16, 6);
    expect(earlySeconds * 1e6).toBeCloseTo(14, 6);
  });

  it('at the bounds of the standard is what the usual arithmetic of 9.5 bits says, within a third of a microsecond', () => {
    // Facts sheet, section 6: 0.4375 bit less 2 % of 9.5 bits, (0.4375 - 0.19) x 32 us = 7.92 us.
    expect(STANDARD_EDGE_BUDGET.lateSeconds * 1e6).toBeCloseTo((151 * 2) / 1.01 - (9 * 32) / 0.99, 6);
    expect(Math.abs(STANDARD_EDGE_BUDGET.lateSeconds - 7.92e-6)).toBeLessThan(0.34e-6);
    expect(STANDARD_EDGE_BUDGET.lateSeconds).toBe(edgeBudget(WORST_CLOCKS).lateSeconds);
    expect(STANDARD_EDGE_BUDGET.earlySeconds).toBe(edgeBudget(WORST_CLOCKS_EARLY).earlySeconds);
  });

  it('shrinks as the clocks part, whichever way, and is used up near 5 per cent', () => {
    // Facts sheet, section 6: 16x and the start edge known to a sixteenth, 4.61 %.
    for (const side of ['late', 'early'] as const) {
      const left = [0, 0.01, 0.02, 0.03, 0.04, 0.05, 0.06].map((error) => {
        const sign = side === 'late' ? -1 : 1;
        const budget = edgeBudget({ sender: { clockError: sign * error } });
        return side === 'late' ? budget.lateSeconds : budget.earlySeconds;
      });
      expect(left).toEqual([...left].sort((one, other) => other - one));
      expect(left[4] ?? NaN).toBeGreaterThan(0);
      expect(left[6] ?? NaN).toBeLessThan(0);
    }
  });

  it('is shared in proportion: the whole at its bound, half at half, by either sign', () => {
    const { lateSeconds, earlySeconds } = STANDARD_EDGE_BUDGET;
    expect(shareOfBudget(0)).toBeCloseTo(0, 12);
    expect(shareOfBudget(lateSeconds)).toBe(1);
    expect(shareOfBudget(lateSeconds / 2)).toBeCloseTo(0.5, 12);
    expect(shareOfBudget(-earlySeconds)).toBe(1);
    expect(shareOfBudget(-2 * earlySeconds)).toBeCloseTo(2, 12);
    // Shares of a chain add up to the share of the sum.
    expect(3 * shareOfBudget(1e-6)).toBeCloseTo(shareOfBudget(3e-6), 12);
  });
});

describe('the frame of a byte', () => {
  it('has a start bit, eight bits lowest first and a stop bit, for every byte', () => {
    for (let byte = 0; byte < 256; byte++) {
      const bits = Array.from({ length: 10 }, (_, bit) => frameBit(byte, bit));
      expect(bits[0]).toBe(false);
      expect(bits[9]).toBe(true);
      expect(bits.slice(1, 9).reduce((sum, one, at) => sum + Number(one) * 2 ** at, 0)).toBe(byte);
      const [sent] = sendBytes([byte]).bytes;
      if (!sent) throw new Error('expected a byte');
      const cells = bitCells(sent);
      expect(cells.map(({ level }) => level)).toEqual(bits);
      cells.forEach(({ fromSeconds, toSeconds }, at) => {
        expect(fromSeconds).toBeCloseTo(at * BIT, 12);
        expect(toSeconds - fromSeconds).toBeCloseTo(BIT, 12);
      });
    }
  });

  it('has an edge for each change of level and no other', () => {
    // 55 changes at every bit: ten edges; 00 falls once and rises once; FF falls and rises at once after the start bit.
    const edges = (byte: number) =>
      sendBytes([byte]).wave.edges.map(({ seconds }) => Math.round(seconds / BIT));
    expect(edges(0x55)).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    expect(edges(0x00)).toEqual([0, 9]);
    expect(edges(0xff)).toEqual([0, 1]);
    expect(edges(0xf0)).toEqual([0, 5]);
  });

  it('follows the last one at once or after a gap, one for all or one for each', () => {
    const starts = (gapSeconds?: number | readonly number[]) =>
      sendBytes([1, 2, 3], gapSeconds === undefined ? {} : { gapSeconds }).bytes.map(({ startSeconds }) =>
        Math.round(startSeconds * 1e6),
      );
    expect(starts()).toEqual([0, 320, 640]);
    expect(starts(1e-4)).toEqual([0, 420, 840]);
    expect(starts([1e-4, 0, 9])).toEqual([0, 420, 740]);
    expect(starts([1e-4])).toEqual([0, 420, 740]);
  });

  it('is longer by a slow clock and shorter by a fast one', () => {
    expect(bitSecondsOf({})).toBe(BIT);
    expect(bitSecondsOf({ clockError: -0.01 }) * 1e6).toBeCloseTo(32 / 0.99, 9);
    expect(bitSecondsOf({ baud: 62500 }) * 1e6).toBeCloseTo(16, 9);
  });

  it('is refused in these words where it cannot be', () => {
    expect(() => bitSecondsOf({ clockError: -1 })).toThrow('clock: bits a second must be more than 0, got 0');
    expect(() => bitSecondsOf({ baud: NaN })).toThrow('clock: bits a second must be more than 0, got NaN');
    expect(() => sendBytes([256])).toThrow('byte 0: must be a whole number from 0 to 255, got 256');
    expect(() => sendBytes([0, 1.5])).toThrow('byte 1: must be a whole number from 0 to 255, got 1.5');
    expect(() => sendBytes([1, 2], { gapSeconds: -1 })).toThrow('byte 0: gap must be 0 s or more, got -1 s');
    expect(() =>
      layFrames([
        { value: 1, startSeconds: 0 },
        { value: 2, startSeconds: 300e-6 },
      ]),
    ).toThrow('byte 1: must start at 320.0 us or later, got 300.0 us');
  });
});

describe('the delays of an input in the usual link', () => {
  const jack = (part: Part, values: Jack['values'] = {}): Jack =>
    makeJack('in', 'din5', 'din', { part, values });

  it('are those of its sheet for a part with logic', () => {
    for (const part of PARTS) {
      const { kind } = outputModel(part);
      if ('toOnSeconds' in kind)
        expect(delaysOf(jack(part))).toEqual({
          toOnSeconds: kind.toOnSeconds,
          toOffSeconds: kind.toOffSeconds,
        });
    }
  });

  it('of a 6N138 are those that the facts sheet fits at 1 kohm, without and with a base resistor', () => {
    // facts-12, A23: 1 kohm, 5.4 mA: none 0.5 and 4.7 us; 10 kohm 2.9 and 2.4; 4.7 kohm 2.9 and 1.5.
    for (const [baseOhms, on, off] of [
      [0, 0.5, 4.7],
      [10e3, 2.9, 2.4],
      [4700, 2.9, 1.5],
    ] as const) {
      const { toOnSeconds, toOffSeconds } = delaysOf(jack('6N138', { loadOhms: 1000, baseOhms }));
      expect(toOnSeconds * 1e6).toBeCloseTo(on, 0.5);
      expect(toOffSeconds * 1e6).toBeCloseTo(off, 0.5);
    }
  });

  it('can be asked for without the base resistor, as if the jack had none', () => {
    expect(delaysOf(jack('6N138'), false)).toEqual(delaysOf(jack('6N138', { baseOhms: 0 })));
  });

  it('shift edges by off less on: a base resistor turns the sign of it', () => {
    for (const part of PARTS) {
      const { toOnSeconds, toOffSeconds } = delaysOf(jack(part));
      expect(edgeShiftSeconds(jack(part))).toBe(toOffSeconds - toOnSeconds);
    }
    expect(edgeShiftSeconds(jack('6N138', { loadOhms: 1000, baseOhms: 0 }))).toBeGreaterThan(0);
    expect(edgeShiftSeconds(jack('6N138', { loadOhms: 1000, baseOhms: 4700 }))).toBeLessThan(0);
  });

  it('grow with the load of a transistor on its way to off, up to a whole byte where bits are lost', () => {
    for (const part of ['CNY17-2', '4N35', 'PC817'] as const) {
      const row = [1000, 1500, 2200].map((loadOhms) => delaysOf(jack(part, { loadOhms })).toOffSeconds);
      expect(row, part).toEqual([...row].sort((one, other) => one - other));
      for (const seconds of row) expect(seconds).toBeLessThanOrEqual(320e-6);
    }
  });
});
