/** The record in the browser's store. Every writing reads first what another tab has written, so that none is lost. */
import { MOST_SEED, NO_RECORD, mergeRecords, readRecord, withAttempt } from '../../src/core/learn/index.ts';
import type { Attempt, LearnRecord } from '../../src/core/learn/index.ts';
import { keepNote, keptNote } from './notes.ts';
import { dropStored, putAside } from './shelf.ts';

/** Name of the record in the store. */
const NAME = 'record';

/** The record, and what is wrong where it cannot be read or kept. */
interface Kept {
  readonly record: LearnRecord;
  readonly problem?: string;
}

/** Attempts that the browser refused: they belong to the record as long as the page stands, and are kept with the next. */
let unkept: readonly Attempt[] = [];

/** What is kept, and what this page could not keep. A record that cannot be read is put aside, and said. */
export function keptRecord(): Kept {
  const value = keptNote(NAME);
  const record = value === undefined ? NO_RECORD : readRecord(value);
  if (typeof record !== 'string') return { record: unkept.reduce(withAttempt, record) };
  const isAside = putAside(NAME, JSON.stringify(value));
  return {
    record: unkept.reduce(withAttempt, NO_RECORD),
    problem: `What was kept here cannot be read${isAside ? ', and was put aside' : ''}. ${record}.`,
  };
}

/** The record as the text of a file. */
export function recordText(record = keptRecord().record): string {
  return `${JSON.stringify(record, null, 2)}\n`;
}

/** Keep one attempt more. */
export function keepAttempt(attempt: Attempt): Kept {
  unkept = [...unkept, attempt];
  return keep(keptRecord().record);
}

/** Keep another record's attempts too. */
export function keepMerged(other: LearnRecord): Kept {
  return keep(mergeRecords(keptRecord().record, other));
}

function keep(record: LearnRecord): Kept {
  const problem = keepNote(NAME, record, (note) => typeof readRecord(note) !== 'string');
  if (problem !== undefined) return { record, problem };
  unkept = [];
  return { record };
}

/** Let every attempt go. */
export function wipeRecord(): Kept {
  dropStored(NAME);
  unkept = [];
  return { record: NO_RECORD };
}

/** A seed that no one has chosen, for the next tasks. */
export function freshSeed(): number {
  return (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % (MOST_SEED + 1);
}
