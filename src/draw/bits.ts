/**
 * The current of one byte as a line: one step a bit.
 */

/** A row of bits on `width` by `height` pixels; current is on for a 0 and drawn `room` below the top edge. */
interface BitTraceInput {
  /** true is a 1: the loop is dark. */
  readonly bits: readonly boolean[];
  readonly width: number;
  readonly height: number;
  /** Paper above the highest and below the lowest line, pixels. */
  readonly room: number;
}

/** The path of the current: high while a 0 is sent, low while a 1 is. Empty for no bits. */
export function bitTrace({ bits, width, height, room }: BitTraceInput): string {
  const cell = width / bits.length;
  const heightOf = (bit: boolean): number => (bit ? height - room : room);
  return bits
    .map((bit, at) => `${at === 0 ? `M0 ${heightOf(bit)}` : `V${heightOf(bit)}`}H${(at + 1) * cell}`)
    .join('');
}
