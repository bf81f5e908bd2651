import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignBytes } from '../../../src/core/signal/align.ts';

const BYTE = 320e-6;
/** Bytes back to back from a moment on, in byte times. */
const timed = (values: readonly number[], from = 0) =>
  values.map((value, at) => ({ value, startSeconds: (from + at) * BYTE }));
const values = fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 5 });

/** Pairs in short: 'a-b' by index, '-' for none. */
const laid = (sent: readonly number[], heard: readonly number[], late = 0.1) =>
  alignBytes(timed(sent), timed(heard, late), BYTE, BYTE / 2).map(
    (pair) => `${pair.sent ?? '-'}${pair.heard ?? '-'}`,
  );

/** The fewest changes by trying every way, time left aside: a byte lost or found counts 1, one changed 1.5. */
function fewest(sent: readonly number[], heard: readonly number[]): number {
  const [one, ...rest] = sent;
  const [other, ...more] = heard;
  if (one === undefined) return heard.length;
  if (other === undefined) return sent.length;
  return Math.min(
    (one === other ? 0 : 1.5) + fewest(rest, more),
    1 + fewest(rest, heard),
    1 + fewest(sent, more),
  );
}

describe('received bytes laid beside sent ones', () => {
  it('have every byte of both lists once, in order', () => {
    fc.assert(
      fc.property(values, values, (sent, heard) => {
        const pairs = alignBytes(timed(sent), timed(heard, 0.1), BYTE, BYTE / 2);
        expect(pairs.flatMap((pair) => pair.sent ?? [])).toEqual([...sent.keys()]);
        expect(pairs.flatMap((pair) => pair.heard ?? [])).toEqual([...heard.keys()]);
      }),
      { seed: 51 },
    );
  });

  it('need as few changes as trying every way finds, where nothing arrives before it was sent', () => {
    fc.assert(
      fc.property(values, values, (sent, heard) => {
        // All heard long after the last was sent, so that no pair is too early.
        const pairs = alignBytes(timed(sent), timed(heard, 20), BYTE, BYTE / 2);
        const changes = pairs.reduce((sum, pair) => {
          if (pair.sent === null || pair.heard === null) return sum + 1;
          return sum + (sent[pair.sent] === heard[pair.heard] ? 0 : 1.5);
        }, 0);
        // A byte time of lag weighs a thousandth, so 25 of them on five bytes stay below an eighth.
        expect(changes).toBeCloseTo(fewest(sent, heard), 9);
      }),
      { seed: 52 },
    );
  });

  it('are pair by pair where all is well', () => {
    expect(laid([1, 2, 3], [1, 2, 3])).toEqual(['00', '11', '22']);
    expect(laid([], [])).toEqual([]);
  });

  it('show a byte that was lost, one that was found and one that was changed', () => {
    expect(laid([1, 2, 3], [1, 3], 1)).toEqual(['00', '1-', '21']);
    expect(laid([1, 2], [1, 9, 2])).toEqual(['00', '-1', '12']);
    expect(laid([1, 2, 3], [1, 9, 3])).toEqual(['00', '11', '22']);
    expect(laid([1, 2], [])).toEqual(['0-', '1-']);
    expect(laid([], [1])).toEqual(['-0']);
  });

  it('take of two equal bytes the one that was sent nearer before', () => {
    // One of three 7s is heard, 2.1 byte times after the start: it is the third.
    expect(laid([7, 7, 7], [7], 2.1)).toEqual(['0-', '1-', '20']);
    expect(laid([7, 7, 7], [7], 0.1)).toEqual(['00', '1-', '2-']);
  });

  it('never lay a byte beside one that was sent after it came, but for the slack', () => {
    const early = alignBytes(timed([5], 1), timed([5], 0.4), BYTE, BYTE / 2);
    expect(early).toHaveLength(2);
    const within = alignBytes(timed([5], 1), timed([5], 0.6), BYTE, BYTE / 2);
    expect(within).toEqual([{ sent: 0, heard: 0 }]);
  });
});
