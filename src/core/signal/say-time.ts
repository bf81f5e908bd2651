/** Times on the wire in words. */
import { BITS_PER_FRAME, bitSecondsOf } from './frames.ts';

/** Microseconds with one decimal: '32.0 µs'; a moment before the first is negative, with a real minus sign. */
export function sayMicroseconds(seconds: number): string {
  return `${(seconds * 1e6).toFixed(1).replace('-', '−')} µs`;
}

/** How long so many bytes take, one right after the other by the standard's clock: '0.64 ms' for two (MIDI 1.0: 31 250 bits a second). */
export function sayOnWire(bytes: number): string {
  return `${(bytes * BITS_PER_FRAME * bitSecondsOf({}) * 1e3).toFixed(2)} ms`;
}
