/** The tables of the planner, each against trying everything. */
import { describe, expect, test } from 'vitest';
import { assignLeads } from '../../../src/core/planner/assign.ts';
import { chainTable } from '../../../src/core/planner/chains.ts';
import { priceLinks } from '../../../src/core/planner/price-links.ts';
import { chainFits } from '../../../src/core/planner/problem.ts';
import type { PlanProblem } from '../../../src/core/planner/problem.ts';
import { share } from '../../../src/core/planner/share.ts';
import { walkTable } from '../../../src/core/planner/walks.ts';
import type { Choice } from '../../../src/core/board/offers.ts';
import { seededRandom } from '../../support/random.ts';
import type { Random } from '../../support/random.ts';
import { randomProblem } from './exhaustive.ts';

/** Every order of some numbers. */
function orders(list: readonly number[]): readonly (readonly number[])[] {
  return list.length === 0
    ? [[]]
    : list.flatMap((first) => orders(list.filter((one) => one !== first)).map((rest) => [first, ...rest]));
}
const members = (set: number): readonly number[] =>
  [...Array(6).keys()].filter((at) => (set >> at) % 2 === 1);

describe('Owned leads given out', () => {
  /** Every combination of one choice a link. */
  function cheapest(links: readonly (readonly Choice[])[], owned: readonly number[]): number {
    const [first, ...rest] = links;
    if (first === undefined) return 0;
    return Math.min(
      ...first.map(({ cost, uses }) => {
        const left = owned.map((pieces, kind) => pieces - uses.filter((one) => one === kind).length);
        return left.some((pieces) => pieces < 0) ? Infinity : cost + cheapest(rest, left);
      }),
      Infinity,
    );
  }
  const anyLinks = (random: Random): readonly (readonly Choice[])[] =>
    Array.from({ length: random.integer(0, 5) }, () =>
      Array.from({ length: random.integer(1, 4) }, (): Choice => ({
        cost: random.integer(0, 12),
        uses: Array.from({ length: random.integer(0, 2) }, () => random.integer(0, 2)),
      })),
    );

  test('cost the least of all ways to give them out, and no lead is in two places', () => {
    const random = seededRandom(81);
    let impossible = 0;
    for (let turn = 0; turn < 300; turn++) {
      const links = anyLinks(random);
      const owned = [0, 1, 2].map(() => random.integer(0, 2));
      const given = assignLeads(links, owned);
      const least = cheapest(links, owned);
      expect(given?.cost ?? Infinity).toBe(least);
      if (!given) impossible++;
      given?.chosen.forEach((choice, at) => {
        expect(links[at]).toContain(choice);
      });
      owned.forEach((pieces, kind) => {
        const used = given?.chosen.flatMap(({ uses }) => uses).filter((one) => one === kind).length ?? 0;
        expect(used).toBeLessThanOrEqual(pieces);
      });
    }
    expect(impossible).toBeGreaterThan(10);
  });

  test('do not hang on the order of the links', () => {
    const random = seededRandom(82);
    for (let turn = 0; turn < 50; turn++) {
      const links = anyLinks(random);
      const owned = [1, 1, 1];
      expect(assignLeads(links.toReversed(), owned)?.cost).toBe(assignLeads(links, owned)?.cost);
    }
  });

  test('of very many kinds are given out one by one, never to two places and never below the least', () => {
    // Eight kinds of nine pieces each are 10^8 states: far too many to go through.
    const owned = Array.from({ length: 8 }, () => 9);
    const links = Array.from({ length: 40 }, (_, at): readonly Choice[] => [
      { cost: 5, uses: [] },
      { cost: 0, uses: [at % 8] },
      { cost: 1, uses: [(at + 1) % 8] },
    ]);
    // Every link can have its own lead for nothing: 40 links, 5 of each kind, 9 pieces of each.
    expect(assignLeads(links, owned)?.cost).toBe(0);
    expect(assignLeads([[{ cost: 0, uses: [0] }]], [0])).toBeUndefined();
  });

  test('of no links cost nothing', () => {
    expect(assignLeads([], [3])).toEqual({ cost: 0, chosen: [] });
  });
});

