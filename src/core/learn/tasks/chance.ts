/** Chance from a seed, for tasks. */
import { seededChance } from '../../verdict/index.ts';
import type { Chance } from './task.ts';

/** Seeds run from 0 up to here: four signs of base 32. */
export const MOST_SEED = 2 ** 20 - 1;

function one<T>(list: readonly T[], at: number): T {
  const found = list[at];
  if (found === undefined)
    throw new Error(`task: needs a list with an entry ${at}, got ${list.length} entries`);
  return found;
}

/** A word as a whole number, so that kinds draw apart from one another: mixed sign by sign as FNV-1a does (public domain); 0 for no word. */
function numberOf(word: string): number {
  return [...word].reduce((sum, sign) => Math.imul(sum ^ sign.charCodeAt(0), 0x01000193) >>> 0, 0);
}

/**
 * The chance of a seed, 0 to `MOST_SEED`. `salt` draws another task from the same seed: the worked example beside it. `of` is what
 * it is drawn for: with the same seed two kinds of task must not have their right answers at the same place.
 */
export function chanceOf(seed: number, salt = 0, of = ''): Chance {
  const number = seededChance(numberOf(of) ^ (seed * 16 + salt));
  const below = (count: number): number => Math.floor(number() * count);
  return {
    // A salt turns back, not on: the worked example of one seed must not be the task of the next.
    turn: (list) => one(list, (seed + salt * (list.length - 1)) % list.length),
    pick: (list) => one(list, below(list.length)),
    shuffled: (list) => {
      const left = [...list];
      return list.map(() => left.splice(below(left.length), 1)[0] as (typeof left)[number]);
    },
  };
}

/** Half of the bits of a seed as a count, and rounds of mixing: four make a permutation that looks drawn (Luby and Rackoff, 1988). */
const HALF = 2 ** 10;
const ROUNDS = 4;

/** What one half of a seed adds to the other in a round. */
const roundOf = (of: string, round: number, half: number): number =>
  Math.floor(seededChance(numberOf(`${of} ${round} ${half}`))() * HALF);

/**
 * The seed at a row and a column, each 0 to 1023, of a table that holds every seed once, in an order that `of` decides: neighbours in
 * it have nothing to do with one another, nor have two tables. A Feistel network: each half in turn is changed by the other.
 */
export function scatteredSeed(of: string, row: number, column: number): number {
  let [left, right] = [row, column];
  for (let round = 0; round < ROUNDS; round += 1) [left, right] = [right, left ^ roundOf(of, round, right)];
  return left * HALF + right;
}

/** The row of that table in which a seed stands: the rounds the other way round. */
export function rowOfSeed(of: string, seed: number): number {
  let [left, right] = [Math.floor(seed / HALF), seed % HALF];
  for (let round = ROUNDS - 1; round >= 0; round -= 1)
    [left, right] = [right ^ roundOf(of, round, left), left];
  return left;
}

/** The seed so many steps on; after the last comes the first. */
export function seedAfter(seed: number, steps: number): number {
  return (seed + steps) % (MOST_SEED + 1);
}

/** Some of a list, by chance. */
export function someOf<T>(list: readonly T[], count: number, chance: Pick<Chance, 'shuffled'>): readonly T[] {
  return chance.shuffled(list).slice(0, count);
}

/** Draws that are tried before a case is given up: many times what any of them takes. */
const MOST_DRAWS = 2000;

/** Draw until there is a task in it. @throws when there never is. */
export function drawUntil<T>(make: () => T | undefined): T {
  for (let at = 0; at < MOST_DRAWS; at += 1) {
    const made = make();
    if (made !== undefined) return made;
  }
  throw new Error(`task: needs a draw that fits among ${MOST_DRAWS}, got none`);
}

/** A question that is answered once for each thing asked, and then from memory: what is solved for tasks stays as it is. */
export function remembered<A extends readonly unknown[], T>(answer: (...about: A) => T): (...about: A) => T {
  const known = new Map<string, T>();
  return (...about) => {
    const key = JSON.stringify(about);
    if (!known.has(key)) known.set(key, answer(...about));
    return known.get(key) as T;
  };
}
