/** Which reading is asked for next: the bits that it is expected to tell, and what it may never be. */
import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../../src/core/readings/evidence.ts';
import { findJack } from '../../../src/core/readings/finder.ts';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import { LEAST_BITS, entropyOf, nextReading, rankReadings } from '../../../src/core/readings/next-reading.ts';
import { mayLoad, safeReadings } from '../../../src/core/readings/safe-readings.ts';
import { readJack } from '../../../src/core/readings/subjects.ts';
import type { JackReading, JackUnderTest } from '../../../src/core/readings/subjects.ts';
import type { TakenReading } from '../../../src/core/readings/taken.ts';
import { makeJack } from '../../../src/core/wiring/link.ts';
import { jackEvidence } from '../../support/evidence.ts';

const TRS = jackEvidence();
const OUTPUT: JackUnderTest = { kind: 'control', jack: makeJack('out', 'trs-3.5', 'type-b') };

/** What was read of a jack of the usual values. */
const read = (under: JackUnderTest, ...places: readonly JackReading[]): readonly TakenReading[] =>
  places.map((at) => ({ at, reading: readJack(under, at, meterProfile('usual')) }));

/** Bits that are open on the name: its entropy, a jack in no catalogue counted. */
function openBits(evidence: Evidence, taken: readonly TakenReading[]): number {
  const { ranked, none } = findJack(evidence, taken);
  return entropyOf([...ranked.map(({ probability }) => probability), none]);
}

describe('the bits of shares', () => {
  it('are those of a coin, of a die and of three to one', () => {
    expect(entropyOf([0.5, 0.5])).toBeCloseTo(1, 12);
    expect(entropyOf([1, 1, 1, 1, 1, 1])).toBeCloseTo(Math.log2(6), 12);
    // By the table of entropies: H(1/4) = 0.811278.
    expect(entropyOf([3, 1])).toBeCloseTo(0.811278, 6);
  });

  it('do not change with the unit, the order, or a share of nothing', () => {
    expect(entropyOf([3e-9, 1e-9])).toBeCloseTo(entropyOf([1, 3]), 12);
    expect(entropyOf([1, 0, 3, 0])).toBeCloseTo(entropyOf([1, 3]), 12);
    expect([entropyOf([]), entropyOf([0]), entropyOf([7])]).toEqual([0, 0, 0]);
  });

  it('of a choice made in two steps are those of the first and, so often, those of the second', () => {
    // The grouping rule (Shannon, 1948): H(1/2, 1/3, 1/6) = H(1/2, 1/2) + 1/2 H(2/3, 1/3).
    expect(entropyOf([3, 2, 1])).toBeCloseTo(entropyOf([1, 1]) + 0.5 * entropyOf([2, 1]), 12);
  });
});

