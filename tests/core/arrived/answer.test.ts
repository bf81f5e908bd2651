import { describe, expect, test } from 'vitest';
import type { Fit } from '../../../src/core/arrived/fit.ts';
import { USUAL_SPACINGS } from '../../../src/core/arrived/spacing.ts';
import { tellApart } from '../../../src/core/arrived/tell-apart.ts';
import type { Cause } from '../../../src/core/arrived/causes.ts';
import { CAUSES } from '../../../src/core/arrived/causes.ts';
import { COMPLAINTS, complains } from '../../../src/core/arrived/complaints.ts';
import { allCandidates } from '../../../src/core/arrived/fit.ts';
import { likeness, oddsOf, patientTo, SURE } from '../../../src/core/arrived/compare.ts';
import { saySeen } from '../../../src/core/arrived/say-seen.ts';
import { CAUSE_WORDS } from '../../../src/core/arrived/words.ts';
import { ask } from './ask.ts';

const firstOf = (sent: string, seen: string): string =>
  ask(sent, seen).causes[0]?.cause ?? ask(sent, seen).state;

describe('the answer to bytes that are known', () => {
  test('says that all arrived where they are the same, and as whole messages too', () => {
    expect(ask('90 3C 40', '90 3C 40').state).toBe('as sent');
    // A monitor of whole messages writes every status byte out.
    expect(ask('90 3C 40 3E 40', '90 3C 40 90 3E 40').state).toBe('as sent');
  });

  test('says that nothing arrived, that nothing was given, and that nothing fits', () => {
    expect(ask('90 3C 40', '').state).toBe('nothing arrived');
    expect(ask('', '').state).toBe('nothing given');
    expect(ask('90 3C 40 80 3C 40 C0 05', 'E3 17 2A 5B 71 66 0D 9C')).toMatchObject({
      state: 'fits nothing',
      causes: [],
    });
  });

  test('counts channels and presets', () => {
    expect(firstOf('90 3C 40 80 3C 40', '91 3C 40 81 3C 40')).toBe('channel count');
    expect(firstOf('B0 00 01 C0 05', 'B0 00 01 C0 04')).toBe('program count');
    expect(ask('C0 05', 'C0 06').causes[0]?.strength).toBe('one more is seen than sent');
  });

  test('knows a filter from a loss, and a poll of an empty port', () => {
    expect(firstOf('F8 90 3C 40 F8 80 3C 40 F8', '90 3C 40 80 3C 40')).toBe('hidden real-time');
    expect(firstOf('90 3C 40', 'FF FF 90 FF 3C FF FF 40')).toBe('empty as FF');
  });

  test('shows of each cause the bytes that it gives, and a line that can be drawn', () => {
    const { causes } = ask('90 3C 40', '00 30 00');
    expect(saySeen(causes[0]?.gives ?? [])).toBe('00 30 00');
    for (const { gives, trace, words } of causes) {
      expect(gives).toBeDefined();
      expect(trace?.bits).toHaveLength(30);
      expect(trace?.toSeconds).toBeGreaterThan(trace?.fromSeconds ?? NaN);
      expect(words.look).not.toBe('');
    }
  });

  test('shares sum to no more than 1, and the likeliest stands first', () => {
    const { causes } = ask('90 3C 40 80 3C 40', '90 3C 80');
    const shares = causes.map(({ probability }) => probability);
    expect(shares.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(1 + 1e-9);
    expect(shares.toSorted((one, other) => other - one)).toEqual(shares);
  });

  test('tells two apart by a message for which their simulations differ, or by how often they strike', () => {
    const fit = (cause: Cause, amount: number): Fit => {
      const candidate = allCandidates().find((one) => one.cause === cause && one.amount === amount);
      const [spacing] = USUAL_SPACINGS;
      if (!candidate || !spacing) throw new Error(`${cause}: has no candidate of ${amount}`);
      return { candidate, spacing, view: 'plain', likeness: 0 };
    };
    // Without running status in it both give the same; a reader that does not know it drops the second pair.
    expect(tellApart(fit('running status', 0), fit('hidden real-time', 0))).toBe(
      'Send 90 3C 40 3E 40: ‘The reader does not understand running status’ gives 90 3C 40, ‘The monitor hides real-time bytes’ gives 90 3C 40 3E 40.',
    );
    expect(tellApart(fit('running status', 0), fit('weak', 0.08))).toContain('fifty times');
    expect(tellApart(fit('full buffer', 0.08), fit('weak', 0.08))).toContain('look for a rule');
    expect(ask('90 88 00', 'F3 FE 00').apart).toContain('no log tells them apart');
  });
});

describe('words without bytes', () => {
  test('everything on channel 16 points to an empty port read as FF', () => {
    // By hand: -1 is FF in a byte, and its low half is 15, which is channel 16.
    expect(ask('', '', ['everything is channel 16']).causes[0]?.cause).toBe('empty as FF');
  });

  test('a preset that is one off points to how presets are counted, a missing clock to a filter', () => {
    expect(ask('', '', ['the channel is one off']).causes[0]?.cause).toBe('channel count');
    expect(ask('', '', ['the clock does not arrive']).causes[0]?.cause).toBe('hidden real-time');
  });

  test('add to what bytes say', () => {
    const bare = ask('90 3C 40 80 3C 40', '90 3C 40').causes.map(({ cause }) => cause);
    const fast = ask('90 3C 40 80 3C 40', '90 3C 40', ['slow works, fast does not']).causes;
    expect(bare).toContain('full buffer');
    expect(fast[0]?.cause).toBe('full buffer');
  });

  test('hold of what a cause makes of a phrase, by hand', () => {
    const sent = [0x90, 60, 64, 0x80, 60, 64];
    expect(complains('notes stick', 'weak', sent, [0x90, 60, 64])).toBe(true);
    expect(complains('notes stick', 'weak', sent, sent)).toBe(false);
    expect(complains('wrong notes', 'weak', sent, [0x90, 62, 64])).toBe(true);
    expect(complains('nothing arrives', 'weak', sent, [])).toBe(true);
    expect(complains('the channel is one off', 'weak', sent, [0x91, 60, 64, 0x81, 60, 64])).toBe(true);
    expect(COMPLAINTS.filter((one) => complains(one, 'upside down', sent, sent))).toEqual([]);
  });
});

describe('the list of causes', () => {
  test('has words and a candidate for each', () => {
    for (const cause of CAUSES) {
      expect(CAUSE_WORDS[cause].name).not.toBe('');
      expect(
        allCandidates().some((one) => one.cause === cause),
        cause,
      ).toBe(true);
    }
  });
});

describe('how well a list foretells another', () => {
  test('is the sum of what each byte costs along the cheapest way', () => {
    // By hand: two the same, one lost.
    const same = Math.log(1 - SURE.changed - SURE.lost - SURE.extra);
    expect(likeness(3, [1, 3], oddsOf([1, 2, 3], SURE))).toBeCloseTo(2 * same + Math.log(SURE.lost), 10);
    // One the same, one extra of 256 codes.
    expect(likeness(1, [9, 1], oddsOf([1], SURE))).toBeCloseTo(same + Math.log(SURE.extra / 256), 10);
    expect(likeness(0, [], oddsOf([], SURE))).toBe(0);
  });

  test('counts in that a stretch of lost bytes ends, where one lost byte brings the next', () => {
    // By hand: of 1 2 3 4 the middle two are lost, the second with 3 of 4, and 4 is seen again with the 1 of 4 that is left.
    const odds = { ...oddsOf([1, 2, 3, 4], SURE), lostAgain: Math.log(0.75) };
    const same = Math.log(1 - SURE.changed - SURE.lost - SURE.extra);
    const [stretch, again] = [Math.log(SURE.lost) + Math.log(0.75), Math.log(0.25)];
    expect(likeness(4, [1, 4], odds)).toBeCloseTo(2 * same + stretch + again, 10);
    // At the end of a list nothing is seen again.
    expect(likeness(4, [1, 2], odds)).toBeCloseTo(2 * same + stretch, 10);
  });

  test('is given up below its floor', () => {
    expect(likeness(3, [7, 8, 9], oddsOf([1, 2, 3], SURE), patientTo(-5))).toBe(-Infinity);
  });
});
