/** Instruments on parts that can be worked out with a pencil: a resistor, a lead, a source. */
import { describe, expect, it } from 'vitest';
import {
  METER_PROFILES,
  meterProfile,
  noiseVolts,
  readJack,
  readLead,
} from '../../../src/core/readings/index.ts';
import type { JackReading, JackUnderTest, MeterFunction, Reading } from '../../../src/core/readings/index.ts';
import { OTHER_JACKS, makeJack, makeLead, wires } from '../../../src/core/wiring/index.ts';
import type { Jack, Lead } from '../../../src/core/wiring/index.ts';

const USUAL = meterProfile('usual');
const value = (reading: Reading): number => (reading.shows === 'value' ? reading.value : NaN);
const joint = (ohms: number): Lead =>
  makeLead('din5', 'din5', wires('4-4'), {
    lengthMetres: 0.01,
    faults: [{ kind: 'joint', side: 'from', contact: '4', ohms }],
  });
const across = (ohms: number, meter: MeterFunction, name: (typeof METER_PROFILES)[number] = 'usual') =>
  readLead(
    joint(ohms),
    meter,
    { side: 'from', contact: '4' },
    { side: 'to', contact: '4' },
    meterProfile(name),
  );
const other = (kind: (typeof OTHER_JACKS)[number]): JackUnderTest => ({
  kind: 'other',
  other: kind,
  connector: 'trs-3.5',
});
const at = (
  meter: MeterFunction,
  power: JackReading['power'],
  red: 'tip' | 'ring',
  black: 'sleeve' | 'ring' = 'sleeve',
) => ({ meter, power, red, black }) as const;

describe('the resistance range', () => {
  it('shows a resistor for what it is, from an ohm to most of a megohm', () => {
    for (const ohms of [1, 47, 220, 10e3, 1e6]) expect(value(across(ohms, 'ohms')) / ohms).toBeCloseTo(1, 2);
  });

  it('ends where the meter ends: 20 Mohm, or 2 Mohm on a pocket meter', () => {
    const line = (name: (typeof METER_PROFILES)[number]) =>
      readJack(
        { kind: 'other', other: 'line', connector: 'trs-3.5', values: { ohms: 5e6 } },
        at('ohms', 'off', 'tip'),
        meterProfile(name),
      ).shows;
    expect(line('usual')).toBe('value');
    expect(line('pocket')).toBe('overload');
    expect(across(1e6, 'ohms', 'pocket').shows).toBe('value');
  });

  it('shows overload where a foreign voltage is in the way, either way round', () => {
    for (const kind of ['footswitch', 'control-voltage'] as const)
      expect(readJack(other(kind), at('ohms', 'idle', 'tip'), USUAL).shows).toBe('overload');
  });
});

describe('continuity', () => {
  it('beeps below 50 ohm and not above, on every meter', () => {
    for (const name of METER_PROFILES) {
      expect(across(45, 'continuity', name).shows).toBe('beep');
      expect(across(55, 'continuity', name).shows).toBe('silent');
    }
  });

  it('does not care which probe is where', () => {
    for (const ohms of [1, 45, 55, 1e4]) {
      const swapped = readLead(
        joint(ohms),
        'continuity',
        { side: 'to', contact: '4' },
        { side: 'from', contact: '4' },
        USUAL,
      );
      expect(swapped).toEqual(across(ohms, 'continuity'));
    }
  });
});

describe('the diode test', () => {
  it('shows the volts that its current needs across a resistor: 1 mA, or half of it on a pocket meter', () => {
    // 1 kohm: 1 V, or 0.5 V; the 10 Mohm of the meter itself take a ten-thousandth.
    expect(value(across(1000, 'diode'))).toBeCloseTo(1, 3);
    expect(value(across(1000, 'diode', 'pocket'))).toBeCloseTo(0.5, 3);
  });

  it('shows overload where that is more than it has: 3 V, 1.5 V or 2.5 V', () => {
    expect(across(2900, 'diode').shows).toBe('value');
    expect(across(3100, 'diode').shows).toBe('overload');
    expect(across(1400, 'diode', 'low-diode').shows).toBe('value');
    expect(across(1600, 'diode', 'low-diode').shows).toBe('overload');
    expect(across(4900, 'diode', 'pocket').shows).toBe('value');
    expect(across(5100, 'diode', 'pocket').shows).toBe('overload');
  });

  it('shows overload on nothing at all, and so does the resistance range', () => {
    const open = makeLead('din5', 'din5', wires('4-4'));
    for (const meter of ['diode', 'ohms'] as const)
      expect(
        readLead(open, meter, { side: 'from', contact: '4' }, { side: 'to', contact: '5' }, USUAL).shows,
      ).toBe('overload');
  });
});

