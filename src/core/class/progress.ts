/** Work on a Set as one short text, for a course system that keeps a few thousand characters for each student. */
import { tasksOfSet } from './work-set.ts';
import type { WorkSet } from './work-set.ts';
import { readTaskId, writeTaskId } from '../learn/index.ts';
import { CLASS_LIMITS } from './limits.ts';
import type { Result } from './result.ts';

/** Characters that a course system keeps (SCORM 1.2 run-time, `cmi.suspend_data`). */
const MOST_CHARACTERS = 4096;

/** Letter of the way of writing. */
const FORM = 'a';

/** One answer: the place of its task in the Set, the hints, the day, and the answer. */
type Packed = readonly [task: number, hints: number, day: number, answer: string];

/**
 * The work so far, at most 4096 characters. Where it is longer, the answers that were followed by another to the same task are left out
 * first, then the oldest: their tasks are then open again.
 */
export function packProgress({ set, number, attempts }: Result): string {
  const places = placesOf(set, number);
  let kept = attempts.flatMap(({ task, hints, day, answer }): Packed[] => {
    const place = places.get(canonical(task));
    return place === undefined ? [] : [[place, hints, day, answer]];
  });
  const write = (): string => FORM + JSON.stringify([number, kept]);
  if (write().length > MOST_CHARACTERS)
    kept = kept.filter(([place], at) => !kept.slice(at + 1).some(([later]) => later === place));
  while (write().length > MOST_CHARACTERS) kept = kept.slice(1);
  return write();
}

/** The work that a text holds of this Set; undefined where it holds none that can be read. */
export function readProgress(set: WorkSet, text: string): Result | undefined {
  if (!text.startsWith(FORM)) return undefined;
  try {
    const [number, packed] = JSON.parse(text.slice(FORM.length)) as readonly [number, readonly Packed[]];
    if (!Number.isInteger(number) || number < 1 || number > CLASS_LIMITS.number) return undefined;
    const tasks = tasksOfSet(set, number).map(writeTaskId);
    const attempts = packed.flatMap(([place, hints, day, answer]) => {
      const task = tasks[place];
      return task !== undefined && typeof answer === 'string' ? [{ task, answer, hints, day }] : [];
    });
    return { format: 'five-milliamps-result', version: 1, set, number, name: '', attempts };
  } catch {
    return undefined;
  }
}

function canonical(written: string): string {
  const id = readTaskId(written);
  return typeof id === 'string' ? written : writeTaskId(id);
}

const placesOf = (set: WorkSet, number: number): ReadonlyMap<string, number> =>
  new Map(tasksOfSet(set, number).map((id, at) => [writeTaskId(id), at]));

/** The number of a student whom a course system knows by a name of its own: the same name always gives the same. */
export function numberOfStudent(name: string): number {
  let hash = 0;
  for (const sign of name) hash = (Math.imul(hash, 31) + (sign.codePointAt(0) ?? 0)) >>> 0;
  return 1 + (hash % CLASS_LIMITS.number);
}