describe('every reading that can be asked for', () => {
  const asked: readonly (readonly TakenReading[])[] = [
    [],
    read(OUTPUT, { meter: 'volts', power: 'idle', red: 'tip', black: 'sleeve' }),
    read(
      OUTPUT,
      { meter: 'diode', power: 'off', red: 'tip', black: 'ring' },
      { meter: 'volts', power: 'idle', red: 'tip', black: 'sleeve' },
      { meter: 'volts', power: 'clock', red: 'tip', black: 'ring' },
    ),
  ];

  it.each(asked.map((taken) => [taken.length, taken] as const))(
    'after %i readings tells no less than nothing and no more than is open, the most telling first',
    (_, taken) => {
      const ranked = rankReadings(TRS, findJack(TRS, taken), taken);
      const open = openBits(TRS, taken);
      for (const { bits } of ranked) {
        // Devices of less than 1e-7 are not looked at; all of them together are a thousandth at most.
        expect(bits).toBeGreaterThan(-1e-3);
        expect(bits).toBeLessThanOrEqual(open + 1e-3);
      }
      // A reading with clock must tell a tenth of a bit more than one without: it is more work.
      const worth = ranked.map(
        ({ at, bits }) => bits - { off: 0, idle: 0.01, clock: 0.1, notes: 0.1 }[at.power],
      );
      expect(worth).toEqual(worth.toSorted((a, b) => b - a));
    },
  );

  it('keeps to the rule of safe readings, and puts the resistor only where volts were read', () => {
    for (const taken of asked) {
      const ranked = rankReadings(TRS, findJack(TRS, taken), taken, 64);
      const safe = safeReadings(TRS);
      for (const { at } of ranked) {
        expect(safe).toContainEqual(at);
        if (at.meter === 'loaded') expect(mayLoad(at, taken)).toBe(true);
      }
    }
    const loaded = (taken: readonly TakenReading[]): number =>
      rankReadings(TRS, findJack(TRS, taken), taken, 64).filter(({ at }) => at.meter === 'loaded').length;
    expect(asked.map(loaded)).toEqual([0, 1, 1]);
  });

  it('needs no power where the device cannot be switched on, and no clock where it sends none', () => {
    for (const [evidence, powers] of [
      [{ ...TRS, canSwitchOn: false, canStreamClock: false }, ['off']],
      [{ ...TRS, canStreamClock: false }, ['off', 'idle']],
      [TRS, ['off', 'idle', 'clock']],
    ] as const) {
      const ranked = rankReadings(evidence, findJack(evidence, []), [], 64);
      expect([...new Set(ranked.map(({ at }) => at.power))].sort()).toEqual([...powers].sort());
    }
  });

  it('is asked for a second time at most, and can then only agree or not', () => {
    const at = { meter: 'volts', power: 'idle', red: 'tip', black: 'sleeve' } as const;
    const bitsOf = (times: number): number | undefined => {
      const taken = read(OUTPUT, ...Array.from({ length: times }, () => at));
      const ranked = rankReadings(TRS, findJack(TRS, taken), taken, 8);
      return ranked.find((one) => JSON.stringify(one.at) === JSON.stringify(at))?.bits;
    };
    const [never = 0, once = 0] = [bitsOf(0), bitsOf(1)];
    expect(never).toBeGreaterThan(0.5);
    expect(once).toBeLessThan(0.1 * never);
    expect(bitsOf(2)).toBeUndefined();
  });

  it('tells about as much by one device in eight as by all', () => {
    const finding = findJack(TRS, []);
    const all = rankReadings(TRS, finding, []).slice(0, 12);
    const some = rankReadings(TRS, finding, [], 8);
    for (const { at, bits } of all) {
      const few = some.find((one) => one.at === at || JSON.stringify(one.at) === JSON.stringify(at));
      expect(few?.bits).toBeGreaterThan(bits - 0.05);
      expect(few?.bits).toBeLessThan(bits + 0.1);
    }
  });
});

describe('the advice', () => {
  it('says what to read, why, and how, and what each name that is left would show', () => {
    const taken = read(OUTPUT, { meter: 'volts', power: 'idle', red: 'ring', black: 'sleeve' });
    const advice = nextReading(TRS, findJack(TRS, taken), taken);
    expect(advice?.what).toMatch(/red probe on (tip|ring|sleeve), black probe on (tip|ring|sleeve)$/);
    expect(advice?.why).toMatch(/^It tells apart what is still likely\. .*: (about|mostly) /);
    expect(advice?.how.length).toBeGreaterThan(3);
  });

  it('leaves less open, in expectation: each that is followed costs bits until one name is sure', () => {
    let taken: readonly TakenReading[] = [];
    const open = [openBits(TRS, taken)];
    for (;;) {
      const finding = findJack(TRS, taken);
      if (finding.state !== 'not-sure') break;
      const advice = nextReading(TRS, finding, taken);
      if (!advice || taken.length > 10) throw new Error('advice: none, or no end of it');
      taken = [...taken, ...read(OUTPUT, advice.at)];
      open.push(openBits(TRS, taken));
    }
    expect(findJack(TRS, taken).ranked[0]?.name).toBe('out type-b');
    expect(open[0]).toBeGreaterThan(3);
    expect(open.at(-1)).toBeLessThan(0.2);
  });

  it('is none where nothing that is left tells more than a hair', () => {
    const dead = { ...TRS, canSwitchOn: false, canStreamClock: false };
    const everything = safeReadings(dead);
    const taken = read(OUTPUT, ...everything, ...everything);
    const finding = findJack(dead, taken);
    expect(rankReadings(dead, finding, taken)).toEqual([]);
    expect(nextReading(dead, finding, taken)).toBeUndefined();
    expect(LEAST_BITS).toBeLessThan(0.01);
  });
});
