/** What was taken in to be marked, and how it is kept in the browser: the work itself is read by who marks it. */
import { takenFile, takenIn } from '../../src/core/class/index.ts';
import type { Taken } from '../../src/core/class/index.ts';
import { noteKind } from '../keep/kind.ts';

/** Nothing was taken in. */
export const NOTHING: readonly Taken[] = [];

/** What was taken in as the keeper of its shelf knows it; its text is a file that this page takes in again. */
export const TAKEN_KIND = noteKind<readonly Taken[]>(
  'list of results',
  (note) => takenIn(note)?.taken ?? NOTHING,
  takenFile,
  (_, note) => takenIn(note)?.spoiled === 0,
);
