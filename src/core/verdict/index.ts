/** What a link does, and which lead would work. The door of the floor: what others may use, and nothing else. */
export { checkLink } from './check.ts';
export type { LinkVerdict } from './check.ts';
export { worstCase } from './corners.ts';
export {
  conductorMaps,
  findLead,
  leadFor,
  shopWords,
  solveMapOnce,
  solveMaps,
  wiredContacts,
} from './find-lead.ts';
export type { LeadAnswer } from './find-lead.ts';
export { judgeInputs } from './judge.ts';
export type { InputVerdict } from './judge.ts';
export { lineByLine } from './needed.ts';
export { notesOf } from './notes.ts';
export { NOTES, OUTCOMES, noteLabel, outcomeWords, worse } from './outcomes.ts';
export type { Grade, Note, NoteKind, Outcome } from './outcomes.ts';
export { partWords } from './part-words.ts';
export { prepareLink, settleState, solveState } from './prepare.ts';
export type { PreparedLink } from './prepare.ts';
export { quickOutcome } from './quick.ts';
export { conductorLines, reachOf } from './reach.ts';
export { nodeOf, readState } from './readings.ts';
export type { Spot } from './readings.ts';
export { sayAmperes, sayList, sayOhms, sayVolts, sayWatts } from './speak.ts';
export type { Step } from './steps.ts';
export { drawBuilds } from './tolerance.ts';
export type { DrawProgress, ToleranceResult } from './tolerance.ts';
