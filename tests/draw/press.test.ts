import { describe, expect, test } from 'vitest';
import { drawPress } from '../../src/draw/press.ts';
import { textWidth } from '../../src/draw/text.ts';
import type { PressInput, PressRow } from '../../src/draw/press.ts';

const row = (name: string, delay: number, own: number): PressRow => ({
  name,
  words: '',
  arrivesSeconds: own < 0 ? undefined : (own + 1) * 1e-3 + delay,
  spans: [0, 1, 2].map((at) => ({
    fromSeconds: at * 1e-3 + delay,
    toSeconds: (at + 1) * 1e-3 + delay,
    own: at === own,
    text: String(at + 1),
  })),
});

/** A sender and two devices; the second hears everything 1 ms later, so the last message ends after 4 ms. */
const INPUT: PressInput = {
  width: 420,
  rows: [row('sender', 0, -1), row('one', 0, 2), row('two', 1e-3, 1)],
  limitSeconds: 0.1,
};

describe('The figure of one press', () => {
  test('has one scale for all rows, from 10 pixels at the left to 10 at the right', () => {
    const drawing = drawPress(INPUT);
    // 400 pixels for 4 ms: 100 a millisecond.
    expect(drawing.rows[0]?.spans.map(({ x, width }) => [x, width])).toEqual([
      [10, 100],
      [110, 100],
      [210, 100],
    ]);
    expect(drawing.rows[2]?.spans[0]?.x).toBe(110);
    expect(drawing.rows.map(({ arrivesX }) => arrivesX)).toEqual([undefined, 310, 310]);
    expect(drawing.ticks.find(({ text }) => text === '2')?.x).toBe(210);
  });

  test('keeps rows, headings and axis apart', () => {
    const { rows, axisY, height } = drawPress(INPUT);
    rows.forEach((one, at) => {
      const next = rows[at + 1];
      expect(one.headingY).toBeLessThan(one.top);
      const bottom = one.top + one.height;
      expect(bottom).toBeLessThan(next ? next.headingY - 12 : axisY);
    });
    expect(axisY).toBeLessThan(height);
  });

  test('shows a limit that lies near, and leaves one out that would shrink everything', () => {
    expect(drawPress(INPUT).limitX).toBeUndefined();
    expect(drawPress({ ...INPUT, limitSeconds: 2e-3 }).limitX).toBe(210);
    // At 5 ms the limit is the end of the stretch.
    const far = drawPress({ ...INPUT, limitSeconds: 5e-3 });
    expect(far.limitX).toBe(410);
    expect(far.rows[0]?.spans[0]?.width).toBeCloseTo(80, 9);
  });

  test('numbers a span only where the number fits', () => {
    const narrow = drawPress({ ...INPUT, width: 60 });
    expect(narrow.rows[0]?.spans.map(({ text }) => text)).toEqual(['', '', '']);
    expect(drawPress(INPUT).rows[0]?.spans.map(({ text }) => text)).toEqual(['1', '2', '3']);
  });

  test('shortens a name that would run into what stands at the right', () => {
    const long = {
      ...row('a very long name of a device that goes on and on', 0, 1),
      words: 'has it at 1.92 ms',
    };
    const { rows } = drawPress({ ...INPUT, width: 320, rows: [long] });
    expect(rows[0]?.name).toMatch(/^a very long.*[^ ]…$/);
    // 320 pixels less the sides of 10 and the 12 between, shared by both at 13 pixels.
    expect(textWidth(`${rows[0]?.name ?? ''}${long.words}`, 13)).toBeLessThanOrEqual(288);
    expect(drawPress(INPUT).rows[1]?.name).toBe('one');
  });

  test('refuses a press without a message', () => {
    expect(() => drawPress({ width: 300, rows: [], limitSeconds: 1 })).toThrow(
      'press drawing: needs a message that ends after 0 s, got none',
    );
  });
});
