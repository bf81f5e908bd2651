/** Readings worked out by hand: the junction law with the published fits, and Ohm's law for the rest. */
import { describe, expect, it } from 'vitest';
import { activeShare, shareOf } from '../../../src/core/readings/clock.ts';
import { attach, meterProfile } from '../../../src/core/readings/instruments.ts';
import { sayReading } from '../../../src/core/readings/reading.ts';
import { readJack, readLead, readLink } from '../../../src/core/readings/subjects.ts';
import type { JackReading } from '../../../src/core/readings/subjects.ts';
import { makeJack, makeLead, wires } from '../../../src/core/wiring/link.ts';
import type { Jack } from '../../../src/core/wiring/link.ts';

const USUAL = meterProfile('usual');

function shows(jack: Jack, at: JackReading, profile = USUAL): string | number {
  const reading = readJack({ kind: 'control', jack }, at, profile);
  return reading.shows === 'value' ? reading.value : reading.shows;
}

describe('the diode test on a good input', () => {
  const into = (part: '6N138' | 'H11L1' | 'PC900V'): Jack => makeJack('in', 'din5', 'din', { part });
  const forward: JackReading = { meter: 'diode', power: 'off', red: '4', black: '5' };

  // 1 mA x 220 ohm = 0.220 V, and N VT ln(1 mA / IS) + 1 mA x RS of each fit: 1.381, 1.063, 1.045 V.
  it.each([
    ['6N138', 1.6],
    ['H11L1', 1.28],
    ['PC900V', 1.27],
  ] as const)('reads about %s: %d V with red on pin 4', (part, volts) => {
    expect(shows(into(part), forward)).toBeCloseTo(volts, 1);
    expect(Math.abs((shows(into(part), forward) as number) - volts)).toBeLessThan(0.01);
  });

  it('reads about 0.80 V through the protection diode with red on pin 5', () => {
    // 0.220 V and 0.585 V of the diode at 1 mA.
    expect(
      Math.abs((shows(into('6N138'), { ...forward, red: '5', black: '4' }) as number) - 0.805),
    ).toBeLessThan(0.003);
  });

  it('shows overload on a 6N138 when the meter ends at 1.5 V, and a value on an H11L1', () => {
    expect(shows(into('6N138'), forward, meterProfile('low-diode'))).toBe('overload');
    expect(shows(into('H11L1'), forward, meterProfile('low-diode'))).toBeCloseTo(1.283, 2);
  });

  it('does not beep: half a volt cannot light the LED', () => {
    expect(shows(into('6N138'), { ...forward, meter: 'continuity' })).toBe('silent');
    expect(shows(into('6N138'), { ...forward, meter: 'ohms' })).toBe('overload');
  });
});

describe('volts at an output', () => {
  const out = makeJack('out', 'din5', 'din');
  const volts = (power: 'idle' | 'clock', red: '4' | '5', black: '5' | '2', jack = out): number =>
    shows(jack, { meter: 'volts', power, red, black }) as number;

  it('are 5.00 V on both lines at idle, so a voltmeter at rest cannot tell the lines apart', () => {
    expect(volts('idle', '4', '2')).toBeCloseTo(5, 3);
    expect(volts('idle', '5', '2')).toBeCloseTo(5, 3);
    expect(volts('idle', '4', '5')).toBeCloseTo(0, 6);
  });

  it('average 31 mV from source to sink while clock streams', () => {
    // F8 has a start bit and three zeros: 4 x 32 us, 48 times a second = 0.6144 %; of 5 V that is 30.72 mV.
    expect(shareOf('clock')).toBeCloseTo(0.006144, 12);
    expect(volts('clock', '4', '5')).toBeCloseTo(0.03072, 5);
    // FF has its start bit only; 00 has nine zeros.
    expect(activeShare(0xff, 1)).toBeCloseTo(32e-6, 12);
    expect(activeShare(0x00, 1)).toBeCloseTo(288e-6, 12);
  });

  it('float on the sink of an open-drain output', () => {
    const open = makeJack('out', 'din5', 'din', { circuit: 'driver-3v3' });
    expect(volts('idle', '4', '2', open)).toBeCloseTo(3.3, 3);
    expect(volts('idle', '5', '2', open)).toBeCloseTo(0, 6);
  });

  it('fall to nothing with the power off, when 220 ohm and the dead rail of 1 kohm remain', () => {
    expect(shows(out, { meter: 'volts', power: 'off', red: '4', black: '2' })).toBeCloseTo(0, 9);
    expect(shows(out, { meter: 'ohms', power: 'off', red: '4', black: '2' })).toBeCloseTo(1220.33, 1);
  });

  it('make the LED tester glow from source to shield, and not the other way', () => {
    expect(shows(out, { meter: 'led', power: 'idle', red: '4', black: '2' })).toBe('glows');
    expect(shows(out, { meter: 'led', power: 'idle', red: '2', black: '4' })).toBe('dark');
  });

  it('make it glow faintly across the loop while clock runs or a note is played, and not at rest', () => {
    // (5 - 1.8) V over three times 220 ohm are 4.8 mA. F8 48 times a second: 0.6144 % of that is 30 uA. 90 3C 40 has 7, 5 and 8
    // bits of 32 us at 0; in a fifth of a second 0.32 %, 15 uA. An eye sees 10 uA.
    expect(shareOf('notes')).toBeCloseTo(0.0032, 12);
    const across = (power: 'idle' | 'clock' | 'notes'): string =>
      shows(out, { meter: 'led', power, red: '4', black: '5' }) as string;
    expect([across('clock'), across('notes'), across('idle')]).toEqual(['faint', 'faint', 'dark']);
  });
});

