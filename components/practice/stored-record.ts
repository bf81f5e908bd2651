/** The record in the browser's store. Every writing reads first what another tab has written, so that none is lost. */
import { MOST_SEED, NO_RECORD, mergeRecords, readRecord, withAttempt } from '../../src/core/learn/index.ts';
import type { Attempt, LearnRecord } from '../../src/core/learn/index.ts';
import { dropNote, keepNote, keptNote } from '../keep/notes.ts';
import { putAside } from '../keep/shelf.ts';

/** Name of the record in the store. */
const NAME = 'record';

/** The record, and what is wrong where it cannot be read or kept. */
interface Kept {
  readonly record: LearnRecord;
  readonly problem?: string;
}

/** What is kept. A record that cannot be read is put aside, and said. */
export function keptRecord(): Kept {
  const value = keptNote(NAME);
  if (value === undefined) return { record: NO_RECORD };
  const record = readRecord(value);
  if (typeof record !== 'string') return { record };
  putAside(NAME, JSON.stringify(value));
  return { record: NO_RECORD, problem: `What was kept here cannot be read, and was put aside. ${record}.` };
}

/** Keep one attempt more. */
export function keepAttempt(attempt: Attempt): Kept {
  return keep(withAttempt(keptRecord().record, attempt));
}

/** Keep another record's attempts too. */
export function keepMerged(other: LearnRecord): Kept {
  return keep(mergeRecords(keptRecord().record, other));
}

function keep(record: LearnRecord): Kept {
  const problem = keepNote(NAME, record);
  return problem === undefined ? { record } : { record, problem };
}

/** Let every attempt go. */
export function wipeRecord(): Kept {
  dropNote(NAME);
  return { record: NO_RECORD };
}

/** A seed that no one has chosen, for the next tasks. */
export function freshSeed(): number {
  return (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % (MOST_SEED + 1);
}
