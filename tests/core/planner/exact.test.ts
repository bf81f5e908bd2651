import { describe, expect, test } from 'vitest';
import { planBoard } from '../../../src/core/planner/plan-it.ts';
import type { PlanAnswer } from '../../../src/core/planner/plan-it.ts';
import { boardProblem } from '../../../src/core/planner/board-problem.ts';
import type { BoardProblem } from '../../../src/core/planner/board-problem.ts';
import type { PlanProblem } from '../../../src/core/planner/problem.ts';
import { search } from '../../../src/core/planner/search.ts';
import { boundFrame } from '../../../src/core/planner/bound.ts';
import { framesOf } from '../../../src/core/planner/frames.ts';
import { searchExact } from '../../../src/core/planner/exact.ts';
import type { LinkMemory } from '../../../src/core/verdict/index.ts';
import { seededRandom } from '../../support/random.ts';
import { randomBoard } from '../board/boards.ts';
import { cheapestOfAll, randomProblem } from './exhaustive.ts';
import { runThrough } from '../../../src/core/signal/index.ts';

const PATIENCE = 300_000;

describe('The cheapest plan', { timeout: PATIENCE }, () => {
  test('is the one that looking at every layout finds, on 500 seeded boards of up to 6 devices with owned leads', () => {
    let possible = 0;
    let withOwned = 0;
    for (let seed = 0; seed < 500; seed++) {
      const random = seededRandom(seed);
      const problem = randomProblem(random, random.integer(1, 6));
      const found = runThrough(searchExact(problem));
      const least = cheapestOfAll(problem);
      if (least < Infinity) possible++;
      if (problem.owned.length > 0) withOwned++;
      const cost = found.found?.cost ?? Infinity;
      const right = cost === least || Math.abs(cost - least) < 1e-5;
      if (!right || !found.proven)
        throw new Error(`seed ${seed}: found ${cost} (${found.bound}), least ${least}`);
    }
    expect(possible).toBeGreaterThan(350);
    expect(withOwned).toBeGreaterThan(300);
  });

  test('of whole invented boards, with solved links and owned leads, is the least of all layouts too', () => {
    const memory: LinkMemory = new Map();
    for (let seed = 0; seed < 20; seed++) {
      const board = runThrough(boardProblem(randomBoard(seed, 2 + (seed % 4)), memory)) as BoardProblem;
      const cost = runThrough(search(board.problem)).found?.cost ?? Infinity;
      const least = cheapestOfAll(board.problem);
      expect(Math.abs(cost - least), `seed ${seed}: ${cost} against ${least}`).toBeLessThan(1e-5);
    }
  });

  test('passes the check of the board, and so does the plan of the other kind', () => {
    const memory: LinkMemory = new Map();
    for (let seed = 0; seed < 8; seed++) {
      const answer = runThrough(planBoard(randomBoard(seed, 6), memory)) as Extract<PlanAnswer, { ok: true }>;
      expect(answer.ok).toBe(true);
      for (const one of [answer.best, answer.other]) {
        if (!one) continue;
        expect(one.check.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
        expect(new Set(one.check.outcomes.map(({ outcome }) => outcome))).toEqual(new Set(['flows']));
        expect(one.proven).toBe(true);
      }
      expect(answer.other === undefined || answer.other.cost >= answer.best.cost).toBe(true);
    }
  });

  test('comes out the same for the same board', () => {
    const plan = randomBoard(3, 5);
    const one = runThrough(planBoard(plan));
    expect(runThrough(planBoard(plan))).toEqual(one);
  });

  test('says why there is none', () => {
    expect(runThrough(planBoard({ ...randomBoard(1, 3), devices: [] }))).toEqual({
      ok: false,
      why: 'devices: expected a controller with jacks, got none',
    });
    const bare = {
      ...randomBoard(1, 3),
      stock: [],
      wishes: { noHub: true, noSoldering: true, mostHops: 0, spareOutlets: 0 },
    };
    const answer = runThrough(planBoard(bare));
    expect(answer.ok ? '' : answer.why).toContain("No lead or hub available can feed 'pedal 1'");
  });
});

describe('The plan of a board of 24 devices', { timeout: PATIENCE }, () => {
  test('passes its check and lies within 3 % of a bound that it never beats, and stopping early costs nothing but the plan', () => {
    const answer = runThrough(planBoard(randomBoard(4, 24)));
    if (!answer.ok) throw new Error(answer.why);
    const { cost, bound, check, exact } = answer.best;
    expect([check.passes, exact]).toEqual([true, false]);
    expect(bound).toBeLessThanOrEqual(cost);
    expect(bound).toBeGreaterThan(0.97 * cost);
    // A worker that does not go on has cancelled: each piece is short, and what is yielded is a true bound all along.
    const run = planBoard(randomBoard(4, 24));
    let pieces = 0;
    for (let turn = run.next(); turn.done !== true && pieces < 50; turn = run.next()) {
      pieces++;
      expect(turn.value.bound).toBeLessThanOrEqual(cost + 1e-6);
    }
    expect(pieces).toBe(50);
  });
});

describe('The bound for large boards', { timeout: PATIENCE }, () => {
  test('is never above the least cost, on 200 small boards where that is known', () => {
    let close = 0;
    let counted = 0;
    for (let seed = 1000; seed < 1200; seed++) {
      const random = seededRandom(seed);
      const problem: PlanProblem = { ...randomProblem(random, random.integer(2, 5)), spareOutlets: 0 };
      const least = cheapestOfAll(problem);
      if (least === Infinity) continue;
      let bound = Infinity;
      for (const frame of framesOf(problem))
        bound = Math.min(bound, runThrough(boundFrame(problem, frame, least)).bound);
      if (bound > least + 1e-6) throw new Error(`seed ${seed}: bound ${bound} above ${least}`);
      counted++;
      if (bound > 0.9 * least) close++;
    }
    expect(counted).toBeGreaterThan(100);
    expect(close / counted).toBeGreaterThan(0.6);
  });
});
