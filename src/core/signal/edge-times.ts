/** How steep the edges of a link are, and how long a lead may be before they grow too slow. */
import { LENGTH_METRES } from '../wiring/index.ts';
import type { Link } from '../wiring/index.ts';
import { halve } from './halving.ts';
import { sendBytes } from './frames.ts';
import { driveLine } from './line.ts';
import { inputAmountAt } from './show.ts';
import { prepareTimeLink } from './time-link.ts';

/**
 * Longest rise and fall time, seconds, asked of the receiver that the standard draws; to hold a lead to it is our reading. Source: MIDI
 * 1.0 Detailed Specification 4.2.1; MMA CA-033; IEC 63035, 4.1.
 */
export const STANDARD_EDGE_SECONDS = 2e-6;

/** A rise or fall time counts from 10 % to 90 % of the swing, the usual measure of a circuits text. */
const SHARES = [0.1, 0.9] as const;

/** The edges of an input: of the current in its LED, or of the level at a ground-referenced one. */
export interface EdgeTimes {
  /** From 10 % to 90 % of the way to active, seconds. */
  readonly toActiveSeconds: number;
  /** From 10 % to 90 % of the way back to idle, seconds. */
  readonly toIdleSeconds: number;
}

/** One byte of bits in turn: every bit long enough for the line to settle, or to show that it does not. */
const ALTERNATING = 0x55;

/** A swing below this share of what turns the input on is leakage, not a signal (our choice). */
const LEAST_SWING = 1e-3;

/**
 * How long both edges of an input take while single bits are sent; NaN for an input where nothing swings.
 * `input` counts inputs from 0. @throws when the link has no such input.
 */
export function edgeTimes(link: Link, input = 0): EdgeTimes {
  const time = prepareTimeLink(link);
  const { wave, bitSeconds } = sendBytes([ALTERNATING]);
  const run = driveLine(time, wave);
  const least = Math.abs(time.probes[input]?.on ?? 0) * LEAST_SWING;
  const amount = (seconds: number): number => inputAmountAt(time, run, input, seconds);
  const length = (fromSeconds: number): number => {
    const [start, end] = [amount(fromSeconds), amount(fromSeconds + bitSeconds)];
    if (Math.abs(end - start) < least) return NaN;
    const [first, last] = SHARES.map((share) =>
      firstPassing(amount, start + share * (end - start), fromSeconds, fromSeconds + bitSeconds),
    );
    return (last ?? NaN) - (first ?? NaN);
  };
  // The line falls with the start bit and rises with the first data bit, which is a 1.
  return { toActiveSeconds: length(0), toIdleSeconds: length(bitSeconds) };
}

/** Looks a stretch over in so many places before halving: finer than any edge that matters here. */
const PLACES = 320;
/** Halvings between two places: far below a nanosecond. */
const HALVINGS = 12;

/** First moment of a stretch at which an amount has passed a level, seconds. */
function firstPassing(
  amount: (seconds: number) => number,
  level: number,
  fromSeconds: number,
  toSeconds: number,
): number {
  const rising = amount(fromSeconds) < level;
  const passed = (seconds: number): boolean => amount(seconds) >= level === rising;
  const step = (toSeconds - fromSeconds) / PLACES;
  for (let place = 1; place <= PLACES; place += 1) {
    const high = fromSeconds + place * step;
    if (passed(high))
      return halve([high - step, high], true, (seconds) => passed(seconds) || null, HALVINGS).bad;
  }
  return NaN;
}

/** The longest lead found, and which edge gives way just beyond it; null where none did. */
export interface LongestLead {
  readonly metres: number;
  readonly slow: keyof EdgeTimes | null;
}

/** Longest lead looked at, metres: the most that the workbook takes. */
const MOST_METRES: number = LENGTH_METRES[1];
/** Halvings: 100 m / 2^10 is a tenth of a metre. */
const LEAD_HALVINGS = 10;

/**
 * The longest lead at which both edges stay within `edgeSeconds`, found by halving on the simulation. `linkOf` gives the
 * link with a lead of so many metres. A lead of the full 100 m that is still good is reported with nothing that gave way.
 */
export function longestLead(
  linkOf: (metres: number) => Link,
  edgeSeconds: number = STANDARD_EDGE_SECONDS,
): LongestLead {
  const slowAt = (metres: number): keyof EdgeTimes | null => {
    const times = edgeTimes(linkOf(metres));
    if (!(times.toActiveSeconds <= edgeSeconds)) return 'toActiveSeconds';
    return times.toIdleSeconds <= edgeSeconds ? null : 'toIdleSeconds';
  };
  const atMost = slowAt(MOST_METRES);
  if (atMost === null) return { metres: MOST_METRES, slow: null };
  const { good, why } = halve([0, MOST_METRES], atMost, slowAt, LEAD_HALVINGS);
  return { metres: good, slow: why };
}
