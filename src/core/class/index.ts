/** A class: what is handed out, handed in and marked. The door of the floor: what others may use, and nothing else. */
export { countOf, resultsCsv } from './results-csv.ts';
export { markResults, sayMistake } from './marked.ts';
export type { Marked, MarkedRow } from './marked.ts';
export { papersOf } from './papers.ts';
export type { Reading } from './reading.ts';
export { readResultText, resultFileName, resultHash, resultsIn, writeResultText } from './result.ts';
export type { Result } from './result.ts';
export { sayAnswer } from './say-answer.ts';
export { readSetCode, setCode } from './set-code.ts';
export { KINDS, readSet, readSetText, setFromHash, setHash, tasksOfSet, writeSetText } from './work-set.ts';
export type { WorkSet } from './work-set.ts';
