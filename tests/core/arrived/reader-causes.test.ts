/** What a reader makes of bytes that all arrive, worked out by hand from the rules of MIDI 1.0 4.2.1. */
import { describe, expect, test } from 'vitest';
import type { Cause } from '../../../src/core/arrived/causes.ts';
import { readerCandidates } from '../../../src/core/arrived/reader-causes.ts';
import { seededRandom } from '../../support/random.ts';
import { hex } from './ask.ts';

const bytes = (text: string): readonly number[] => hex(text).map(({ value }) => value);

/** The bytes that a reader of one cause makes of bytes in hex; `at` numbers the candidates of the cause. */
function understood(cause: Cause, at: number, sent: string): readonly number[] {
  const candidate = readerCandidates().filter((one) => one.cause === cause)[at];
  if (!candidate) throw new Error(`${cause}: has no candidate ${at}`);
  return candidate.understood(bytes(sent));
}

describe('a reader that does not know running status', () => {
  test.each([
    ['keeps messages with their own status', '90 3C 40 80 3C 00', '90 3C 40 80 3C 00'],
    ['drops pairs without one', '90 3C 40 3E 40 C0 05 06', '90 3C 40 C0 05'],
    ['shows a clock wherever it stands', '90 3C F8 40 3E F8 40', '90 3C F8 40 F8'],
    ['takes all data of an exclusive', 'F0 7E 7F 06 01 F7', 'F0 7E 7F 06 01 F7'],
    ['drops data before any status', '3C 40 90 3C 40', '90 3C 40'],
  ])('%s', (_, sent, seen) => {
    expect(understood('running status', 0, sent)).toEqual(bytes(seen));
  });
});

describe('a reader whose messages break at a clock', () => {
  test.each([
    ['passes over the rest of the data', 0, '90 3C F8 40 80 3C 00', '90 3C F8 80 3C 00'],
    ['drops the message whole', 1, '90 3C F8 40 80 3C 00', 'F8 80 3C 00'],
    ['takes the clock for data, without its highest bit', 2, '90 3C F8 80 3C 00', '90 3C 78 80 3C 00'],
  ])('%s', (_, at, sent, seen) => {
    expect(understood('real-time inside', at, sent)).toEqual(bytes(seen));
  });

  test('changes nothing where the clock stands between messages with their status', () => {
    for (const at of [0, 1, 2]) {
      const sent = '90 3C 40 F8 80 3C 00 F8 C0 05';
      expect(understood('real-time inside', at, sent), `way ${at}`).toEqual(bytes(sent));
    }
  });
});

describe('a reader that counts from the other end', () => {
  test('adds one to programs and to banks only, and stays within seven bits', () => {
    expect(understood('program count', 0, 'C0 05 B0 00 01 B0 07 01')).toEqual(
      bytes('C0 06 B0 00 01 B0 07 01'),
    );
    expect(understood('program count', 1, 'C0 00')).toEqual(bytes('C0 7F'));
    // Bank select is controller 0, its low part 32; controller 7 is volume (table III).
    expect(understood('program count', 2, 'C0 05 B0 00 01 B0 20 01 B0 07 01')).toEqual(
      bytes('C0 05 B0 00 02 B0 20 02 B0 07 01'),
    );
    expect(understood('program count', 4, 'C0 05 06 B0 00 01')).toEqual(bytes('C0 06 07 B0 00 02'));
  });

  test('moves the channel of every channel message, round from 16 to 1, and of nothing else', () => {
    expect(understood('channel count', 0, '9F 3C 40 F8 F1 10')).toEqual(bytes('90 3C 40 F8 F1 10'));
    expect(understood('channel count', 1, '80 3C 40')).toEqual(bytes('8F 3C 40'));
  });

  test('one up and one down undo each other', () => {
    const random = seededRandom(5);
    const [up, down] = readerCandidates().filter(({ cause }) => cause === 'channel count');
    for (let round = 0; round < 50; round += 1) {
      const sent = Array.from({ length: 12 }, () => random.integer(0, 255));
      expect(down?.understood(up?.understood(sent) ?? [])).toEqual(sent);
    }
  });
});

describe('a monitor that hides real-time', () => {
  test.each([
    ['all of it', 0, '90 3C 40'],
    ['clock and sensing', 1, 'FA 90 3C 40 FC'],
    ['clock', 2, 'FA 90 3C FE 40 FC'],
    ['sensing', 3, 'FA F8 90 3C 40 FC'],
  ])('hides %s', (_, at, seen) => {
    expect(understood('hidden real-time', at, 'FA F8 90 3C FE 40 FC')).toEqual(bytes(seen));
  });
});

test('no reader adds a byte, and none changes bytes that hold nothing it gets wrong', () => {
  const random = seededRandom(9);
  for (const { cause, understood: reads } of readerCandidates()) {
    for (let round = 0; round < 20; round += 1) {
      const sent = Array.from({ length: 20 }, () => random.integer(0, 255));
      expect(reads(sent).length, cause).toBeLessThanOrEqual(sent.length);
    }
    const plain = bytes('90 3C 40 80 3C 00 E0 00 40');
    if (cause !== 'channel count') expect(reads(plain), cause).toEqual(plain);
  }
});