describe('a lead on the bench', () => {
  const lead = makeLead('din5', 'trs-3.5', wires('4-ring', '5-tip', '2-sleeve'), { lengthMetres: 2 });

  it('has twice 0.1339 ohm a conductor, beeps where it is joined and is silent elsewhere', () => {
    const ohms = readLead(
      lead,
      'ohms',
      { side: 'from', contact: '4' },
      { side: 'to', contact: 'ring' },
      USUAL,
    );
    expect(ohms.shows === 'value' ? ohms.value : NaN).toBeCloseTo(0.2678, 3);
    const beep = (contact: 'ring' | 'tip'): string =>
      readLead(lead, 'continuity', { side: 'from', contact: '4' }, { side: 'to', contact }, USUAL).shows;
    expect([beep('ring'), beep('tip')]).toEqual(['beep', 'silent']);
  });

  it('beeps at 20 ohm as at 0.1 ohm, and not at 60: a beep does not tell a poor joint', () => {
    const withJoint = (ohms: number): string =>
      readLead(
        { ...lead, faults: [{ kind: 'joint', side: 'from', contact: '4', ohms }] },
        'continuity',
        { side: 'from', contact: '4' },
        { side: 'to', contact: 'ring' },
        USUAL,
      ).shows;
    expect([withJoint(0.1), withJoint(20), withJoint(60)]).toEqual(['beep', 'beep', 'silent']);
  });

  it('has no bridges made by the jacks it is not plugged into', () => {
    const ts = makeLead('ts-3.5', 'ts-3.5', wires('tip-tip', 'sleeve-sleeve'));
    const shows = readLead(
      ts,
      'continuity',
      { side: 'from', contact: 'tip' },
      { side: 'from', contact: 'sleeve' },
      USUAL,
    );
    expect(shows).toEqual({ meter: 'continuity', shows: 'silent' });
  });
});

describe('a cabled link', () => {
  const link = {
    output: makeJack('out', 'din5', 'din'),
    branches: [
      { input: makeJack('in', 'din5', 'din'), leads: [makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'))] },
    ],
  };
  const at = (contact: '4' | '5' | '2') => ({ place: 'output', contact }) as const;

  it('reads 5 V on both lines at idle, and 31 mV less of its loop while clock streams', () => {
    const volts = (power: 'idle' | 'clock'): number => {
      const reading = readLink(link, 'separate', 'volts', power, at('4'), at('5'), USUAL);
      return reading.shows === 'value' ? reading.value : NaN;
    };
    expect(volts('idle')).toBeCloseTo(0, 6);
    // 5.38 mA in active through 220 ohm and the LED: (5 - 2 x 1.184) V at the output, for 0.6144 % of the time.
    expect(volts('clock')).toBeCloseTo(0.006144 * (5 - 2 * 0.2202 * 5.375), 3);
  });

  it('reads nothing with the power off', () => {
    const reading = readLink(link, 'separate', 'volts', 'off', at('4'), at('2'), USUAL);
    expect(reading.shows === 'value' ? reading.value : NaN).toBeCloseTo(0, 9);
  });
});

it('says readings in words', () => {
  expect(sayReading({ meter: 'volts', shows: 'value', value: 5 })).toBe('5.00 V');
  expect(sayReading({ meter: 'volts', shows: 'value', value: -0.0307 })).toBe('−31 mV');
  expect(sayReading({ meter: 'ohms', shows: 'value', value: 0.27 })).toBe('0.3 ohm');
  expect(sayReading({ meter: 'ohms', shows: 'value', value: 1e6 })).toBe('1 Mohm');
  expect(sayReading({ meter: 'diode', shows: 'overload' })).toBe('overload: more than the meter can show');
  expect(sayReading({ meter: 'continuity', shows: 'silent' })).toBe('stays silent');
  expect(sayReading({ meter: 'led', shows: 'glows' })).toBe('the LED glows');
});

it('refuses both probes on one contact', () => {
  expect(() => attach([], 'volts', USUAL, 'out tip', 'out tip')).toThrow(
    "meter: the probes must be on two contacts, got both on 'out tip'",
  );
});
