/** The jack finder: what it names, what it asks for, and when it holds back. */
import { describe, expect, it } from 'vitest';
import { jacksWith } from '../../../src/core/readings/catalogue.ts';
import type { Evidence } from '../../../src/core/readings/evidence.ts';
import { candidatesFor, nameOf } from '../../../src/core/readings/evidence.ts';
import { findJack, isChecked } from '../../../src/core/readings/finder.ts';
import type { TakenReading } from '../../../src/core/readings/finder.ts';
import { sayFinding, sayProbability } from '../../../src/core/readings/finder-words.ts';
import { joint, normalShare } from '../../../src/core/readings/gauss.ts';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import { LEAST_BITS, nextReading, rankReadings } from '../../../src/core/readings/next-reading.ts';
import { isSafe, safeReadings } from '../../../src/core/readings/safe-readings.ts';
import { readJack } from '../../../src/core/readings/subjects.ts';
import type { JackUnderTest } from '../../../src/core/readings/subjects.ts';
import { sayUnderTest } from '../../../src/core/readings/words.ts';
import { follow } from '../../speed/meter.ts';

const TRS: Evidence = {
  connector: 'trs-3.5',
  marked: 'nothing',
  menu: [],
  meter: 'usual',
  canSwitchOn: true,
  canStreamClock: true,
};

/** Follow the advice with readings that have no noise. */
function ask(
  under: JackUnderTest,
  evidence: Evidence,
): { taken: TakenReading[]; finding: ReturnType<typeof findJack> } {
  const taken: TakenReading[] = [];
  for (;;) {
    const finding = findJack(evidence, taken);
    const advice =
      finding.state === 'not-sure' &&
      nextReading(
        evidence,
        finding,
        taken.map(({ at }) => at),
      );
    if (!advice || taken.length === 8) return { taken, finding };
    taken.push({ at: advice.at, reading: readJack(under, advice.at, meterProfile('usual')) });
  }
}

describe('following its own advice, without noise', () => {
  it.each(jacksWith('trs-3.5').map((under) => [sayUnderTest(under), under] as const))(
    'names %s',
    (_words, under) => {
      const { taken, finding } = ask(under, TRS);
      expect([finding.state, finding.ranked[0]?.name]).toEqual(['sure', nameOf(under)]);
      expect(taken.length).toBeLessThanOrEqual(6);
      expect(
        isChecked(
          TRS,
          taken.map(({ at }) => at),
        ),
      ).toBe(true);
    },
  );
});

describe('holding back', () => {
  it('says that readings fit nothing, and what to do', () => {
    // No jack of the catalogue has 9 V on its tip.
    const taken: TakenReading[] = [
      {
        at: { meter: 'volts', power: 'idle', red: 'tip', black: 'sleeve' },
        reading: { meter: 'volts', shows: 'value', value: 9 },
      },
    ];
    const finding = findJack(TRS, taken);
    expect(finding.state).toBe('fits-nothing');
    expect(sayFinding(finding, true)).toMatch(
      /fit no jack that the workbook knows.*Do not plug anything in on a guess/,
    );
  });

  it('is not sure before any reading, and its probabilities are those of the evidence', () => {
    const finding = findJack(TRS, []);
    expect(finding.state).toBe('not-sure');
    const sum = finding.ranked.reduce((total, { probability }) => total + probability, finding.none);
    expect(sum).toBeCloseTo(1, 9);
    expect(finding.none).toBeCloseTo(0.15, 9);
  });

  it('cannot tell one part from the other by the name, nor does it claim to: H11L1 and PC900V lie 15 mV apart', () => {
    const under = jacksWith('trs-3.5').find(
      (one) => sayUnderTest(one) === 'Type A in, isolated input with PC900V',
    );
    if (!under) throw new Error('no such jack');
    const { finding } = ask(under, TRS);
    const parts = finding.scored.filter((one) => nameOf(one.under) === 'in type-a' && one.probability > 0.05);
    expect(parts.length).toBeGreaterThanOrEqual(2);
  });
});

