/** How much of the time a line is active while something is sent: what a slow meter, and an eye, averages over. */
import { BAUD, BITS_PER_FRAME, REAL_TIME_BYTES, frameBit } from '../signal/index.ts';
import type { Power } from './power.ts';

/** Clock bytes a quarter note (from memory of the MIDI 1.0 Detailed Specification). */
const CLOCKS_PER_BEAT = 24;

/** Tempo that the workbook streams at, beats a minute. */
const CLOCK_TEMPO = 120;

/** Share of the time that the line is active (current on, bit 0) while one byte is sent over and over, 0 to 1. */
export function activeShare(byte: number, bytesPerSecond: number): number {
  const zeros = Array.from({ length: BITS_PER_FRAME }, (_, bit) => frameBit(byte, bit)).filter(
    (level) => !level,
  );
  return (zeros.length / BAUD) * bytesPerSecond;
}

/** The share for clock at 120 beats a minute: 48 bytes a second of F8, each active for 4 bits of 32 us: 0.6144 %. */
const CLOCK_SHARE = activeShare(REAL_TIME_BYTES.clock, (CLOCK_TEMPO / 60) * CLOCKS_PER_BEAT);

/**
 * How long an eye gathers light, seconds: a brief flash looks like its light spread over so long (Blondel and Rey, as the IALA
 * dictionary gives it: 0.1 to 0.3 s, 0.2 usual).
 */
const EYE_SECONDS = 0.2;

/** A note on: channel 1, middle C, usual velocity (MIDI 1.0 Detailed Specification 4.2.1). */
const NOTE_ON = [0x90, 0x3c, 0x40] as const;

/** The share for one note within the time of an eye: 7, 5 and 8 bits of 32 us in 0.2 s: 0.32 %. */
const NOTE_SHARE = NOTE_ON.reduce((sum, byte) => sum + activeShare(byte, 1 / EYE_SECONDS), 0);

/** Share of the time that the line is active, 0 to 1. */
export function shareOf(power: Power): number {
  switch (power) {
    case 'off':
    case 'idle':
      return 0;
    case 'clock':
      return CLOCK_SHARE;
    case 'notes':
      return NOTE_SHARE;
  }
}
