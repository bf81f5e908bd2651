import { sayBits, sayBytes, sayHex, unbroken, type Claims } from '../../../src/core/learn/index.ts';
import { bitCells } from '../../../src/core/signal/index.ts';
import { chord, neighbour, press } from './data.ts';

/** The bits of a byte that are dark, the start bit counted as 0. */
const darkBits = (byte: number): readonly number[] =>
  bitCells({ value: byte, startSeconds: 0, endSeconds: 1 })
    .filter(({ level }) => level)
    .map(({ bit }) => bit);

export const claims: Claims = {
  'a bit, a byte, a program change and a chord take what the standard says': () => [
    // MIDI 1.0 Detailed Specification 4.2.1: 31 250 bits a second, ten bits a byte; appendix A-1: seven bytes, not nine.
    [[sayBits(1), sayBytes(1), sayBytes(2)], ['32 µs', '320 µs', '640 µs'].map(unbroken)],
    [[sayBytes(9), sayBytes(7)], ['2.88 ms', '2.24 ms'].map(unbroken)],
  ],
  'three notes with running status are the seven bytes that the standard prints': () => [
    [sayHex(chord, true), unbroken('90 3C 27 40 2B 43 25')],
  ],
  'the byte 01 is dark right after the start bit, and 80 right before the stop bit': () => [
    [darkBits(0x01), [1, 9]],
    [darkBits(0x80), [8, 9]],
  ],
  'channel 1 and program 5 are C0 04, and one bit of the first byte turns for channel 2': () => [
    [sayHex(press), unbroken('C0 04')],
    [sayHex(neighbour), unbroken('C1 05')],
    [(0xc0 ^ 0xc1).toString(2), '1'],
  ],
};
