/** From what arrived to the cause, and a real lead under test. The door of the floor: what others may use, and nothing else. */
export { answerArrived } from './answer.ts';
export type { Answer, Question, ShownCause } from './answer.ts';
export { COMPLAINTS } from './complaints.ts';
export type { Complaint } from './complaints.ts';
export type { SeenByte } from './log.ts';
export { LOOP_CANNOT_SHOW, WIGGLE_PATIENCE_SECONDS, judgeGroup, judgeLoop, sayTrip } from './loop-judge.ts';
export type { GroupOutcome, LoopResult, TimedMessage } from './loop-judge.ts';
export { loopGroups, wiggleMessage } from './loop-patterns.ts';
export { PRESS_PAUSE_SECONDS, comparePress } from './presses.ts';
export type { PressHeard } from './presses.ts';
export { MIDDLE_OCTAVES, WRITINGS, readTyped } from './read-typed.ts';
export type { Writing } from './read-typed.ts';
export { saySeen } from './say-seen.ts';
export type { Trace } from './simulate.ts';
