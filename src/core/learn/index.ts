/** What lessons say, asked of the floors below. The door of the floor: what others may use, and nothing else. */
export { edgeRow, hopRow } from './bars.ts';
export type { BarRow } from './bars.ts';
export { boardFrom, splitFrom } from './boards.ts';
export type { AuthoredBoard, AuthoredSplit } from './boards.ts';
export { inSomeOrder } from './choice.ts';
export type { Choice } from './choice.ts';
export { above, between } from './claims.ts';
export type { Claims } from './claims.ts';
export { sayHeard, sayOutput } from './inside.ts';
export { harms } from './harms.ts';
export { jackReading, meterOn, sayMeter, underTestFrom } from './jacks.ts';
export type { AuthoredUnderTest, LessonJacks, MeterSetting, ProbePair } from './jacks.ts';
export { huntFor, saySplit, seenAt, splitBy, workedHunt } from './hunt.ts';
export { LED_KEEPS, loopSum } from './loop-sum.ts';
export { firstLead, linkFrom, planFrom, searchFor, solve } from './links.ts';
export type { AuthoredJack, AuthoredLink, LessonLinks } from './links.ts';
export { placeFrom, proofOf } from './proofs.ts';
export type { AuthoredReading, LessonReadings } from './proofs.ts';
export { say, sayValue, unbroken } from './say.ts';
export type { Quantity } from './say.ts';
export { SENT_KINDS, saySent, whoActs } from './set-up.ts';
export type { SentKind, SetPedal } from './set-up.ts';
export { shownCheck, shownDepth, shownFacts, shownPress, shownSilence, shownSplit } from './shown.ts';
export type { Shown } from './shown.ts';
export { pileFrom, symptomGroups } from './suspects.ts';
export type { AuthoredPile, LessonPiles, Pile, Suspect } from './suspects.ts';
export {
  atMetres,
  edgesOf,
  hopsOf,
  sayBinary,
  sayBit,
  sayBits,
  sayBytes,
  sayClockBound,
  sayDelay,
  sayHex,
  sayLag,
  sayLongest,
  sayMetres,
  sayShift,
  sayTime,
  sendOver,
} from './time.ts';
export { MOST_SEED, remembered, rowOfSeed, scatteredSeed } from './tasks/chance.ts';
export { MOST_SIGNS, answerOfText, isLongEnough } from './tasks/answers.ts';
export { gradeAnswer } from './tasks/grade.ts';
export { knownMistakes } from './tasks/mistakes.ts';
export { readTaskId, writeTaskId } from './tasks/task-id.ts';
export { LEVELS } from './tasks/task.ts';
export type { Drawn, Grading, Level, Material, ShownFace, Shows, Task, TaskId } from './tasks/task.ts';
export { TASKS_BY_LESSON, makeTask } from './tasks/tasks.ts';
export { NO_RECORD, mergeRecords, readRecord, withAttempt } from './tasks/record.ts';
export { standings } from './tasks/standings.ts';
export type { Standing } from './tasks/standings.ts';
export type { Attempt, LearnRecord } from './tasks/record.ts';
export { attemptOfRound, isRound, roundsIn } from './tasks/rounds.ts';
export { anotherLike, tasksOfLesson } from './tasks/session.ts';
export { isDue, tasksToPractise, untried } from './tasks/practise.ts';
export type { Wanted } from './tasks/practise.ts';
