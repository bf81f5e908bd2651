/**
 * The cheapest layout, exactly, where the devices are few enough for tables over sets. Owned leads are few, so they get a
 * price each (a Lagrangian multiplier); what the priced solution leaves open is closed by branching on 'this link takes that
 * lead, or not'.
 */
import type { Choice } from '../board/index.ts';
import { assignLeads } from './assign.ts';
import { linksOf, waysOf } from './problem.ts';
import type { Found, Link, PlanProblem, Progress, SearchResult } from './problem.ts';
import { solveSets } from './sets.ts';

/** Rounds of pricing at the first branch, and at each later one. */
const FIRST_ROUNDS = 24;
const LATER_ROUNDS = 6;

/** Branches to look at before giving up on the proof. */
const MOST_BRANCHES = 2000;

/** Costs closer than this count as equal: far below a cent, far above the rounding of sums. */
export const SAME_COST = 1e-5;

/** A part of all layouts, as a problem with fewer ways, with a bound below them and the prices that gave it. */
interface Branch {
  readonly problem: PlanProblem;
  readonly prices: readonly number[];
  readonly bound: number;
}

/** A branch pushed up: what to split it on, or that there is nothing left in it. */
interface Pushed extends Branch {
  readonly split: Split | undefined;
  readonly closed: boolean;
}

interface Split extends Pick<Link, 'from' | 'to'> {
  readonly kind: number;
}

/**
 * Search for the cheapest layout. Yields after each round so that a worker can report and be stopped; the value returned, or
 * the last one yielded, holds a true bound all along.
 */
export function* searchExact(problem: PlanProblem, most = MOST_BRANCHES): Generator<Progress, SearchResult> {
  let best: Found | undefined;
  const better = (found: Found | undefined): number => {
    if (found && found.cost < (best?.cost ?? Infinity) - SAME_COST) best = found;
    return best?.cost ?? Infinity;
  };
  const open: Branch[] = [{ problem, prices: problem.owned.map(() => 0), bound: -Infinity }];
  const lowest = (): number => Math.min(better(undefined), ...open.map(({ bound }) => bound));
  for (let looked = 0; open.length > 0 && looked < most; looked++) {
    open.sort((a, b) => b.bound - a.bound);
    const branch = open.pop()!;
    if (branch.bound >= better(undefined) - SAME_COST) continue;
    const run = pushUp(branch, looked === 0 ? FIRST_ROUNDS : LATER_ROUNDS, better);
    let turn = run.next();
    for (; turn.done !== true; turn = run.next())
      yield { done: looked, cost: better(undefined), bound: Math.min(lowest(), turn.value) };
    const { closed, split, ...pushed } = turn.value;
    if (closed) continue;
    if (split) open.push(...halves(pushed, split).filter((half) => !overForced(half.problem)));
    // Nothing is left to decide, so the cheapest layout at no price at all is the cheapest of this branch.
    else
      better(
        withRealLeads(
          pushed.problem,
          solveSets(
            pushed.problem,
            problem.owned.map(() => 0),
          ),
        ),
      );
  }
  const bound = open.length === 0 ? better(undefined) : lowest();
  return { found: best, bound, proven: open.length === 0 || bound >= better(undefined) - SAME_COST };
}

/** The layout with its leads given out, each to one link. */
function withRealLeads(problem: PlanProblem, found: Found | undefined): Found | undefined {
  const leads = found && assignLeads(waysOf(problem, linksOf(problem, found.layout)), problem.owned);
  return leads && { ...found, ...leads };
}

