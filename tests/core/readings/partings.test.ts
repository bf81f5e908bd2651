/** When the finder may give up: only where no permitted reading differs by more than the noise. */
import { describe, expect, it } from 'vitest';
import { answerFinder } from '../../../src/core/readings/finder-answer.ts';
import { findJack } from '../../../src/core/readings/finder.ts';
import type { TakenReading } from '../../../src/core/readings/finder.ts';
import type { Evidence } from '../../../src/core/readings/evidence.ts';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import { LEAST_STEPS, partingsOf } from '../../../src/core/readings/partings.ts';
import { safeReadings } from '../../../src/core/readings/safe-readings.ts';
import { readJack } from '../../../src/core/readings/subjects.ts';
import type { JackReading } from '../../../src/core/readings/subjects.ts';
import { makeJack } from '../../../src/core/wiring/link.ts';
import { seededRandom } from '../../support/random.ts';
import { drawWorld } from '../../support/meter-world.ts';

const DEAD: Evidence = {
  connector: 'ts-3.5',
  marked: 'nothing',
  menu: [],
  meter: 'usual',
  canSwitchOn: false,
  canStreamClock: false,
};

describe('how far a reading parts what is still possible', () => {
  it('is more than the noise at first: a dead jack marked IN can be turned either way, and a diode test tells which', () => {
    const finding = findJack({ ...DEAD, marked: 'in' }, []);
    const [best] = partingsOf({ ...DEAD, marked: 'in' }, finding, []);
    expect(best?.at.power).toBe('off');
    expect(best?.steps).toBeGreaterThan(LEAST_STEPS);
  });

  it('considers every permitted reading but those taken, and orders them', () => {
    const taken: JackReading = { meter: 'ohms', power: 'off', red: 'tip', black: 'sleeve' };
    const under = { kind: 'control', jack: makeJack('in', 'ts-3.5', 'two-contact') } as const;
    const readings: TakenReading[] = [{ at: taken, reading: readJack(under, taken, meterProfile('usual')) }];
    const partings = partingsOf(DEAD, findJack(DEAD, readings), [taken]);
    expect(partings).toHaveLength(safeReadings(DEAD).length - 1);
    const steps = partings.map((one) => one.steps);
    expect(steps).toEqual(steps.toSorted((a, b) => b - a));
    expect(partings.some(({ at }) => at.meter === 'ohms' && at.red === 'tip')).toBe(false);
  });

  it('is less than the noise in every reading whenever the finder gives up', () => {
    let gaveUp = 0;
    // Worlds with few permitted readings: nothing can be switched on, so some jacks look alike.
    for (let seed = 1; seed <= 60; seed++) {
      const world = drawWorld(seededRandom(seed), 0.25);
      const evidence: Evidence = { ...world.evidence, canSwitchOn: false, canStreamClock: false };
      const taken: TakenReading[] = [];
      let answer = answerFinder(evidence, taken);
      while (answer.advice && taken.length < 8) {
        taken.push({ at: answer.advice.at, reading: world.read(answer.advice.at) });
        answer = answerFinder(evidence, taken);
      }
      if (answer.state !== 'cannot-tell') {
        expect(answer.considered).toEqual([]);
        continue;
      }
      gaveUp++;
      expect(answer.considered).toHaveLength(
        safeReadings(evidence).filter(
          (at) => !taken.some((one) => JSON.stringify(one.at) === JSON.stringify(at)),
        ).length,
      );
      for (const { steps, words } of answer.considered)
        expect(steps, `seed ${seed}, ${words}`).toBeLessThan(LEAST_STEPS);
    }
    expect(gaveUp).toBeGreaterThan(0);
  });
});
