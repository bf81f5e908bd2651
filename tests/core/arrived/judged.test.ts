/** What came back of a lead against all ways to pair it with what was sent, and complaints against phrases that are spoiled by hand. */
import { describe, expect, test } from 'vitest';
import { COMPLAINTS, complains } from '../../../src/core/arrived/complaints.ts';
import type { Complaint } from '../../../src/core/arrived/complaints.ts';
import { judgeGroup, judgeLoop } from '../../../src/core/arrived/loop-judge.ts';
import type { TimedMessage } from '../../../src/core/arrived/loop-judge.ts';
import { loopGroups } from '../../../src/core/arrived/loop-patterns.ts';
import { seededRandom } from '../../support/random.ts';

const at = (seconds: number, ...lists: readonly (readonly number[])[]): readonly TimedMessage[] =>
  lists.map((bytes, place) => ({ bytes, seconds: seconds + place * 1e-3 }));

/** The least sum of changed (1.5), lost and foreign (1 each) over all ways to pair two lists in order. */
function leastByTrying(sent: readonly string[], got: readonly string[]): number {
  if (sent.length === 0 || got.length === 0) return sent.length + got.length;
  const [[one, ...sentRest], [other, ...gotRest]] = [sent, got];
  return Math.min(
    (one === other ? 0 : 1.5) + leastByTrying(sentRest, gotRest),
    1 + leastByTrying(sentRest, got),
    1 + leastByTrying(sent, gotRest),
  );
}

describe('messages that came back', () => {
  const MESSAGES = [
    [0xb0, 102, 1],
    [0xb0, 103, 2],
    [0xc0, 5],
    [0x90, 60, 64],
  ] as const;

  test('are paired with those sent by as few changes as any way of pairing needs', () => {
    const random = seededRandom(32);
    for (let round = 0; round < 80; round += 1) {
      const some = (): readonly (readonly number[])[] =>
        Array.from({ length: random.integer(0, 5) }, () => random.pick(MESSAGES));
      const [sent, got] = [some(), some()];
      const { right, lost, garbled, foreign, trips } = judgeGroup(at(1, ...sent), at(1.004, ...got));
      const names = (list: readonly (readonly number[])[]) => list.map((one) => one.join(' '));
      expect(lost + foreign + 1.5 * garbled).toBe(leastByTrying(names(sent), names(got)));
      expect(right + lost + garbled).toBe(sent.length);
      expect(right + foreign + garbled).toBe(got.length);
      expect(trips).toHaveLength(right);
    }
  });

  test('have real-time bytes counted as foreign, wherever they stand', () => {
    const [a, b] = [MESSAGES[0], MESSAGES[1]];
    for (const got of [
      [[0xf8], a, b],
      [a, [0xfe], b],
      [a, b, [0xfa]],
    ])
      expect(judgeGroup(at(1, a, b), at(1, ...got))).toMatchObject({
        right: 2,
        lost: 0,
        garbled: 0,
        foreign: 1,
      });
  });

  test('sum up over all groups, the middle trip the middle of all', () => {
    const [a, b, c] = [MESSAGES[0], MESSAGES[1], MESSAGES[2]];
    const groups = [
      judgeGroup(at(1, a, b), at(1.002, a, b)),
      judgeGroup(at(2, a, b, c), at(2.006, a, c)),
      judgeGroup(at(3, c), at(3.009, c, a)),
    ];
    const { trip, sent, right, lost, garbled, foreign, verdict } = judgeLoop(groups);
    expect([sent, right, lost, garbled, foreign]).toEqual([6, 5, 1, 0, 1]);
    // Trips, in milliseconds: 2, 2, 6, 5 (the last of the second group came in the place of the one before it), 9.
    expect([trip?.least, trip?.middle, trip?.most].map((one) => Math.round((one ?? 0) * 1e3))).toEqual([
      2, 5, 9,
    ]);
    expect(verdict).toEqual({
      grade: 'bad',
      sentence: 'Of 6 messages 5 came back right, 1 were lost and 0 garbled. Do not trust this lead.',
    });
    expect(judgeLoop(groups.filter((_, group) => group !== 1)).verdict.grade).toBe('doubtful');
    expect(judgeLoop([judgeGroup(at(1, a), [])]).verdict.sentence).toMatch(
      /^Nothing came back of 1 messages/,
    );
  });

  test('are of kinds that no instrument sounds: idle controllers, bends and programs on channel 16', () => {
    // Controllers 102 to 119 are undefined in table III of the specification.
    for (const [status = 0, first = 0, second = 0] of loopGroups(5).flatMap(({ messages }) => messages)) {
      expect([0xbf, 0xef, 0xcf]).toContain(status);
      if (status === 0xbf) expect(first >= 102 && first <= 119, `${first}`).toBe(true);
      expect(Math.max(first, second)).toBeLessThan(0x80);
    }
  });

  test('try every byte that strains a line after every other: 8 times 8 pairs', () => {
    const [, pairs] = loopGroups(1);
    expect(new Set(pairs?.messages.map(([, low, high]) => `${low} ${high}`)).size).toBe(64);
    expect(new Set(pairs?.messages.map(([, low]) => low)).size).toBe(8);
  });
});