/** Price the owned leads so that the bound of a branch rises. Yields the bound round by round. */
function* pushUp(
  { problem, prices: start, bound: known }: Branch,
  rounds: number,
  better: (found: Found | undefined) => number,
): Generator<number, Pushed> {
  const { owned } = problem;
  let prices = start;
  let best: Pushed = { problem, prices, bound: known, split: undefined, closed: false };
  for (let round = 0; round < rounds; round++) {
    const solved = solveSets(problem, prices);
    if (!solved) return { ...best, closed: true };
    const value = solved.cost - owned.reduce((sum, count, kind) => sum + count * prices[kind]!, 0);
    const cost = better(withRealLeads(problem, solved));
    const over = owned.map((count) => -count);
    for (const { uses } of solved.chosen) for (const kind of uses) over[kind]!++;
    if (value > best.bound || round === 0) {
      const bound = Math.max(best.bound, value);
      best = { problem, prices, bound, split: splitOn(problem, solved, over), closed: false };
    }
    yield best.bound;
    const length = over.reduce((sum, one, kind) => sum + (one > 0 || prices[kind]! > 0 ? one * one : 0), 0);
    if (best.bound >= cost - SAME_COST || length === 0) {
      const slack = over.some((one, kind) => one !== 0 && prices[kind]! > 0);
      return { ...best, closed: best.bound >= cost - SAME_COST || !slack };
    }
    const goal = cost < Infinity ? cost : value * 1.2;
    const step = ((goal - value) * 1.1 + 1e-6) / length;
    prices = prices.map((price, kind) => Math.max(0, price + step * over[kind]!));
  }
  return { ...best, split: best.split ?? anySplit(problem) };
}

/** The undecided link that takes the lead of which most too many are taken. */
function splitOn(
  problem: PlanProblem,
  { layout, chosen }: Found,
  over: readonly number[],
): Split | undefined {
  let best: Split | undefined;
  linksOf(problem, layout).forEach(({ from, to }, at) => {
    for (const kind of chosen[at]!.uses)
      if (over[kind]! > (best ? over[best.kind]! : -Infinity) && rivals(problem, from, to) > 1)
        best = { from, to, kind };
  });
  return best;
}

/** Any undecided link that could take an owned lead. */
function anySplit(problem: PlanProblem): Split | undefined {
  for (const [from, row] of problem.ways.entries())
    for (const [to, choices] of row.entries())
      for (const { uses } of choices)
        if (uses.length > 0 && rivals(problem, from, to) > 1) return { from, to, kind: uses[0]! };
  return undefined;
}

/** Of how many ways a link's own is at most one: all into its device, or where it feeds a hub all from its output. */
function rivals({ count, ways }: PlanProblem, from: number, to: number): number {
  return to < count
    ? ways.reduce((sum, row) => sum + row[to]!.length, 0)
    : ways[from]!.reduce((sum, choices) => sum + choices.length, 0);
}

/** The parts of a branch: the link does not take the lead; or it takes it, in each way that does, and its rivals are gone. */
function halves({ problem, ...rest }: Branch, { from, to, kind }: Split): readonly Branch[] {
  const { count, ways } = problem;
  const part = (
    change: (at: number, target: number, choices: readonly Choice[]) => readonly Choice[],
  ): Branch => ({
    ...rest,
    problem: {
      ...problem,
      ways: ways.map((row, at) => row.map((choices, target) => change(at, target, choices))),
    },
  });
  const here = (at: number, target: number): boolean => at === from && target === to;
  const rival = (at: number, target: number): boolean => (to < count ? target === to : at === from);
  const takes = ({ uses }: Choice): boolean => uses.includes(kind);
  return [
    part((at, target, choices) => (here(at, target) ? choices.filter((one) => !takes(one)) : choices)),
    ...ways[from]![to]!.filter(takes).map((choice) =>
      part((at, target, choices) => (here(at, target) ? [choice] : rival(at, target) ? [] : choices)),
    ),
  ];
}

/** Whether the devices that can be fed in one way only take more pieces of a lead than there are. */
function overForced({ count, ways, owned }: PlanProblem): boolean {
  const left = [...owned];
  for (let to = 0; to < count; to++) {
    const into = ways.flatMap((row) => row[to]!);
    if (into.length === 1) for (const kind of into[0]!.uses) left[kind]!--;
  }
  return left.some((count) => count < 0);
}
