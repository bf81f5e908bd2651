import { describe, expect, it } from 'vitest';
import { LED_KEEPS, loopSum } from '../../../src/core/learn/index.ts';

const CIRCUITS = ['driver-5v', 'driver-3v3'] as const;

describe('The current of the loop on paper', () => {
  it('is what the standard works out', () => {
    // MMA CA-033 (2014), footnote 1: (5 - 1.7) / (3 x 220) = 5.0 mA; and (3.3 - 1.4) / 263, about 7.2 mA.
    expect(loopSum('driver-5v', 1.7).amperes).toBeCloseTo(5.0e-3, 9);
    expect(loopSum('driver-3v3', 1.4).totalOhms).toBe(263);
    expect(loopSum('driver-3v3', 1.4).amperes * 1e3).toBeCloseTo(7.224, 3);
  });

  it('takes what the LED keeps from the supply, and shares the rest by ohms', () => {
    // (5 - 1.4) / 660 = 5.4545 mA; 220 ohm of 660 keep a third of 3.6 V.
    const sum = loopSum('driver-5v', 1.4);
    expect(sum.leftVolts).toBeCloseTo(3.6, 12);
    expect(sum.amperes * 1e3).toBeCloseTo(5.4545, 4);
    expect(sum.shares.map(({ volts }) => Number(volts.toFixed(9)))).toEqual([1.2, 1.2, 1.4, 1.2]);
  });

  it('shares out the whole supply, whatever the LED keeps', () => {
    for (const circuit of CIRCUITS)
      for (const volts of LED_KEEPS) {
        const { shares, supplyVolts } = loopSum(circuit, volts);
        expect(shares).toHaveLength(4);
        expect(shares.reduce((all, share) => all + share.volts, 0)).toBeCloseTo(supplyVolts, 12);
      }
  });

  it('with the usual LED comes within 4 percent of the solver, and without it is a quarter too high or more', () => {
    // The curve of the LED is steep: at 5.4 mA it keeps 1.45 V, at 7.0 mA 1.46 V (facts of the fitted 6N138).
    for (const circuit of CIRCUITS) {
      const usual = loopSum(circuit, LED_KEEPS[1]);
      expect(usual.amperes / usual.solvedAmperes).toBeGreaterThan(1);
      expect(usual.amperes / usual.solvedAmperes).toBeLessThan(1.04);
      expect(loopSum(circuit, 0).amperes / usual.solvedAmperes).toBeGreaterThan(1.25);
    }
    // A general-purpose SPICE engine gave 5.38 mA and 6.99 mA for these two loops.
    expect(loopSum('driver-5v', 1.4).solvedAmperes * 1e3).toBeCloseTo(5.38, 2);
    expect(loopSum('driver-3v3', 1.4).solvedAmperes * 1e3).toBeCloseTo(6.99, 1);
  });
});