describe('The cheapest chain over a set', () => {
  test('is the cheapest of all orders of its devices', () => {
    for (let seed = 90; seed < 110; seed++) {
      const problem: PlanProblem = { ...randomProblem(seededRandom(seed), 5), budget: 100, mostHops: 10 };
      const { costs } = priceLinks(problem, []);
      const table = chainTable(problem, costs);
      const start = costs[problem.outputs[0] ?? 0] ?? new Float64Array();
      const row = table.costs(start, undefined);
      for (let set = 1; set < 1 << problem.count; set++) {
        const along = (order: readonly number[]): number =>
          order.reduce(
            (sum, to, at) => sum + ((at === 0 ? start[to] : costs[order[at - 1] ?? 0]?.[to]) ?? Infinity),
            0,
          );
        const least = Math.min(...orders(members(set)).map(along));
        expect(row[set]).toBe(least);
        if (least < Infinity) {
          const order = table.order(start, set);
          expect(order.toSorted((a, b) => a - b)).toEqual(members(set));
          expect(along(order)).toBe(least);
        }
      }
    }
  });

  test('may hang at exactly the links and the edges that are allowed, and not beyond', () => {
    const problem = { ...randomProblem(seededRandom(1), 3), mostHops: 3, budget: 1 };
    expect(chainFits(problem, 3, 1, undefined)).toBe(true);
    expect(chainFits(problem, 4, 1, undefined)).toBe(false);
    expect(chainFits(problem, 3, 1.001, undefined)).toBe(false);
    // Sums of thirds come out a rounding away from one.
    expect(chainFits(problem, 3, 1 / 3 + 1 / 3 + 1 / 3 + 1e-15, undefined)).toBe(true);
    const hub = { limit: 1, shift: 0.25, outlets: [] };
    expect(chainFits(problem, 2, 0.75, hub)).toBe(true);
    expect(chainFits(problem, 3, 0.5, hub)).toBe(false);
    expect(chainFits(problem, 2, 0.8, hub)).toBe(false);
  });
});

describe('Sets shared out over places', () => {
  test('cost the least of all ways to give each device to a place', () => {
    const random = seededRandom(83);
    for (let turn = 0; turn < 30; turn++) {
      const [count, places] = [random.integer(1, 4), random.integer(1, 3)];
      const full = 1 << count;
      const rows = Array.from({ length: places }, () =>
        Float64Array.from({ length: full }, (_, set) => (set === 0 ? 0 : random.integer(0, 30))),
      );
      const shared = share(
        count,
        1,
        rows.map((costs) => [{ costs, into: () => 0, take: (set: number) => set }]),
      );
      for (let set = 0; set < full; set++) {
        let least = Infinity;
        for (let code = 0; code < places ** count; code++) {
          const parts = rows.map((_, place) =>
            members(set).reduce(
              (sum, at) => sum | (Math.floor(code / places ** at) % places === place ? 1 << at : 0),
              0,
            ),
          );
          least = Math.min(
            least,
            parts.reduce((sum, part, place) => sum + (rows[place]?.[part] ?? NaN), 0),
          );
        }
        expect(shared.costs[0]?.[set]).toBe(least);
        const takes = shared.takes(0, set);
        expect(takes.reduce((sum, part) => sum + part, 0)).toBe(set);
        expect(takes.reduce((sum, part, place) => sum + (rows[place]?.[part] ?? NaN), 0)).toBe(least);
      }
    }
  });

  test('of no places cost nothing for nothing, and are not to be had for anything else', () => {
    const { costs } = share(2, 1, []);
    expect([...(costs[0] ?? [])]).toEqual([0, Infinity, Infinity, Infinity]);
  });
});

describe('Walks that remember', () => {
  test('gain at least what every real chain gains, so that a bound made of them is below it', () => {
    for (let seed = 120; seed < 140; seed++) {
      const random = seededRandom(seed);
      const problem = randomProblem(random, 5);
      const { costs } = priceLinks(problem, []);
      const table = walkTable(5, costs, 4);
      const rewards = Float64Array.from({ length: 5 }, () => random.integer(0, 20));
      table.fill(costs, rewards);
      const start = costs[problem.outputs[0] ?? 0] ?? new Float64Array();
      for (const longest of [1, 2, 4]) {
        const { value, devices } = table.best(start, longest);
        expect(devices.length).toBeLessThanOrEqual(longest);
        for (let set = 1; set < 32; set++) {
          const chain = members(set);
          if (chain.length > longest) continue;
          for (const order of orders(chain)) {
            const cost = order.reduce(
              (sum, to, at) =>
                sum +
                ((at === 0 ? start[to] : costs[order[at - 1] ?? 0]?.[to]) ?? Infinity) -
                (rewards[to] ?? 0),
              0,
            );
            expect(value).toBeLessThanOrEqual(cost + 1e-9);
          }
        }
        // One device alone is remembered by itself: there the walk is a chain.
        if (longest === 1)
          expect(value).toBe(
            Math.min(...[...start.slice(0, 5)].map((cost, at) => cost - (rewards[at] ?? 0))),
          );
      }
    }
  });
});
