/** What lessons say of the output side of an input: asked of the core when the site is built. */
import {
  PLAIN_JOURNEY,
  outputFacts,
  prepareTimeLink,
  receivedBytes,
  sayReceived,
  sendOnJourney,
} from '../signal/index.ts';
import { sayAmperesFinely, sayVolts } from '../verdict/index.ts';
import { linkFrom, type AuthoredLink } from './links.ts';
import { unbroken } from './say.ts';
import { sayTime } from './time.ts';

/** The output of a link's input in its link, in words: current of its LED, how low it comes, and its two edges. */
export function sayOutput(authored: AuthoredLink, what: 'lit' | 'low' | 'down' | 'up'): string {
  const { litAmperes, lowVolts, fallSeconds, riseSeconds } = outputFacts(prepareTimeLink(linkFrom(authored)));
  return {
    lit: unbroken(sayAmperesFinely(litAmperes)),
    low: unbroken(sayVolts(lowVolts)),
    down: sayTime(fallSeconds),
    up: sayTime(riseSeconds),
  }[what];
}

/** What a monitor shows behind so many links in a row when bytes are sent with every part as designed: '90 3C 40', or 'nothing'. */
export function sayHeard(authored: AuthoredLink, bytes: readonly number[], hops = 1): string {
  const { sending } = sendOnJourney(linkFrom(authored), undefined, bytes, { ...PLAIN_JOURNEY, hops });
  return sayReceived(receivedBytes(sending.reception.heard));
}
