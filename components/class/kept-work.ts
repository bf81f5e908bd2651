/** Students' work that was begun in this browser, and is kept there. */
import { readResult, sameWork } from '../../src/core/class/index.ts';
import type { Result, WorkSet } from '../../src/core/class/index.ts';
import { fieldOf, keepNote, keptNote } from '../keep/notes.ts';

/** Its name in the store. */
const WORK_NOTE = 'class-work';

/** Students' work kept at most: a shared tablet sees some classes of thirty a week. */
const MOST_KEPT = 60;

/** A student's work: the result so far, and whether it was handed in. */
interface Work {
  readonly result: Result;
  readonly handedIn: boolean;
}

/** Everybody's work that is kept here, the newest first. */
function keptWork(): readonly Work[] {
  const note = keptNote(WORK_NOTE);
  if (!Array.isArray(note)) return [];
  return note.flatMap((one): Work[] => {
    const read = readResult(fieldOf(one, 'result'));
    return read.ok ? [{ result: read.value, handedIn: fieldOf(one, 'handedIn') === true }] : [];
  });
}

/** Whether two results are of the same student at the same work. */
function isSameWork(one: Result, other: Result): boolean {
  return one.number === other.number && sameWork(one.set) === sameWork(other.set);
}

/** Keep a student's work in place of what was kept of it; says what is wrong when the browser refuses. */
export function keepWork(work: Work): string | undefined {
  const others = keptWork().filter(({ result }) => !isSameWork(result, work.result));
  return keepNote(WORK_NOTE, [work, ...others].slice(0, MOST_KEPT));
}

/** The work of a student that is kept here: of this number, or with none the newest that is not handed in. */
export function workOn(set: WorkSet, number?: number): Work | undefined {
  const own = keptWork().filter(({ result }) => sameWork(result.set) === sameWork(set));
  return number === undefined
    ? own.slice(0, 1).find(({ handedIn }) => !handedIn)
    : own.find(({ result }) => result.number === number);
}
