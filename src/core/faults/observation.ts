/** The shape of an observation on the fault bench. */
import type { Reading } from '../readings/index.ts';
import type { BoardState } from './board-state.ts';

/** One thing to look at or to measure. `effort` orders equals: 1 look, 2 swap or unplug, 3 measure. */
export interface Observation {
  readonly id: string;
  readonly words: string;
  readonly effort: 1 | 2 | 3;
  /** The part of the board that it is about: 'sender', 'lead 1', 'pedal 1'. */
  readonly place: string;
  /** What is seen, in words, or a reading. */
  readonly see: (state: BoardState) => string | Reading;
}

/** A look by eye: the part of the board that it is about stands at the end of its name. */
export const look = (id: string, words: string, see: Observation['see']): Observation => ({
  id,
  words,
  effort: 1,
  place: placeOf(id),
  see,
});

/** The part of the board at the end of a name, 'light pedal 1'; the sender where there is none. */
function placeOf(id: string): string {
  return /(?:pedal|lead) \d+$/.exec(id)?.[0] ?? 'sender';
}
