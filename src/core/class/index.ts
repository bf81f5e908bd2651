/** A class: what is handed out, handed in and marked. The door of the floor: what others may use, and nothing else. */
export { CLASS_LIMITS, SHOWS } from './limits.ts';
export { MARKS } from './mark.ts';
export type { Mark, MarkedTask } from './mark.ts';
export { markResults, numbersMissing, sayMistake } from './marked.ts';
export type { Marked, MarkedRow, MarkedSet } from './marked.ts';
export { papersOf } from './papers.ts';
export type { Paper } from './papers.ts';
export { numberOfStudent, packProgress, readProgress } from './progress.ts';
export type { Reading } from './reading.ts';
export { handedInOf, resultsIn } from './handed-in.ts';
export { readResult, readResultText, resultFileName, resultHash, writeResultText } from './result.ts';
export type { Result } from './result.ts';
export { MARK_WORDS, countOf, resultsCsv } from './results-csv.ts';
export { sayAnswer, sayRight } from './say-answer.ts';
export { readySets } from './ready-sets.ts';
export { readSetCode, setCode, titleByCode } from './set-code.ts';
export { takenFile, takenIn, takenOf } from './taken.ts';
export type { HandedIn, Taken } from './taken.ts';
export {
  KINDS,
  readSet,
  readSetText,
  sameWork,
  setFromHash,
  setHash,
  tasksOfSet,
  writeSetText,
} from './work-set.ts';
export type { SetItem, WorkSet } from './work-set.ts';
