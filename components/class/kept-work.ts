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

/** Work that the browser refused: it is known as long as the page stands, and is kept with the next. */
let unkept: readonly Work[] = [];

/** Everybody's work that is kept or known here, the newest first. */
function keptWork(): readonly Work[] {
  const note = keptNote(WORK_NOTE);
  if (!Array.isArray(note)) return unkept;
  const kept = note.flatMap((one): Work[] => {
    const read = readResult(fieldOf(one, 'result'));
    return read.ok ? [{ result: read.value, handedIn: fieldOf(one, 'handedIn') === true }] : [];
  });
  return [...unkept, ...kept];
}

/** Whether two results are of the same student at the same work. */
function isSameWork(one: Result, other: Result): boolean {
  return one.number === other.number && sameWork(one.set) === sameWork(other.set);
}

/** Work as it is kept, and what is wrong when the browser refuses. */
interface Kept {
  readonly work: Work;
  readonly problem?: string;
}

/** Keep a student's work in place of what was kept of it; answers to other tasks that another tab has kept join it. */
export function keepWork(own: Work): Kept {
  const all = keptWork();
  const work = all.filter(({ result }) => isSameWork(result, own.result)).reduce(joined, own);
  const others = all.filter(({ result }) => !isSameWork(result, own.result));
  const problem = keepNote(WORK_NOTE, [work, ...others].slice(0, MOST_KEPT), isWhole);
  unkept =
    problem === undefined ? [] : [work, ...unkept.filter(({ result }) => !isSameWork(result, own.result))];
  return problem === undefined ? { work } : { work, problem };
}

function joined(own: Work, other: Work): Work {
  const answered = new Set(own.result.attempts.map(({ task }) => task));
  const more = other.result.attempts.filter(({ task }) => !answered.has(task));
  return {
    result: more.length === 0 ? own.result : { ...own.result, attempts: [...own.result.attempts, ...more] },
    handedIn: own.handedIn || other.handedIn,
  };
}

/** Whether a note is a list of work, every piece of which can be read. */
function isWhole(note: unknown): boolean {
  return Array.isArray(note) && note.every((one) => readResult(fieldOf(one, 'result')).ok);
}

/** The work of a student that is kept here: of this number, or with none the newest that is not handed in. */
export function workOn(set: WorkSet, number?: number): Work | undefined {
  const own = keptWork().filter(({ result }) => sameWork(result.set) === sameWork(set));
  return number === undefined
    ? own.slice(0, 1).find(({ handedIn }) => !handedIn)
    : own.find(({ result }) => result.number === number);
}
