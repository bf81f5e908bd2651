import { describe, expect, test } from 'vitest';
import { boardFrom } from '../../src/core/learn/index.ts';
import { drawBoardShape } from '../../src/draw/board-shape.ts';

const shape = (layout: 'chain' | 'hub' | 'both', pedals: number) =>
  drawBoardShape(boardFrom({ layout, pedals }));

describe('The picture of how a board hangs together', () => {
  test('has a box for each device and a lead for each that listens', () => {
    for (const pedals of [1, 4, 6]) {
      expect(shape('chain', pedals).boxes).toHaveLength(pedals + 1);
      expect(shape('chain', pedals).leads).toHaveLength(pedals);
      // The hub is one box more, and so one lead more.
      expect(shape('hub', pedals).boxes).toHaveLength(pedals + 2);
      expect(shape('hub', pedals).leads).toHaveLength(pedals + 1);
    }
  });

  test('goes straight down for a chain, and side by side behind a hub', () => {
    const rows = (drawn: ReturnType<typeof shape>) => new Set(drawn.boxes.map(({ y }) => y)).size;
    expect(rows(shape('chain', 4))).toBe(5);
    expect(rows(shape('hub', 4))).toBe(3);
    expect(rows(shape('both', 6))).toBe(5);
    expect(shape('chain', 4).leads.every((lead) => /^M[\d.]+ [\d.]+V[\d.]+$/.test(lead))).toBe(true);
  });

  test('lets no two boxes touch, and stays inside its size', () => {
    for (const layout of ['chain', 'hub', 'both'] as const) {
      const { boxes, width, height } = shape(layout, 6);
      boxes.forEach((one, at) => {
        expect(one.x).toBeGreaterThanOrEqual(0);
        expect(one.x + one.width).toBeLessThanOrEqual(width);
        expect(one.y + one.height).toBeLessThanOrEqual(height);
        for (const other of boxes.slice(at + 1))
          expect(
            one.x + one.width < other.x || other.x + other.width < one.x || one.y !== other.y,
            `${layout}: ${one.name} and ${other.name}`,
          ).toBe(true);
      });
    }
  });
});
