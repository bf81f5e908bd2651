import { expect, test } from 'vitest';
import { sayMicroseconds, sayOnWire } from '../../../src/core/signal/index.ts';

test('a byte of ten bits at 31 250 bits a second takes 0.32 ms (MIDI 1.0 Detailed Specification, hardware)', () => {
  expect(sayOnWire(1)).toBe('0.32 ms');
  expect(sayOnWire(3)).toBe('0.96 ms');
});

test('a moment is said in microseconds, before the start with a real minus sign', () => {
  expect(sayMicroseconds(32e-6)).toBe('32.0 µs');
  expect(sayMicroseconds(-16e-6)).toBe('−16.0 µs');
});
