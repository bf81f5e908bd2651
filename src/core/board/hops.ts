/** What each hop adds: delay, and how much it shifts one edge against the other. */
import { delaysOf, edgeShiftSeconds } from '../wiring/index.ts';
import { BAUD, BITS_PER_FRAME, WORST_CLOCKS, edgeBudgetSeconds } from '../signal/index.ts';
import { outputOf, inputOf, passesOn } from '../plan/index.ts';
import type { BoardGraph, Feed } from '../plan/index.ts';

/** One byte on the wire, seconds: ten bits of 32 us (MIDI 1.0 Detailed Specification 4.2.1, hardware). */
export const BYTE_SECONDS = BITS_PER_FRAME / BAUD;

/** What a receiver on a board bears of shifted edges, seconds: both clocks at the standard's bound, the worse way round. */
export const EDGE_BUDGET_SECONDS = edgeBudgetSeconds(WORST_CLOCKS);

/** What one link of a path adds when a message has come to its far end. */
export interface HopTiming {
  readonly feed: Feed;
  /** How the device at the near end passed the message on; 'own' for the sender itself. */
  readonly by: 'own' | 'hardware' | 'software';
  /** From the end of a byte at the device before to its end at this one, seconds. */
  readonly delaySeconds: number;
  /** Shift of one edge against the other since the edges were last made afresh, this receiver's own included, seconds. */
  readonly shiftSeconds: number;
}

/** Each link of a path with its delay and the shift of edges so far. A software THRU makes its edges afresh. */
export function hopTimings(graph: BoardGraph, path: readonly Feed[]): readonly HopTiming[] {
  let shiftSeconds = 0;
  return path.map((feed, at) => {
    const device = graph.devices[feed.fromDevice];
    const output = outputOf(graph, feed);
    const passed = device && at > 0 ? passesOn(device, output) : 'nothing';
    const by = passed === 'nothing' ? 'own' : passed;
    const input = inputOf(graph, feed);
    const { toOnSeconds, toOffSeconds } = delaysOf(input);
    if (by === 'software') shiftSeconds = 0;
    shiftSeconds += edgeShiftSeconds(input);
    const resent = by === 'software' ? BYTE_SECONDS + output.latencySeconds : 0;
    return { feed, by, delaySeconds: Math.max(toOnSeconds, toOffSeconds) + resent, shiftSeconds };
  });
}
