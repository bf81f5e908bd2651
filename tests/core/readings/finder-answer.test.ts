/** What a page is handed after each reading. */
import { describe, expect, it } from 'vitest';
import type { Evidence } from '../../../src/core/readings/evidence.ts';
import { answerFinder } from '../../../src/core/readings/finder-answer.ts';
import type { TakenReading } from '../../../src/core/readings/finder.ts';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import { readJack } from '../../../src/core/readings/subjects.ts';
import type { JackUnderTest } from '../../../src/core/readings/subjects.ts';
import { makeJack } from '../../../src/core/wiring/link.ts';

const EVIDENCE: Evidence = {
  connector: 'trs-3.5',
  marked: 'nothing',
  menu: [],
  meter: 'usual',
  canSwitchOn: true,
  canStreamClock: false,
};

function follow(under: JackUnderTest, evidence: Evidence): readonly TakenReading[] {
  const taken: TakenReading[] = [];
  for (let { advice } = answerFinder(evidence, taken); advice; { advice } = answerFinder(evidence, taken))
    taken.push({ at: advice.at, reading: readJack(under, advice.at, meterProfile('usual')) });
  return taken;
}

describe('the answer of the finder', () => {
  it('is not sure at first, proposes a reading and names no jack', () => {
    const answer = answerFinder(EVIDENCE, []);
    expect(answer.state).toBe('not-sure');
    expect(answer.sentence).toMatch(/^Not sure yet: \d+ kinds of jack are still likely\.$/);
    expect(answer.advice?.how.length).toBeGreaterThan(2);
    expect(answer.jack).toBeUndefined();
    expect(answer.rows.some(({ likelihood }) => likelihood === 'sure')).toBe(false);
    expect(answer.rows.reduce((sum, { probability }) => sum + probability, answer.none)).toBeCloseTo(1, 9);
  });

  it('ends sure of a Type B input, as a jack that can be wired, when its own advice is followed', () => {
    const jack = makeJack('in', 'trs-3.5', 'type-b');
    const answer = answerFinder(EVIDENCE, follow({ kind: 'control', jack }, EVIDENCE));
    expect(answer.state).toBe('sure');
    expect(answer.rows[0]).toMatchObject({ words: 'Type B in', likelihood: 'sure' });
    expect(answer.jack).toMatchObject({ direction: 'in', connector: 'trs-3.5', style: 'type-b' });
    expect(answer.advice).toBeUndefined();
  });

  it('names no jack to wire for a headphone output, however sure it is', () => {
    const under = { kind: 'other', other: 'headphone', connector: 'trs-3.5' } as const;
    const answer = answerFinder(EVIDENCE, follow(under, EVIDENCE));
    expect(answer.rows[0]?.words).toBe('headphone output');
    expect(answer.jack).toBeUndefined();
  });

  it('says that readings fit nothing, and asks for no more', () => {
    // Nothing in the catalogue gives 20 V at rest: the supplies are 3.3 V and 5 V.
    const taken = [
      {
        at: { meter: 'volts', power: 'idle', red: 'tip', black: 'sleeve' },
        reading: { meter: 'volts', shows: 'value', value: 20 },
      },
    ] as const;
    const answer = answerFinder(EVIDENCE, taken);
    expect(answer.state).toBe('fits-nothing');
    expect(answer.sentence).toMatch(/fit no jack/);
    expect(answer.advice).toBeUndefined();
  });

  it('says that it cannot tell when no permitted reading is left that would make sure', () => {
    const evidence = { ...EVIDENCE, connector: 'ts-3.5', canSwitchOn: false } as const;
    const jack = makeJack('in', 'ts-3.5', 'tip-signal', { circuit: 'receiver-led' });
    const answer = answerFinder(evidence, follow({ kind: 'control', jack }, evidence));
    expect(answer.state).toBe('cannot-tell');
    expect(answer.sentence).toMatch(/^Probably signal on tip.*no safe reading is left/);
    expect(answer.jack).toBeUndefined();
  });
});
