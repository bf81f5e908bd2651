/** Causes that strike now and then: laws of every run of them, the ends of their chance by hand, and odds that sum to no more than all. */
import { describe, expect, test } from 'vitest';
import type { Cause, ChanceCandidate } from '../../../src/core/arrived/causes.ts';
import { chanceCandidates } from '../../../src/core/arrived/chance-causes.ts';
import { layOut } from '../../../src/core/arrived/spacing.ts';
import type { ReceivedByte } from '../../../src/core/signal/index.ts';
import { seededRandom } from '../../support/random.ts';

const CANDIDATES = chanceCandidates();
const of = (cause: Cause): readonly ChanceCandidate[] => CANDIDATES.filter((one) => one.cause === cause);
const ROUNDS = 12;

/** Bytes without FF, as a phrase has them. */
const random = seededRandom(41);
const PHRASES = Array.from({ length: ROUNDS }, () =>
  Array.from({ length: 4 }, () => [0x90, random.integer(0, 127), random.integer(0, 127)]).flat(),
);
const SPACING = { insideSeconds: 0, betweenSeconds: 2e-3, words: '' };

/** What a candidate makes of bytes, by a chance of its own. */
function runOf(candidate: ChanceCandidate, sent: readonly number[], chance: () => number): readonly number[] {
  return candidate.run(layOut(sent, SPACING).wave, sent, chance).map(({ value }: ReceivedByte) => value);
}

/** Whether one list is the other with some of it left out. */
function isWithin(some: readonly number[], all: readonly number[]): boolean {
  let at = 0;
  for (const one of all) if (some[at] === one) at += 1;
  return at === some.length;
}

describe('a buffer that is full', () => {
  test('loses bytes and changes none, and keeps the first, which finds it empty', () => {
    let lost = 0;
    for (const candidate of of('full buffer'))
      for (const sent of PHRASES) {
        const read = runOf(candidate, sent, random.next);
        expect(isWithin(read, sent), `${sent} ${read}`).toBe(true);
        expect(read[0]).toBe(sent[0]);
        lost += sent.length - read.length;
      }
    expect(lost).toBeGreaterThan(0);
  });

  test('of 64 bytes that is emptied nearly as fast as it fills loses nothing of a short phrase', () => {
    // By hand: the chance at its top means 2 to the 6th places, and 12 bytes never fill them.
    const [candidate] = of('full buffer');
    const top = [0.999, 0];
    const chance = (): number => top.shift() ?? 0;
    const [sent = []] = PHRASES;
    expect(candidate && runOf(candidate, sent, chance)).toEqual(sent);
  });

  test('of one place that takes four times as long as a byte keeps every fifth byte at most', () => {
    // By hand: one place, emptied 1.02 + 3 * 0.99 = 3.99 bytes later: of bytes 0, 1, 2 ... those at 0, 4, 8 find it empty.
    const [candidate] = of('full buffer');
    const bottom = [0, 0.99];
    const chance = (): number => bottom.shift() ?? 0;
    const sent = Array.from({ length: 12 }, (_, at) => at + 1);
    expect(candidate && runOf(candidate, sent, chance)).toEqual([1, 5, 9]);
  });
});

describe('a port that is read though it is empty', () => {
  test('puts FF between the bytes, and nothing else: without it the bytes are as they were sent', () => {
    for (const candidate of of('empty as FF'))
      for (const sent of PHRASES) {
        const read = runOf(candidate, sent, random.next);
        expect(read.filter((byte) => byte !== 0xff)).toEqual(sent);
      }
  });

  test('read ten times a byte gives nine FF before each byte', () => {
    const [candidate] = of('empty as FF');
    const read = candidate ? runOf(candidate, [0x90, 0x3c], () => 0) : [];
    // The first look that finds a byte is the tenth after the last one, or the next where rounding makes it late.
    const before = read.indexOf(0x90);
    expect([before === 10 || before === 11, read.at(-1)]).toEqual([true, 0x3c]);
  });
});

describe('current at the edge', () => {
  test('that fails no pulse gives what was sent, and that fails every pulse gives nothing', () => {
    for (const candidate of of('weak'))
      for (const sent of PHRASES.slice(0, 3)) {
        expect(runOf(candidate, sent, () => 0.9999)).toEqual(sent);
        expect(runOf(candidate, sent, () => 0)).toEqual([]);
      }
  });

  test('of a byte alone whose start bit is kept turns 0s into 1s, and never a 1 into a 0', () => {
    for (const candidate of of('weak'))
      for (let round = 0; round < 40; round += 1) {
        const byte = random.integer(0, 255);
        let asked = 0;
        const [read] = runOf(candidate, [byte], () => (asked++ === 0 ? 0.9999 : random.next()));
        // A start bit that runs on into 0s of the byte is one pulse with them.
        expect((read ?? 0) & byte, `${byte} ${read}`).toBe(byte);
      }
  });
});

describe('the odds of every cause', () => {
  const SENT = [0x90, 0x00, 0x7f, 0x55];
  const CODES = [...Array(512).keys()];
  /** A slip of whoever wrote a log is allowed besides: two parts in a hundred for all codes together. */
  const SLIPS = 0.02;

  test.each(CANDIDATES.map((one) => [`${one.cause} ${one.amount}`, one] as const))(
    '%s: a byte is seen as something or lost, with no more than certainty',
    (_, candidate) => {
      const odds = candidate.odds(SENT, true);
      for (const at of SENT.keys()) {
        const seen = CODES.reduce((sum, code) => sum + Math.exp(odds.pair(at, code)), 0);
        const all = seen + Math.exp(odds.lost(at));
        expect(all).toBeLessThanOrEqual(1 + SLIPS);
        expect(all).toBeGreaterThan(0.1);
        // As it was sent is never less likely than another byte of the same mark, but where pulses mostly fail.
        if (candidate.amount < 0.3)
          for (const code of CODES.slice(0, 256))
            expect(odds.pair(at, SENT[at] ?? 0)).toBeGreaterThanOrEqual(odds.pair(at, code));
      }
    },
  );

  test('one that is lost is likelier to bring the next with it, where it is told', () => {
    for (const candidate of CANDIDATES) {
      const { lostAgain } = candidate.odds(SENT, true);
      if (lostAgain !== undefined) expect(Math.exp(lostAgain) > 0 && Math.exp(lostAgain) < 1).toBe(true);
    }
  });
});
