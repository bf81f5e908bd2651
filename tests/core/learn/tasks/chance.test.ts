/** Chance for tasks: all of it from the seed, by turns where that is asked for, and fair where it is not. */
import { describe, expect, it } from 'vitest';
import {
  MOST_SEED,
  chanceOf,
  drawUntil,
  remembered,
  seedAfter,
  someOf,
} from '../../../../src/core/learn/tasks/chance.ts';

const LETTERS = ['a', 'b', 'c', 'd', 'e'] as const;
const MANY = Array.from({ length: 2000 }, (_, seed) => seed);

describe('The chance of a seed', () => {
  it('is the same each time, and another for another seed or another kind', () => {
    const drawn = (seed: number, of?: string): string => {
      const chance = chanceOf(seed, 0, of);
      return Array.from({ length: 12 }, () => chance.pick(LETTERS)).join('');
    };
    expect(drawn(7)).toBe(drawn(7));
    expect(new Set(MANY.slice(0, 200).map((seed) => drawn(seed))).size).toBe(200);
    expect(drawn(7, 'loop-current.2')).not.toBe(drawn(7, 'loop-current.3'));
    expect(drawn(7, 'loop-current.2')).not.toBe(drawn(7, 'rank-loops.2'));
  });

  it('takes turns: seeds in a row go through a list, and the worked example is the one before', () => {
    const turn = (seed: number, salt = 0): string => chanceOf(seed, salt).turn(LETTERS);
    expect([0, 1, 2, 3, 4, 5, 6].map((seed) => turn(seed)).join('')).toBe('abcdeab');
    for (const seed of [0, 1, 4, 5, MOST_SEED]) {
      expect(turn(seed, 1)).toBe(LETTERS[(seed + 4) % 5]);
      expect(turn(seed, 1)).not.toBe(turn(seed));
      expect(turn(seed, 1)).not.toBe(turn(seed + 1));
    }
  });

  it('picks each of a list about as often', () => {
    const counts = LETTERS.map(
      (letter) => MANY.filter((seed) => chanceOf(seed).pick(LETTERS) === letter).length,
    );
    // Four standard deviations of 2000 draws with a share of a fifth: 4 x sqrt(2000 x 0.2 x 0.8) = 72.
    for (const count of counts) expect(Math.abs(count - 400)).toBeLessThan(72);
  });

  it('shuffles without loss, and each place as often as another', () => {
    const first = LETTERS.map(() => 0);
    for (const seed of MANY) {
      const shuffled = chanceOf(seed).shuffled(LETTERS);
      expect(shuffled.toSorted()).toEqual(LETTERS);
      const at = shuffled.indexOf('a');
      first[at] = (first[at] ?? 0) + 1;
    }
    for (const count of first) expect(Math.abs(count - 400)).toBeLessThan(72);
    expect(chanceOf(1).shuffled([])).toEqual([]);
  });

  it('needs something to pick from', () => {
    expect(() => chanceOf(1).pick([])).toThrow('task: needs a list with an entry 0, got 0 entries');
  });
});

describe('Seeds', () => {
  it('go round: after the last comes the first', () => {
    expect(MOST_SEED).toBe(32 ** 4 - 1);
    expect(seedAfter(MOST_SEED, 1)).toBe(0);
    expect(seedAfter(MOST_SEED - 1, 3)).toBe(1);
    expect(seedAfter(5, 0)).toBe(5);
  });
});

describe('Draws', () => {
  it('of some of a list are so many different ones', () => {
    for (const seed of MANY.slice(0, 50)) {
      const some = someOf(LETTERS, 3, chanceOf(seed));
      expect(new Set(some).size).toBe(3);
    }
    expect(someOf(LETTERS, 9, chanceOf(1))).toHaveLength(5);
  });

  it('until one fits take the first that does, and give up in words where none ever does', () => {
    let drawn = 0;
    expect(drawUntil(() => ((drawn += 1) > 4 ? drawn : undefined))).toBe(5);
    expect(() => drawUntil(() => undefined)).toThrow('task: needs a draw that fits among 2000, got none');
  });
});

describe('What is remembered', () => {
  it('is worked out once for all that is alike, and again for what is not', () => {
    const asked: string[] = [];
    const sum = remembered((of: { readonly a: number; readonly b: number }, more: number): number => {
      asked.push(`${of.a} ${of.b} ${more}`);
      return of.a + of.b + more;
    });
    expect([sum({ a: 1, b: 2 }, 3), sum({ a: 1, b: 2 }, 3), sum({ a: 1, b: 2 }, 4)]).toEqual([6, 6, 7]);
    expect(asked).toEqual(['1 2 3', '1 2 4']);
  });

  it('may be nothing at all', () => {
    let asked = 0;
    const nothing = remembered((_: string): undefined => void (asked += 1));
    expect([nothing('a'), nothing('a')]).toEqual([undefined, undefined]);
    expect(asked).toBe(1);
  });
});
