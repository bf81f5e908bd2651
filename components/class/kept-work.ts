/** Students' work that was begun in this browser, and is kept there. */
import { readResult, resultFileName, sameWork, takenFile, takenOf } from '../../src/core/class/index.ts';
import type { Result, WorkSet } from '../../src/core/class/index.ts';
import { fieldOf, keepNote, keptNote } from '../keep/notes.ts';
import { shelfKey, stored } from '../keep/shelf.ts';
import { answeredIn } from './work.ts';

/** Its name in the store. */
const WORK_NOTE = 'class-work';

/** Students' work beyond which the oldest may go to a file, and as many at a time: a shared tablet sees some classes of thirty a week. */
const MANY = 60;

/** A student's work: the result so far, and whether it was handed in. */
export interface Work {
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

/** A name as it is compared: neither capitals nor spaces make another student. */
const plainName = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase();

/** Whether two names are one student's. */
export const isSameName = (one: string, other: string): boolean => plainName(one) === plainName(other);

/** Whether two results are of the same student at the same work: two names under one number are two students. */
function isSameWork(one: Result, other: Result): boolean {
  return (
    one.number === other.number &&
    isSameName(one.name, other.name) &&
    sameWork(one.set) === sameWork(other.set)
  );
}

/** Work as it is kept, and what is wrong when the browser refuses. */
interface Kept {
  readonly work: Work;
  readonly problem?: string;
}

/**
 * Keep a student's work in place of what was kept of it; answers to other tasks that another tab has kept join it. `before` is under
 * which name it was kept, where it has got one since.
 */
export function keepWork(own: Work, before: Result = own.result): Kept {
  const all = keptWork();
  const work = joinedWork(own, all);
  const isOther = ({ result }: Work): boolean => ![own.result, before].some((one) => isSameWork(result, one));
  const others = all.filter(isOther);
  const problem = keepNote(WORK_NOTE, [work, ...others], isWhole);
  unkept = problem === undefined ? [] : [work, ...unkept.filter(isOther)];
  return problem === undefined ? { work } : { work, problem };
}

/** A student's work with what is kept of it: the answers to other tasks, and whether it was handed in. */
export function joinedWork(own: Work, all = keptWork()): Work {
  return all.filter(({ result }) => isSameWork(result, own.result)).reduce(joined, own);
}

function joined(own: Work, other: Work): Work {
  const answered = answeredIn(own.result);
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

/** All work on a Set that is kept here, the newest first. */
function worksOn(set: WorkSet): readonly Work[] {
  return keptWork().filter(({ result }) => sameWork(result.set) === sameWork(set));
}

/** The newest work on a Set that is kept here, where it is not handed in. */
export function workOn(set: WorkSet): Work | undefined {
  return worksOn(set)
    .slice(0, 1)
    .find(({ handedIn }) => !handedIn);
}

/** All work on a Set that is kept here of a number in the class list, under whatever names. */
export function worksOfNumber(set: WorkSet, number: number): readonly Work[] {
  return worksOn(set).filter(({ result }) => result.number === number);
}

/** Whether nothing is kept of anybody's work, in a browser that lets it be looked for. */
export function nothingKept(): boolean {
  const { now, why } = stored(WORK_NOTE);
  return now === undefined && why === undefined;
}

/**
 * Work that may go once it is in a file, the oldest last: what is kept beyond the newest sixty, and where the store has no room for
 * more, what is kept of all others than `own`. Sixty at a time, so that the file is one that the marking takes in.
 */
export function olderWork(own: Result | undefined, noRoom: boolean): readonly Work[] {
  const others = keptWork().filter((one) => !own || !isSameWork(one.result, own));
  return others.slice(noRoom ? 0 : MANY - 1).slice(-MANY);
}

/** Work as the text of a file that the marking takes in. */
export function workFile(all: readonly Work[]): string {
  const taken = all.map(({ result }) =>
    takenOf({ source: resultFileName(result), reading: { ok: true, value: result } }),
  );
  return `${JSON.stringify(takenFile(taken), undefined, 2)}\n`;
}

/** Let work go that is in a file; what was added to it since then stays. Says what went wrong when the browser refuses. */
export function dropWork(gone: readonly Work[]): string | undefined {
  const texts = new Set(gone.map((one) => JSON.stringify(one)));
  const left = keptWork().filter((one) => !unkept.includes(one) && !texts.has(JSON.stringify(one)));
  unkept = unkept.filter((one) => !texts.has(JSON.stringify(one)));
  return keepNote(WORK_NOTE, left, isWhole);
}

/** Call back when another tab has changed what is kept, and when the page comes back; returns what stops it. */
export function hearWork(heard: () => void): () => void {
  const hear = ({ key }: StorageEvent): void => {
    if (key === null || key === shelfKey(WORK_NOTE)) heard();
  };
  const look = (): void => {
    if (document.visibilityState === 'visible') heard();
  };
  addEventListener('storage', hear);
  document.addEventListener('visibilitychange', look);
  return () => {
    removeEventListener('storage', hear);
    document.removeEventListener('visibilitychange', look);
  };
}
