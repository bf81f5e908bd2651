/** The shape of an observation on the fault bench. */
import type { Reading } from '../readings/index.ts';
import type { Contact, Side } from '../wiring/index.ts';
import type { BoardState } from './board-state.ts';

/** What of a part is looked at or touched: the lamp, display or jack of a device; a plug of a lead, or one of its contacts. */
export type PartSpot = 'lamp' | 'display' | 'jack' | `${Side} plug` | `${Side} ${Contact}`;

/** One thing to look at or to measure. `effort` orders equals: 1 look, 2 swap or unplug, 3 measure. */
export interface Observation {
  readonly id: string;
  readonly words: string;
  readonly effort: 1 | 2 | 3;
  /** The part of the board that it is about: 'sender', 'lead 1', 'pedal 1'. */
  readonly place: string;
  /** What of that part; none where it is about all of it. */
  readonly spots: readonly PartSpot[];
  /** What is seen, in words, or a reading. */
  readonly see: (state: BoardState) => string | Reading;
}

/** A look by eye: the part of the board that it is about stands at the end of its name. */
export const look = (
  id: string,
  words: string,
  spots: readonly PartSpot[],
  see: Observation['see'],
): Observation => ({ id, words, effort: 1, place: placeOf(id), spots, see });

/** The part of the board at the end of a name, 'light pedal 1'; the sender where there is none. */
function placeOf(id: string): string {
  return /(?:pedal|lead) \d+$/.exec(id)?.[0] ?? 'sender';
}
