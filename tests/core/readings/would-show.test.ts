/** What a jack would show, in words, against its crowd sorted by hand and the default circuit of the facts. */
import { describe, expect, test } from 'vitest';
import { crowdPoints } from '../../../src/core/readings/crowd.ts';
import { findJack } from '../../../src/core/readings/finder.ts';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import type { JackReading, JackUnderTest } from '../../../src/core/readings/subjects.ts';
import { sayWouldShow } from '../../../src/core/readings/would-show.ts';
import { jackEvidence } from '../../support/evidence.ts';

const finding = findJack(jackEvidence(), []);
const named = (name: string): JackUnderTest => {
  const under = finding.ranked.find((one) => one.name === name)?.best;
  if (!under) throw new Error(`test: needs ${name}`);
  return under;
};
const at = (meter: JackReading['meter'], power: JackReading['power'], red: 'tip' | 'ring'): JackReading => ({
  meter,
  power,
  red,
  black: red === 'tip' ? 'ring' : 'tip',
});

describe('What a jack would show', () => {
  test('is one value where all devices show it', () => {
    // 4.99 V at rest on both lines of an output: no current between them.
    expect(sayWouldShow(named('out type-a'), at('volts', 'idle', 'ring'), finding)).toMatch(/^about -?0 mV$/);
  });

  test('is what the middle half of the devices show where they differ, no matter which comes first', () => {
    const under = named('out type-b');
    const reading = at('diode', 'off', 'ring');
    const points = Array.from({ length: 128 }, (_, device) =>
      crowdPoints(under, reading, meterProfile('usual'))(device),
    ).sort((one, other) => one - other);
    const [low = NaN, high = NaN] =
      /^mostly (\S+) V to (\S+) V$/
        .exec(sayWouldShow(under, reading, finding))
        ?.slice(1)
        .map(Number) ?? [];
    expect(low).toBeCloseTo(points[31] ?? NaN, 1);
    expect(high).toBeCloseTo(points[95] ?? NaN, 1);
  });

  test('is overload, in a word, where the meter shows no number', () => {
    expect(sayWouldShow(named('out type-a'), at('diode', 'off', 'ring'), finding)).toMatch(
      /^(mostly .* to overload|overload)$/,
    );
  });
});
