/** Laying lists side by side: the quick way against the whole table, and when patience ends. */
import { describe, expect, test } from 'vitest';
import { SURE, likeness, mayLead, oddsOf, patienceOf, patientTo } from '../../../src/core/arrived/compare.ts';
import { shownAs } from '../../../src/core/arrived/log.ts';
import { Scorer, sentAsRead, sumOfLogs } from '../../../src/core/arrived/scorer.ts';
import { seededRandom } from '../../support/random.ts';
import { hex } from './ask.ts';

const random = seededRandom(31);
const list = (length: number): number[] => Array.from({ length }, () => random.integer(0, 4));

/** The same by every way there is, without rows, bands or patience. */
function byAllWays(foretold: readonly number[], seen: readonly number[]): number {
  const { pair, lost, extra } = oddsOf(foretold, SURE);
  const best = new Map<string, number>();
  const from = (one: number, other: number): number => {
    const name = `${one} ${other}`;
    const before = best.get(name);
    if (before !== undefined) return before;
    const inFirst = one < foretold.length;
    const inSecond = other < seen.length;
    const found = Math.max(
      !inFirst && !inSecond ? 0 : -Infinity,
      inFirst && inSecond ? pair(one, seen[other] ?? NaN) + from(one + 1, other + 1) : -Infinity,
      inFirst ? lost(one) + from(one + 1, other) : -Infinity,
      inSecond ? extra(seen[other] ?? NaN, one) + from(one, other + 1) : -Infinity,
    );
    best.set(name, found);
    return found;
  };
  return from(0, 0);
}

describe('how well one list foretells another', () => {
  test('is the best of all ways to lay them side by side, for 200 pairs of lists', () => {
    for (let round = 0; round < 200; round += 1) {
      const [foretold, seen] = [list(random.integer(0, 14)), list(random.integer(0, 14))];
      const found = likeness(foretold.length, seen, oddsOf(foretold, SURE));
      expect(found, `${foretold.join()} ${seen.join()}`).toBeCloseTo(byAllWays(foretold, seen), 8);
    }
  });

  test('is not changed by lists that were compared before it', () => {
    const [foretold, seen] = [list(20), list(24)];
    const alone = likeness(20, seen, oddsOf(foretold, SURE));
    for (let round = 0; round < 10; round += 1) likeness(60, list(50), oddsOf(list(60), SURE));
    expect(likeness(20, seen, oddsOf(foretold, SURE))).toBe(alone);
  });

  test('is the whole of it above a floor, and nothing below', () => {
    for (let round = 0; round < 50; round += 1) {
      const [foretold, seen] = [list(10), list(10)];
      const odds = oddsOf(foretold, SURE);
      const found = likeness(10, seen, odds);
      expect(likeness(10, seen, odds, patientTo(found - 1e-9))).toBe(found);
      expect(likeness(10, seen, odds, patientTo(found + 1))).toBeLessThan(found + 1);
    }
  });
});

describe('a beginning', () => {
  const seen = Array.from({ length: 40 }, (_, at) => at);

  test('that is that of the log may lead to it, and so may one with few mistakes', () => {
    for (const wrong of [0, 1, 2, 3]) {
      const first = seen.slice(0, 12).map((code, at) => (at < wrong ? 99 : code));
      expect(mayLead(12, seen, oddsOf(first, SURE), patienceOf(-Infinity, 26)), `${wrong} wrong`).toBe(true);
    }
  });

  test('that is wrong throughout may not', () => {
    const other = Array.from({ length: 12 }, (_, at) => 200 + at);
    expect(mayLead(12, seen, oddsOf(other, SURE), patienceOf(-Infinity, 26))).toBe(false);
    // By hand: each wrong byte costs log(256 / 0.008) against log 200 of one at random, 5.07 more: after six, 26 is used up.
    expect(mayLead(5, seen, oddsOf(other, SURE), patienceOf(-Infinity, 26))).toBe(true);
    expect(mayLead(6, seen, oddsOf(other, SURE), patienceOf(-Infinity, 26))).toBe(false);
  });
});

describe('a log that is scored', () => {
  const sent = [0x90, 0x3c, 0x40, 0x3e, 0x40];

  test('is explained best by the list that it is, and not at all by what changes nothing', () => {
    const scorer = new Scorer({ seen: hex('90 3C 40') }, sent);
    expect(scorer.score('plain', [0x90, 0x3c, 0x40])).toBeGreaterThan(scorer.score('plain', [0x90, 0x3c]));
    expect(scorer.score('plain', sent)).toBe(-Infinity);
    expect(scorer.asSent()).toBe(false);
  });

  test('as whole messages has each status byte, and leaves out what is none', () => {
    expect(shownAs('whole messages', sentAsRead(sent))).toEqual([0x90, 0x3c, 0x40, 0x90, 0x3e, 0x40]);
    expect(shownAs('whole messages', sentAsRead([0x3c, 0x90, 0x3c]))).toEqual([]);
    expect(new Scorer({ seen: hex('90 3C 40 90 3E 40') }, sent).asSent()).toBe(true);
  });

  test('marks bad bytes, hides them, or shows them as any other', () => {
    const read = [
      { value: 0xf3, kind: 'framing error', seconds: 0 },
      { value: 0xfe, kind: 'byte', seconds: 0 },
    ] as const;
    expect(shownAs('marked', read)).toEqual([0x1f3, 0xfe]);
    expect(shownAs('plain', read)).toEqual([0xf3, 0xfe]);
    expect(shownAs('good bytes only', read)).toEqual([0xfe]);
  });

  test('adds chances that are given as logarithms', () => {
    expect(sumOfLogs([Math.log(0.25), Math.log(0.5)])).toBeCloseTo(Math.log(0.75), 12);
    // Far below what a number holds by itself.
    expect(sumOfLogs([-2000, -2000])).toBeCloseTo(-2000 + Math.LN2, 9);
    expect(sumOfLogs([-Infinity, -Infinity])).toBe(-Infinity);
  });
});
