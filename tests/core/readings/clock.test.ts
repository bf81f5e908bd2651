/** What share of the time a line is active, counted by hand from the frames of MIDI 1.0. */
import { describe, expect, it } from 'vitest';
import { activeShare, shareOf } from '../../../src/core/readings/clock.ts';

/** Seconds of a bit at 31 250 bits a second. */
const BIT = 32e-6;
/** Bytes a second where one follows the other: ten bits each. */
const FULL = 3125;

describe('a byte over and over', () => {
  it('is active for its start bit and its zeros: nine bits of 00, one of FF, four of F8, half of 55', () => {
    expect(activeShare(0x00, FULL)).toBeCloseTo(0.9, 12);
    expect(activeShare(0xff, FULL)).toBeCloseTo(0.1, 12);
    expect(activeShare(0xf8, FULL)).toBeCloseTo(0.4, 12);
    expect(activeShare(0x55, FULL)).toBeCloseTo(0.5, 12);
  });

  it('has with its complement one start bit each and eight zeros between them: ten bits', () => {
    for (let byte = 0; byte < 256; byte++)
      expect(activeShare(byte, 1) + activeShare(255 - byte, 1)).toBeCloseTo(10 * BIT, 12);
  });

  it('counts as often as it is sent', () => {
    expect(activeShare(0x90, 20)).toBeCloseTo(20 * activeShare(0x90, 1), 15);
    expect(activeShare(0x90, 0)).toBe(0);
  });
});

describe('what devices do while a reading is taken', () => {
  it('is active for nothing of the time when off or at rest', () => {
    expect([shareOf('off'), shareOf('idle')]).toEqual([0, 0]);
  });

  it('is 48 clocks a second of four bits at 120 beats a minute: 0.6144 %', () => {
    expect(shareOf('clock')).toBeCloseTo(((120 * 24) / 60) * 4 * BIT, 12);
    expect(shareOf('clock')).toBeCloseTo(0.006144, 9);
  });

  it('is twenty bits of one note on 90 3C 40 in the fifth of a second that an eye gathers light (Blondel and Rey): 0.32 %', () => {
    // Zeros: 1001 0000 six, 0011 1100 four, 0100 0000 seven; a start bit each.
    expect(shareOf('notes')).toBeCloseTo(((7 + 5 + 8) * BIT) / 0.2, 12);
  });
});
