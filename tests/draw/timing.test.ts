/** A byte in time: 0x01 by hand, its start bit, a one, seven zeros and the stop bit, 32 µs each, on 374 pixels. */
import { describe, expect, test } from 'vitest';
import { drawTiming } from '../../src/draw/timing.ts';

const BIT = 32e-6;
/** Left of the axis stand 46 pixels, right of it 8: 320 are left, one a microsecond. */
const WIDTH = 46 + 320 + 8;

const bits = [false, true, ...Array<boolean>(7).fill(false), true].map((level, bit) => ({
  bit,
  level,
  fromSeconds: bit * BIT,
  toSeconds: (bit + 1) * BIT,
}));
const byte = {
  width: WIDTH,
  fromSeconds: 0,
  toSeconds: 320e-6,
  bits,
  amounts: [
    [0, 0],
    [32e-6, 5e-3],
    [64e-6, 0],
  ],
  unit: 'mA',
  thresholds: [{ amount: 2.5e-3, text: 'lit from here' }],
  output: { before: true, edges: [{ seconds: 10e-6, level: false }] },
  samples: [
    { seconds: 16e-6, level: false },
    { seconds: 400e-6, level: true },
  ],
  reports: [{ fromSeconds: 0, toSeconds: 320e-6, text: '01', good: true }],
} as const;

describe('A stretch of a signal', () => {
  const drawing = drawTiming(byte);
  const row = (name: RegExp) => drawing.rows.find((one) => name.test(one.name)) ?? { top: NaN, height: NaN };

  test('has a pixel a microsecond here, and tells the moment under a place again, held inside what is shown', () => {
    expect([0, 160e-6, 320e-6].map((seconds) => drawing.xOf(seconds))).toEqual([46, 206, 366]);
    expect(drawing.secondsAt(206)).toBeCloseTo(160e-6, 12);
    expect([drawing.xOf(1), drawing.xOf(-1)]).toEqual([366, 46]);
    expect(drawing.secondsAt(0)).toBeCloseTo(0, 12);
  });

  test('names each bit in its cell, and leaves words out where a cell is too narrow for them', () => {
    expect(drawing.cells.map(({ text }) => text).join('')).toBe('S10000000E');
    expect(drawing.cells.map(({ x, width }) => [x, width]).slice(0, 2)).toEqual([
      [46, 32],
      [78, 32],
    ]);
    const { top, height } = row(/bits sent/);
    expect(drawing.grid).toMatch(`M46,${top}H78v${height}H46zM78,${top}H110v${height}H78z`);
    const narrow = drawTiming({ ...byte, width: 46 + 160 + 8 });
    expect(narrow.cells.map(({ text }) => text).join('')).toBe('');
  });

  test('draws the current from nothing to the most, and its threshold half way up', () => {
    const { top, height } = row(/current/);
    const [, first = '', peak = ''] = /^M(.*)L(.*)L/.exec(drawing.current) ?? [];
    const [x = NaN, y = NaN] = first.split(',').map(Number);
    expect([x, y]).toEqual([46, top + height]);
    const [px = NaN, py = NaN] = peak.split(',').map(Number);
    // The axis ends 8 % above the most.
    expect(px).toBeCloseTo(78, 3);
    expect((top + height - py) / height).toBeCloseTo(1 / 1.08, 3);
    const [threshold] = drawing.thresholds;
    expect((top + height - (threshold?.y ?? NaN)) * 2).toBeCloseTo(top + height - py, 2);
  });

  test('steps at the edges of the output, and shows the votes that lie inside, each at its level', () => {
    const { top, height } = row(/output/);
    const end = top + height - 6;
    // A curve of steps names its last point twice.
    expect(drawing.output).toBe(`M46,${top + 6}L56,${top + 6}L56,${end}L366,${end}L366,${end}`);
    // A dot of 6 pixels about the place of the vote.
    expect(drawing.votes).toEqual({ high: '', low: `M59,${end}a3,3 0 1 0 6,0a3,3 0 1 0 -6,0z` });
  });

  test('keeps its rows apart and on the sheet', () => {
    const edges = drawing.rows.flatMap(({ top, height }) => [top, top + height]);
    expect(edges).toEqual([...edges].sort((a, b) => a - b));
    expect(edges.at(-1)).toBeLessThan(drawing.height);
    expect(drawing.reports).toEqual([{ x: 46, width: 320, text: '01', good: true }]);
  });

  test('must last some time', () => {
    expect(() => drawTiming({ ...byte, toSeconds: 0 })).toThrow(
      'timing drawing: must end after 0 s, got 0 s',
    );
  });
});
