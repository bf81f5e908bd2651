/** What each hop adds: delay, and how much it shifts one edge against the other. */
import type { Part } from '../wiring/index.ts';
import type { Status } from '../wiring/index.ts';
import { BAUD, BITS_PER_FRAME } from '../signal/index.ts';
import { outputOf, inputOf, passesOn } from '../plan/index.ts';
import type { BoardGraph, Feed } from '../plan/index.ts';

/** Delays of an optocoupler with the circuit round it, seconds. */
export interface PartDelays {
  readonly toOnSeconds: number;
  readonly toOffSeconds: number;
  readonly status: Status;
  readonly source: string;
}

/** Delays by part, as a device that is meant to be chained uses it. */
export const PART_DELAYS: Readonly<Record<Part, PartDelays>> = {
  '6N138': {
    toOnSeconds: 1.5e-6,
    toOffSeconds: 2.5e-6,
    status: 'P',
    source: 'with a resistor from base to emitter: common practice, no source',
  },
  H11L1: { toOnSeconds: 1e-6, toOffSeconds: 1.2e-6, status: 'M', source: 'data sheet H11L3M/D, from memory' },
  PC900V: { toOnSeconds: 1e-6, toOffSeconds: 2e-6, status: 'M', source: 'data sheet, from memory' },
  unknown: {
    toOnSeconds: 2e-6,
    toOffSeconds: 4e-6,
    status: 'D',
    source: 'worked back from the advice of the MIDI 1.0 specification: about three in a chain',
  },
};

/** One byte on the wire, seconds: ten bits of 32 us (MIDI 1.0 Detailed Specification 4.2.1, hardware). */
export const BYTE_SECONDS = BITS_PER_FRAME / BAUD;

/**
 * What is left for shifted edges, seconds: a receiver that samples 16 times a bit stands 0.4375 bit, and two clocks at their
 * limit of 1 % use 0.19 bit at the stop bit; 0.2475 bit of 32 us (worked out from MIDI 1.0 Detailed Specification, hardware).
 */
export const EDGE_BUDGET_SECONDS = 0.2475 / BAUD;

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
    const { toOnSeconds, toOffSeconds } = PART_DELAYS[inputOf(graph, feed).part];
    if (by === 'software') shiftSeconds = 0;
    shiftSeconds += Math.abs(toOffSeconds - toOnSeconds);
    const resent = by === 'software' ? BYTE_SECONDS + output.latencySeconds : 0;
    return { feed, by, delaySeconds: Math.max(toOnSeconds, toOffSeconds) + resent, shiftSeconds };
  });
}
