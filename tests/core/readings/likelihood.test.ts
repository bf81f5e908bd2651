/** How likely readings are: laws of probability that hold whatever the numbers behind them, and scales that lose nothing. */
import { describe, expect, it } from 'vitest';
import { METER_PROFILES, meterProfile } from '../../../src/core/readings/instruments.ts';
import {
  agree,
  anyShares,
  isShown,
  likelihoodOf,
  likelihoodOfAny,
  overloadShare,
  samePoint,
} from '../../../src/core/readings/likelihood.ts';
import { STEPS } from '../../../src/core/readings/next-reading.ts';
import type { Reading } from '../../../src/core/readings/reading.ts';
import { both, offScale, onScale, reachAt } from '../../../src/core/readings/scale.ts';
import type { ScaledFunction } from '../../../src/core/readings/scale.ts';
import type { JackReading } from '../../../src/core/readings/subjects.ts';

const METERS: readonly ScaledFunction[] = ['volts', 'loaded', 'diode', 'ohms'];
const at = (meter: ScaledFunction): JackReading => ({ meter, power: 'idle', red: 'tip', black: 'sleeve' });
const value = (meter: ScaledFunction, number: number): Reading => ({ meter, shows: 'value', value: number });
const OVERLOAD: Reading = { meter: 'ohms', shows: 'overload' };

/** The area under a curve of a point of the scale, by the midpoint rule. */
function areaOf(curve: (point: number) => number, from: number, to: number, slices = 20_000): number {
  const width = (to - from) / slices;
  let area = 0;
  for (let slice = 0; slice < slices; slice++) area += width * curve(from + (slice + 0.5) * width);
  return area;
}

/** Points that a device may stand at, on the scale of each function. */
const POINTS: Readonly<Record<ScaledFunction, readonly number[]>> = {
  volts: [-5, 0, 0.03, 3.3, 5, 9],
  loaded: [0, 0.4, 2.5, 4.1],
  diode: [0.25, 0.65, 1.2, 1.6],
  ohms: [220, 1e4, 1e5].map((ohms) => onScale('ohms', ohms)),
};

describe('The readings of one device', () => {
  it.each(METERS)('are all there are: shown by %s or overload, their shares come to one', (meter) => {
    const profile = meterProfile('usual');
    for (const point of POINTS[meter]) {
      const span = 25 * reachAt(meter, point);
      // A reading beyond 3 Mohm counts as overload, and one below no ohms as no end of them.
      const shown = areaOf(
        (seen) => likelihoodOf(at(meter), value(meter, unscaled(meter, seen)), profile)(point),
        point - span,
        Math.min(point + span, meter === 'ohms' ? onScale('ohms', 3e6) : Infinity),
      );
      expect(shown + overloadShare(meter, point, profile), `${meter} at ${point}`).toBeCloseTo(1, 3);
    }
  });

  it.each(METERS)('are likeliest where it stands, and as likely on one side as on the other: %s', (meter) => {
    const profile = meterProfile('usual');
    for (const point of POINTS[meter]) {
      const likely = (steps: number): number =>
        likelihoodOf(
          at(meter),
          value(meter, unscaled(meter, point + steps * reachAt(meter, point))),
          profile,
        )(point);
      for (const steps of [0.5, 1, 2, 4, 8]) {
        expect(likely(steps)).toBeCloseTo(likely(-steps), 6);
        expect(likely(steps)).toBeLessThan(likely(steps / 2));
      }
      // A few steps off is unlikely and still possible, for no crowd is all jacks; far off is a slip.
      expect(likely(6)).toBeGreaterThan(0);
      expect(likely(meter === 'ohms' && point > 6 ? -22 : 22)).toBe(0);
    }
  });

  /** A point as a value, below the bend of the ohms too. */
  function unscaled(meter: ScaledFunction, point: number): number {
    return meter === 'ohms' ? Math.exp(point) - 5 : offScale(meter, point);
  }
});

describe('Overload', () => {
  it.each(METER_PROFILES)('is even where the diode test of a %s meter ends, and surer beyond', (name) => {
    const profile = meterProfile(name);
    const share = (volts: number): number => overloadShare('diode', volts, profile);
    expect(share(profile.diodeVolts)).toBeCloseTo(0.5, 12);
    let before = 0;
    for (let volts = 0; volts < 6; volts += 0.1) {
      expect(share(volts)).toBeGreaterThan(before);
      before = share(volts);
    }
    expect(share(0.6)).toBeLessThan(0.02);
    expect(share(2 * profile.diodeVolts)).toBeGreaterThan(0.98);
  });

  it('is none on volts, and on ohms hardly any below a megohm and nearly all from a hundred on', () => {
    const profile = meterProfile('usual');
    for (const volts of [-12, 0, 5, 20]) expect(overloadShare('volts', volts, profile)).toBe(0);
    expect(overloadShare('ohms', onScale('ohms', 1e5), profile)).toBeLessThan(0.01);
    expect(overloadShare('ohms', onScale('ohms', 3e6), profile)).toBeCloseTo(0.5, 3);
    expect(overloadShare('ohms', onScale('ohms', 1e8), profile)).toBeGreaterThan(0.99);
  });

  it('is what ohms beyond 3 Mohm come to, and no volts ever do', () => {
    expect(isShown(value('ohms', 2.9e6))).toBe(true);
    expect(isShown(value('ohms', 3.1e6))).toBe(false);
    expect(isShown(OVERLOAD)).toBe(false);
    expect(isShown(value('volts', 4e6))).toBe(true);
  });
});

