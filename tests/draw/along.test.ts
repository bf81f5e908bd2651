import { describe, expect, test } from 'vitest';
import { along } from '../../src/draw/index.ts';

describe('A length for an amount', () => {
  test('goes from one end to the other in a straight line', () => {
    const x = along(4, 10, 90);
    expect([x(0), x(1), x(2), x(4)]).toEqual([10, 30, 50, 90]);
  });

  test('stops at either end', () => {
    const x = along(4, 10, 90);
    expect([x(-1), x(5)]).toEqual([10, 90]);
  });

  test('refuses a bar without an amount', () => {
    expect(() => along(0, 0, 100)).toThrow('bar: the greatest amount must be more than 0, got 0');
    expect(() => along(NaN, 0, 100)).toThrow('bar: the greatest amount must be more than 0, got NaN');
  });
});
