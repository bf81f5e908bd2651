/** What a page is handed after each reading. */
import { describe, expect, it } from 'vitest';
import { jackEvidence } from '../../support/evidence.ts';
import { drawWorld, worldSeeds } from '../../support/jack-world.ts';
import { seededRandom } from '../../support/random.ts';
import type { Evidence } from '../../../src/core/readings/evidence.ts';
import { answerFinder } from '../../../src/core/readings/finder-answer.ts';
import type { TakenReading } from '../../../src/core/readings/taken.ts';
import { meterProfile } from '../../../src/core/readings/instruments.ts';
import { readJack } from '../../../src/core/readings/subjects.ts';
import type { JackUnderTest } from '../../../src/core/readings/subjects.ts';
import { LEAST_BITS } from '../../../src/core/readings/next-reading.ts';
import { makeJack } from '../../../src/core/wiring/link.ts';

const EVIDENCE = jackEvidence({ canStreamClock: false });

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

  it('sets a reading that fits nothing aside, and says of three that they fit nothing', () => {
    // Nothing known gives 20 V at rest: the supplies are 3.3, 5 and 9 V.
    const odd = (red: 'tip' | 'ring', black: 'ring' | 'sleeve', value: number): TakenReading => ({
      at: { meter: 'volts', power: 'idle', red, black },
      reading: { meter: 'volts', shows: 'value', value },
    });
    const first = answerFinder(EVIDENCE, [odd('tip', 'sleeve', 20)]);
    expect([first.state, first.doubtful]).toEqual(['not-sure', [0]]);
    expect(first.sentence).toContain('Reading 1 does not fit the others');
    expect(first.advice).toBeDefined();
    const answer = answerFinder(EVIDENCE, [
      odd('tip', 'sleeve', 20),
      odd('ring', 'sleeve', 19),
      odd('tip', 'ring', 16),
    ]);
    expect(answer.state).toBe('fits-nothing');
    expect(answer.sentence).toMatch(/fit no jack/);
    expect(answer.advice).toBeUndefined();
  });

  it('has a headline that agrees with its percentages, whatever is read', () => {
    // One connector and a known meter, so that each crowd is solved once.
    const asked = ({ connector, meter }: Evidence): boolean => connector === 'trs-3.5' && meter === 'usual';
    for (const seed of worldSeeds(1, 25, asked)) {
      const { evidence, read } = drawWorld(seededRandom(seed));
      const taken: TakenReading[] = [];
      for (let answer = answerFinder(evidence, taken); answer.advice && taken.length < 6;) {
        const { state, rows, sentence, none } = answer;
        const sum = rows.reduce((all, { probability }) => all + probability, none);
        expect(sum).toBeCloseTo(1, 6);
        expect(rows.filter(({ likelihood }) => likelihood === 'sure')).toHaveLength(state === 'sure' ? 1 : 0);
        const said = /(\d+) %/.exec(sentence)?.[1];
        if (said && !sentence.includes('more than')) expect(rows[0]?.percent).toBe(`${said} %`);
        taken.push({ at: answer.advice.at, reading: read(answer.advice.at) });
        answer = answerFinder(evidence, taken);
      }
    }
  });

  it('says that it cannot tell when no permitted reading is left that would make sure', () => {
    const evidence = { ...EVIDENCE, connector: 'ts-3.5', canSwitchOn: false } as const;
    const jack = makeJack('in', 'ts-3.5', 'tip-signal', { circuit: 'receiver-led' });
    const answer = answerFinder(evidence, follow({ kind: 'control', jack }, evidence));
    expect(answer.state).toBe('cannot-tell');
    expect(answer.sentence).toMatch(/^A meter cannot tell: .* read the same in every safe way/);
    for (const { bits } of answer.considered) expect(bits).toBeLessThan(LEAST_BITS);
    expect(answer.jack).toBeUndefined();
  });
});