describe('When nothing is known', () => {
  it.each(METERS)('the shares of the steps of %s come to one, and none is less than nothing', (meter) => {
    const edges = STEPS[meter].map((one) => onScale(meter, one));
    const shares = anyShares(meter, edges);
    expect(shares).toHaveLength(edges.length + 2);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    for (const share of shares) expect(share).toBeGreaterThanOrEqual(0);
    // Finer steps are parts of coarser ones.
    const coarse = anyShares(meter, edges.slice(0, 1));
    expect(shares[0]).toBeCloseTo(coarse[0] ?? NaN, 12);
    expect(shares.at(-1)).toBe(coarse.at(-1));
  });

  it.each(METERS)('they are the areas under how likely each reading of %s is', (meter) => {
    const edges = STEPS[meter].map((one) => onScale(meter, one));
    const shares = anyShares(meter, edges);
    for (let step = 1; step < edges.length; step++) {
      const [from = NaN, to = NaN] = [edges[step - 1], edges[step]];
      const area = areaOf(
        (point) => likelihoodOfAny(at(meter), value(meter, offScale(meter, point))),
        from,
        to,
        400,
      );
      // The bump at no volts is a normal curve in one and a logistic one in the other: they differ by 2 % of its 30 % at most.
      expect(Math.abs((shares[step] ?? NaN) - area), `${meter} step ${step}`).toBeLessThan(0.01);
    }
  });

  it('a volt at rest is mostly none, and a third of the other readings is overload', () => {
    const [, none = 0] = anyShares('volts', [-0.1, 0.1]);
    expect(none).toBeGreaterThan(0.3);
    expect(likelihoodOfAny(at('ohms'), OVERLOAD)).toBeCloseTo(anyShares('ohms', []).at(-1) ?? NaN, 12);
  });
});

describe('Two readings taken in the same way', () => {
  it('agree where a crowd could not tell them apart, whichever is first', () => {
    for (const [meter, one, other, same] of [
      ['volts', 5, 5.02, true],
      ['volts', 5, 5.6, false],
      ['volts', 0, 0.02, true],
      ['volts', 0, 0.2, false],
      ['ohms', 10e3, 12e3, true],
      ['ohms', 10e3, 40e3, false],
      ['diode', 0.6, 0.61, true],
      ['diode', 0.6, 1.1, false],
    ] as const) {
      expect(agree(value(meter, one), value(meter, other)), `${meter} ${one} ${other}`).toBe(same);
      expect(agree(value(meter, other), value(meter, one))).toBe(same);
    }
    expect(agree(OVERLOAD, OVERLOAD)).toBe(true);
    expect(agree(OVERLOAD, value('ohms', 20e6))).toBe(true);
    expect(agree(OVERLOAD, value('ohms', 100))).toBe(false);
  });

  it('are the same point as themselves, and as no other ten steps away', () => {
    for (const meter of METERS)
      for (const point of POINTS[meter]) {
        expect(samePoint(meter, point, point)).toBe(true);
        expect(samePoint(meter, point, point + 10 * reachAt(meter, point))).toBe(false);
      }
  });
});

describe('The scales', () => {
  it('give back what was put on them', () => {
    for (const meter of METERS)
      for (const number of [0, 0.02, 0.6, 3.3, 47, 220, 10e3, 2e6])
        expect(offScale(meter, onScale(meter, number)) / (number || 1)).toBeCloseTo(number === 0 ? 0 : 1, 9);
  });

  it('keep the order of ohms, and take less than nothing for no end of them', () => {
    const points = [0, 1, 10, 220, 1e4, 1e6, 1e9, Infinity].map((ohms) => onScale('ohms', ohms));
    expect(points).toEqual(points.toSorted((one, other) => one - other));
    expect(new Set(points).size).toBe(points.length);
    expect(onScale('ohms', -3)).toBe(onScale('ohms', Infinity));
    // Ten times the ohms is one step of 2.3, as long as a touch of some ohms does not count.
    expect(onScale('ohms', 1e6) - onScale('ohms', 1e5)).toBeCloseTo(Math.LN10, 3);
  });

  it('add two deviations as the sides of a right angle: 3 and 4 are 5', () => {
    expect(both(3, 4)).toBe(5);
    for (const [one, other] of [
      [0, 2],
      [-1, 7],
      [0.04, 0.015],
    ] as const)
      expect(both(one, other)).toBeCloseTo(Math.hypot(one, other), 12);
  });
});
