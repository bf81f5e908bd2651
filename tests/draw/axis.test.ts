import { describe, expect, test } from 'vitest';
import { straightAxis } from '../../src/draw/axis.ts';

describe('A straight axis', () => {
  test('maps values to pixels and back, upside down too', () => {
    const right = straightAxis([2, 6], [10, 410]);
    expect([2, 3, 6].map(right.at)).toEqual([10, 110, 410]);
    expect(right.back(210)).toBe(4);
    const up = straightAxis([0, 5e-3], [200, 100]);
    expect(up.at(5e-3)).toBe(100);
    expect(up.back(150)).toBeCloseTo(2.5e-3, 12);
  });

  test('has ticks at round values, not more than asked for by more than one', () => {
    expect(straightAxis([0, 4.8], [0, 1]).ticks(5)).toEqual([0, 1, 2, 3, 4]);
    expect(straightAxis([0, 4.8], [0, 1]).ticks(12)).toEqual([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5]);
    expect(straightAxis([-0.25, 0.35], [0, 1]).ticks(6)).toEqual([-0.2, -0.1, 0, 0.1, 0.2, 0.3]);
    for (let count = 1; count < 40; count++)
      expect(straightAxis([1.7e-6, 9.3e-3], [0, 1]).ticks(count).length).toBeLessThanOrEqual(count + 1);
  });

  test('without a length is refused', () => {
    expect(() => straightAxis([1, 1], [0, 9])).toThrow('axis: must end after 1, got 1');
  });
});
