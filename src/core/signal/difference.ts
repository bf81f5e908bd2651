import { alignBytes } from './align.ts';
import { BITS_PER_FRAME } from './frames.ts';
import type { SentByte, SentFrames } from './frames.ts';
import { hexOf } from './hex.ts';
import type { FramingError, Heard, HeardByte } from './receiver.ts';
import type { Waveform } from './waveform.ts';
import { asFrame, whyMissing, whyWrong } from './why.ts';
import type { Cause } from './why.ts';

/** What became of a byte. */
const OUTCOMES = ['same', 'late', 'missing', 'garbled', 'extra'] as const;
/** What became of one byte. */
type Outcome = (typeof OUTCOMES)[number];

/**
 * One byte sent, received or both, and why they differ. Indexes point into the bytes sent and the reports heard.
 * `lagSeconds`: from start edge sent to start seen, null unless both are there.
 */
export interface ByteOutcome {
  readonly outcome: Outcome;
  readonly sentIndex: number | null;
  readonly heardIndex: number | null;
  readonly sentValue: number | null;
  readonly heardValue: number | null;
  readonly lagSeconds: number | null;
  readonly cause: Cause;
  readonly why: string;
}

/** What to compare: the frames sent, the line at the receiver's input, and what the receiver made of it. */
interface Journey {
  readonly sent: SentFrames;
  readonly arrived: Waveform;
  readonly heard: readonly Heard[];
  /** Delay from which a good byte counts as late, seconds; one byte by the sender's clock when left out. */
  readonly lateAfterSeconds?: number;
}

const microseconds = (seconds: number): string => `${(seconds * 1e6).toFixed(0)} µs`;

function paired(
  journey: Journey,
  sentIndex: number,
  heardIndex: number,
  sent: SentByte,
  event: HeardByte | FramingError,
): ByteOutcome {
  const { bitSeconds } = journey.sent;
  const lagSeconds = event.startSeconds - sent.startSeconds;
  const both = { sentIndex, heardIndex, sentValue: sent.value, heardValue: event.value, lagSeconds };
  if (event.kind === 'framing error' || event.value !== sent.value) {
    return { outcome: 'garbled', ...both, ...whyWrong(journey, sent, event) };
  }
  // A hair of rounding must not turn a byte on the limit into a late one.
  const limit = (journey.lateAfterSeconds ?? BITS_PER_FRAME * bitSeconds) * (1 - 1e-9);
  if (lagSeconds >= limit) {
    const why = `${hexOf(sent.value)} arrived whole, ${microseconds(lagSeconds)} after it was sent: held back on the way`;
    return { outcome: 'late', ...both, cause: 'held back', why };
  }
  const why = `${hexOf(sent.value)} arrived as sent, ${microseconds(lagSeconds)} later`;
  return { outcome: 'same', ...both, cause: 'none', why };
}

/**
 * Every byte sent, in order, with what became of it, and every byte received that nobody sent. Garbled covers wrong data
 * and missed stop bits (a break no longer than a byte is one); true breaks and false starts are causes of what is missing.
 */
export function compareBytes(journey: Journey): readonly ByteOutcome[] {
  const { sent, heard } = journey;
  const places = heard.flatMap((report, index) => {
    const event = asFrame(report, journey);
    return event ? [{ index, event }] : [];
  });
  const pairs = alignBytes(
    sent.bytes,
    places.map(({ event }) => event),
    BITS_PER_FRAME * sent.bitSeconds,
    sent.bitSeconds,
  );
  return pairs.flatMap((pair): readonly ByteOutcome[] => {
    const one = pair.sent === null ? undefined : sent.bytes[pair.sent];
    const place = pair.heard === null ? undefined : places[pair.heard];
    if (one && place && pair.sent !== null)
      return [paired(journey, pair.sent, place.index, one, place.event)];
    if (one && pair.sent !== null) {
      const alone = { sentIndex: pair.sent, heardIndex: null, sentValue: one.value, heardValue: null };
      return [{ outcome: 'missing', ...alone, lagSeconds: null, ...whyMissing(journey, one) }];
    }
    if (!place) return [];
    const alone = {
      sentIndex: null,
      heardIndex: place.index,
      sentValue: null,
      heardValue: place.event.value,
    };
    const why = `${hexOf(place.event.value)} was read where no byte was sent: the receiver took a 0 inside another byte for a start bit`;
    return [{ outcome: 'extra', ...alone, lagSeconds: null, cause: 'lost its place', why }];
  });
}

/** The whole comparison in one sentence, for a live region. */
export function differenceInWords(outcomes: readonly ByteOutcome[]): string {
  const sentCount = outcomes.filter(({ sentIndex }) => sentIndex !== null).length;
  const of = (outcome: Outcome): number => outcomes.filter((one) => one.outcome === outcome).length;
  const parts = OUTCOMES.filter((outcome) => of(outcome) > 0).map((outcome) => `${of(outcome)} ${outcome}`);
  if (sentCount > 0 && of('same') === outcomes.length)
    return sentCount === 1
      ? '1 byte sent: it arrived as sent.'
      : `${sentCount} bytes sent: all arrived as sent.`;
  const head = `${sentCount} ${sentCount === 1 ? 'byte' : 'bytes'} sent: ${parts.join(', ') || 'nothing to compare'}.`;
  const first = outcomes.find(({ outcome }) => outcome !== 'same');
  return first ? `${head} First trouble: ${first.why}.` : head;
}
