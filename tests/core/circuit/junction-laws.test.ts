/** The law of a junction and of its charge: each slope is the change that it says it is. */
import { describe, expect, test } from 'vitest';
import { THERMAL_VOLTS } from '../../../src/core/circuit/index.ts';
import { switchSiemens } from '../../../src/core/circuit/elements.ts';
import { junctionLaw, junctionOf, limitJunction, setCharge } from '../../../src/core/circuit/junction.ts';
import type { Junction } from '../../../src/core/circuit/junction.ts';
import type { DiodeModel } from '../../../src/core/circuit/index.ts';

const MODELS: Readonly<Record<string, DiodeModel>> = {
  '1N4148': {
    saturationAmperes: 2.52e-9,
    emission: 1.752,
    seriesOhms: 0.568,
    junctionFarads: 4e-12,
    grading: 0.4,
    transitSeconds: 20e-9,
  },
  LED: {
    saturationAmperes: 7.91e-20,
    emission: 1.44,
    seriesOhms: 1,
    junctionFarads: 60e-12,
    transitSeconds: 50e-9,
  },
};
const junction = (model: DiodeModel): Junction =>
  junctionOf({ kind: 'diode', name: 'D', anode: 'a', cathode: '0', ...model }, 0, 1, 0);
const lawAt = (one: Junction, volts: number) => {
  const law = { amperes: 0, siemens: 0 };
  junctionLaw(one, volts, law);
  return law;
};
const chargeAt = (one: Junction, volts: number) => {
  setCharge(one, volts, lawAt(one, volts));
  return { coulombs: one.coulombs, farads: one.farads };
};
/** Volts from deep reverse to full conduction, the corners of both laws among them. */
const voltsFor = ({ slopeVolts, barrierVolts }: Junction): readonly number[] => [
  -5,
  -1,
  -4 * slopeVolts,
  -3 * slopeVolts,
  -2 * slopeVolts,
  -1e-3,
  0,
  1e-3,
  0.3,
  0.5 * barrierVolts,
  0.6,
];

