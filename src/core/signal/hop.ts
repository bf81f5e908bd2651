import { receive } from './receiver.ts';
import type { Reception, ReceiverOptions } from './receiver.ts';
import { resend } from './software-thru.ts';
import type { SoftwareThru } from './software-thru.ts';
import type { Edge, Waveform } from './waveform.ts';

/**
 * Delays of a stage, seconds, 0 or more. On: LED current begins, the line falls to 0. Off: current ends, the line rises
 * to 1. A stage that is slower to off than to on stretches the 0s and shrinks the 1s.
 */
export interface StageDelays {
  readonly toOnSeconds: number;
  readonly toOffSeconds: number;
}

/** Ways to pass a signal on. */
export const HOP_KINDS = ['optocoupler', 'hardware thru', 'software thru'] as const;
export type HopKind = (typeof HOP_KINDS)[number];

/** An optocoupler: LED current in, logic level out. */
export interface OptocouplerHop extends StageDelays {
  readonly kind: 'optocoupler';
}

/** An optocoupler whose output drives the next link through a driver with delays of its own (none when left out). */
export interface HardwareThru extends StageDelays {
  readonly kind: 'hardware thru';
  readonly driver?: StageDelays;
}

export type Hop = OptocouplerHop | HardwareThru | SoftwareThru;

/**
 * The line after a stage with separate delays. A pulse that the slower edge would end before it began vanishes, so
 * pulses up to the difference of the delays are lost; every other pulse changes its length by that difference.
 * Throws RangeError for a delay that is not a finite number from 0.
 */
export function delayEdges(wave: Waveform, delays: StageDelays): Waveform {
  for (const [name, seconds] of [
    ['delay to on', delays.toOnSeconds],
    ['delay to off', delays.toOffSeconds],
  ] as const) {
    if (!(seconds >= 0) || !Number.isFinite(seconds)) {
      throw new RangeError(`stage: ${name} must be 0 s or more, got ${seconds} s`);
    }
  }
  const out: Edge[] = [];
  for (const { seconds, level } of wave.edges) {
    const arrives = seconds + (level ? delays.toOffSeconds : delays.toOnSeconds);
    const last = out.at(-1);
    if (last && last.seconds >= arrives) out.pop();
    else out.push({ seconds: arrives, level });
  }
  return { before: wave.before, edges: out };
}

/** The line that comes out of a hop, for the line at its LED. Throws RangeError for impossible delays or clocks. */
export function throughHop(led: Waveform, hop: Hop): Waveform {
  switch (hop.kind) {
    case 'optocoupler':
      return delayEdges(led, hop);
    case 'hardware thru': {
      const copy = delayEdges(led, hop);
      return hop.driver ? delayEdges(copy, hop.driver) : copy;
    }
    case 'software thru':
      return resend(delayEdges(led, hop), hop).wave;
  }
}

/**
 * What a link does between a driver and the LED at its far end: takes the level the driver puts out, gives the moments at
 * which LED current crosses its threshold. `index` counts links from 0. A solver of circuits takes this place.
 */
export type LinkStage = (driven: Waveform, index: number) => Waveform;

/** A link that loses nothing and takes no time. */
export const straightLink: LinkStage = (driven) => driven;

/** One link and the hop at its end. */
export interface ChainStage {
  readonly hop: Hop;
  /** LED current of the hop: level false while it is above the threshold. */
  readonly led: Waveform;
  /** What the hop puts out. */
  readonly output: Waveform;
}

/**
 * A driven line through a chain: link, hop, link, hop and so on. The last hop is the receiver's own optocoupler; its
 * output is the line at the serial input. Throws RangeError for impossible delays or clocks.
 */
export function throughChain(
  driven: Waveform,
  hops: readonly Hop[],
  link: LinkStage = straightLink,
): readonly ChainStage[] {
  const stages: ChainStage[] = [];
  hops.forEach((hop, index) => {
    const led = link(stages.at(-1)?.output ?? driven, index);
    stages.push({ hop, led, output: throughHop(led, hop) });
  });
  return stages;
}

/** What a receiver at the end of a chain reads. */
export function receiveThroughChain(
  driven: Waveform,
  hops: readonly Hop[],
  options: ReceiverOptions = {},
  link: LinkStage = straightLink,
): Reception {
  return receive(throughChain(driven, hops, link).at(-1)?.output ?? driven, options);
}
