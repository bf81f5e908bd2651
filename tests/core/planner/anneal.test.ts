/** Searching by chance, and walks that remember, beside every layout and every chain of small boards, tried one by one. */
import { describe, expect, test } from 'vitest';
import { annealFrame } from '../../../src/core/planner/anneal.ts';
import { boundFrame } from '../../../src/core/planner/bound.ts';
import { framesOf } from '../../../src/core/planner/frames.ts';
import type { Frame } from '../../../src/core/planner/frames.ts';
import { linksOf, waysOf } from '../../../src/core/planner/problem.ts';
import type { Found, PlanProblem } from '../../../src/core/planner/problem.ts';
import { MOST_EXACT, search } from '../../../src/core/planner/search.ts';
import { walkTable } from '../../../src/core/planner/walks.ts';
import { runThrough } from '../../../src/core/signal/index.ts';
import { seededRandom } from '../../support/random.ts';
import { cheapestOfAll, randomProblem } from './exhaustive.ts';

const STEPS = 3000;

/** What annealing finds in a frame, owned leads at the prices of its bound, as in the search. */
function annealed(problem: PlanProblem, frame: Frame, seed = 1): Found | undefined {
  const prices = runThrough(boundFrame(problem, frame, Infinity)).multipliers.subarray(problem.count);
  return runThrough(annealFrame(problem, frame, prices, seededRandom(seed).next, STEPS));
}

const BOARDS = Array.from({ length: 40 }, (_, at) => {
  const random = seededRandom(7000 + at);
  const problem = randomProblem(random, random.integer(2, 5));
  const frames = framesOf(problem);
  const found = frames.map((frame) => ({ frame, found: annealed(problem, frame) }));
  return { problem, found, least: cheapestOfAll(problem) };
});

describe('A search by chance', () => {
  test('never finds what is cheaper than the cheapest of all layouts, and mostly finds that', () => {
    let [possible, met] = [0, 0];
    for (const { found, least } of BOARDS) {
      const best = Math.min(Infinity, ...found.map((one) => one.found?.cost ?? Infinity));
      expect(best).toBeGreaterThanOrEqual(least - 1e-6);
      if (least === Infinity) continue;
      possible += 1;
      if (best < least + 1e-6) met += 1;
    }
    expect(possible).toBeGreaterThan(20);
    expect(met / possible).toBeGreaterThan(0.7);
  });

  test('hangs each device once, on the hubs of its frame and no others', () => {
    for (const { problem, found } of BOARDS)
      for (const { frame, found: one } of found) {
        if (!one) continue;
        expect(one.layout.map(({ hub }) => hub)).toEqual([...frame]);
        const devices = one.layout.flatMap(({ chains }) => chains.flat());
        expect(devices.toSorted((a, b) => a - b)).toEqual([...Array(problem.count).keys()]);
      }
  });

  test('costs what its links cost, takes no lead twice, and leaves free what is wished for', () => {
    for (const { problem, found } of BOARDS)
      for (const { frame, found: one } of found) {
        if (!one) continue;
        const ways = waysOf(problem, linksOf(problem, one.layout));
        expect(one.chosen).toHaveLength(ways.length);
        for (const [at, choice] of one.chosen.entries()) expect(ways[at]).toContainEqual(choice);
        expect(one.cost).toBeCloseTo(
          one.chosen.reduce((sum, { cost }) => sum + cost, 0),
          9,
        );
        const used = one.chosen.flatMap(({ uses }) => uses);
        for (const [kind, pieces] of problem.owned.entries())
          expect(used.filter((other) => other === kind).length).toBeLessThanOrEqual(pieces);
        const places = frame.reduce((sum, hub) => sum + (problem.hubs[hub]?.outlets.length ?? 1), 0);
        const taken = one.layout.flatMap(({ chains }) => chains).filter(({ length }) => length > 0).length;
        expect(places - taken).toBeGreaterThanOrEqual(problem.spareOutlets);
      }
  });

  test('comes out the same for the same chance', () => {
    for (const { problem, found } of BOARDS.slice(0, 5))
      for (const { frame, found: one } of found) expect(annealed(problem, frame)).toEqual(one);
  });
});

/** A board too large for tables: devices that all feed one another, on so many outputs, each link for the same price. */
function largeBoard(outputs: number, spareOutlets: number): PlanProblem {
  const count = MOST_EXACT + 2;
  const link = [{ cost: 5, uses: [] }];
  const row = (source: number) => Array.from({ length: count }, (_, to) => (to === source ? [] : link));
  return {
    count,
    ways: Array.from({ length: count + outputs }, (_, source) => row(source)),
    outputs: Array.from({ length: outputs }, (_, output) => count + output),
    hubs: [],
    owned: [],
    shift: Array<number>(count).fill(1),
    budget: 100,
    mostHops: 100,
    spareOutlets,
    topology: 'any',
  };
}

