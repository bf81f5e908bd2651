/** One press of a foot controller that was listened to, beside what the plan says it should send. */
import { sayMilliseconds, timePress } from '../board/index.ts';
import type { Plan } from '../plan/index.ts';
import type { TimedMessage } from './loop-judge.ts';
import { sayMessage } from './say-message.ts';

/** One row: a message that should come, one that came, or both; the difference in words, empty where there is none. */
interface PressRow {
  readonly planned: string;
  readonly heard: string;
  readonly difference: string;
  /** When it came after the first message of the press, in words; empty where it did not come. */
  readonly after: string;
}

/** A press judged. */
export interface PressHeard {
  readonly rows: readonly PressRow[];
  readonly right: number;
  readonly sentence: string;
}

/** Messages closer together than this belong to one press, seconds (our choice: nobody presses twice so fast). */
export const PRESS_PAUSE_SECONDS = 0.25;

/** The messages that one press of a plan should send: a bank is two of them. */
function plannedMessages(plan: Plan | undefined): readonly (readonly number[])[] {
  return (plan ? timePress(plan).items : []).flatMap(({ bytes }) => {
    const starts = [...bytes.keys()].filter((at) => (bytes[at] ?? 0) >= 0x80);
    return starts.map((start, number) => bytes.slice(start, starts[number + 1] ?? bytes.length));
  });
}

const same = (one: readonly number[], other: readonly number[]): boolean =>
  one.length === other.length && one.every((byte, at) => byte === other[at]);

/** What is other in a message than it should be. */
function differenceOf(planned: readonly number[], heard: readonly number[]): string {
  const [status = 0, other = 0] = [planned[0], heard[0]];
  if (planned.length !== heard.length || status >> 4 !== other >> 4) return 'another kind of message';
  if (status !== other) return `channel ${(other & 15) + 1} in place of ${(status & 15) + 1}`;
  const at = planned.findIndex((byte, place) => byte !== heard[place]);
  const [want = 0, came = 0] = [planned[at], heard[at]];
  const count = Math.abs(want - came) === 1 ? '; one of the two counts from 0, the other from 1?' : '';
  return `${came} in place of ${want}${count}`;
}

const isOwn = ({ bytes }: TimedMessage): boolean => (bytes[0] ?? 0) < 0xf8;

/** Compare a press with what is planned. Clock and active sensing are left out: a controller may send them at any time. */
export function comparePress(plan: Plan | undefined, came: readonly TimedMessage[]): PressHeard {
  const heard = came.filter(isOwn);
  const planned = plannedMessages(plan);
  const first = heard[0]?.seconds ?? 0;
  const rows: PressRow[] = [];
  let next = 0;
  const row = (
    want: readonly number[] | undefined,
    got: TimedMessage | undefined,
    difference: string,
  ): void =>
    void rows.push({
      planned: want ? sayMessage(want) : '',
      heard: got ? sayMessage(got.bytes) : '',
      difference,
      after: got ? sayMilliseconds(got.seconds - first) : '',
    });
  for (const [at, want] of planned.entries()) {
    const found = heard.findIndex((one, place) => place >= next && same(one.bytes, want));
    const now = heard[next]?.bytes ?? [];
    const later = planned.slice(at + 1).some((one) => same(one, now));
    if (found >= 0) {
      for (; next < found; next += 1) row(undefined, heard[next], 'not in the plan');
      row(want, heard[next], '');
      next += 1;
    } else if (next < heard.length && !later) {
      row(want, heard[next], differenceOf(want, now));
      next += 1;
    } else row(want, undefined, 'did not come');
  }
  for (; next < heard.length; next += 1) row(undefined, heard[next], 'not in the plan');
  const right = rows.filter(({ difference }) => difference === '').length;
  return { rows, right, sentence: sentenceOf(planned.length, rows) };
}

function sentenceOf(planned: number, rows: readonly PressRow[]): string {
  const wrong = rows.find(({ difference }) => difference !== '');
  if (planned === 0) return 'No board plan in this browser has a press. What came is told in words.';
  if (!wrong) return `The press sends what the plan says: ${planned} of ${planned} messages.`;
  const right = rows.filter(({ difference }) => difference === '').length;
  return `${right} of ${planned} planned messages came right. First difference: ${wrong.difference}.`;
}
