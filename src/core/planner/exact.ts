/**
 * The cheapest layout, exactly: chains by dynamic programming over sets of devices, then sets shared out over outlets and
 * outputs. Owned leads are few, so they get a price each (a Lagrangian multiplier); what the priced solution leaves open is
 * closed by branching on 'this link takes that lead, or not'.
 */
import { assignLeads } from './assign.ts';
import { edgesOf, hubPrices } from '../board/index.ts';
import type { Edge, Layout, PlanProblem } from '../board/index.ts';
import { choicesAt, edgeKey } from './rules.ts';
import type { Rules } from './rules.ts';
import { solveSets } from './sets.ts';

/** How far a search has come. Costs in the reader's own figures. */
export interface Progress {
  readonly done: number;
  readonly cost: number;
  readonly bound: number;
}

/** The best layout found, and the bound that no layout can be below. `proven` when the two meet. */
export interface SearchResult {
  readonly layout: Layout | undefined;
  readonly chosen: readonly number[];
  readonly cost: number;
  readonly bound: number;
  readonly proven: boolean;
  readonly looked: number;
}

/** Rounds of pricing at the first branch, and at each later one. */
const FIRST_ROUNDS = 24;
const LATER_ROUNDS = 6;

/** Costs closer than this count as equal: far below a cent, far above the rounding of sums. */
export const SAME_COST = 1e-5;

interface Branch {
  readonly bound: number;
  readonly prices: readonly number[];
  readonly rules: Rules;
}

/**
 * Search for the cheapest layout. Yields after each round so that a worker can report and be stopped; the value returned, or
 * the last one yielded, holds a true bound all along.
 * @param most branches to look at before giving up on the proof.
 */
export function* searchExact(problem: PlanProblem, most = 2000): Generator<Progress, SearchResult> {
  let best: { layout: Layout; chosen: readonly number[]; cost: number } | undefined;
  let looked = 0;
  const open: Branch[] = [
    { bound: -Infinity, prices: problem.owned.map(() => 0), rules: { banned: new Set(), forced: new Map() } },
  ];
  const lowest = (): number => Math.min(best?.cost ?? Infinity, ...open.map(({ bound }) => bound));
  while (open.length > 0 && looked < most) {
    open.sort((a, b) => b.bound - a.bound);
    const branch = open.pop() as Branch;
    if (best && branch.bound >= best.cost - SAME_COST) continue;
    looked++;
    const prices = [...branch.prices];
    let bestPrices = prices.slice();
    let bound = branch.bound;
    let split: { edge: Edge; kind: number } | undefined;
    let closed = false;
    const rounds = looked === 1 ? FIRST_ROUNDS : LATER_ROUNDS;
    for (let round = 0; round < rounds; round++) {
      const solved = solveSets(problem, prices, branch.rules);
      if (!solved) {
        closed = true;
        break;
      }
      const value =
        solved.cost - problem.owned.reduce((sum, count, kind) => sum + count * (prices[kind] ?? 0), 0);
      const edges = edgesOf(problem, solved.layout);
      const real = assignLeads(
        edges.map(({ choices }) => choices),
        problem.owned,
      );
      if (real) {
        const cost = real.cost + hubPrices(problem, solved.layout);
        if (!best || cost < best.cost - SAME_COST)
          best = { layout: solved.layout, chosen: real.chosen, cost };
      }
      const used = problem.owned.map(() => 0);
      edges.forEach(({ choices }, at) => {
        for (const kind of choices[solved.chosen[at] ?? 0]?.uses ?? []) used[kind] = (used[kind] ?? 0) + 1;
      });
      const over = problem.owned.map((count, kind) => (used[kind] ?? 0) - count);
      if (value > bound || round === 0) {
        bound = Math.max(bound, value);
        bestPrices = prices.slice();
        split = splitOn(edges, solved.chosen, over, branch.rules);
      }
      yield { done: looked, cost: best?.cost ?? Infinity, bound: Math.min(lowest(), bound) };
      if (best && bound >= best.cost - SAME_COST) {
        closed = true;
        break;
      }
      const length = over.reduce(
        (sum, one, kind) => sum + (one > 0 || (prices[kind] ?? 0) > 0 ? one * one : 0),
        0,
      );
      if (length === 0) {
        if (over.every((one, kind) => one === 0 || (prices[kind] ?? 0) === 0)) closed = true;
        break;
      }
      const step = (((best?.cost ?? value * 1.2) - value) * 1.1 + 1e-6) / length;
      over.forEach((one, kind) => (prices[kind] = Math.max(0, (prices[kind] ?? 0) + step * one)));
    }
    if (closed || (best && bound >= best.cost - SAME_COST)) continue;
    split ??= anySplit(problem, branch.rules);
    if (!split) {
      // Nothing is left to decide, so the cheapest layout at no price at all is the cheapest of this branch.
      const last = solveSets(
        problem,
        prices.map(() => 0),
        branch.rules,
      );
      const links = last && edgesOf(problem, last.layout).map(({ choices }) => choices);
      const real = links && assignLeads(links, problem.owned);
      const cost = last && real ? real.cost + hubPrices(problem, last.layout) : Infinity;
      if (last && real && cost < (best?.cost ?? Infinity) - SAME_COST)
        best = { layout: last.layout, chosen: real.chosen, cost };
      continue;
    }
    for (const rules of halves(problem, split, branch.rules)) {
      if (!forcesTooMany(problem, rules)) open.push({ bound, prices: bestPrices, rules });
    }
  }
  const bound = open.length === 0 ? (best?.cost ?? Infinity) : lowest();
  return {
    layout: best?.layout,
    chosen: best?.chosen ?? [],
    cost: best?.cost ?? Infinity,
    bound,
    proven: open.length === 0 || (best !== undefined && bound >= best.cost - SAME_COST),
    looked,
  };
}

