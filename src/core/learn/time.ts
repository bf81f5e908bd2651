/** What lessons on time print: bits, bytes, edges and hops, asked of the core when the site is built. */
import {
  BITS_PER_FRAME,
  PLAIN_JOURNEY,
  STANDARD_CLOCK_ERROR,
  WORST_CLOCKS,
  bitSecondsOf,
  bytesOf,
  delaysOf,
  edgeShiftSeconds,
  edgeTimes,
  explainBytes,
  hexOf,
  longestLead,
  mostLinks,
  prepareTimeLink,
  sendOnJourney,
} from '../signal/index.ts';
import { checkLink } from '../verdict/index.ts';
import type { EdgeTimes, Item, Journey, Sent } from '../signal/index.ts';
import { jackFrom, linkFrom, type AuthoredLink } from './links.ts';
import { unbroken } from './say.ts';

/** A time in words, with decimals only where they mean something: '0.53 µs', '1.5 µs', '32 µs', '2.24 ms'. */
export function sayTime(seconds: number): string {
  const micro = seconds * 1e6;
  if (micro >= 1000) return unbroken(`${Number((micro / 1000).toPrecision(3))} ms`);
  const decimals = micro < 1 ? 2 : micro < 10 ? 1 : 0;
  return unbroken(`${Number(micro.toFixed(decimals))} µs`);
}

/** Length of so many bits by the standard's clock, in words. */
export function sayBits(count: number): string {
  return sayTime(count * bitSecondsOf({}));
}

/** Length of so many bytes, one right after the other, in words. */
export function sayBytes(count: number): string {
  return sayBits(count * BITS_PER_FRAME);
}

/** How far a clock may be off by the standard, in words: '1 %'. */
export function sayClockBound(): string {
  return unbroken(`${STANDARD_CLOCK_ERROR * 100} %`);
}

/** A list of messages as bytes in hex: 'C0 04'. */
export function sayHex(items: readonly Item[], runningStatus = false): string {
  return unbroken(bytesOf(items, runningStatus).map(hexOf).join(' '));
}

/** One byte in binary, the highest bit first, as people write it: '0000 0100'. */
export function sayBinary(byte: number): string {
  const bits = explainBytes([byte])[0]?.bits ?? '';
  return unbroken(`${bits.slice(0, 4)} ${bits.slice(4)}`);
}

/** Send messages through a lesson's link, as often as the journey has hops. */
export function sendOver(
  authored: AuthoredLink,
  items: readonly Item[],
  journey: Partial<Journey> = {},
): Sent {
  const link = linkFrom(authored);
  return sendOnJourney(link, checkLink(link).inputs[0]?.worstCorner, bytesOf(items, false), {
    ...PLAIN_JOURNEY,
    ...journey,
  });
}

/** The same link with its first lead of another length. @throws when it has no lead. */
export function atMetres(authored: AuthoredLink, metres: number): AuthoredLink {
  const [first, ...others] = authored.leads;
  if (first === undefined) throw new Error('lesson link: needs a lead, got none');
  return { ...authored, leads: [{ ...first, metres }, ...others] };
}

/** Length of the first lead in words: '100 m'. */
export function sayMetres({ leads }: AuthoredLink): string {
  return unbroken(`${leads[0]?.metres ?? 1} m`);
}

/** How much later the input of a link is to off than to on, seconds. */
function shiftOf({ input }: AuthoredLink): number {
  return edgeShiftSeconds(jackFrom('in', input));
}

/** The delay of the input of a link to notice light, or dark, in words. */
export function sayDelay({ input }: AuthoredLink, to: 'on' | 'off'): string {
  const { toOnSeconds, toOffSeconds } = delaysOf(jackFrom('in', input));
  return sayTime(to === 'on' ? toOnSeconds : toOffSeconds);
}

/** What one hop adds to a 0 and takes from a 1, in words. */
export function sayShift(authored: AuthoredLink): string {
  return sayTime(shiftOf(authored));
}

/** How long one bit alone lasts after so many hops, in words; what the leads add is left out. */
export function sayBit(level: 0 | 1, authored: AuthoredLink, hops: number): string {
  const shift = hops * shiftOf(authored);
  return sayTime(bitSecondsOf({}) + (level === 0 ? shift : -shift));
}

/** How long after its start was sent the first byte is seen to start at the end of a journey, in words. */
export function sayLag(authored: AuthoredLink, items: readonly Item[], journey: Partial<Journey>): string {
  const [first] = sendOver(authored, items, journey).sending.outcomes;
  if (first === undefined || first.lagSeconds === null) throw new Error('lesson: needs a byte that arrives');
  return sayTime(first.lagSeconds);
}

/** Both edges of a link, seconds. */
export function edgesOf(authored: AuthoredLink): EdgeTimes {
  return edgeTimes(linkFrom(authored));
}

/** The longest lead at which both edges keep the standard's bound, in whole metres, rounded down. */
export function sayLongest(authored: AuthoredLink): string {
  const { metres } = longestLead((one) => linkFrom(atMetres(authored, one)));
  return unbroken(`${Math.floor(metres)} m`);
}

/**
 * Links in a row that still deliver every byte, each with the lead and the optocoupler of `authored`, the sender 1 % slow and
 * the receiver 1 % fast (the standard's bounds, and the worse way round). The receiver looks once a bit; its own link counts.
 */
export function hopsOf(authored: AuthoredLink): number {
  return mostLinks(prepareTimeLink(linkFrom(authored)), WORST_CLOCKS).value;
}
