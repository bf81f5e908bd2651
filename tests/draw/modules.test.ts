import { expect, test } from 'vitest';
import { modulesPath } from '../../src/draw/modules.ts';

test('dark neighbours in a row are one box, and light modules are left out', () => {
  expect(
    modulesPath([
      [true, true, false],
      [false, false, false],
      [true, false, true],
    ]),
  ).toBe('M0 0h2v1h-2zM0 2h1v1h-1zM2 2h1v1h-1z');
});

test('a code that is not square is refused', () => {
  expect(() => modulesPath([[true], [true]])).toThrow('code: row 0 must have 2 modules, got 1');
});
