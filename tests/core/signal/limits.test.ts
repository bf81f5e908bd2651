import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mostHops, MOST_HOPS, tryLink, widestClockError } from '../../../src/core/signal/limits.ts';
import type { Hop } from '../../../src/core/signal/hop.ts';

const US = 1e-6;
const BIT_US = 32;
/** Published budgets are met within 0.1 percentage points of clock mismatch. */
const BUDGET = 0.001;

const apart = (found: number, published: number): number => Math.abs(found - published);
const skewed = (skewUs: number): Hop => ({
  kind: 'hardware thru',
  toOnSeconds: 1 * US,
  toOffSeconds: (1 + skewUs) * US,
});

describe('the widest clock error, by search', () => {
  it('meets the published budget of a majority of samples 8, 9 and 10, votes all agreeing', () => {
    // KL27 reference manual rev 5, ch. 38: slow sender (154 - 147) / 154 = 4.54 %. The manual rounds the sender's place to
    // whole samples; the exact geometry is (151 - 144) / 151 = 4.64 %: first vote of the stop bit 151 samples after a
    // start edge just seen. The two differ by 0.09 points.
    const slow = widestClockError('slow', { need: 'no doubt' });
    expect(apart(slow.value, 7 / 154)).toBeLessThan(BUDGET);
    expect(slow.value).toBeCloseTo(7 / 151, 5);
    expect(slow.gaveWay).toMatchObject({ cause: 'doubtful vote' });
    // Same manual's geometry: fast sender (160 - 154) / 154 = 3.90 %, which is exact.
    const fast = widestClockError('fast', { need: 'no doubt' });
    expect(apart(fast.value, 6 / 154)).toBeLessThan(BUDGET);
    expect(fast.value).toBeCloseTo(6 / 154, 5);
    expect(fast.gaveWay?.cause).toBe('start overtook');
  });

  it('lets a slow sender go further when only right bytes are asked for, but not a fast one', () => {
    // Two of three votes suffice on the stop bit: sample 9 at 152 against 144 gives 8 / 152. A fast sender's next start
    // bit must still not begin before the last vote, or its falling edge goes unseen: 6 / 154 again.
    expect(widestClockError('slow').value).toBeCloseTo(8 / 152, 5);
    expect(widestClockError('fast').value).toBeCloseTo(6 / 154, 5);
  });

  it('meets the bound of a start edge known to one sixteenth of a bit', () => {
    // (8 - 1) / 16 bit at 9.5 bits: 0.4375 / 9.5 = 4.61 %, by arithmetic. One sample in mid-bit can stand at number 8 (short
    // of the middle, a slow sender is worst) or 9 (past it, a fast one is worst).
    const bound = 0.4375 / 9.5;
    const early = { receiver: { voteSamples: [8] } };
    const late = { receiver: { voteSamples: [9] } };
    expect(apart(widestClockError('slow', early).value, bound)).toBeLessThan(BUDGET);
    expect(apart(widestClockError('fast', late).value, bound)).toBeLessThan(BUDGET);
  });

  it('meets the bound without quantisation when it samples a hundred times as often', () => {
    // 0.5 / 9.5 = 5.26 %, by arithmetic.
    const trial = { receiver: { oversampling: 1600, voteSamples: [801] } };
    expect(apart(widestClockError('slow', trial).value, 0.5 / 9.5)).toBeLessThan(BUDGET);
    expect(apart(widestClockError('fast', trial).value, 0.5 / 9.5)).toBeLessThan(BUDGET);
  });

  it('measures mismatch against the receiver, whatever error that clock has itself', () => {
    const trial = { receiver: { clockError: 0.01 } };
    expect(widestClockError('fast', trial).value).toBeCloseTo(6 / 154, 5);
  });

  it('leaves nothing where the hops have used up everything', () => {
    const limit = widestClockError('slow', { hops: [skewed(40)] });
    expect(limit.value).toBe(0);
    expect(limit.gaveWay).not.toBeNull();
  });
});

describe('the most hops, by search', () => {
  const ends = (mismatch: number) => ({
    sender: { clockError: -mismatch / 2 },
    receiver: { clockError: mismatch / 2 },
  });
  /** Edge shift left at the stop bit, us: 7 of 16 samples, less what the clocks take over 9.5 bits. */
  const leftUs = (mismatch: number): number => (0.4375 - 9.5 * mismatch) * BIT_US;

  it('leaves 7.9 us at 2 % and 11.0 us at 1 %, the arithmetic that the search is held against', () => {
    expect(leftUs(0.02)).toBeCloseTo(7.92, 2);
    expect(leftUs(0.01)).toBeCloseTo(10.96, 2);
  });

  it('finds the hop at which bytes first corrupt within one of the arithmetic, for 50 seeded chains', () => {
    // Arithmetic: the last good hop is floor(left / skew). Its budget is that of one sample in mid-bit, taken as sample 8.
    const choices = fc.sample(
      fc.record({
        skewUs: fc.double({ min: 0.2, max: 5, noNaN: true }),
        mismatch: fc.double({ min: 0, max: 0.02, noNaN: true }),
      }),
      { seed: 31250, numRuns: 50 },
    );
    expect(choices).toHaveLength(50);
    for (const { skewUs, mismatch } of choices) {
      const { sender, receiver } = ends(mismatch);
      const trial = { sender, receiver: { ...receiver, voteSamples: [8] } };
      const found = mostHops(skewed(skewUs), trial);
      const byHand = Math.floor(leftUs(mismatch) / skewUs);
      expect(Math.abs(found.value - byHand), `${skewUs} us, ${mismatch}`).toBeLessThanOrEqual(1);
      expect(tryLink({ ...trial, hops: Array(found.value).fill(skewed(skewUs)) })).toBeNull();
      expect(found.gaveWay).toMatchObject({ cause: 'pulse shrunk' });
      expect(found.gaveWay?.why).toMatch(/stop bit of 00 read as 0/);
      // A majority of 8, 9, 10 begins to doubt the stop bit at the very same hop, since sample 8 is its first vote.
      expect(mostHops(skewed(skewUs), { sender, receiver, need: 'no doubt' }).value).toBe(found.value);
    }
  });

  it('goes one sample further with a majority of three, whose second vote decides', () => {
    // Stop vote 9 at 152 samples of 2 us / 1.01 against a stop edge at 288 us / 0.99: 10.08 us, ten hops of 1 us.
    const { sender, receiver } = ends(0.02);
    const byHand = Math.floor((152 * 2) / 1.01 - 288 / 0.99);
    expect(byHand).toBe(10);
    expect(mostHops(skewed(1), { sender, receiver }).value).toBe(byHand);
  });

  it('lasts less long the more the delays differ and the more the clocks differ', () => {
    const count = (skewUs: number, mismatch: number): number =>
      mostHops(skewed(skewUs), ends(mismatch)).value;
    expect(count(0.5, 0)).toBeGreaterThan(count(1, 0));
    expect(count(1, 0)).toBeGreaterThan(count(1, 0.02));
  });

  it('says so when no limit was found', () => {
    expect(mostHops({ kind: 'optocoupler', toOnSeconds: 1e-7, toOffSeconds: 1e-7 })).toEqual({
      value: MOST_HOPS,
      gaveWay: null,
    });
  });
});
