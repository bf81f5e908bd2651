import { expect, test } from 'vitest';
import { drawTiming } from '../../src/draw/timing.ts';

const INPUT = {
  width: 720,
  fromSeconds: -16e-6,
  toSeconds: 352e-6,
  bits: Array.from({ length: 10 }, (_, bit) => ({
    bit,
    level: bit % 2 === 1,
    fromSeconds: bit * 32e-6,
    toSeconds: (bit + 1) * 32e-6,
  })),
  amounts: [
    [0, 0],
    [1e-6, 5e-3],
    [350e-6, 0],
  ],
  unit: 'mA',
  thresholds: [{ amount: 2e-3, text: 'on from 2 mA' }],
  output: { before: true, edges: [{ seconds: 2e-6, level: false }] },
  samples: [{ seconds: 16e-6, level: false }],
  reports: [{ fromSeconds: 0, toSeconds: 320e-6, text: 'AA', good: true }],
} as const;

test('where the bytes are asked, only the current is drawn, bit by bit, with no word on any bit', () => {
  const asked = drawTiming({ ...INPUT, asked: true });
  expect(asked.rows.map(({ name }) => name)).toEqual(['current in the LED, mA']);
  expect(asked.cells.map(({ text }) => text)).toEqual(Array.from({ length: 10 }, () => ''));
  expect([asked.sent, asked.output]).toEqual(['', '']);
  expect([asked.votes, asked.reports]).toEqual([{ high: '', low: '' }, []]);
  expect(asked.thresholds.map(({ text }) => text)).toEqual(['on from 2 mA']);
});

test('the picture that is asked is as high as its one row, and its current has the same shape as in the whole one', () => {
  const [asked, whole] = [drawTiming({ ...INPUT, asked: true }), drawTiming(INPUT)];
  // Name 18, row 110, axis 34 pixels.
  expect(asked.height).toBe(162);
  const shift = (whole.rows[1]?.top ?? 0) - (asked.rows[0]?.top ?? 0);
  const heights = (path: string): readonly number[] =>
    [...path.matchAll(/,(-?[\d.]+)/g)].map(([, y]) => Number(y));
  expect(heights(asked.current).map((y) => y + shift)).toEqual(heights(whole.current));
  expect(whole.cells.map(({ text }) => text).join('')).toBe('S10101010E');
});
