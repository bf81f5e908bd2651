/** What became of messages that were sent round a lead. */
import { sayMilliseconds } from '../board/index.ts';

/** A message with the moment at which it left or came, seconds. */
export interface TimedMessage {
  readonly bytes: readonly number[];
  readonly seconds: number;
}

/** What became of the messages of one group, and the group itself for a closer look. */
export interface GroupOutcome {
  readonly sent: readonly TimedMessage[];
  readonly got: readonly TimedMessage[];
  readonly right: number;
  readonly lost: number;
  readonly garbled: number;
  /** Messages that nobody sent. */
  readonly foreign: number;
  /** Round trips of those that came right, seconds. */
  readonly trips: readonly number[];
}

const sameBytes = (one: readonly number[], other: readonly number[]): boolean =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);

/** Costs that only rank the ways to lay messages side by side: one changed costs less than one lost and one foreign. */
const [CHANGED, ALONE] = [1.5, 1];
const FIRST_REAL_TIME = 0xf8;

/** Lay the messages that came beside those sent, in order, with the fewest changes. */
export function judgeGroup(sent: readonly TimedMessage[], got: readonly TimedMessage[]): GroupOutcome {
  // A byte of real time was not sent by the test, and must not pair with anything.
  const own = got.filter(({ bytes }) => (bytes[0] ?? 0) < FIRST_REAL_TIME);
  const width = own.length + 1;
  const cost = new Float64Array((sent.length + 1) * width);
  const at = (row: number, column: number): number => cost[row * width + column] ?? Infinity;
  const pair = (row: number, column: number): number =>
    sameBytes(sent[row]?.bytes ?? [], own[column]?.bytes ?? []) ? 0 : CHANGED;
  for (let row = sent.length; row >= 0; row -= 1) {
    for (let column = own.length; column >= 0; column -= 1) {
      if (row === sent.length || column === own.length) {
        cost[row * width + column] = ALONE * (sent.length - row + own.length - column);
        continue;
      }
      const ways = [
        pair(row, column) + at(row + 1, column + 1),
        ALONE + at(row + 1, column),
        ALONE + at(row, column + 1),
      ];
      cost[row * width + column] = Math.min(...ways);
    }
  }
  let [row, column, lost, garbled, foreign] = [0, 0, 0, 0, got.length - own.length];
  const trips: number[] = [];
  while (row < sent.length || column < own.length) {
    const inside = row < sent.length && column < own.length;
    if (inside && pair(row, column) + at(row + 1, column + 1) === at(row, column)) {
      if (pair(row, column) === 0) trips.push((own[column]?.seconds ?? 0) - (sent[row]?.seconds ?? 0));
      else garbled += 1;
      row += 1;
      column += 1;
    } else if (row < sent.length && (!inside || ALONE + at(row + 1, column) === at(row, column))) {
      lost += 1;
      row += 1;
    } else {
      foreign += 1;
      column += 1;
    }
  }
  return { sent, got, right: trips.length, lost, garbled, foreign, trips };
}

/** The result of a whole test. Times in seconds. */
export interface LoopResult {
  readonly sent: number;
  readonly right: number;
  readonly late: number;
  readonly lost: number;
  readonly garbled: number;
  readonly foreign: number;
  /** Least, middle and most of the round trips, or undefined where nothing came back. */
  readonly trip: { readonly least: number; readonly middle: number; readonly most: number } | undefined;
  readonly verdict: { readonly grade: 'good' | 'doubtful' | 'bad'; readonly sentence: string };
  /** The bytes of the shortest group that went wrong, to be looked at. */
  readonly wrong: { readonly sent: readonly number[]; readonly seen: readonly number[] } | undefined;
}

/** A message whose round trip is this much longer than the middle one is late, seconds (our choice: what a player begins to hear). */
const LATE_SECONDS = 0.02;

function verdictOf(of: Omit<LoopResult, 'verdict' | 'wrong'>): LoopResult['verdict'] {
  const { sent, right, late, lost, garbled, foreign } = of;
  if (right === 0 && garbled === 0)
    return {
      grade: 'bad',
      sentence: `Nothing came back of ${sent} messages. Is this the right input, and is the lead in both jacks?`,
    };
  if (lost > 0 || garbled > 0)
    return {
      grade: 'bad',
      sentence: `Of ${sent} messages ${right} came back right, ${lost} were lost and ${garbled} garbled. Do not trust this lead.`,
    };
  if (foreign > 0)
    return {
      grade: 'doubtful',
      sentence: `All ${sent} messages came back right, but ${foreign} came that the test did not send. Unplug everything else and test again.`,
    };
  if (late > 0)
    return {
      grade: 'doubtful',
      sentence: `All ${sent} messages came back right, ${late} of them late. That is more likely the interface or the computer than the lead.`,
    };
  return { grade: 'good', sentence: `All ${sent} messages came back right.` };
}

/** The result of all groups of a test, in words as well. */
export function judgeLoop(groups: readonly GroupOutcome[]): LoopResult {
  const sum = (of: (one: GroupOutcome) => number): number => groups.reduce((all, one) => all + of(one), 0);
  const trips = groups.flatMap((one) => one.trips).sort((one, other) => one - other);
  const middle = trips[Math.floor(trips.length / 2)];
  const counts = {
    sent: sum((one) => one.sent.length),
    right: sum((one) => one.right),
    late: middle === undefined ? 0 : trips.filter((one) => one > middle + LATE_SECONDS).length,
    lost: sum((one) => one.lost),
    garbled: sum((one) => one.garbled),
    foreign: sum((one) => one.foreign),
    trip: middle === undefined ? undefined : { least: trips[0]!, middle, most: trips.at(-1)! },
  };
  const [bad] = groups
    .filter((one) => one.lost > 0 || one.garbled > 0 || one.foreign > 0)
    .sort((one, other) => one.sent.length - other.sent.length);
  const flat = (list: readonly TimedMessage[]): readonly number[] => list.flatMap(({ bytes }) => bytes);
  const wrong = bad && { sent: flat(bad.sent), seen: flat(bad.got) };
  return { ...counts, verdict: verdictOf(counts), wrong };
}

/** Round trips in words: '4.1 ms (3.2 to 9.8 ms)'. */
export function sayTrip({ least, middle, most }: NonNullable<LoopResult['trip']>): string {
  return `${sayMilliseconds(middle)} (${sayMilliseconds(least)} to ${sayMilliseconds(most)})`;
}

/** What a test round the lead cannot show, in sentences. */
export const LOOP_CANNOT_SHOW: readonly string[] = [
  'It does not show how much current flows. A lead that works by a hair works here as well.',
  'It does not show that every wire holds. One strand may still do the work: wiggle it, and test it with a meter.',
  'It is a test with this output and this input. Another input may need more current.',
  'The browser sends whole messages with their status bytes. Whether the interface leaves some out does not show.',
  'Times hold the computer and the interface as well as the lead, which takes some microseconds of them.',
];

/** A message of the wiggle mode that was not answered in this time is a break, seconds (our choice). */
export const WIGGLE_PATIENCE_SECONDS = 0.15;
