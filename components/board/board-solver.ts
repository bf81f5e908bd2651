/** What the board page has solved off its thread: all circuits of a board, or the leads that join two of its jacks. */
import { checkSteps, connect, solveLink } from '../../src/core/board/index.ts';
import type { CheckProgress, Connected } from '../../src/core/board/index.ts';
import type { JackPlace, Plan } from '../../src/core/plan/index.ts';
import { runThrough } from '../../src/core/signal/index.ts';
import type { LinkMemory } from '../../src/core/verdict/index.ts';

/** A board whose circuits are to be solved, or two of its jacks that are to be joined first. */
export interface BoardOrder {
  readonly plan: Plan;
  readonly join?: { readonly output: JackPlace; readonly input: JackPlace };
}

/** Circuits that were solved, as a memory of links holds them. */
type Solved = readonly (LinkMemory extends Map<infer Key, infer One> ? readonly [Key, One] : never)[];

/** What was solved for an order, and the link where one was asked for. */
export interface BoardAnswer {
  readonly solved: Solved;
  readonly made?: Connected;
}

/** A board with what was solved of it. */
export interface SolvedBoard {
  readonly plan: Plan;
  readonly solved: Solved;
}

/** A board with all that its check solves, for a page that is to solve nothing. */
export function solvedBoard(plan: Plan): SolvedBoard {
  return { plan, solved: boardSolver()({ plan }, () => undefined).solved };
}

/** Circuits that one worker remembers before it begins anew (our choice): far more than a board has, fewer than a memory holds. */
const MOST_REMEMBERED = 2000;

/** Solves orders one after the other; what was solved for one is not solved again for the next. */
export function boardSolver(): (order: BoardOrder, tell: (progress: CheckProgress) => void) => BoardAnswer {
  const memory: LinkMemory = new Map();
  return ({ plan, join }, tell) => {
    if (memory.size > MOST_REMEMBERED) memory.clear();
    const before = memory.size;
    const solved = (): BoardAnswer['solved'] => [...memory].slice(before);
    if (join) {
      const made = connect(plan, join.output, join.input, memory);
      if (made.ok) solveLink(made.plan, made.link, memory);
      return { made, solved: solved() };
    }
    runThrough(checkSteps(plan, memory), tell);
    return { solved: solved() };
  };
}