describe('what people say of what arrived', () => {
  /** A phrase: a note on and off, a program on channel 1, and a clock. */
  const SENT = [0x90, 60, 64, 0x90, 64, 64, 0x80, 60, 0, 0x80, 64, 0, 0xc0, 5, 0xf8];
  const holds = (read: readonly number[]): readonly Complaint[] =>
    COMPLAINTS.filter((one) => complains(one, 'upside down', SENT, read));

  // Each phrase is spoiled by hand, and the complaints that a player would have are named.
  test.each([
    ['all of it arrives', SENT, []],
    ['none of it arrives', [], ['nothing arrives']],
    [
      'one note off is lost late',
      [...SENT.slice(0, 9), 0xc0, 5, 0xf8],
      ['notes stick', 'slow works, fast does not'],
    ],
    ['one note of the chord is lost', [0x90, 60, 64, 0x80, 60, 0, 0xc0, 5, 0xf8], ['chords lose notes']],
    [
      'a note is another',
      [0x90, 62, 64, ...SENT.slice(3, 6), 0x80, 62, 0, ...SENT.slice(9)],
      ['chords lose notes', 'wrong notes'],
    ],
    ['the program is another', [...SENT.slice(0, 13), 6, 0xf8], ['the wrong preset comes']],
    ['a program comes twice', [...SENT, 0xc0, 5], ['messages that nobody sent']],
    ['the clock is missing', SENT.slice(0, 14), ['the clock does not arrive', 'slow works, fast does not']],
  ] as const)('%s', (_, read, want) => {
    expect(holds([...read])).toEqual([...want]);
  });

  test('a channel is one off where every channel is, and on channel 16 where every one is 15 in its low half', () => {
    const on = (channel: number): readonly number[] =>
      SENT.map((byte) => (byte >= 0x80 && byte < 0xf0 ? (byte & 0xf0) | channel : byte));
    expect(holds(on(1))).toEqual(['the channel is one off']);
    expect(holds(on(15))).toEqual(['everything is channel 16']);
    expect(holds(on(3))).toEqual([]);
    // FF in a quarter of all bytes and more is an empty port; in fewer it is not.
    expect(holds([...SENT, 0xff])).not.toContain('everything is channel 16');
    expect(holds([0xff, 0xff, 0x90, 60, 64])).toContain('everything is channel 16');
  });

  test('it works with one sender only where the cause is one that another sender takes away', () => {
    for (const cause of ['weak', 'clock off', 'running status', 'full buffer'] as const)
      expect(complains('it works with one sender only', cause, SENT, SENT), cause).toBe(true);
    for (const cause of ['upside down', 'channel count', 'hidden real-time'] as const)
      expect(complains('it works with one sender only', cause, SENT, SENT), cause).toBe(false);
  });
});
