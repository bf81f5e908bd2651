/** What a fault does to a line, how bytes are laid out on it, and what its beginning tells. */
import { describe, expect, test } from 'vitest';
import { hum, joined, upsideDown, withoutPulses } from '../../../src/core/arrived/line-changes.ts';
import { lineCandidates } from '../../../src/core/arrived/line-causes.ts';
import { SPACINGS, USUAL_SPACINGS, headOf, layOut } from '../../../src/core/arrived/spacing.ts';
import type { Spacing } from '../../../src/core/arrived/spacing.ts';
import { weakOdds } from '../../../src/core/arrived/weak.ts';
import { sendBytes } from '../../../src/core/signal/frames.ts';
import { readLine } from '../../../src/core/signal/quick-reader.ts';
import { levelAt } from '../../../src/core/signal/waveform.ts';
import { seededRandom } from '../../support/random.ts';

const random = seededRandom(21);
/** Messages apart, and all bytes without a pause. */
const [APART, AT_ONCE] = USUAL_SPACINGS as unknown as readonly [Spacing, Spacing];
const someBytes = (count: number): number[] => Array.from({ length: count }, () => random.integer(0, 255));
const values = (read: ReturnType<typeof readLine>): readonly number[] => read.map(({ value }) => value);

describe('a changed line', () => {
  test('turned over twice is the line', () => {
    const { wave } = sendBytes(someBytes(8));
    expect(upsideDown(upsideDown(wave))).toEqual(wave);
  });

  test('of two senders is at 0 wherever either of them is, whichever is named first', () => {
    const one = sendBytes(someBytes(6)).wave;
    const other = sendBytes(someBytes(6), { startSeconds: 77e-6 }).wave;
    const both = joined(one, other);
    expect(joined(other, one)).toEqual(both);
    for (let at = 0; at < 200; at += 1) {
      const seconds = at * 11e-6 + 1e-7;
      expect(levelAt(both, seconds), `${seconds} s`).toBe(levelAt(one, seconds) && levelAt(other, seconds));
    }
  });

  test('with a silent second sender stays as it is', () => {
    const { wave } = sendBytes(someBytes(5));
    expect(joined(wave, { before: true, edges: [] })).toEqual(wave);
  });

  test('without any of its 0s rests at 1, and with all of them is the line', () => {
    const { wave } = sendBytes([0x55, 0x00]);
    expect(withoutPulses(wave, () => false).edges).toEqual([]);
    expect(withoutPulses(wave, () => true)).toEqual(wave);
    // By hand: 55 has five stretches of 0, the start bit and every second data bit; 00 has one.
    let asked = 0;
    withoutPulses(wave, () => (asked += 1) > 0);
    expect(asked).toBe(6);
  });

  test('of hum is at 0 for its share of each period', () => {
    const { before, edges } = hum(50, 0.4, 0, 0.1);
    expect([before, edges.length]).toEqual([true, 10]);
    const low = edges.reduce((sum, { seconds, level }) => sum + (level ? seconds : -seconds), 0);
    expect(low).toBeCloseTo(0.4 * 0.1, 9);
  });
});

describe('bytes laid on a line', () => {
  test('are read as themselves with every spacing', () => {
    const sent = [0x90, 0x3c, 0x40, 0x80, 0x3c, 0x00, 0xc0, 0x05];
    for (const spacing of SPACINGS)
      expect(values(readLine(layOut(sent, spacing).wave)), spacing.words).toEqual(sent);
  });

  test('pause inside a message and between two as the spacing says, and not at a clock inside', () => {
    const spacing = { insideSeconds: 1e-4, betweenSeconds: 1e-3, words: '' };
    const { bytes } = layOut([0x90, 0x3c, 0xf8, 0x40, 0xc0, 0x05], spacing);
    const gaps = bytes.slice(1).map(({ startSeconds }, at) => startSeconds - (bytes[at]?.endSeconds ?? NaN));
    [1e-4, 1e-4, 1e-4, 1e-3, 1e-4].forEach((gap, at) => expect(gaps[at], `gap ${at}`).toBeCloseTo(gap, 9));
  });

  test('have a beginning whose reading is that of the whole line, for every cause of the line', () => {
    const frames = layOut(someBytes(30), AT_ONCE);
    const head = headOf(frames);
    if (!head) throw new Error('30 bytes: need a beginning');
    for (const { cause, amount, change, receiver } of lineCandidates().filter((_, at) => at % 7 === 0)) {
      const longest = 1.3e-3;
      const begins = readLine(change(head.wave), receiver).filter(
        ({ seconds }) => seconds + longest <= head.untilSeconds,
      );
      const whole = readLine(change(frames.wave), receiver);
      expect(whole.slice(0, begins.length), `${cause} ${amount}`).toEqual(begins);
    }
  });

  test('have none where it would save little', () => {
    expect(headOf(layOut(someBytes(23), APART))).toBeUndefined();
    expect(headOf(layOut(someBytes(24), APART))?.wave.edges.length).toBeGreaterThan(0);
  });
});

describe('a weak line', () => {
  test('shares out chances that sum to 1 over all that may be read of a byte', () => {
    for (const byte of [0x00, 0x55, 0x7f, 0x90]) {
      const odds = weakOdds([byte], 0.1, true);
      let sum = Math.exp(odds.lost(0));
      // What cannot be read has a small chance of its own, which is left out here.
      const least = Math.log(0.01 / 512) + 1e-9;
      for (let code = 0; code < 512; code += 1)
        if (odds.pair(0, code) > least) sum += Math.exp(odds.pair(0, code));
      expect(sum, `${byte}`).toBeGreaterThan(0.99);
      expect(sum, `${byte}`).toBeLessThan(1.01);
    }
  });

  test('keeps a byte whole with the chance that no stretch of 0 is missed', () => {
    // By hand: FF has one stretch of 0, its start bit; 00 has one; 55 has five.
    for (const [byte, pulses] of [
      [0xff, 1],
      [0x00, 1],
      [0x55, 5],
    ] as const)
      expect(Math.exp(weakOdds([byte], 0.1, true).pair(0, byte)), `${byte}`).toBeCloseTo(0.9 ** pulses, 9);
  });
});
