/** Why a board cannot be planned, and what would help. */
import { WISH_DEFAULTS } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';
import type { LinkMemory } from '../verdict/index.ts';
import type { BoardProblem } from './board-problem.ts';
import type { PlanProblem } from './problem.ts';
import { problemOf, searched } from './steps.ts';
import type { PlanProgress } from './steps.ts';

/** The wishes in words, as they stand on the page. */
const WISH_NAMES = [
  ['noHub', 'no hub'],
  ['noSoldering', 'no soldering'],
  ['mostHops', 'at most so many links'],
  ['spareOutlets', 'outputs kept free'],
] as const;

/** Devices that nothing on offer can feed. */
export function unfeedable({ problem, devices }: BoardProblem): readonly string[] {
  return devices.flatMap(({ name }, to) => (problem.ways.some((row) => row[to]!.length > 0) ? [] : [name]));
}

/** What keeps a board from being planned, in words: devices nothing can feed, or outputs that are missing; then what would help. */
export function* sayWhy(
  plan: Plan,
  board: BoardProblem,
  memory: LinkMemory,
): Generator<PlanProgress, string> {
  const lost = unfeedable(board);
  const help = yield* wayOut(plan, memory);
  if (lost.length > 0)
    return `No lead or hub available can feed ${lost.map((name) => `'${name}'`).join(', ')}. ${help}`;
  const missing = yield* missingOutputs(board.problem);
  const say = missing === 1 ? ': 1 output is missing' : missing > 1 ? `: ${missing} outputs are missing` : '';
  return `No plan reaches every device${say}. ${help}`;
}

/** How many outputs like the controller's first one would make a plan possible; 0 when none would. */
function* missingOutputs(problem: PlanProblem): Generator<PlanProgress, number> {
  const { ways, outputs, count } = problem;
  for (let extra = 1; extra <= count; extra++) {
    const more = Array.from({ length: extra }, () => ways[outputs[0]!]!);
    const larger = {
      ...problem,
      ways: [...ways, ...more],
      outputs: [...outputs, ...more.map((_, at) => ways.length + at)],
    };
    const { found } = yield* searched(larger, 'asking why');
    if (found) return extra;
  }
  return 0;
}

/** The wishes one by one: which of them stands in the way, or what else would help where none does. */
function* wayOut(plan: Plan, memory: LinkMemory): Generator<PlanProgress, string> {
  const wishes = plan.wishes ?? WISH_DEFAULTS;
  const guilty: string[] = [];
  for (const [wish, name] of WISH_NAMES) {
    if (wishes[wish] === WISH_DEFAULTS[wish]) continue;
    const without = { ...plan, wishes: { ...wishes, [wish]: WISH_DEFAULTS[wish] } };
    const board = yield* problemOf(without, memory, 'asking why');
    if (typeof board === 'string' || unfeedable(board).length > 0) continue;
    const { found } = yield* searched(board.problem, 'asking why');
    if (found) guilty.push(name);
  }
  if (guilty.length > 0)
    return `What you asked for stands in the way: without '${guilty.join("', or without '")}' there is a plan.`;
  return wishes.noSoldering
    ? 'No single wish is to blame: add leads, adapters, hubs or converters to what is available, or allow soldering.'
    : 'Add a hub or a converter with enough outputs to what is available, or give the devices more THRU jacks.';
}
