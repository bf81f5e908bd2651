/** A lead under test: what is sent, and what is said of what comes back. */
import { describe, expect, test } from 'vitest';
import { judgeGroup, judgeLoop, sayTrip } from '../../../src/core/arrived/loop-judge.ts';
import type { TimedMessage } from '../../../src/core/arrived/loop-judge.ts';
import { loopGroups, wiggleMessage } from '../../../src/core/arrived/loop-patterns.ts';
import { decode } from '../../../src/core/signal/decode.ts';
import { wireOf } from '../../support/midi-stand-in.ts';
import type { StandIn } from '../../support/midi-stand-in.ts';

const at = (seconds: number, ...lists: readonly (readonly number[])[]): readonly TimedMessage[] =>
  lists.map((bytes) => ({ bytes, seconds }));
const [A, B, C] = [[0xb0, 102, 1] as const, [0xb0, 103, 2] as const, [0xc0, 5] as const];

describe('what is sent round a lead', () => {
  test('is whole messages with their status, the same for the same seed', () => {
    const groups = loopGroups(1);
    expect(loopGroups(1)).toEqual(groups);
    for (const message of groups.flatMap(({ messages }) => messages)) {
      const [event, ...more] = decode(message);
      expect([event?.kind, more]).toEqual(['message', []]);
      expect(message[0]).toBeGreaterThanOrEqual(0x80);
    }
  });

  test('strains a line with 00, 7F and 55, and ends with a long run', () => {
    const bytes = loopGroups(1).flatMap(({ messages }) => messages.flat());
    for (const strained of [0x00, 0x7f, 0x55]) expect(bytes).toContain(strained);
    expect(loopGroups(1).at(-1)?.messages.flat()).toHaveLength(600);
  });

  test('never repeats a message at once, so that a lost one shows', () => {
    for (const { messages } of loopGroups(3)) {
      const twice = messages.filter((one, place) => messages[place - 1]?.join() === one.join());
      expect(twice).toEqual([]);
    }
    expect(wiggleMessage(128)).toEqual(wiggleMessage(0));
  });
});

describe('what came back', () => {
  test('is right, lost, garbled or foreign', () => {
    const judged = (got: readonly TimedMessage[]) => judgeGroup(at(1, A, B, C), got);
    expect(judged(at(1.004, A, B, C))).toMatchObject({ right: 3, lost: 0, garbled: 0, foreign: 0 });
    expect(judged(at(1, A, C))).toMatchObject({ right: 2, lost: 1, garbled: 0, foreign: 0 });
    expect(judged(at(1, A, [0xb0, 103, 3], C))).toMatchObject({ right: 2, lost: 0, garbled: 1, foreign: 0 });
    expect(judged(at(1, A, [0xf8], B, [0x90, 1, 1], C))).toMatchObject({
      right: 3,
      lost: 0,
      garbled: 0,
      foreign: 2,
    });
    expect(judged([])).toMatchObject({ right: 0, lost: 3 });
  });

  test('has round trips with their spread', () => {
    const outcome = judgeGroup(at(1, A, B, C), [...at(1.003, A), ...at(1.004, B), ...at(1.006, C)]);
    const { trip, verdict } = judgeLoop([outcome]);
    expect(trip && sayTrip(trip)).toBe('4.00 ms (3.00 ms to 6.00 ms)');
    expect(verdict).toEqual({ grade: 'good', sentence: 'All 3 messages came back right.' });
  });

  test('is late where it takes far longer than the rest', () => {
    const outcome = judgeGroup(at(1, A, B, C), [...at(1.003, A), ...at(1.004, B), ...at(1.2, C)]);
    expect(judgeLoop([outcome])).toMatchObject({ late: 1, right: 3, verdict: { grade: 'doubtful' } });
  });

  test('of a group that went wrong is handed on to be looked at', () => {
    const good = judgeGroup(at(1, A), at(1, A));
    const bad = judgeGroup(at(2, B, C), at(2, B));
    const longer = judgeGroup(at(3, A, B, C), at(3, A));
    expect(judgeLoop([good, longer, bad]).wrong).toEqual({ sent: [...B, ...C], seen: [...B] });
    expect(judgeLoop([good]).wrong).toBeUndefined();
  });
});

describe('each simulated lead', () => {
  /** The whole test over a wire, without a browser. */
  function over(what: StandIn) {
    const wire = wireOf(what);
    return judgeLoop(
      loopGroups(1).map(({ messages }) =>
        judgeGroup(at(0, ...messages), at(0.004, ...messages.flatMap(wire))),
      ),
    );
  }

  test('shows as itself: good, open, upside down, slow, off in its clock, weak', () => {
    expect(over({}).verdict.grade).toBe('good');
    expect(over({ wire: 'open' }).verdict.sentence).toMatch(/^Nothing came back/);
    for (const wire of [
      ['upside down', 0],
      ['slow to release', 0.00005],
      ['slow to turn on', 0.00002],
      ['clock off', 0.06],
      ['weak', 0.03],
    ] as const) {
      const { verdict, right, sent } = over({ wire });
      expect([wire[0], verdict.grade, right < sent]).toEqual([wire[0], 'bad', true]);
    }
  });
});
