/** Will these two talk, and through what? What a player tells, what manuals say, and the answer. The door of the floor. */
export { DRAWER, GOODS, sayContacts } from './goods.ts';
export type { Goods } from './goods.ts';
export { letterToMaker } from './letter.ts';
export { readManual } from './manual.ts';
export type { ManualReading } from './manual.ts';
export { sayAnswer, sayDrawer, sayGrade, sayPair, saySocket, sayType, sayWhatToDo } from './say.ts';
export { willTheyTalk } from './talk.ts';
export type { DrawerAnswer, PairAnswer, TalkAnswer } from './talk.ts';
export { SOCKETS, circuitsOfType, jackOfType, openTypes, typesFor } from './told.ts';
export type { Socket, ToldJack } from './told.ts';
export { referenceTable, shortConductor, shortType, typesOf } from './reference-table.ts';
export type { ReferenceCell } from './reference-table.ts';
