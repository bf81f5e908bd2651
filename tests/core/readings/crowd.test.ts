/** What every device of a crowd keeps to, by Kirchhoff and Ohm, and how its values lie. Expected ranges are those of `crowd-values.ts`. */
import { describe, expect, it } from 'vitest';
import { jacksWith } from '../../../src/core/readings/catalogue.ts';
import { CROWD, crowdPoints } from '../../../src/core/readings/crowd.ts';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import type { Power } from '../../../src/core/readings/power.ts';
import { offScale } from '../../../src/core/readings/scale.ts';
import type { ScaledFunction } from '../../../src/core/readings/scale.ts';
import { PROBE_LEAD_OHMS } from '../../../src/core/readings/subjects.ts';
import type { JackUnderTest } from '../../../src/core/readings/subjects.ts';
import type { Contact } from '../../../src/core/wiring/connectors.ts';
import type { OtherJackKind } from '../../../src/core/wiring/other-jacks.ts';

const USUAL = meterProfile('usual');

function found(suits: (under: JackUnderTest) => boolean): JackUnderTest {
  const under = jacksWith('trs-3.5').find(suits);
  if (!under) throw new Error('crowd: no such jack');
  return under;
}
const typeA = (circuit: 'driver-5v' | 'driver-3v3' | 'receiver-isolated'): JackUnderTest =>
  found((one) => one.kind === 'control' && one.jack.style === 'type-a' && one.jack.circuit === circuit);
const other = (kind: OtherJackKind): JackUnderTest =>
  found((one) => one.kind === 'other' && one.other === kind);

/** What each device shows: volts, or ohms. */
function shownBy(
  under: JackUnderTest,
  meter: ScaledFunction,
  power: Power,
  red: Contact,
  black: Contact,
): readonly number[] {
  const points = crowdPoints(under, { meter, power, red, black }, USUAL);
  return Array.from({ length: CROWD }, (_, device) => offScale(meter, points(device)));
}

const least = (values: readonly number[]): number => Math.min(...values);
const most = (values: readonly number[]): number => Math.max(...values);
const shareOf = (values: readonly number[], holds: (value: number) => boolean): number =>
  values.filter(holds).length / values.length;

describe('every device of a crowd', () => {
  const output = typeA('driver-5v');

  it('turns the sign of its volts with the probes', () => {
    for (const under of [output, typeA('driver-3v3'), other('expression-ring'), other('control-voltage')]) {
      const back = shownBy(under, 'volts', 'idle', 'sleeve', 'tip');
      shownBy(under, 'volts', 'idle', 'tip', 'sleeve').forEach((volts, device) =>
        expect(volts).toBeCloseTo(-(back[device] ?? NaN), 7),
      );
    }
  });

  it('has volts that add up round its contacts, but for what the meter itself draws', () => {
    // 10 Mohm beside at most 700 ohm: 5 V / 10 Mohm x 700 ohm is 0.35 mV at each reading.
    const across = shownBy(output, 'volts', 'idle', 'tip', 'ring');
    const ring = shownBy(output, 'volts', 'idle', 'ring', 'sleeve');
    shownBy(output, 'volts', 'idle', 'tip', 'sleeve').forEach((tip, device) =>
      expect(Math.abs((across[device] ?? NaN) + (ring[device] ?? NaN) - tip)).toBeLessThan(1.1e-3),
    );
  });

  it('gives no volts where it is an isolated input: there is no source in it', () => {
    const input = typeA('receiver-isolated');
    for (const [red, black] of [
      ['tip', 'ring'],
      ['ring', 'sleeve'],
      ['tip', 'sleeve'],
    ] as const)
      expect(most(shownBy(input, 'volts', 'idle', red, black).map(Math.abs))).toBeLessThan(1e-9);
  });

  it('has its supply within 7 % of 5 V where it is a 5 V output, and all of that range is used', () => {
    const volts = shownBy(output, 'volts', 'idle', 'ring', 'sleeve');
    expect(least(volts)).toBeGreaterThan(4.65 - 1e-3);
    expect(most(volts)).toBeLessThan(5.35);
    expect(shareOf(volts, (one) => one < 5)).toBeCloseTo(0.5, 1);
    expect(least(volts)).toBeLessThan(4.66);
    expect(most(volts)).toBeGreaterThan(5.34);
  });

  it('shows 0.6144 % of its own supply between source and sink while clock runs', () => {
    const supply = shownBy(output, 'volts', 'idle', 'ring', 'sleeve');
    // 48 bytes F8 a second, four bits of 32 us at 0 in each; the meter draws nothing to speak of.
    shownBy(output, 'volts', 'clock', 'ring', 'tip').forEach((mean, device) =>
      expect(mean / (supply[device] ?? NaN)).toBeCloseTo(48 * 4 * 32e-6, 5),
    );
  });

  it('is one device in every reading: 1 kohm across it divides by the resistor behind its contact', () => {
    const open = shownBy(output, 'volts', 'idle', 'ring', 'sleeve');
    const behind = shownBy(output, 'loaded', 'idle', 'ring', 'sleeve').map(
      (loaded, device) => 1e3 * ((open[device] ?? NaN) / loaded - 1) - 2 * PROBE_LEAD_OHMS,
    );
    expect(least(behind)).toBeGreaterThan(4.7 - 0.1);
    expect(most(behind)).toBeLessThan(700 * 1.01);
    // Evenly by decades: the middle one is the geometric mean of 4.7 and 700 ohm, 57.4 ohm.
    expect(behind.toSorted((a, b) => a - b)[CROWD / 2]).toBeCloseTo(Math.sqrt(4.7 * 700), 0);
  });
});

