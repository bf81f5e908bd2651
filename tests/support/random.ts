/**
 * Numbers that look random and come back the same from the same seed, so that a failure can be repeated.
 */

import { seededChance } from '../../src/core/verdict/chance.ts';

/** A seeded source of numbers. Each call moves it on. */
export interface Random {
  /** At least 0, less than 1. */
  readonly next: () => number;
  /** A whole number from `least` to `most`, both included. */
  readonly integer: (least: number, most: number) => number;
  /** True with this probability, 0 to 1. */
  readonly chance: (probability: number) => boolean;
  /** One member of a list that is not empty. */
  readonly pick: <Item>(items: readonly Item[]) => Item;
  /** Between two positive bounds, even on a logarithmic scale: part values spread over decades. */
  readonly decades: (least: number, most: number) => number;
}

/**
 * Make a seeded source of numbers, by the generator of the core.
 * Throws when the seed is not a whole number.
 */
export function seededRandom(seed: number): Random {
  if (!Number.isInteger(seed))
    throw new Error(`random numbers: the seed must be a whole number, got ${seed}`);
  const next = seededChance(seed);
  const integer = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return {
    next,
    integer,
    chance: (probability) => next() < probability,
    pick: (items) => {
      const item = items[integer(0, items.length - 1)];
      if (item === undefined) throw new Error('random numbers: cannot pick from an empty list');
      return item;
    },
    decades: (least, most) => least * (most / least) ** next(),
  };
}
