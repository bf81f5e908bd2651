/** How much of the time a line is active while clock streams: what a slow meter averages over. */
import { BAUD, BITS_PER_FRAME, REAL_TIME_BYTES, frameBit } from '../signal/index.ts';

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
export const CLOCK_SHARE = activeShare(REAL_TIME_BYTES.clock, (CLOCK_TEMPO / 60) * CLOCKS_PER_BEAT);