describe.each(Object.entries(MODELS))('The junction of a %s', (_, model) => {
  const one = junction(model);

  test('carries nothing at no volts, and its saturation current and no more in reverse', () => {
    expect(lawAt(one, 0).amperes).toBe(0);
    expect(lawAt(one, -5).amperes / model.saturationAmperes).toBeCloseTo(-1, 2);
  });

  test('carries IS (exp(V / N VT) - 1) forward', () => {
    for (const volts of [0.1, 0.3, 0.6]) {
      const wanted = model.saturationAmperes * Math.expm1(volts / (model.emission * THERMAL_VOLTS));
      expect(lawAt(one, volts).amperes / wanted).toBeCloseTo(1, 9);
    }
  });

  test('changes as its slope says, on both sides of every corner, and never falls', () => {
    for (const volts of voltsFor(one)) {
      const step = 1e-6;
      const [low, high] = [lawAt(one, volts - step), lawAt(one, volts + step)];
      const slope = (high.amperes - low.amperes) / (2 * step);
      const { siemens } = lawAt(one, volts);
      // The cubic below -3 N VT meets the exponential in value only: its slope is off by a few per cent of IS / N VT there.
      const allowed = 0.2 * (model.saturationAmperes / one.slopeVolts) + 1e-4 * siemens;
      expect(Math.abs(slope - siemens), `at ${volts} V`).toBeLessThan(allowed);
      expect(high.amperes).toBeGreaterThanOrEqual(low.amperes);
      expect(siemens).toBeGreaterThanOrEqual(0);
    }
  });

  test('holds charge that changes as its capacitance says, also past the forward corner', () => {
    for (const volts of voltsFor(one)) {
      const step = 1e-5;
      const [low, high] = [chargeAt(one, volts - step), chargeAt(one, volts + step)];
      const { farads } = chargeAt(one, volts);
      expect((high.coulombs - low.coulombs) / (2 * step) / farads, `at ${volts} V`).toBeCloseTo(1, 2);
      expect(farads).toBeGreaterThan(0);
    }
  });

  test('has CJO at no volts beside the little that its forward slope stores, and no charge there', () => {
    const { farads, coulombs } = chargeAt(one, 0);
    const stored = (model.transitSeconds ?? 0) * lawAt(one, 0).siemens;
    expect((farads - stored) / (model.junctionFarads ?? NaN)).toBeCloseTo(1, 9);
    expect(Math.abs(coulombs)).toBeLessThan(1e-24);
  });

  test('stores TT times its current when it conducts', () => {
    const { coulombs } = chargeAt(one, 0.75);
    const still = chargeAt(junction({ ...model, transitSeconds: 0 }), 0.75).coulombs;
    expect((coulombs - still) / ((model.transitSeconds ?? 0) * lawAt(one, 0.75).amperes)).toBeCloseTo(1, 6);
  });

  test('has less depletion capacitance the further it is in reverse: CJO / (1 - V / VJ)^M', () => {
    const quiet = junction({ ...model, transitSeconds: 0 });
    for (const volts of [-5, -1, -0.1]) {
      const wanted = (model.junctionFarads ?? 0) * (1 - volts) ** -(model.grading ?? 0.5);
      expect(chargeAt(quiet, volts).farads / wanted).toBeCloseTo(1, 9);
    }
  });

  test('is held back where Newton would overshoot, and nowhere else', () => {
    one.volts = 0.5;
    // Below the critical voltage, or within two N VT, the step is taken as it is.
    expect(limitJunction(one, one.criticalVolts - 0.01)).toBe(one.criticalVolts - 0.01);
    const { criticalVolts, slopeVolts } = one;
    one.volts = criticalVolts;
    expect(limitJunction(one, criticalVolts + 1.9 * slopeVolts)).toBe(criticalVolts + 1.9 * slopeVolts);
    const held = limitJunction(one, criticalVolts + 10);
    expect(held).toBeGreaterThan(criticalVolts);
    expect(held).toBeLessThan(criticalVolts + 10 * slopeVolts);
    // From reverse: N VT ln(V / N VT).
    one.volts = -1;
    expect(limitJunction(one, 5)).toBeCloseTo(slopeVolts * Math.log(5 / slopeVolts), 12);
  });
});

test('A diode whose charge cannot be is refused with all four values', () => {
  const made = (more: Partial<DiodeModel>) => () =>
    junction({ saturationAmperes: 1e-12, emission: 1, seriesOhms: 0, ...more });
  expect(made({ junctionFarads: -1e-12 })).toThrow(
    "diode 'D': needs CJO and TT of at least 0, VJ above 0 V and M from 0 to below 1, got -1e-12 F, 0 s, 1 V and 0.5",
  );
  expect(made({ grading: 1 })).toThrow('got 0 F, 0 s, 1 V and 1');
  expect(made({ junctionVolts: 0 })).toThrow('got 0 F, 0 s, 0 V and 0.5');
  expect(made({ transitSeconds: NaN })).toThrow('got 0 F, NaN s, 1 V and 0.5');
  expect(made({ grading: 0, junctionFarads: 0 })).not.toThrow();
});

test('A switch on its way multiplies its conductance by equal factors for equal steps, from a picosiemens to a kilosiemens', () => {
  expect(switchSiemens(0)).toBe(0);
  expect(switchSiemens(-1)).toBe(0);
  expect(switchSiemens(1)).toBeCloseTo(1e3, 9);
  expect(switchSiemens(1e-9) / 1e-12).toBeCloseTo(1, 6);
  // The middle is the geometric mean of 1e-12 and 1e3.
  expect(switchSiemens(0.5) / Math.sqrt(1e-9)).toBeCloseTo(1, 9);
  for (const at of [0.1, 0.3, 0.7])
    expect(switchSiemens(at + 0.1) / switchSiemens(at)).toBeCloseTo(10 ** 1.5, 6);
});