describe('A board too large for tables', () => {
  test('leaves free the outputs that are asked for, or has no plan where none is left', () => {
    const found = (outputs: number, spare: number) => runThrough(search(largeBoard(outputs, spare))).found;
    // By hand: each of the devices has one link into it, at 5 each, however they hang.
    const links = 5 * (MOST_EXACT + 2);
    for (const [outputs, spare] of [
      [1, 0],
      [2, 1],
      [2, 0],
    ] as const) {
      const one = found(outputs, spare);
      expect(one?.cost).toBe(links);
      const used = one?.layout.filter(({ chains }) => chains.some(({ length }) => length > 0)).length ?? NaN;
      expect(outputs - used).toBeGreaterThanOrEqual(spare);
    }
    for (const [outputs, spare] of [
      [1, 1],
      [2, 2],
      [2, 3],
    ] as const)
      expect(found(outputs, spare)).toBeUndefined();
  });

  test('comes with a bound that is the cost, where no link can be had for less', () => {
    const { found, bound, proven } = runThrough(search(largeBoard(1, 0)));
    expect(bound).toBeLessThanOrEqual((found?.cost ?? NaN) + 1e-6);
    expect(bound).toBeGreaterThan(0.99 * (found?.cost ?? NaN));
    expect(proven || bound < (found?.cost ?? NaN)).toBe(true);
  });

  test('has no plan where one device can be fed by nothing', () => {
    const whole = largeBoard(1, 0);
    const cut = { ...whole, ways: whole.ways.map((row) => row.map((ways, to) => (to === 3 ? [] : ways))) };
    expect(runThrough(search(cut)).found).toBeUndefined();
  });
});

/** Every chain of some devices, each at most once, of at most so many. */
function* chainsOf(
  count: number,
  longest: number,
  chain: readonly number[] = [],
): Generator<readonly number[]> {
  if (chain.length > 0) yield chain;
  if (chain.length === longest) return;
  for (let device = 0; device < count; device += 1)
    if (!chain.includes(device)) yield* chainsOf(count, longest, [...chain, device]);
}

describe('A walk of at most four devices', () => {
  test('remembers them all: the best one is the cheapest chain, less what its devices are worth', () => {
    const random = seededRandom(71);
    for (let round = 0; round < 60; round += 1) {
      const count = random.integer(2, 4);
      const longest = random.integer(1, count);
      const row = (): Float64Array =>
        Float64Array.from({ length: count }, () => (random.chance(0.1) ? Infinity : random.integer(1, 20)));
      const next = Array.from({ length: count }, row);
      const [start, rewards] = [row(), Float64Array.from({ length: count }, () => random.integer(0, 15))];
      const table = walkTable(count, next, longest);
      table.fill(next, rewards);
      const { value, devices } = table.best(start, longest);
      const worth = (chain: readonly number[]): number =>
        chain.reduce(
          (sum, device, at) =>
            sum + ((next[chain[at - 1] ?? NaN] ?? start)[device] ?? NaN) - (rewards[device] ?? NaN),
          0,
        );
      const least = Math.min(...[...chainsOf(count, longest)].map(worth));
      expect(value, `round ${round}`).toBeCloseTo(least, 9);
      if (value === Infinity) continue;
      expect(worth(devices)).toBeCloseTo(value, 9);
      expect(new Set(devices).size).toBe(devices.length);
    }
  });

  test('is no longer than is asked for, though the table holds longer ones', () => {
    const next = [
      Float64Array.of(Infinity, 1, 1),
      Float64Array.of(1, Infinity, 1),
      Float64Array.of(1, 1, Infinity),
    ];
    const table = walkTable(3, next, 3);
    table.fill(next, Float64Array.of(10, 10, 10));
    // By hand: each device costs 1 and is worth 10.
    const start = Float64Array.of(1, 1, 1);
    expect([1, 2, 3].map((most) => table.best(start, most).value)).toEqual([-9, -18, -27]);
    expect([1, 2, 3].map((most) => table.best(start, most).devices.length)).toEqual([1, 2, 3]);
  });
});

describe('Layouts as links', () => {
  const PROBLEM: PlanProblem = {
    count: 3,
    // Sources: devices 0 to 2, outputs 3 and 4, outlets 5 and 6 of the one hub, which is target 3.
    ways: Array.from({ length: 7 }, () => Array.from({ length: 4 }, () => [])),
    outputs: [3, 4],
    hubs: [{ limit: 1, shift: 0, outlets: [5, 6] }],
    owned: [],
    shift: [1, 1, 1],
    budget: 9,
    mostHops: 9,
    spareOutlets: 0,
    topology: 'any',
  };

  test('go output by output, the feed of a hub first, then along each chain', () => {
    expect(
      linksOf(PROBLEM, [
        { hub: -1, chains: [[2, 0]] },
        { hub: 0, chains: [[1], []] },
      ]),
    ).toEqual([
      { from: 3, to: 2, output: 0 },
      { from: 2, to: 0, output: 0 },
      { from: 4, to: 3, output: 1 },
      { from: 5, to: 1, output: 1 },
    ]);
    expect(
      linksOf(PROBLEM, [
        { hub: -1, chains: [] },
        { hub: 0, chains: [[], [2, 1, 0]] },
      ]),
    ).toEqual([
      { from: 4, to: 3, output: 1 },
      { from: 6, to: 2, output: 1 },
      { from: 2, to: 1, output: 1 },
      { from: 1, to: 0, output: 1 },
    ]);
  });
});
