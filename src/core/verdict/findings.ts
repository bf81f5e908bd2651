/** What an explanation is drawn from. */
import type { InputVerdict } from './judge.ts';
import type { Note, Outcome } from './outcomes.ts';
import type { Reach } from './reach.ts';
import type { StateReading } from './readings.ts';

/** A link that has been solved and judged. `decides` is the number of the input that decides the outcome. */
export interface Findings {
  readonly outcome: Outcome;
  readonly notes: readonly Note[];
  readonly inputs: readonly InputVerdict[];
  readonly decides: number;
  readonly readings: { readonly idle: StateReading; readonly active: StateReading };
  readonly reach: readonly Reach[];
}
