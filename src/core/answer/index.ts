/** Will these two talk, and through what? What a player tells, what manuals say, and the answer. The door of the floor. */
export { talkMemory } from './grade.ts';
export { letterToMaker } from './letter.ts';
export { readManual } from './manual.ts';
export type { ManualReading } from './manual-reading.ts';
export { sayAmiss, sayAnswer, sayDrawer, sayPair, saySocket, sayType, sayUnfit, sayWhatToDo } from './say.ts';
export { willTheyTalk } from './talk.ts';
export type { TalkAnswer } from './talk.ts';
export { IN_AND_OUT_TYPES, SOCKETS, circuitsOfType, jackOfType, openTypes } from './told.ts';
export type { Socket, ToldJack } from './told.ts';
export { referenceTable, shortConductor, shortType, typesOf } from './reference-table.ts';
