/** The board: exact and large plans with their bounds, and the check of a whole plan. */
import { checkBoard } from '../../src/core/board/check.ts';
import { planBoard } from '../../src/core/planner/plan-it.ts';
import type { PlannedBoard } from '../../src/core/planner/plan-it.ts';
import { boardProblem } from '../../src/core/planner/board-problem.ts';
import type { BoardProblem } from '../../src/core/planner/board-problem.ts';
import { search } from '../../src/core/planner/search.ts';
import { planOfLayout } from '../../src/core/planner/plan-of.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { randomBoard, wiredBoard } from '../core/board/boards.ts';
import { quantile } from './figures.ts';
import type { Figure } from './figures.ts';
import { runThrough } from '../../src/core/signal/index.ts';

const BOARDS = 10;

interface Run {
  readonly milliseconds: number;
  readonly gap: number;
  readonly proven: boolean;
  readonly plan: Plan;
}

/** The best plan of one board, everything from cold: links solved, searched, written back and checked. */
function bestPlan(seed: number, count: number): Run {
  const start = performance.now();
  const source = randomBoard(seed, count);
  const board = runThrough(boardProblem(source, new Map())) as BoardProblem;
  const { found, bound, proven } = runThrough(search(board.problem));
  if (!found) throw new Error(`board: seed ${seed} with ${count} devices has no plan`);
  const plan = planOfLayout(source, board, found);
  const milliseconds = performance.now() - start;
  if (!checkBoard(plan).passes) throw new Error(`board: the plan of seed ${seed} does not pass its check`);
  return { milliseconds, gap: 1 - bound / found.cost, proven, plan };
}

/** Median time of a check that remembers nothing. */
function checkMilliseconds(plan: Plan): number {
  const times: number[] = [];
  for (let round = 0; round < 25; round++) {
    const start = performance.now();
    checkBoard(plan);
    times.push(performance.now() - start);
  }
  return quantile(times.slice(5), 0.5);
}

/** A plan checked a second time with what was remembered, as a page does after every change. */
function againMilliseconds(plan: Plan): number {
  const memory = new Map();
  checkBoard(plan, memory);
  const times = Array.from({ length: 15 }, () => {
    const start = performance.now();
    checkBoard(plan, memory);
    return performance.now() - start;
  });
  return quantile(times, 0.5);
}

/** Figures of the board. A warm-up board goes first. */
export async function figures(): Promise<readonly Figure[]> {
  bestPlan(99, 8);
  const small = Array.from({ length: BOARDS }, (_, seed) => bestPlan(seed, 12));
  const large = Array.from({ length: BOARDS }, (_, seed) => bestPlan(seed, 24));
  const bothStart = performance.now();
  const both = runThrough(planBoard(randomBoard(0, 12)));
  const bothMilliseconds = performance.now() - bothStart;
  const other: PlannedBoard | undefined = both.ok ? both.other : undefined;
  const sizes = [3, 6, 12, 24, 48, 63].map((count) => ({ count, plan: wiredBoard(count) }));
  const within = large.filter(({ gap }) => gap <= 0.03).length;
  return [
    {
      name: 'exact plan, 12 devices: slowest of 10',
      value: Math.max(...small.map((one) => one.milliseconds)) / 1e3,
      unit: 's',
      atMost: 2,
    },
    {
      name: 'exact plan, 12 devices: proven, of 10',
      value: small.filter(({ proven }) => proven).length,
      unit: 'boards',
      atLeast: BOARDS,
    },
    {
      name: `both kinds of plan, 12 devices${other ? '' : ' (no second kind)'}`,
      value: bothMilliseconds / 1e3,
      unit: 's',
    },
    {
      name: 'plan, 24 devices: slowest of 10',
      value: Math.max(...large.map((one) => one.milliseconds)) / 1e3,
      unit: 's',
      atMost: 5,
    },
    { name: 'plan, 24 devices: within 3 % of the bound, of 10', value: within, unit: 'boards', atLeast: 9 },
    {
      name: 'plan, 24 devices: widest gap to the bound',
      value: 100 * Math.max(...large.map(({ gap }) => gap)),
      unit: '%',
    },
    ...sizes.map(({ count, plan }): Figure => ({
      name: `full check, ${count} devices fed, no two links alike`,
      value: checkMilliseconds(plan),
      unit: 'ms',
      ...(count === 24 ? { atMost: 20 } : {}),
    })),
    {
      name: 'check again after a change, 24 devices',
      value: againMilliseconds(large[0]?.plan as Plan),
      unit: 'ms',
    },
  ];
}
