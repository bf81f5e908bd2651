import { throughTransistor } from './opto-output.ts';
import type { Follower, StageDelays } from './opto-output.ts';
import { resend } from './software-thru.ts';
import type { SoftwareThru } from './software-thru.ts';
import type { Edge, Waveform } from './waveform.ts';

/**
 * What passes a signal on: an optocoupler alone, LED current in and logic level out; one whose output drives the next link; or
 * one whose bytes are read and sent again.
 */
export type Hop = (Follower & { readonly kind: 'optocoupler' | 'hardware thru' }) | SoftwareThru;

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

/** The output line of what follows an LED, for the line of the LED. */
export function follow(led: Waveform, follower: Follower): Waveform {
  return 'stage' in follower ? throughTransistor(led, follower) : delayEdges(led, follower);
}

/** The line that comes out of a hop, for the line at its LED. Throws RangeError for impossible delays or clocks. */
export function throughHop(led: Waveform, hop: Hop): Waveform {
  const copy = follow(led, hop);
  return hop.kind === 'software thru' ? resend(copy, hop).wave : copy;
}

/**
 * What a link does between a driver and the LED at its far end: takes the level the driver puts out, gives the moments at
 * which LED current crosses its threshold. `index` counts links from 0. A solver of circuits takes this place.
 */
export type LinkStage = (driven: Waveform, index: number) => Waveform;

/** A link that loses nothing and takes no time. */
export const straightLink: LinkStage = (driven) => driven;

/** One link and the hop at its end. */
interface ChainStage {
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
