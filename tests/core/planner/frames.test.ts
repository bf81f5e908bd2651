import { describe, expect, test } from 'vitest';
import { framesOf, headsOf } from '../../../src/core/planner/frames.ts';
import type { PlanProblem } from '../../../src/core/planner/problem.ts';
import type { Choice } from '../../../src/core/board/offers.ts';
import { seededRandom } from '../../support/random.ts';
import { randomProblem } from './exhaustive.ts';

describe('Frames and their places', () => {
  const base: PlanProblem = { ...randomProblem(seededRandom(2), 3), spareOutlets: 0, topology: 'any' };
  const way: readonly Choice[] = [{ cost: 1, uses: [] }];
  /** Two outputs, a hub of three outlets of which there is one, and every link possible. */
  const problem: PlanProblem = {
    ...base,
    ways: Array.from({ length: 8 }, (_, source) =>
      Array.from({ length: 4 }, (__, target) =>
        (target < 3 && source === target) || (target === 3 && (source < 3 || source > 4)) ? [] : way,
      ),
    ),
    outputs: [3, 4],
    hubs: [{ limit: 1, shift: 0.5, outlets: [5, 6, 7] }],
    shift: [1, 1, 1],
    budget: 2,
    mostHops: 5,
  };

  test('are every use of the outputs, outputs that are alike in one order', () => {
    // Of (chain, chain), (chain, hub), (hub, chain) the last two are one; (hub, hub) needs two hubs.
    expect(framesOf(problem)).toEqual([
      [-1, -1],
      [-1, 0],
    ]);
    expect(framesOf({ ...problem, topology: 'chain' })).toEqual([[-1, -1]]);
    expect(framesOf({ ...problem, topology: 'hub' })).toEqual([[-1, 0]]);
    const two = { ...problem, hubs: [{ limit: Infinity, shift: 0.5, outlets: [5, 6, 7] }] };
    expect(framesOf(two)).toContainEqual([0, 0]);
  });

  test('have a place for each output or outlet, with the longest chain that edges and links allow there', () => {
    // Shifts of 1 in a budget of 2: two devices straight on an output, one behind the hub's own half.
    expect(headsOf(problem, [-1, 0])).toEqual([
      { source: 3, output: 0, hub: -1, longest: 2 },
      { source: 5, output: 1, hub: 0, longest: 1 },
      { source: 6, output: 1, hub: 0, longest: 1 },
      { source: 7, output: 1, hub: 0, longest: 1 },
    ]);
    expect(headsOf({ ...problem, mostHops: 1 }, [-1, 0]).map(({ longest }) => longest)).toEqual([1, 0, 0, 0]);
  });

  test('are left out where they have too few places for the chains that there must be', () => {
    // No device can follow another: three chains at least, and one frame has only two places.
    const apart = {
      ...problem,
      ways: problem.ways.map((row, source) => (source < 3 ? row.map(() => []) : row)),
    };
    expect(framesOf(apart)).toEqual([[-1, 0]]);
    expect(framesOf({ ...apart, spareOutlets: 1 })).toEqual([[-1, 0]]);
    expect(framesOf({ ...apart, spareOutlets: 2 })).toEqual([]);
  });

  test('keep a place for one chain beside those that stay free, though every device may follow another in a circle', () => {
    // Three devices that feed each other, and two outputs: one of them may stay free, not both.
    const frames = (spareOutlets: number) => framesOf({ ...problem, topology: 'chain', spareOutlets });
    expect([frames(0), frames(1), frames(2)]).toEqual([[[-1, -1]], [[-1, -1]], []]);
  });
});
