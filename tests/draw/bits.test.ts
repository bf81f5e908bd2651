import { describe, expect, test } from 'vitest';
import { bitTrace } from '../../src/draw/bits.ts';

const line = { width: 100, height: 40, room: 4 };

describe('The current of a byte as a line', () => {
  test('stands high for a 0, where current flows, and low for a 1', () => {
    expect(bitTrace({ ...line, bits: [false, true] })).toBe('M0 4H50V36H100');
    expect(bitTrace({ ...line, bits: [true, false] })).toBe('M0 36H50V4H100');
  });

  test('runs on where two bits are alike', () => {
    expect(bitTrace({ ...line, bits: [false, false, true, true] })).toBe('M0 4H25V4H50V36H75V36H100');
  });

  test('is empty without bits', () => {
    expect(bitTrace({ ...line, bits: [] })).toBe('');
  });
});
