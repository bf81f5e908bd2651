/** What instruments show, and the name of a jack from it. The door of the floor: what others may use, and nothing else. */
export { decidingReadings, likelyTypes } from './deciding.ts';
export type { Deciding } from './deciding.ts';
export { readEntry, unitsOf } from './entry.ts';
export type { Unit } from './entry.ts';
export { MARKINGS, MENU_FACTS } from './evidence.ts';
export type { Evidence, Marking, MenuFact } from './evidence.ts';
export { answerFinder } from './finder-answer.ts';
export type { AnswerState, FinderAnswer } from './finder-answer.ts';
export { findJack } from './finder.ts';
export type { TakenReading } from './taken.ts';
export { METER_FUNCTIONS, METER_PROFILES, meterProfile } from './instruments.ts';
export type { MeterFunction, MeterProfileName } from './instruments.ts';
export { setUp, takeReading } from './measure.ts';
export { POWERS, sayPower } from './power.ts';
export type { Power } from './power.ts';
export {
  displayText,
  explainReading,
  plugWords,
  probePlaces,
  probedEnds,
  readUnder,
  samePlace,
  sayProbePlace,
} from './probing.ts';
export type { UnderTest } from './probing.ts';
export { sayFunction, sayReading } from './reading.ts';
export type { Reading } from './reading.ts';
export { SAFE_RULE, mayLoad, safeReadings } from './safe-readings.ts';
export { noiseVolts } from './scale.ts';
export type { ScaledFunction } from './scale.ts';
export { probedContacts, readJack, readLead } from './subjects.ts';
export type { JackReading, JackUnderTest, LeadContact } from './subjects.ts';
export { sayJackReading, sayName } from './words.ts';
