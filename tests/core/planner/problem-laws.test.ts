/** Laws of the cheapest plan that hold whatever the board: more to choose from is never dearer, and names do not matter. */
import { describe, expect, test } from 'vitest';
import { searchExact } from '../../../src/core/planner/exact.ts';
import { linksOf, waysOf } from '../../../src/core/planner/problem.ts';
import type { PlanProblem } from '../../../src/core/planner/problem.ts';
import type { Choice } from '../../../src/core/board/offers.ts';
import { seededRandom } from '../../support/random.ts';
import { randomProblem } from './exhaustive.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

const SEEDS = Array.from({ length: 60 }, (_, at) => 5000 + at);
const problemOf = (seed: number): PlanProblem => {
  const random = seededRandom(seed);
  return randomProblem(random, random.integer(1, 5));
};
const found = (problem: PlanProblem) => {
  return runThrough(searchExact(problem));
};
const cost = (problem: PlanProblem): number => found(problem).found?.cost ?? Infinity;
/** Equal but for the rounding of sums, or both without a plan. */
const same = (one: number, other: number): boolean => one === other || Math.abs(one - other) < 2e-5;
const atMost = (one: number, other: number): boolean => one <= other + 2e-5;

const withWays = (
  problem: PlanProblem,
  change: (choice: Choice, source: number, target: number) => Choice,
): PlanProblem => ({
  ...problem,
  ways: problem.ways.map((row, source) =>
    row.map((choices, target) => choices.map((choice) => change(choice, source, target))),
  ),
});

/** The same board with its devices numbered from the other end. */
function renumbered(problem: PlanProblem): PlanProblem {
  const { count } = problem;
  const old = (at: number): number => (at < count ? count - 1 - at : at);
  return {
    ...problem,
    ways: problem.ways.map((row, source) =>
      row.map((_, target) => problem.ways[old(source)]?.[old(target)] ?? []),
    ),
    shift: problem.shift.toReversed(),
  };
}

/** Every law is asked of the same boards; the cost of each as it stands is worked out once. */
const BOARDS = SEEDS.map((seed) => {
  const problem = problemOf(seed);
  return { seed, problem, least: cost(problem) };
});

function holds(law: (problem: PlanProblem, least: number) => boolean): void {
  expect(BOARDS.filter(({ problem, least }) => !law(problem, least)).map(({ seed }) => seed)).toEqual([]);
}

describe('The cheapest plan', () => {
  test('does not change when the devices are numbered anew', () => {
    holds((problem, least) => same(cost(renumbered(problem)), least));
  });

  test('is never dearer with one more piece of every owned lead, or with more room for edges or links', () => {
    holds((problem, least) => {
      const more = { ...problem, owned: problem.owned.map((pieces) => pieces + 1) };
      return (
        atMost(cost(more), least) &&
        atMost(cost({ ...problem, budget: problem.budget + 3 }), least) &&
        atMost(cost({ ...problem, mostHops: problem.mostHops + 2 }), least)
      );
    });
  });

  test('is never cheaper with an output more to be left free, or with one output gone', () => {
    holds((problem, least) => {
      const freer = { ...problem, spareOutlets: problem.spareOutlets + 1 };
      const fewer = { ...problem, outputs: problem.outputs.slice(0, -1) };
      return atMost(least, cost(freer)) && (fewer.outputs.length === 0 || atMost(least, cost(fewer)));
    });
  });

  test('of any kind is the cheaper of the cheapest chain and the cheapest hub', () => {
    holds((problem) => {
      const [any, chain, hub] = (['any', 'chain', 'hub'] as const).map((topology) =>
        cost({ ...problem, topology }),
      );
      return same(any ?? NaN, Math.min(chain ?? NaN, hub ?? NaN));
    });
  });

  test('costs twice as much where everything does', () => {
    holds((problem, least) => {
      const dear = withWays(problem, (choice) => ({ ...choice, cost: 2 * choice.cost }));
      return same(cost(dear), 2 * least);
    });
  });

  test('costs so much more where every way into one device does: it has exactly one link into it', () => {
    holds((problem, least) => {
      const dear = withWays(problem, (choice, _, target) =>
        target === 0 ? { ...choice, cost: choice.cost + 7 } : choice,
      );
      return same(cost(dear), least + 7);
    });
  });

  test('needs no lead that nobody owns: without the ways that take one it is as it was', () => {
    holds((problem) => {
      const none = { ...problem, owned: problem.owned.map(() => 0) };
      const without = {
        ...problem,
        ways: problem.ways.map((row) =>
          row.map((choices) => choices.filter(({ uses }) => uses.length === 0)),
        ),
      };
      return same(cost(none), cost(without));
    });
  });
});

describe('The layout that is found', () => {
  test('feeds each device once, from a place that can, and costs what its links cost', () => {
    let counted = 0;
    for (const { problem, seed } of BOARDS) {
      const { found: plan } = found(problem);
      if (!plan) continue;
      counted++;
      const links = linksOf(problem, plan.layout);
      const fed = links.map(({ to }) => to).filter((to) => to < problem.count);
      expect(
        fed.toSorted((a, b) => a - b),
        `seed ${seed}`,
      ).toEqual([...Array(problem.count).keys()]);
      const ways = waysOf(problem, links);
      plan.chosen.forEach((choice, at) => {
        expect(ways[at]).toContainEqual(choice);
      });
      const sum = plan.chosen.reduce((total, choice) => total + choice.cost, 0);
      expect(Math.abs(sum - plan.cost), `seed ${seed}`).toBeLessThan(1e-5);
      problem.owned.forEach((pieces, kind) => {
        const used = plan.chosen.flatMap(({ uses }) => uses).filter((one) => one === kind).length;
        expect(used, `seed ${seed}`).toBeLessThanOrEqual(pieces);
      });
    }
    expect(counted).toBeGreaterThan(30);
  });

  test('hangs no chain beyond the links and the edges that are allowed, and leaves free what is wished for', () => {
    for (const { problem, seed } of BOARDS) {
      const { found: plan } = found(problem);
      let free = 0;
      for (const { hub, chains } of plan?.layout ?? []) {
        const behind = problem.hubs[hub];
        free += behind ? chains.filter(({ length }) => length === 0).length : Number(chains.length === 0);
        for (const chain of chains.filter(({ length }) => length > 0)) {
          const shift = chain.reduce((sum, at) => sum + (problem.shift[at] ?? 0), behind?.shift ?? 0);
          expect(shift, `seed ${seed}`).toBeLessThanOrEqual(problem.budget + 1e-9);
          expect(chain.length + (behind ? 1 : 0), `seed ${seed}`).toBeLessThanOrEqual(problem.mostHops);
        }
      }
      if (plan) expect(free, `seed ${seed}`).toBeGreaterThanOrEqual(problem.spareOutlets);
    }
  });

  test('comes with a bound that is never above it, at any moment of the search', () => {
    for (const { problem, least, seed } of BOARDS) {
      runThrough(searchExact(problem), ({ bound }) =>
        expect(bound, `seed ${seed}`).toBeLessThanOrEqual(least + 2e-5),
      );
    }
  });

  test('is not proven when the search is cut short before it can be', () => {
    for (const { problem, least } of BOARDS.slice(0, 20)) {
      const end = runThrough(searchExact(problem, 0));
      expect(end.bound).toBeLessThanOrEqual(least);
      expect(end.proven).toBe(false);
    }
  });
});
