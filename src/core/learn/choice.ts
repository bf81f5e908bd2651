import { MOST_SEED, chanceOf } from './tasks/chance.ts';

/** One answer to a question that is asked before the circuit is shown. */
export interface Choice {
  readonly text: string;
  readonly right: boolean;
  /** Why it is right or wrong, in one or two sentences. */
  readonly because: string;
}

/** Choices in an order that the question's own words decide: the same at each build, and the right one at no usual place. */
export function inSomeOrder(choices: readonly Choice[], question: string): readonly Choice[] {
  const seed = [...question].reduce(
    (sum, letter) => (sum * 31 + (letter.codePointAt(0) ?? 0)) % MOST_SEED,
    0,
  );
  return chanceOf(seed).shuffled(choices);
}
