/** The record: attempts as they were made. Everything else (done, due, known) is worked out from them, each time anew. */
import { gradeAnswer } from './grade.ts';
import { readTaskId } from './task-id.ts';
import { TASKS_BY_LESSON, makeTask } from './tasks.ts';

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

/** Days until a kind comes back after one, two, three and more right answers in a row; a miss begins anew with the first. */
const WAITS = [1, 3, 7, 21] as const;

/** Unaided right answers on so many different days make a kind known. */
const DAYS_TO_KNOW = 2;

/** Attempts that a record holds at most: years of practice, and far below what a browser stores. */
const MOST_ATTEMPTS = 20_000;
const MOST_HINTS = 3;

/** Where a kind of task stands. */
export interface Standing {
  readonly kind: string;
  readonly lesson: string;
  /** Attempts at it, first answers only. */
  readonly tried: number;
  /** Right at the first answer without a hint, in all. */
  readonly unaided: number;
  /** Whether any answer to it was right. */
  readonly done: boolean;
  readonly known: boolean;
  /** Day on which it comes back; undefined while it was never tried. */
  readonly due: number | undefined;
}

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

const graded = new Map<string, boolean>();
/** Whether an attempt is right, solved once. */
function isRight({ task, answer }: Attempt): boolean {
  const key = `${task} ${answer}`;
  const known = graded.get(key);
  if (known !== undefined) return known;
  const id = readTaskId(task);
  const made = typeof id === 'string' ? id : makeTask(id);
  const right = typeof made !== 'string' && gradeAnswer(made, answer).right;
  graded.set(key, right);
  return right;
}

/** Where every kind of task stands by what was done. */
export function standings({ attempts }: LearnRecord): readonly Standing[] {
  const byKind = new Map<string, Attempt[]>();
  for (const attempt of attempts) {
    const kind = attempt.task.slice(0, attempt.task.indexOf('.'));
    byKind.set(kind, [...(byKind.get(kind) ?? []), attempt]);
  }
  return Object.entries(TASKS_BY_LESSON).flatMap(([lesson, kinds]) =>
    kinds.map(({ kind }) => standingOf(kind, lesson, byKind.get(kind) ?? [])),
  );
}

/** The first answer to a task decides; a second one after a miss counts as done, not as unaided. */
function standingOf(kind: string, lesson: string, attempts: readonly Attempt[]): Standing {
  const seen = new Set<string>();
  const days = new Set<number>();
  let row = 0;
  let tried = 0;
  let unaided = 0;
  let done = false;
  let last: number | undefined;
  for (const attempt of attempts) {
    const right = isRight(attempt);
    done ||= right;
    if (seen.has(attempt.task)) continue;
    seen.add(attempt.task);
    tried += 1;
    last = Math.max(last ?? 0, attempt.day);
    row = right ? row + (attempt.hints === 0 ? 1 : 0) : 0;
    if (right && attempt.hints === 0) {
      unaided += 1;
      days.add(attempt.day);
    }
  }
  const wait = WAITS[Math.min(Math.max(row, 1), WAITS.length) - 1] ?? 1;
  return {
    kind,
    lesson,
    tried,
    unaided,
    done,
    known: days.size >= DAYS_TO_KNOW,
    due: last === undefined ? undefined : last + wait,
  };
}
