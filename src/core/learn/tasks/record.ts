/** The record: attempts as they were made. Everything else (done, due, known) is worked out from them, each time anew. */
import { readTaskId } from './task-id.ts';

/** One answer to a task. No score is kept: it is worked out again. */
export interface Attempt {
  /** The task as it is written, 'lay-lead.2.7F3K'. */
  readonly task: string;
  readonly answer: string;
  /** Hints taken before it, 0 to 3. */
  readonly hints: number;
  /** Days since the first of January 1970 in the reader's own time. */
  readonly day: number;
}

/** A record as it is stored and as it is saved to a file. */
export interface LearnRecord {
  readonly format: 'five-milliamps-record';
  readonly version: 1;
  /** In the order in which they were made. */
  readonly attempts: readonly Attempt[];
}

/** A record without attempts. */
export const NO_RECORD: LearnRecord = { format: 'five-milliamps-record', version: 1, attempts: [] };

/** Attempts that a record holds at most: years of practice, and far below what a browser stores. */
const MOST_ATTEMPTS = 20_000;
const MOST_HINTS = 3;

/** Read a stored or saved record; a string says what is wrong with it. */
export function readRecord(value: unknown): LearnRecord | string {
  if (
    typeof value !== 'object' ||
    value === null ||
    !('format' in value) ||
    value.format !== NO_RECORD.format
  )
    return `record: expected a file with the format '${NO_RECORD.format}'`;
  const { version, attempts } = value as { readonly version?: unknown; readonly attempts?: unknown };
  if (version !== NO_RECORD.version)
    return `record: version must be ${NO_RECORD.version}, got ${String(version)}`;
  if (!Array.isArray(attempts)) return 'record: attempts must be a list';
  if (attempts.length > MOST_ATTEMPTS)
    return `record: at most ${MOST_ATTEMPTS} attempts, got ${attempts.length}`;
  const bad = attempts.findIndex((one) => !isAttempt(one));
  if (bad >= 0)
    return `record: attempt ${bad + 1} needs a task, an answer, hints from 0 to ${MOST_HINTS} and a day`;
  return { ...NO_RECORD, attempts: attempts as readonly Attempt[] };
}

function isAttempt(value: unknown): value is Attempt {
  if (typeof value !== 'object' || value === null) return false;
  const { task, answer, hints, day } = value as Readonly<Record<string, unknown>>;
  const whole = (number: unknown, most: number): boolean =>
    Number.isInteger(number) && Number(number) >= 0 && Number(number) <= most;
  return (
    typeof task === 'string' &&
    typeof readTaskId(task) === 'object' &&
    typeof answer === 'string' &&
    whole(hints, MOST_HINTS) &&
    whole(day, Number.MAX_SAFE_INTEGER)
  );
}

/** The record with one attempt more; the oldest go where it is full. */
export function withAttempt(record: LearnRecord, attempt: Attempt): LearnRecord {
  return { ...record, attempts: [...record.attempts, attempt].slice(-MOST_ATTEMPTS) };
}

/** Two records as one: each attempt that either holds, once, by day. */
export function mergeRecords(one: LearnRecord, other: LearnRecord): LearnRecord {
  const all = new Map([...one.attempts, ...other.attempts].map((attempt) => [sayAttempt(attempt), attempt]));
  return { ...one, attempts: [...all.values()].sort((a, b) => a.day - b.day).slice(-MOST_ATTEMPTS) };
}

const sayAttempt = ({ task, answer, hints, day }: Attempt): string =>
  JSON.stringify([task, answer, hints, day]);
