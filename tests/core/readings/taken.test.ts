/** Readings taken again: one that agrees is no news of the device, only of the probe. */
import { describe, expect, it } from 'vitest';
import { sayFinding } from '../../../src/core/readings/finder-words.ts';
import { findJack } from '../../../src/core/readings/finder.ts';
import type { Finding } from '../../../src/core/readings/finder.ts';
import { rankReadings } from '../../../src/core/readings/next-reading.ts';
import type { JackReading } from '../../../src/core/readings/subjects.ts';
import { sameReading, told } from '../../../src/core/readings/taken.ts';
import type { TakenReading } from '../../../src/core/readings/taken.ts';
import { jackEvidence } from '../../support/evidence.ts';

const EVIDENCE = jackEvidence({ connector: 'ts-3.5', canStreamClock: false });
const DEVICES = 128;

const volts = (value: number, more: Partial<JackReading> = {}): TakenReading => ({
  at: { meter: 'volts', power: 'idle', red: 'tip', black: 'sleeve', ...more },
  reading: { meter: 'volts', shows: 'value', value },
});
const ohms = (value: number | 'overload'): TakenReading => ({
  at: { meter: 'ohms', power: 'off', red: 'tip', black: 'sleeve' },
  reading:
    value === 'overload' ? { meter: 'ohms', shows: 'overload' } : { meter: 'ohms', shows: 'value', value },
});
const BEEP: TakenReading = {
  at: { meter: 'continuity', power: 'off', red: 'tip', black: 'sleeve' },
  reading: { meter: 'continuity', shows: 'beep', beeps: true } as unknown as TakenReading['reading'],
};

describe('What was told', () => {
  it('is each thing once, with the numbers of all that say it', () => {
    const all = told([volts(5), ohms(1e4), volts(5.01), BEEP, ohms('overload'), ohms(1.1e4)]);
    expect(all.map(({ numbers }) => numbers)).toEqual([[0, 2], [1, 5], [4]]);
    expect(all[0]?.reading).toEqual(volts(5).reading);
  });

  it('keeps readings apart that differ in place, power or value', () => {
    const apart = [
      volts(5),
      volts(0),
      volts(5, { power: 'clock' }),
      volts(5, { red: 'sleeve', black: 'tip' }),
    ];
    expect(told(apart)).toHaveLength(apart.length);
    for (const one of apart)
      expect(apart.filter((other) => sameReading(one.at, other.at)).length).toBe(
        one.at.power === 'idle' && one.at.red === 'tip' ? 2 : 1,
      );
  });
});

describe('A reading taken again', () => {
  const ratio = (finding: Finding): number => {
    const [first, second] = finding.ranked;
    return (first?.probability ?? NaN) / (second?.probability ?? NaN);
  };

  it('that agrees leaves the names as they stand to one another', () => {
    const once = findJack(EVIDENCE, [volts(4.9), ohms(9e3)], DEVICES);
    const thrice = findJack(EVIDENCE, [volts(4.9), ohms(9e3), volts(4.91), volts(4.89)], DEVICES);
    expect(thrice.ranked.map(({ name }) => name).slice(0, 3)).toEqual(
      once.ranked.map(({ name }) => name).slice(0, 3),
    );
    expect(ratio(thrice) / ratio(once)).toBeCloseTo(1, 1);
  });

  it('is no slip: what fits nothing is doubtful once and odd twice, and the sentence says so', () => {
    const good = [ohms(220), ohms(220)].slice(0, 1);
    const once = findJack(EVIDENCE, [...good, volts(20)], DEVICES);
    expect([once.doubtful, once.odd]).toEqual([[1], []]);
    expect(sayFinding(once, true)).toContain('Reading 2 does not fit the others');
    const twice = findJack(EVIDENCE, [...good, volts(20), volts(20.1)], DEVICES);
    expect([twice.doubtful, twice.odd]).toEqual([[], [1, 2]]);
    expect(sayFinding({ ...twice, state: 'not-sure' }, true)).toContain(
      'Readings 2 and 3 agree, but do not fit the others: something in this device is unusual.',
    );
    expect(twice.none).toBeGreaterThan(once.none);
    // With nothing but such readings no name is left to be named.
    expect(sayFinding(findJack(EVIDENCE, [volts(20), volts(20.1)], DEVICES), true)).toMatch(
      /^Not sure yet: no kind of jack fits so far\. Readings 1 and 2 agree/,
    );
  });

  it('is asked for at most twice', () => {
    const taken = [volts(4.9), volts(4.9)];
    const finding = findJack(EVIDENCE, taken, DEVICES);
    const asked = rankReadings(EVIDENCE, finding, taken);
    expect(asked.some(({ at }) => sameReading(at, volts(0).at))).toBe(false);
    const once = rankReadings(EVIDENCE, findJack(EVIDENCE, taken.slice(1), DEVICES), taken.slice(1));
    expect(once.some(({ at }) => sameReading(at, volts(0).at))).toBe(true);
    for (const { bits } of [...asked, ...once]) expect(bits).toBeGreaterThan(-1e-9);
  });
});