type Edges = ReturnType<typeof edgesOf>;

/** A link that takes a lead of which too many are taken, else any link that takes a priced one. */
function splitOn(
  edges: Edges,
  chosen: readonly number[],
  over: readonly number[],
  rules: Rules,
): { edge: Edge; kind: number } | undefined {
  let best: { edge: Edge; kind: number } | undefined;
  let most = -Infinity;
  edges.forEach(({ edge, choices }, at) => {
    const uses = choices[chosen[at] ?? 0]?.uses ?? [];
    if (rules.forced.has(edgeKey(edge))) return;
    for (const kind of uses) {
      if ((over[kind] ?? 0) > most) {
        most = over[kind] ?? 0;
        best = { edge, kind };
      }
    }
  });
  return best;
}

/** Any link that could take an owned lead and is not decided. */
function anySplit(problem: PlanProblem, rules: Rules): { edge: Edge; kind: number } | undefined {
  for (const edge of allEdges(problem)) {
    const key = edgeKey(edge);
    if (rules.forced.has(key)) continue;
    for (const { uses } of choicesAt(problem, edge))
      for (const kind of uses) if (!rules.banned.has(`${key} ${kind}`)) return { edge, kind };
  }
  return undefined;
}

function allEdges(problem: PlanProblem): readonly Edge[] {
  const devices = Array.from({ length: problem.count }, (_, at) => at);
  return [
    ...problem.outputs.flatMap((_, output): Edge[] => [
      ...devices.map((to): Edge => ({ kind: 'start', output, to })),
      ...problem.hubs.map((_hub, hub): Edge => ({ kind: 'feed', output, hub })),
    ]),
    ...problem.hubs.flatMap(({ outlets }, hub) =>
      outlets.flatMap((_, outlet) =>
        devices.map((to): Edge => ({ kind: 'outlet', hub, outlet, to, output: 0 })),
      ),
    ),
    ...devices.flatMap((from) =>
      devices.filter((to) => to !== from).map((to): Edge => ({ kind: 'next', from, to })),
    ),
  ];
}

/** Whether forced links alone take more pieces of a lead than there are. */
function forcesTooMany(problem: PlanProblem, rules: Rules): boolean {
  const used = problem.owned.map(() => 0);
  for (const edge of allEdges(problem)) {
    const choice = rules.forced.get(edgeKey(edge));
    if (choice === undefined) continue;
    for (const kind of choicesAt(problem, edge)[choice]?.uses ?? []) used[kind] = (used[kind] ?? 0) + 1;
  }
  return used.some((one, kind) => one > (problem.owned[kind] ?? 0));
}

/** Two halves of all solutions: the link does not take the lead; the link is there and takes it, in each way that takes it. */
function halves(
  problem: PlanProblem,
  { edge, kind }: { edge: Edge; kind: number },
  rules: Rules,
): readonly Rules[] {
  const key = edgeKey(edge);
  const without: Rules = { ...rules, banned: new Set([...rules.banned, `${key} ${kind}`]) };
  const choices = choicesAt(problem, edge);
  const withIt = choices.flatMap(({ uses }, choice): Rules[] => {
    const barred = uses.some((one) => rules.banned.has(`${key} ${one}`));
    if (!uses.includes(kind) || barred) return [];
    return [{ ...rules, forced: new Map([...rules.forced, [key, choice]]) }];
  });
  return [without, ...withIt];
}
