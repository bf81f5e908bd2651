/** A list of bytes on its way through equal links: how often, by which THRU, with which clocks. */
import { LATENCY_SECONDS } from '../wiring/index.ts';
import type { Link } from '../wiring/index.ts';
import type { Hop } from './hop.ts';
import { ownHop, sendSteps, type Leg, type Sending } from './send.ts';
import { prepareTimeLink, type TimeLink } from './time-link.ts';
import { runThrough } from './run-through.ts';

/** How a message travels: through how many links, by which THRU, with which clocks. */
export interface Journey {
  readonly hops: number;
  readonly thru: 'hardware thru' | 'software thru';
  readonly baseResistor: boolean;
  /** Fractions: 0.01 is 1 % fast. */
  readonly senderClock: number;
  readonly receiverClock: number;
  readonly atWorst: boolean;
}

/** One hop, both clocks right, nothing at its worst. */
export const PLAIN_JOURNEY: Journey = {
  hops: 1,
  thru: 'hardware thru',
  baseResistor: true,
  senderClock: 0,
  receiverClock: 0,
  atWorst: false,
};

/** A sending with the link it went through. */
export interface Sent {
  readonly time: TimeLink;
  readonly sending: Sending;
}

/** Send bytes through a link as often as there are hops; `worst` is the corner of the parts that starves its input most. */
export function sendOnJourney(
  link: Link,
  worst: Readonly<Record<string, 'low' | 'high' | 'nominal'>> | undefined,
  bytes: readonly number[],
  journey: Journey,
): Sent {
  return runThrough(journeySteps(link, worst, bytes, journey));
}

/** As `sendOnJourney`, link by link: yields how many of the chain are done. */
export function* journeySteps(
  link: Link,
  worst: Readonly<Record<string, 'low' | 'high' | 'nominal'>> | undefined,
  bytes: readonly number[],
  journey: Journey,
): Generator<number, Sent> {
  const time = journeyLink(link, worst, journey);
  const legs: Leg[] = Array.from({ length: journey.hops }, (_, at) => ({
    time,
    hop: hopOf(time, journey, at === journey.hops - 1),
  }));
  const sending = yield* sendSteps(legs, bytes, {
    sender: { clockError: journey.senderClock },
    receiver: { clockError: journey.receiverClock },
  });
  return { time, sending };
}

/** The link that a journey goes through, with its parts at their worst where the journey asks for that. */
export function journeyLink(
  link: Link,
  worst: Readonly<Record<string, 'low' | 'high' | 'nominal'>> | undefined,
  { atWorst }: Pick<Journey, 'atWorst'>,
): TimeLink {
  return prepareTimeLink(link, { corner: atWorst ? (worst ?? {}) : {} });
}

function hopOf(time: TimeLink, journey: Journey, last: boolean): Hop {
  const own = ownHop(time, 0, journey.baseResistor);
  if (last || own.kind !== 'optocoupler') return own;
  if (journey.thru === 'hardware thru') return { ...own, kind: 'hardware thru' };
  return { ...own, kind: 'software thru', latencySeconds: LATENCY_SECONDS };
}
