/** What a link does, and which lead would work. The door of the floor: what others may use, and nothing else. */
export { seededChance } from './chance.ts';
export { checkLink, recallLink } from './check.ts';
export type { LinkVerdict } from './check.ts';
export { findLead, workingLeads } from './find-lead.ts';
export type { LeadAnswer } from './find-lead.ts';
export type { LinkMemory, NotedJudgement } from './findings.ts';
export type { InputVerdict } from './judge.ts';
export { linkFor, someMapWorks, solveMaps, wiredContacts } from './maps.ts';
export type { MapMemory } from './maps.ts';
export { lineByLine } from './needed.ts';
export { OUTCOMES, linkWords, noteLabel, outcomeWords, works } from './outcomes.ts';
export type { Grade, LinkOutcome, NoteKind, Outcome } from './outcomes.ts';
export { partWords } from './part-words.ts';
export { conductorLines } from './reach.ts';
export { nodeOf } from './readings.ts';
export type { Spot } from './readings.ts';
export { shopWords } from './shop-words.ts';
export {
  capital,
  sayAmperes,
  sayAmperesFinely,
  sayBeside,
  sayList,
  sayOhms,
  sayVolts,
  sayWatts,
} from './speak.ts';
export { contactName } from './steps.ts';
export type { Step } from './steps.ts';
export { strayAmperes } from './stray.ts';
export { drawBuilds } from './tolerance.ts';
export type { DrawProgress, ToleranceResult } from './tolerance.ts';
