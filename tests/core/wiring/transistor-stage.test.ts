import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PARTS, collectorAmperes, outputModel, saturationAmperes } from '../../../src/core/wiring/index.ts';
import type { Part, TransistorStage } from '../../../src/core/wiring/index.ts';
import { ledAmperesFor } from '../../../src/core/wiring/transistor-stage.ts';

const TRANSISTORS = PARTS.filter((part) => !('toOnSeconds' in outputModel(part).kind));

function stageOf(part: Part, loadOhms: number, baseOhms = 0, supplyVolts = 5): TransistorStage {
  const { kind } = outputModel(part);
  if ('toOnSeconds' in kind) throw new Error(`expected '${part}' to be a transistor`);
  return { model: kind, supplyVolts, loadOhms, baseOhms };
}

/** Any stage that can be built: every transistor part, a load of 100 ohm to 20 kohm, with and without a base resistor. */
const anyStage = fc
  .record({
    part: fc.constantFrom(...TRANSISTORS),
    loadOhms: fc.integer({ min: 100, max: 20_000 }),
    baseOhms: fc.oneof(fc.constant(0), fc.integer({ min: 1_000, max: 1_000_000 })),
    supplyVolts: fc.constantFrom(3.3, 5),
  })
  .map(({ part, loadOhms, baseOhms, supplyVolts }) => stageOf(part, loadOhms, baseOhms, supplyVolts));
const anyAmperes = fc.integer({ min: 1, max: 20_000 }).map((micro) => micro * 1e-6);
const anyShare = fc.integer({ min: 5, max: 95 }).map((percent) => percent / 100);

describe('the light that a transistor needs', () => {
  it('is what the facts sheet works out for half of a 5 V supply', () => {
    // facts-12, idle current: 6N138 at 1 kohm 0.19 mA, with 10 kohm at the base 0.79, with 4.7 kohm 1.5; at 220 ohm 0.87.
    // PC817 at 1 kohm 2.1 mA, at 2.2 kohm 1.0 mA. By hand for the first: 2.5 V / 1 kohm / 13 = 0.192 mA.
    for (const [part, loadOhms, baseOhms, milliamperes] of [
      ['6N138', 1000, 0, 0.19],
      ['6N138', 1000, 10e3, 0.79],
      ['6N138', 1000, 4700, 1.47],
      ['6N138', 220, 0, 0.87],
      ['PC817', 1000, 0, 2.1],
      ['PC817', 2200, 0, 1.03],
    ] as const)
      expect(ledAmperesFor(stageOf(part, loadOhms, baseOhms), 1 / 2) * 1e3).toBeCloseTo(milliamperes, 1.9);
  });

  it('comes to the collector current that it was worked out from: the two are inverses', () => {
    fc.assert(
      fc.property(anyStage, anyShare, (stage, share) => {
        const wanted = ((1 - share) * stage.supplyVolts) / stage.loadOhms;
        const given = collectorAmperes(stage, ledAmperesFor(stage, share));
        expect(given / wanted).toBeCloseTo(1, 9);
      }),
      { seed: 11 },
    );
  });

  it('is the more, the lower the output must come and the smaller the load', () => {
    fc.assert(
      fc.property(anyStage, anyShare, (stage, share) => {
        const here = ledAmperesFor(stage, share);
        expect(ledAmperesFor(stage, share - 0.04)).toBeGreaterThan(here);
        expect(ledAmperesFor({ ...stage, loadOhms: stage.loadOhms / 2 }, share)).toBeGreaterThan(here);
        expect(ledAmperesFor(stage, share, 0.5)).toBeGreaterThan(here);
      }),
      { seed: 12 },
    );
  });

  it('of a falling gain holds its gain still below the test current: half the light, half the collector current', () => {
    // 6N138: 1300 % at 1.6 mA and below; above it falls with the power 0.3.
    const stage = stageOf('6N138', 1000);
    expect(collectorAmperes(stage, 0.8e-3)).toBeCloseTo(13 * 0.8e-3, 12);
    expect(collectorAmperes(stage, 1.6e-3)).toBeCloseTo(13 * 1.6e-3, 12);
    expect(collectorAmperes(stage, 5e-3)).toBeCloseTo(13 * 5e-3 * (5 / 1.6) ** -0.3, 12);
  });

  it('of a rising gain is lost twice over below the test current', () => {
    // PC817: 130 % at 5 mA, power 0.1: at 0.5 mA the ratio is 1.3 x 0.1^0.1 = 1.033.
    expect(collectorAmperes(stageOf('PC817', 1000), 0.5e-3)).toBeCloseTo(0.5e-3 * 1.3 * 0.1 ** 0.1, 12);
  });
});

