/** 'Plan it for me': the cheapest plan that passes every check, and the best one of the other kind beside it. */
import { checkBoard, shoppingList } from '../board/index.ts';
import type { BoardCheck } from '../board/index.ts';
import { edited, onlyCarries, sayEdit } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { LINK_COST } from './board-problem.ts';
import type { BoardProblem } from './board-problem.ts';
import { boardFacts } from './facts.ts';
import type { BoardFacts } from './facts.ts';
import { planOfLayout } from './plan-of.ts';
import type { Found, SearchResult, Topology } from './problem.ts';
import { MOST_EXACT } from './search.ts';
import { problemOf, searched } from './steps.ts';
import type { PlanProgress } from './steps.ts';
import { sayWhy, unfeedable } from './why.ts';

/** A planned board. `bound` is a cost that no plan of its kind can be below; `proven` when it is reached. */
export interface PlannedBoard {
  readonly plan: Plan;
  /** What is to be bought and made for it, as far as it has a price. */
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly exact: boolean;
  /** Leads and hubs that it needs and that have no price: while there are any, it is not known to be the cheapest. */
  readonly unpriced: number;
  readonly check: BoardCheck;
  readonly facts: BoardFacts;
}

/** The answer: the best plan and the best of the other kind, or why there is none. */
export type PlanAnswer =
  | {
      readonly ok: true;
      readonly best: PlannedBoard;
      readonly other: PlannedBoard | undefined;
      readonly otherIs: Topology;
    }
  | { readonly ok: false; readonly why: string };

/**
 * Plan a board, piece by piece: a worker calls `next()`, reports what it yields, and cancels by not going on. The same plan
 * gives the same answer.
 */
export function* planBoard(plan: Plan, memory: LinkMemory = new Map()): Generator<PlanProgress, PlanAnswer> {
  const board = yield* problemOf(plan, memory, 'solving the links');
  if (typeof board === 'string') return { ok: false, why: board };
  const first = unfeedable(board).length > 0 ? undefined : yield* searched(board.problem, 'searching');
  if (!first?.found) return { ok: false, why: yield* sayWhy(plan, board, memory) };
  const best = planned(plan, board, first, first.found, memory);
  const kept = edited(best.plan);
  if (!kept.ok) return { ok: false, why: `The plan found cannot be kept. ${sayEdit(kept.problem)}` };
  const otherIs = best.facts.hubs > 0 ? 'chain' : 'hub';
  const second = yield* searched({ ...board.problem, topology: otherIs }, 'the other kind');
  const other = second.found && planned(plan, board, second, second.found, memory);
  return { ok: true, best, other: other && edited(other.plan).ok ? other : undefined, otherIs };
}

function planned(
  source: Plan,
  board: BoardProblem,
  { bound, proven }: SearchResult,
  found: Found,
  memory: LinkMemory,
): PlannedBoard {
  const plan = planOfLayout(source, board, found);
  const bought = plan.devices.filter(({ kind = 'other', toBuy }) => onlyCarries({ kind }) && toBuy === true);
  const made = [...plan.leads.filter(({ origin }) => origin !== 'owned'), ...bought];
  const devices = plan.devices.map((one) => (bought.includes(one) ? one : { ...one, toBuy: false }));
  const cost = shoppingList({ ...plan, devices }).total;
  // What the search counts for links keeps its bound from meeting the cost by as much as the most links of any plan.
  const mostLinks = board.problem.count + board.problem.outputs.length;
  return {
    plan,
    cost,
    bound: proven ? cost : Math.min(cost, bound - LINK_COST * mostLinks),
    proven,
    exact: board.problem.count <= MOST_EXACT,
    unpriced: made.filter(({ price = 0 }) => price === 0).length,
    check: checkBoard(plan, memory),
    facts: boardFacts(plan),
  };
}
