import { describe, expect, test } from 'vitest';
import {
  above,
  between,
  edgeRow,
  firstLead,
  hopRow,
  jackReading,
  meterOn,
  placeFrom,
  proofOf,
  sayMeter,
  underTestFrom,
} from '../../../src/core/learn/index.ts';
import type { AuthoredReading, AuthoredUnderTest } from '../../../src/core/learn/index.ts';
import { dinLink, spaced } from './authored.ts';

const OUT: AuthoredUnderTest = { direction: 'out', connector: 'trs-3.5', style: 'type-a' };
const IN: AuthoredUnderTest = { direction: 'in', connector: 'trs-3.5', style: 'type-a' };

describe('A jack under the meter of a lesson', () => {
  test('is a control jack with its direction, or one that is none', () => {
    expect(underTestFrom(OUT)).toMatchObject({
      kind: 'control',
      jack: { direction: 'out', style: 'type-a' },
    });
    expect(underTestFrom({ other: 'headphone', connector: 'trs-3.5' })).toEqual({
      kind: 'other',
      other: 'headphone',
      connector: 'trs-3.5',
    });
  });

  test('is read with the setting and the probes that the author writes', () => {
    expect(jackReading('diode off', 'ring-sleeve')).toEqual({
      meter: 'diode',
      power: 'off',
      red: 'ring',
      black: 'sleeve',
    });
    expect(jackReading('volts clock', '4-5')).toEqual({
      meter: 'volts',
      power: 'clock',
      red: '4',
      black: '5',
    });
  });

  test('shows at rest what the facts sheet says: 5.00 V on both lines, and nothing between them', () => {
    expect(spaced(sayMeter(OUT, 'volts idle', 'ring-sleeve'))).toBe('5.00 V');
    expect(spaced(sayMeter(OUT, 'volts idle', 'tip-sleeve'))).toBe('5.00 V');
    expect(spaced(sayMeter(OUT, 'volts idle', 'ring-tip'))).toBe('0 mV');
  });

  test('shows the mean of a running clock: about 31 mV, and less than nothing with the probes changed about', () => {
    // Facts sheet, section 11: clock at 120 beats a minute, 48 bytes a second.
    const forth = meterOn(OUT, 'volts clock', 'ring-tip');
    const back = meterOn(OUT, 'volts clock', 'tip-ring');
    if (forth.shows !== 'value' || back.shows !== 'value') throw new Error('expected volts');
    expect(forth.value).toBeCloseTo(0.031, 1);
    expect(forth.value).toBeGreaterThan(0.02);
    expect(back.value).toBeCloseTo(-forth.value, 9);
  });

  test('shows on the diode test the LED one way and the protection diode the other', () => {
    // Facts sheet, section 8, 1 mA: about 1.60 V through 220 ohm and a 6N138; 0.805 V through 220 ohm and D1 (0.585 V at 1 mA).
    expect(spaced(sayMeter(IN, 'diode off', 'ring-tip'))).toBe('1.60 V');
    expect(spaced(sayMeter(IN, 'diode off', 'tip-ring'))).toBe('0.81 V');
    expect(spaced(sayMeter(IN, 'diode off', 'ring-sleeve'))).toBe('overload: more than the meter can show');
  });

  test('is beyond a meter whose diode test ends at 1.5 V', () => {
    // Facts sheet, section 8: such a meter shows open on the forward test of a 6N138.
    expect(spaced(sayMeter(IN, 'diode off', 'ring-tip', 'low-diode'))).toMatch(/^overload/);
    expect(spaced(sayMeter(IN, 'diode off', 'tip-ring', 'low-diode'))).toBe('0.81 V');
  });
});

describe('The readings that prove a lead in a lesson', () => {
  const lead = firstLead(dinLink());
  const reading = (from: AuthoredReading['from'], to: AuthoredReading['to'], says?: 'beep' | 'silent') =>
    says === undefined ? { from, to } : { from, to, says };
  const right = [
    reading('out.4', 'in.4', 'beep'),
    reading('out.5', 'in.5', 'beep'),
    reading('out.2', 'in.2', 'beep'),
  ];

  test('are places of the table: the output end is the first', () => {
    expect(placeFrom(lead, reading('out.4', 'in.5'))).toEqual({
      a: { side: 'from', contact: '4' },
      b: { side: 'to', contact: '5' },
      hold: 'still',
    });
    expect(() => placeFrom(lead, reading('out.tip', 'in.4'))).toThrow(
      "lesson proof: a din5 has no contact 'tip', got 'out.tip'",
    );
  });

  test('leave nothing to say against a lead that reads as planned', () => {
    expect(proofOf(lead, right).state).toBe('as-planned');
    expect(proofOf(lead, []).state).toBe('as-planned');
  });

  test('that are not taken yet count for nothing', () => {
    expect(proofOf(lead, [reading('out.4', 'in.4')])).toEqual(proofOf(lead, []));
  });

  test('name the open conductor when one stays silent', () => {
    const open = proofOf(lead, [reading('out.4', 'in.4', 'silent'), ...right.slice(1)]);
    expect(open.state).toBe('faults');
    expect(open.sets.every((set) => set.length === 1)).toBe(true);
    expect(open.sets.map(([fault]) => fault?.kind)).toContain('open');
  });

  test('name two swapped wires when both beep crosswise', () => {
    const swapped = proofOf(lead, [
      reading('out.4', 'in.4', 'silent'),
      reading('out.5', 'in.5', 'silent'),
      reading('out.4', 'in.5', 'beep'),
      reading('out.5', 'in.4', 'beep'),
      reading('out.2', 'in.2', 'beep'),
    ]);
    expect(swapped.sets.map(([fault]) => fault?.kind)).toContain('swapped');
  });
});

describe('The bars of a lesson on time', () => {
  test('show both edges of a link at a length, each good while it keeps to 2 µs', () => {
    const short = edgeRow('5 V', dinLink(), 1);
    expect(spaced(short.label)).toBe('5 V, 1 m');
    expect(short.bars.map(({ name }) => name)).toEqual(['to on', 'to off']);
    for (const { amount, good } of short.bars) expect(good).toBe(amount <= 2e-6);
    expect(short.bars.every(({ good }) => good)).toBe(true);
    expect(edgeRow('5 V', dinLink(), 100).bars.some(({ good }) => !good)).toBe(true);
  });

  test('show how many links in a row deliver, in one bar', () => {
    const row = hopRow('slow', dinLink('H11L1', { values: { toOnSeconds: 0, toOffSeconds: 5e-6 } }));
    // 8.1 µs hold one link of 5 µs and not two.
    expect(row).toEqual({ label: 'slow', bars: [{ name: '', amount: 1, words: '1 link', good: true }] });
    const [bar] = hopRow('quick', dinLink('PC900V')).bars;
    expect(bar?.words).toBe(`${bar?.amount ?? NaN} links`);
  });
});

test('Bounds of a claim are strict on both sides, or open above', () => {
  expect(between(1, 2)).toEqual({ above: 1, below: 2 });
  expect(above(3)).toEqual({ above: 3, below: Infinity });
});