describe('DC volts', () => {
  it('are pulled down by the meter’s own resistance: a pocket meter of 1 Mohm more than a usual one of 10', () => {
    // Footswitch: 3.3 V behind 10 kohm (and 0.16 ohm of lead): x 10 M / 10.01 M, x 1 M / 1.01 M.
    const volts = (name: (typeof METER_PROFILES)[number]) =>
      value(readJack(other('footswitch'), at('volts', 'idle', 'tip'), meterProfile(name)));
    expect(volts('usual')).toBeCloseTo((3.3 * 10) / 10.01, 4);
    expect(volts('pocket')).toBeCloseTo(3.3 / 1.01, 4);
  });

  it('turn their sign with the probes, and add up from contact to contact', () => {
    const under: JackUnderTest = {
      kind: 'control',
      jack: makeJack('out', 'trs-3.5', 'type-a', { values: { stageVolts: 3.3 } }),
    };
    const volts = (red: 'tip' | 'ring' | 'sleeve', black: 'tip' | 'ring' | 'sleeve') =>
      value(readJack(under, { meter: 'volts', power: 'idle', red, black }, USUAL));
    expect(volts('tip', 'ring')).toBeCloseTo(-volts('ring', 'tip'), 9);
    expect(volts('ring', 'sleeve') - volts('tip', 'sleeve')).toBeCloseTo(volts('ring', 'tip'), 3);
    expect(volts('ring', 'tip')).toBeCloseTo(1.7, 3);
  });

  it('are nothing on anything with the power off', () => {
    const jacks: readonly Jack[] = [
      makeJack('out', 'trs-3.5', 'type-a'),
      makeJack('in', 'trs-3.5', 'tip-signal'),
    ];
    for (const under of [
      ...jacks.map((jack): JackUnderTest => ({ kind: 'control', jack })),
      ...OTHER_JACKS.map(other),
    ])
      expect(value(readJack(under, at('volts', 'off', 'tip'), USUAL))).toBeCloseTo(0, 6);
  });
});

describe('the LED tester', () => {
  it('glows on an output with its supply on, one way only, and on nothing that is off', () => {
    const out: JackUnderTest = { kind: 'control', jack: makeJack('out', 'trs-3.5', 'type-a') };
    const led = (power: JackReading['power'], red: 'ring' | 'sleeve', black: 'ring' | 'sleeve') =>
      readJack(out, { meter: 'led', power, red, black }, USUAL).shows;
    expect(led('idle', 'ring', 'sleeve')).toBe('glows');
    expect(led('idle', 'sleeve', 'ring')).toBe('dark');
    expect(led('off', 'ring', 'sleeve')).toBe('dark');
  });

  it('glows faintly behind a pull-up of 10 kohm, and plainly behind 1 kohm', () => {
    // (3.3 - 1.6) V / 10.2 kohm = 0.17 mA: over the 10 uA that are just seen (facts-12), under the 0.3 mA that are plain.
    expect(readJack(other('footswitch'), at('led', 'idle', 'tip'), USUAL).shows).toBe('faint');
    expect(readJack(other('expression-tip'), at('led', 'idle', 'tip'), USUAL).shows).toBe('glows');
  });
});

describe('volts with 1 kohm across the probes', () => {
  it('are what a divider leaves: a pull-up of 10 kohm gives way, a source behind 1 kohm halves', () => {
    // 3.3 V x 1 / (10 + 1) = 0.300 V; 2.5 V x 1 / (1 + 1) = 1.25 V; the 10 Mohm of the meter take a ten-thousandth.
    const loaded = (kind: (typeof OTHER_JACKS)[number]) =>
      value(readJack(other(kind), at('loaded', 'idle', 'tip'), USUAL));
    expect(loaded('footswitch')).toBeCloseTo(0.3, 3);
    expect(loaded('control-voltage')).toBeCloseTo(1.25, 3);
    expect(loaded('line')).toBeCloseTo(0, 6);
  });
});

describe('every meter', () => {
  it('stays inside what six manuals say: 0.5 to 1.5 mA, 1.5 to 3.2 V, continuity under 50 or 100 ohm', () => {
    for (const name of METER_PROFILES) {
      const { diodeAmperes, diodeVolts, beepOhms, voltsOhms, label, source } = meterProfile(name);
      expect(diodeAmperes >= 0.5e-3 && diodeAmperes <= 1.5e-3).toBe(true);
      expect(diodeVolts >= 1.5 && diodeVolts <= 3.2).toBe(true);
      expect(beepOhms).toBeLessThanOrEqual(100);
      expect(voltsOhms).toBeGreaterThanOrEqual(1e6);
      expect(label.length * source.length).toBeGreaterThan(0);
    }
  });

  it('is less sure of more volts, and never surer than of none', () => {
    const row = [0, 0.1, 1, 5, 24].map(noiseVolts);
    expect(row).toEqual([...row].sort((one, other) => one - other));
    expect(noiseVolts(-5)).toBe(noiseVolts(5));
    expect(noiseVolts(0)).toBeGreaterThan(0);
  });

  it('is refused both probes on one contact', () => {
    expect(() =>
      readJack(other('line'), { meter: 'volts', power: 'off', red: 'tip', black: 'tip' }, USUAL),
    ).toThrow(/^meter: the probes must be on two contacts, got both on /);
  });
});
