import { describe, expect, it } from 'vitest';
import { PARTS, makeJack, outputModel, outputStage, partEntry } from '../../../src/core/wiring/index.ts';
import type { Jack, Part } from '../../../src/core/wiring/index.ts';
import { ledThresholds } from '../../../src/core/wiring/output-stage.ts';

const input = (part: Part, values: Jack['values'] = {}): Jack =>
  makeJack('in', 'din5', 'din', { part, values });
const isTransistor = (part: Part): boolean => !('toOnSeconds' in outputModel(part).kind);
const TRANSISTORS = PARTS.filter(isTransistor);
const LOGIC = PARTS.filter((part) => !isTransistor(part));

describe('what follows the LED of an input', () => {
  it('is a transistor with its load for some parts, and fixed delays for the rest', () => {
    for (const part of TRANSISTORS)
      expect(outputStage(input(part))).toMatchObject({
        supplyVolts: 5,
        loadOhms: outputModel(part).loadOhms,
        baseOhms: outputModel(part).baseOhms,
      });
    expect(outputStage(input('H11L1'))).toEqual({ toOnSeconds: 1e-6, toOffSeconds: 1.2e-6 });
    expect(LOGIC).toEqual(['H11L1', 'PC900V', '6N137']);
  });

  it('takes every value that a reader gives', () => {
    const values = { outputVolts: 3.3, loadOhms: 470, baseOhms: 4700, gain: 5 };
    expect(outputStage(input('6N138', values))).toMatchObject({
      supplyVolts: 3.3,
      loadOhms: 470,
      baseOhms: 4700,
      model: { gain: 5, gainAmperes: 1.6e-3 },
    });
    expect(outputStage(input('6N137', { toOnSeconds: 3e-6, toOffSeconds: 4e-6 }))).toEqual({
      toOnSeconds: 3e-6,
      toOffSeconds: 4e-6,
    });
  });

  it('can be asked for without its base resistor, which changes nothing else', () => {
    const jack = input('6N138');
    expect(outputStage(jack)).toMatchObject({ baseOhms: 10e3 });
    expect(outputStage(jack, false)).toEqual({ ...outputStage(jack), baseOhms: 0 });
  });

  it('is nothing that takes time where there is no LED', () => {
    const logic = makeJack('in', 'trs-3.5', 'tip-signal', { circuit: 'receiver-logic' });
    expect(outputStage(logic)).toEqual({ toOnSeconds: 0, toOffSeconds: 0 });
  });
});

describe('the LED currents that decide an input', () => {
  it('stand in order for every part: surely off, letting go, taking hold, surely on', () => {
    for (const part of PARTS) {
      const { offAmperes, letGoAmperes, onAmperes, sureAmperes } = ledThresholds(input(part));
      expect(offAmperes, part).toBeGreaterThan(0);
      expect(letGoAmperes, part).toBeGreaterThanOrEqual(offAmperes);
      expect(onAmperes, part).toBeGreaterThanOrEqual(letGoAmperes);
      expect(sureAmperes, part).toBeGreaterThanOrEqual(onAmperes);
    }
  });

  it('are those of the sheet for logic: on at most, let go at half, off where the sheet says', () => {
    // H11L1: 1.6 mA at most (symbol library, c), off below 0.3 mA (from memory).
    expect(ledThresholds(input('H11L1'))).toEqual({
      onAmperes: 1.6e-3,
      sureAmperes: 1.6e-3,
      letGoAmperes: 0.8e-3,
      offAmperes: 0.3e-3,
    });
  });

  it('are never more than a turn-on current that the reader gives', () => {
    for (const part of PARTS) {
      const own = ledThresholds(input(part, { turnOnAmperes: 2e-4 }));
      expect(own.onAmperes, part).toBe(2e-4);
      expect(own.sureAmperes, part).toBe(2e-4);
      expect(own.offAmperes, part).toBeLessThanOrEqual(2e-4);
      expect(own.letGoAmperes, part).toBeLessThanOrEqual(2e-4);
    }
  });

  it('count the least gain of its type where nothing more is known of a transistor', () => {
    // CNY17-1, 40 % at least of 60 % typical: 10 mA x (3.5 / 2.2 / 4)^(1 / 1.3) for the 3.5 V over 2.2 kohm.
    const { onAmperes, sureAmperes } = ledThresholds(input('CNY17-1'));
    expect(onAmperes * 1e3).toBeCloseTo(10 * (3.5 / 2.2 / 6) ** (1 / 1.3), 9);
    expect(sureAmperes * 1e3).toBeCloseTo(10 * (3.5 / 2.2 / 4) ** (1 / 1.3), 9);
  });

  it('take a measured gain for what it is, with no spread about it', () => {
    const { onAmperes, sureAmperes } = ledThresholds(input('CNY17-1', { gain: 0.4 }));
    expect(sureAmperes).toBe(onAmperes);
    expect(onAmperes * 1e3).toBeCloseTo(10 * (3.5 / 2.2 / 4) ** (1 / 1.3), 9);
  });

  it('hold the figure of a 6N138 sheet good for its own load only', () => {
    // With its own load every part of the type is on at 1.6 mA. At 470 ohm the least gain of 300 % needs 3.5 V / 470 ohm / 3
    // with the 7.8 mA of the base resistor: (7.447 + 7.8) mA / 3 = 5.08 mA, of a gain that falls above 1.6 mA: more than that.
    expect(ledThresholds(input('6N138')).sureAmperes).toBe(1.6e-3);
    expect(ledThresholds(input('6N138', { loadOhms: 470 })).sureAmperes).toBeGreaterThan(5.08e-3);
    expect(ledThresholds(input('6N138', { loadOhms: 2200, baseOhms: 0 })).sureAmperes).toBe(1.6e-3);
  });

  it('never turn on at less than the figure of the sheet, however light the load', () => {
    for (const part of ['6N138', 'unknown'] as const)
      expect(ledThresholds(input(part, { loadOhms: 20e3 })).onAmperes).toBe(partEntry(part).turnOnAmperes);
  });

  it('say that a 6N138 without base resistor may stay on at a twentieth of a milliampere', () => {
    // facts-12: surely off below 0.06 mA at 1 kohm, no base resistor: 1.5 mA of collector over a gain of 2600 %.
    const { offAmperes } = ledThresholds(input('6N138', { loadOhms: 1000, baseOhms: 0 }));
    expect(offAmperes * 1e3).toBeCloseTo(1.5 / 26, 6);
  });
});
