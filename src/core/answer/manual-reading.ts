/** What comes of reading a manual, and the ways to say it. */
import type { Style } from '../wiring/index.ts';

/** How sure a reading is: said outright; half said, so that one answer would settle it; told of no type at all; or said two ways. */
export type ManualState = 'said' | 'half' | 'cannot-be-told' | 'contradicts';

/** A manual's words understood. */
export interface ManualReading {
  readonly state: ManualState;
  /** The likeliest type; undefined when it cannot be told. */
  readonly type: Style | undefined;
  /** Every type that the words leave open, the likeliest first. Empty: the words leave every type open. */
  readonly could: readonly Style[];
  /** Why, in words that quote the manual's. */
  readonly reason: string;
  /** Whether the words tell of one jack that receives and sends. */
  readonly inAndOut?: boolean;
  /** What is still open, as questions to the manual or its maker; none when the type is said. */
  readonly questions: readonly string[];
}
/** Types of the loop behind a phone jack of three contacts. */
export const LOOP_TYPES: readonly Style[] = ['type-a', 'type-b'];

/** The question that settles every type. */
export const ASK_CONTACTS = 'Which DIN pin is on the tip, and which on the ring: 4, 5, or neither?';

/** A type said outright. */
export function said(type: Style, reason: string): ManualReading {
  return { state: 'said', type, could: [type], reason, questions: [] };
}

/** No type can be told. */
export function cannot(reason: string, questions: readonly string[]): ManualReading {
  return { state: 'cannot-be-told', type: undefined, could: [], reason, questions };
}

/** The words say two things. */
export function contradicts(reason: string): ManualReading {
  return { state: 'contradicts', type: undefined, could: [], reason, questions: [ASK_CONTACTS] };
}