describe('evidence', () => {
  it('makes what is marked likely and a jack of another use rare, without ruling anything out', () => {
    const share = (evidence: Evidence, start: string): number =>
      candidatesFor(evidence)
        .filter(({ under }) => nameOf(under).startsWith(start))
        .reduce((sum, { prior }) => sum + prior, 0);
    expect(share({ ...TRS, marked: 'out' }, 'out ')).toBeGreaterThan(0.7);
    expect(share({ ...TRS, marked: 'out' }, 'in ')).toBeGreaterThan(0);
    expect(share({ ...TRS, menu: ['expression'] }, 'expression')).toBeGreaterThan(
      2 * share(TRS, 'expression'),
    );
  });
});

describe('the rule of safe readings', () => {
  it('allows a voltmeter alone with the power on, and never the tester or a beep', () => {
    for (const power of ['idle', 'clock'] as const) {
      expect(isSafe('volts', power)).toBe(true);
      for (const meter of ['ohms', 'diode', 'continuity', 'led'] as const)
        expect(isSafe(meter, power)).toBe(false);
    }
    expect(isSafe('led', 'off')).toBe(false);
  });

  it('holds for every reading that is proposed, and asks for no power where there is none', () => {
    expect(safeReadings(TRS).every(({ meter, power }) => isSafe(meter, power))).toBe(true);
    expect(new Set(safeReadings({ ...TRS, canSwitchOn: false }).map(({ power }) => power))).toEqual(
      new Set(['off']),
    );
    expect(safeReadings({ ...TRS, canStreamClock: false }).some(({ power }) => power === 'clock')).toBe(
      false,
    );
    // Power off: 6 ordered pairs by 2 functions; power on: 3 pairs, twice.
    expect(safeReadings(TRS)).toHaveLength(12 + 3 + 3);
  });

  it('comes with a sentence why and with steps how', () => {
    const finding = findJack(TRS, []);
    const advice = nextReading(TRS, finding, []);
    expect(advice?.why).toMatch(/^It tells apart what is still likely\. /);
    expect(advice?.how[0]).toMatch(/Switch the device off/);
    expect(advice?.bits).toBeGreaterThan(2);
    const ranked = rankReadings(TRS, finding, []);
    expect(ranked).toHaveLength(18);
    expect(ranked.every(({ bits }) => bits > -1e-9)).toBe(true);
    expect(LEAST_BITS).toBeLessThan(0.05);
  });
});

describe('the arithmetic beneath', () => {
  it('knows the normal distribution', () => {
    // Abramowitz and Stegun, table 26.1.
    expect(normalShare(0)).toBeCloseTo(0.5, 7);
    expect(normalShare(1)).toBeCloseTo(0.8413447, 6);
    expect(normalShare(-1.96)).toBeCloseTo(0.0249979, 6);
  });

  it('takes two readings of one tolerance together: the second tells little new', () => {
    const reading = { meter: 'volts', point: 0, slopes: { supply: 1 }, limit: Infinity } as const;
    // Noise 3 mV each, shared tolerance 1 V: differences 1 V and 1 V fit well, 1 V and -1 V do not.
    expect(joint([reading, reading], [1, 1]).misfit).toBeCloseTo(1, 3);
    expect(joint([reading, reading], [1, -1]).misfit).toBeGreaterThan(1e5);
  });
});

it('names 100 noisy jacks wrongly and surely in at most 2 of them', () => {
  const trials = Array.from({ length: 100 }, (_, at) => follow(50_000 + at));
  expect(trials.filter(({ end }) => end === 'wrong').map(({ words }) => words).length).toBeLessThanOrEqual(2);
  expect(trials.filter(({ end, outside }) => end === 'right' && !outside).length).toBeGreaterThan(60);
});

it('says probabilities without pretending', () => {
  expect([0.999, 0.723, 0.001].map(sayProbability)).toEqual(['more than 99 %', '72 %', 'less than 1 %']);
});
