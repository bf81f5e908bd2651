/** From what arrived to the cause, and a real lead under test. The door of the floor: what others may use, and nothing else. */
export { answerArrived } from './answer.ts';
export type { Answer, Question, ShownCause } from './answer.ts';
export { COMPLAINTS } from './complaints.ts';
export type { Complaint } from './complaints.ts';
export type { SeenByte } from './log.ts';
export { WRITINGS, readTyped } from './read-typed.ts';
export type { Writing } from './read-typed.ts';
export { saySeen } from './say-seen.ts';
export type { Trace } from './simulate.ts';
