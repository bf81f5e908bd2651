/** 'Plan it for me': the cheapest plan that passes every check, and the best one of the other kind beside it. */
import { checkBoard } from '../board/index.ts';
import type { BoardCheck } from '../board/index.ts';
import type { SearchResult } from './exact.ts';
import { hopTimings } from '../board/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import { boardGraph, pathsFrom, speaks } from '../plan/index.ts';
import { WISH_DEFAULTS } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';
import { planOfLayout } from './plan-of.ts';
import { boardProblem, unfeedable, withTopology } from './problem-of.ts';
import type { BoardProblem } from './problem-of.ts';
import type { Topology } from '../board/index.ts';
import { MOST_EXACT, search } from './search.ts';
import type { SearchOptions } from './search.ts';

/** What the owner weighs besides the cost. */
export interface BoardFacts {
  readonly leads: number;
  readonly hubs: number;
  /** From the end of a byte at the controller to its end at the last device, seconds. */
  readonly worstDelaySeconds: number;
  readonly deepestLinks: number;
  /** For each device that others hang on: who hears nothing while it is off. */
  readonly silentWithout: readonly { readonly device: string; readonly silent: readonly string[] }[];
}

/** A planned board. `bound` is a cost that no plan of its kind can be below; `proven` when it is reached. */
export interface PlannedBoard {
  readonly plan: Plan;
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly exact: boolean;
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

/** Where the planning stands, for a progress bar. `share` runs from 0 to 1 within a stage. */
export interface PlanProgress {
  readonly stage: 'solving the links' | 'searching' | 'the other kind' | 'asking why';
  readonly share: number;
  readonly cost: number;
  readonly bound: number;
}

/**
 * Plan a board, piece by piece: a worker calls `next()`, reports what it yields, and cancels by not going on. The same plan
 * and seed give the same answer.
 */
export function* planBoard(
  plan: Plan,
  options: SearchOptions = {},
  memory: LinkMemory = new Map(),
): Generator<PlanProgress, PlanAnswer> {
  const making = boardProblem(plan, memory);
  let made = making.next();
  while (made.done !== true) {
    yield { stage: 'solving the links', share: made.value, cost: Infinity, bound: -Infinity };
    made = making.next();
  }
  const board = made.value;
  if (typeof board === 'string') return { ok: false, why: board };
  const lost = unfeedable(board);
  const found = lost.length > 0 ? undefined : yield* searched(board, options, 'searching');
  if (!found?.layout) {
    const why =
      lost.length > 0
        ? `No lead or hub on offer can feed ${lost.map((name) => `'${name}'`).join(', ')}.`
        : 'No plan reaches every device.';
    return { ok: false, why: `${why} ${yield* wayOut(plan, options, memory)}` };
  }
  const best = planned(plan, board, found, memory);
  const otherIs: Topology = best.facts.hubs > 0 ? 'chain' : 'hub';
  const otherBoard = withTopology(board, otherIs);
  const second = yield* searched(otherBoard, options, 'the other kind');
  const other = second.layout ? planned(plan, otherBoard, second, memory) : undefined;
  return { ok: true, best, other, otherIs };
}

/** The wishes one by one: which of them stands in the way, or what else would help where none does. */
function* wayOut(plan: Plan, options: SearchOptions, memory: LinkMemory): Generator<PlanProgress, string> {
  const wishes = plan.wishes ?? WISH_DEFAULTS;
  const guilty: string[] = [];
  for (const [wish, name] of WISH_NAMES) {
    if (wishes[wish] === WISH_DEFAULTS[wish]) continue;
    const without = { ...plan, wishes: { ...wishes, [wish]: WISH_DEFAULTS[wish] } };
    const making = boardProblem(without, memory);
    let made = making.next();
    for (; made.done !== true; made = making.next())
      yield { stage: 'asking why', share: made.value, cost: Infinity, bound: -Infinity };
    if (typeof made.value === 'string' || unfeedable(made.value).length > 0) continue;
    const { layout } = yield* searched(made.value, options, 'asking why');
    if (layout) guilty.push(name);
  }
  if (guilty.length > 0)
    return `Your wish stands in the way: without '${guilty.join("', or without '")}' there is a plan.`;
  return wishes.noSoldering
    ? 'No single wish is to blame: put more leads, adapters, hubs or converters on offer, or allow soldering.'
    : 'Put a hub or a converter with enough outlets on offer, or give the devices more THRU jacks.';
}

/** The wishes in words, as they stand on the page. */
const WISH_NAMES = [
  ['noHub', 'no hub'],
  ['noSoldering', 'no soldering'],
  ['mostHops', 'at most so many links'],
  ['spareOutlets', 'outlets kept free'],
] as const;

function* searched(
  board: BoardProblem,
  options: SearchOptions,
  stage: PlanProgress['stage'],
): Generator<PlanProgress, SearchResult> {
  const run = search(board.problem, options);
  let turn = run.next();
  while (turn.done !== true) {
    const { cost, bound, done } = turn.value;
    yield { stage, share: 1 - 1 / (1 + done / 50), cost, bound };
    turn = run.next();
  }
  return turn.value;
}

function planned(plan: Plan, board: BoardProblem, found: SearchResult, memory: LinkMemory): PlannedBoard {
  const made = planOfLayout(plan, board, found.layout ?? [], found.chosen);
  return {
    plan: made,
    cost: found.cost,
    bound: found.bound,
    proven: found.proven,
    exact: board.problem.count <= MOST_EXACT,
    check: checkBoard(made, memory),
    facts: boardFacts(made),
  };
}

/** Leads, hubs, delay and depth of a plan as it stands, and what goes silent with each device. */
export function boardFacts(plan: Plan): BoardFacts {
  const graph = boardGraph(plan);
  const silent = new Map<string, Set<string>>();
  let worstDelaySeconds = 0;
  let deepestLinks = 0;
  graph.devices.forEach((controller, start) => {
    if (!speaks(controller)) return;
    for (const path of pathsFrom(graph, start)) {
      if (!path) continue;
      const delay = hopTimings(graph, path).reduce((sum, { delaySeconds }) => sum + delaySeconds, 0);
      worstDelaySeconds = Math.max(worstDelaySeconds, delay);
      deepestLinks = Math.max(deepestLinks, path.length);
      const last = path.at(-1)?.to.device ?? '';
      for (const feed of path.slice(1))
        silent.set(feed.from.device, (silent.get(feed.from.device) ?? new Set()).add(last));
    }
  });
  return {
    leads: new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads))).size,
    hubs: graph.devices.filter(({ kind }) => kind === 'hub' || kind === 'converter').length,
    worstDelaySeconds,
    deepestLinks,
    silentWithout: [...silent].map(([device, names]) => ({ device, silent: [...names] })),
  };
}