describe('the values of a crowd', () => {
  it('lie evenly by decades: a quarter of the line inputs in each decade from 10 kohm to 100 Mohm', () => {
    const ohms = shownBy(other('line'), 'ohms', 'off', 'tip', 'sleeve');
    for (const from of [1e4, 1e5, 1e6, 1e7])
      expect(shareOf(ohms, (one) => one >= from && one < 10 * from)).toBeCloseTo(0.25, 2);
  });

  it('reach a hundred times the usual resistor either way where no loop sets it: 33 ohm of a headphone output', () => {
    const ohms = shownBy(other('headphone'), 'ohms', 'off', 'tip', 'sleeve');
    const touch = 2 * PROBE_LEAD_OHMS;
    expect(least(ohms)).toBeGreaterThan(0.33 + touch - 1e-3);
    expect(least(ohms)).toBeLessThan(0.4 + touch);
    expect(most(ohms)).toBeLessThan(3300 + touch);
    expect(most(ohms)).toBeGreaterThan(3000);
  });

  it('are alike within one device: two pull-ups of a switch input stand at the same voltage', () => {
    const between = shownBy(other('footswitch-double'), 'volts', 'idle', 'tip', 'ring');
    expect(most(between.map(Math.abs))).toBeLessThan(1e-9);
    const tip = shownBy(other('footswitch-double'), 'volts', 'idle', 'tip', 'sleeve');
    expect(most(tip) / least(tip)).toBeGreaterThan(2);
  });

  it('leave a control voltage at nothing in half of its devices, and else anywhere from -6 to 11 V', () => {
    const volts = shownBy(other('control-voltage'), 'volts', 'idle', 'tip', 'sleeve');
    expect(shareOf(volts, (one) => Math.abs(one) < 1e-3)).toBeCloseTo(0.5, 1);
    expect(least(volts)).toBeLessThan(-5.9);
    expect(most(volts)).toBeGreaterThan(10.8);
    // Of the other half, 6 of 17 V lie below nothing.
    expect(shareOf(volts, (one) => one < -1e-3)).toBeCloseTo(0.5 * (6 / 17), 2);
  });

  it('light an LED at 0.2 V more or less than usual, and a diode beside it always at less than that', () => {
    const input = typeA('receiver-isolated');
    const forward = shownBy(input, 'diode', 'off', 'ring', 'tip');
    const back = shownBy(input, 'diode', 'off', 'tip', 'ring');
    // 1 mA times or over 1.6, through 220 ohm times or over 2.2, and an LED of 1.38 V there by its fit.
    expect(least(forward)).toBeGreaterThan(1.15);
    expect(most(forward)).toBeLessThan(1.38 + 0.25 + 1.6e-3 * 2.2 * 220);
    expect(shareOf(forward, (one) => one > 1.4 && one < 1.85)).toBeGreaterThan(0.6);
    expect(shareOf(back, (one) => one < 1.2)).toBeGreaterThan(0.8);
  });

  it('stand in the same place whoever asks, in whatever order', () => {
    const points = crowdPoints(
      other('line'),
      { meter: 'ohms', power: 'off', red: 'sleeve', black: 'tip' },
      USUAL,
    );
    const late = points(CROWD - 1);
    const early = points(0);
    expect([points(CROWD - 1), points(0)]).toEqual([late, early]);
    expect(late).not.toBe(early);
  });
});
