/** Which owned lead goes where: the cheapest choice for each link, no lead in two places. */
import type { Choice } from '../board/index.ts';

/** The choices, one a link, and what they cost together. */
interface Assignment {
  readonly cost: number;
  readonly chosen: readonly Choice[];
}

/** States above which the assignment is made link by link, greedily. */
const MOST_STATES = 60_000;

/** The cheapest assignment: link by link over how many pieces of each kind are used. Undefined when there is none. */
export function assignLeads(
  links: readonly (readonly Choice[])[],
  owned: readonly number[],
): Assignment | undefined {
  // A state counts the pieces used of each kind, in a number system with one digit a kind.
  const digits = owned.map((count, kind) => {
    const wanted = links.map((choices) => Math.max(0, ...choices.map(({ uses }) => times(uses, kind))));
    return (
      1 +
      Math.min(
        count,
        wanted.reduce((sum, one) => sum + one, 0),
      )
    );
  });
  const strides = digits.map((_, kind) => digits.slice(0, kind).reduce((product, one) => product * one, 1));
  const states = digits.reduce((product, one) => product * one, 1);
  if (states > MOST_STATES) return greedyLeads(links, owned);
  const jump = ({ uses }: Choice): number => uses.reduce((sum, kind) => sum + strides[kind]!, 0);
  const room = (state: number, { uses }: Choice): boolean =>
    uses.every(
      (kind) => (Math.floor(state / strides[kind]!) % digits[kind]!) + times(uses, kind) < digits[kind]!,
    );
  let costs = new Float64Array(states).fill(Infinity);
  costs[0] = 0;
  const steps = links.map((choices) => {
    const after = new Float64Array(states).fill(Infinity);
    const step = new Int32Array(states).fill(-1);
    choices.forEach((choice, at) => {
      const leap = jump(choice);
      for (let state = 0; state < states; state++) {
        const sum = costs[state]! + choice.cost;
        if (sum === Infinity || !room(state, choice) || sum >= after[state + leap]!) continue;
        after[state + leap] = sum;
        step[state + leap] = at;
      }
    });
    costs = after;
    return step;
  });
  let state = costs.indexOf(costs.reduce((least, one) => Math.min(least, one), Infinity));
  const cost = costs[state]!;
  if (cost === Infinity) return undefined;
  const chosen: Choice[] = [];
  for (let link = links.length - 1; link >= 0; link--) {
    const choice = links[link]![steps[link]![state]!]!;
    chosen.unshift(choice);
    state -= jump(choice);
  }
  return { cost, chosen };
}

/** Link by link, the one that gains most by an owned lead first. Never below the cheapest assignment. */
function greedyLeads(
  links: readonly (readonly Choice[])[],
  owned: readonly number[],
): Assignment | undefined {
  const left = [...owned];
  const chosen: Choice[] = [];
  const order = links.map((_, at) => at).sort((a, b) => gain(links[b]!) - gain(links[a]!));
  for (const at of order) {
    const best = cheapest(
      links[at]!.filter(({ uses }) => uses.every((kind) => left[kind]! >= times(uses, kind))),
    );
    if (!best) return undefined;
    for (const kind of best.uses) left[kind]!--;
    chosen[at] = best;
  }
  return { cost: chosen.reduce((sum, { cost }) => sum + cost, 0), chosen };
}

function gain(choices: readonly Choice[]): number {
  const free = cheapest(choices.filter(({ uses }) => uses.length === 0));
  return (free?.cost ?? Infinity) - (cheapest(choices)?.cost ?? 0);
}

function cheapest(choices: readonly Choice[]): Choice | undefined {
  return choices.reduce<Choice | undefined>(
    (best, one) => (best && best.cost <= one.cost ? best : one),
    undefined,
  );
}

function times(uses: readonly number[], kind: number): number {
  return uses.filter((one) => one === kind).length;
}