describe('the collector current', () => {
  it('grows with the light, and is none or less in the dark', () => {
    fc.assert(
      fc.property(anyStage, anyAmperes, (stage, amperes) => {
        expect(collectorAmperes(stage, amperes * 1.01)).toBeGreaterThan(collectorAmperes(stage, amperes));
        expect(collectorAmperes(stage, 0)).toBeLessThanOrEqual(0);
        // Light cannot be less than none.
        expect(collectorAmperes(stage, -amperes)).toBe(collectorAmperes(stage, 0));
      }),
      { seed: 13 },
    );
  });

  it('loses to a base resistor the base current times the gain of the transistor', () => {
    // facts-12: iR = beta 0.65 V / RB. 6N138, 10 kohm: 120 x 65 uA = 7.8 mA; 4.7 kohm: 16.6 mA. A beta of 500 at 10 kohm: 32 mA.
    const lost = (part: Part, baseOhms: number) => -collectorAmperes(stageOf(part, 1000, baseOhms), 0) * 1e3;
    expect(lost('6N138', 10e3)).toBeCloseTo(7.8, 9);
    expect(lost('6N138', 4700)).toBeCloseTo(16.6, 1);
    expect(lost('4N25', 10e3)).toBeCloseTo(32.5, 9);
    expect(lost('6N138', 0)).toBeCloseTo(0, 12);
  });

  it('loses nothing where the base has no pin, whatever resistor is named', () => {
    for (const baseOhms of [0, 4700, 10e3])
      expect(collectorAmperes(stageOf('PC817', 1000, baseOhms), 1e-3)).toBe(
        collectorAmperes(stageOf('PC817', 1000), 1e-3),
      );
  });

  it('tells a 6N138 of 390 per cent dead with 4.7 kohm at its base and alive with 10 kohm', () => {
    // facts-12. By hand at the 5.4 mA of a 5 V output: 3.9 x 5.4 x (5.4 / 1.6)^-0.3 = 14.6 mA, less 16.6 or less 7.8 mA.
    const weak = (baseOhms: number) => {
      const stage = stageOf('6N138', 1000, baseOhms);
      return collectorAmperes({ ...stage, model: { ...stage.model, gain: 3.9 } }, 5.4e-3) * 1e3;
    };
    expect(weak(4700)).toBeCloseTo(14.62 - 16.6, 1);
    expect(weak(10e3)).toBeCloseTo(14.62 - 7.8, 1);
    expect(weak(10e3)).toBeGreaterThan(saturationAmperes(stageOf('6N138', 1000)) * 1e3);
  });
});

describe('the current at which a load is used up', () => {
  it('is the supply less what the transistor keeps, over the load', () => {
    // (5 - 0.1) V / 1 kohm = 4.9 mA; (3.3 - 0.25) V / 2.2 kohm = 1.386 mA.
    expect(saturationAmperes(stageOf('6N138', 1000)) * 1e3).toBeCloseTo(4.9, 9);
    expect(saturationAmperes(stageOf('CNY17-1', 2200, 0, 3.3)) * 1e3).toBeCloseTo(1.386, 3);
  });
});
