/** Which owned lead goes where: the cheapest choice for each link, no lead in two places. */
import type { Choice } from '../board/index.ts';

/** Choices by number, one a link, and what they cost together. */
export interface Assignment {
  readonly cost: number;
  readonly chosen: readonly number[];
  /** Whether no other assignment is cheaper; false only where there were too many states to look at. */
  readonly exact: boolean;
}

/** States above which the assignment is made link by link, greedily. */
const MOST_STATES = 60_000;

/** The cheapest assignment: link by link over how many pieces of each kind are used. Undefined when there is none. */
export function assignLeads(
  links: readonly (readonly Choice[])[],
  owned: readonly number[],
): Assignment | undefined {
  const wanted = owned.map((count, kind) => {
    let most = 0;
    for (const choices of links)
      most += Math.max(0, ...choices.map(({ uses }) => uses.filter((one) => one === kind).length));
    return Math.min(count, most);
  });
  const kinds = wanted.flatMap((count, kind) => (count > 0 ? [kind] : []));
  const strides: number[] = [];
  let states = 1;
  for (const kind of kinds) {
    strides.push(states);
    states *= (wanted[kind] ?? 0) + 1;
    if (states > MOST_STATES) return greedyLeads(links, owned);
  }
  let costs = new Float64Array(states).fill(Infinity);
  costs[0] = 0;
  const steps: Int32Array[] = [];
  for (const choices of links) {
    const after = new Float64Array(states).fill(Infinity);
    const step = new Int32Array(states).fill(-1);
    choices.forEach(({ cost, uses }, choice) => {
      if (uses.some((kind) => (wanted[kind] ?? 0) === 0)) return;
      const jump = uses.reduce((sum, kind) => sum + (strides[kinds.indexOf(kind)] ?? 0), 0);
      for (let state = 0; state < states; state++) {
        const now = costs[state]!;
        if (now === Infinity || !room(state, uses, wanted, kinds, strides)) continue;
        if (now + cost < after[state + jump]!) {
          after[state + jump] = now + cost;
          step[state + jump] = choice;
        }
      }
    });
    costs = after;
    steps.push(step);
  }
  let state = 0;
  for (let at = 1; at < states; at++) if (costs[at]! < costs[state]!) state = at;
  const cost = costs[state]!;
  if (cost === Infinity) return undefined;
  const chosen: number[] = [];
  for (let link = links.length - 1; link >= 0; link--) {
    const choice = steps[link]![state]!;
    chosen.unshift(choice);
    const uses = links[link]?.[choice]?.uses ?? [];
    state -= uses.reduce((sum, kind) => sum + (strides[kinds.indexOf(kind)] ?? 0), 0);
  }
  return { cost, chosen, exact: true };
}

function room(
  state: number,
  uses: readonly number[],
  wanted: readonly number[],
  kinds: readonly number[],
  strides: readonly number[],
): boolean {
  return uses.every((kind) => {
    const most = wanted[kind] ?? 0;
    const used = Math.floor(state / (strides[kinds.indexOf(kind)] ?? 1)) % (most + 1);
    return used + uses.filter((one) => one === kind).length <= most;
  });
}

/** Link by link, the one that gains most by an owned lead first. Never below the cheapest assignment. */
export function greedyLeads(
  links: readonly (readonly Choice[])[],
  owned: readonly number[],
): Assignment | undefined {
  const left = [...owned];
  const chosen: number[] = links.map(() => -1);
  const order = links.map((_, at) => at).sort((a, b) => gain(links[b] ?? []) - gain(links[a] ?? []));
  let cost = 0;
  for (const at of order) {
    let best = -1;
    const choices = links[at] ?? [];
    choices.forEach(({ cost: one, uses }, choice) => {
      if (uses.some((kind) => (left[kind] ?? 0) < uses.filter((other) => other === kind).length)) return;
      if (best < 0 || one < (choices[best]?.cost ?? Infinity)) best = choice;
    });
    const found = choices[best];
    if (!found) return undefined;
    for (const kind of found.uses) left[kind] = (left[kind] ?? 0) - 1;
    chosen[at] = best;
    cost += found.cost;
  }
  return { cost, chosen, exact: false };
}

function gain(choices: readonly Choice[]): number {
  let least = Infinity;
  let free = Infinity;
  for (const { cost, uses } of choices) {
    least = Math.min(least, cost);
    if (uses.length === 0) free = Math.min(free, cost);
  }
  return free - least;
}
