/** Sets of devices shared out over places, the cheapest way for each set. */
import type { Row } from './price-links.ts';

/** What a place may take: no device at no cost where `costs` is missing, or each set at its cost. */
export interface Option<Take> {
  readonly costs?: Row;
  /** The state that this leads to from another one; -1 where it may not be taken. */
  readonly into: (state: number) => number;
  /** What is then at that place. */
  readonly take: (set: number) => Take;
}

/** The least cost of each set, by the state it ends in, and what each place takes for it. */
export interface Shared<Take> {
  readonly costs: readonly Row[];
  readonly takes: (state: number, set: number) => readonly Take[];
}

interface Step {
  readonly costs: Row;
  readonly from: Int32Array;
  readonly part: Int32Array;
  readonly option: Int32Array;
}

/**
 * Share out, place by place, beginning in state 0 with nothing. Time grows as 3 to the number of devices.
 * @param whole whether only the set of all devices is asked for, which spares the last place all others.
 */
export function share<Take>(
  count: number,
  states: number,
  places: readonly (readonly Option<Take>[])[],
  whole = false,
): Shared<Take> {
  const full = 1 << count;
  const blank = (): Step[] =>
    Array.from({ length: states }, () => ({
      costs: new Float64Array(full).fill(Infinity),
      from: new Int32Array(full),
      part: new Int32Array(full),
      option: new Int32Array(full),
    }));
  const first = blank();
  first[0]!.costs[0] = 0;
  const steps = [first];
  places.forEach((options, place) => {
    const [before, after] = [steps[place]!, blank()];
    before.forEach(({ costs }, state) =>
      options.forEach((option, at) => {
        const target = after[option.into(state)];
        if (target) spread(costs, option.costs, target, state, at, whole && place === places.length - 1);
      }),
    );
    steps.push(after);
  });
  return {
    costs: steps.at(-1)!.map(({ costs }) => costs),
    takes: (state, set) => {
      const taken: Take[] = [];
      for (let place = places.length; place > 0; place--) {
        const { from, part, option } = steps[place]![state]!;
        taken.unshift(places[place - 1]![option[set]!]!.take(part[set]!));
        [state, set] = [from[set]!, set ^ part[set]!];
      }
      return taken;
    },
  };
}

/** Add one option to every set that is covered so far. */
function spread(
  before: Row,
  adds: Row | undefined,
  { costs, from, part, option }: Step,
  state: number,
  at: number,
  whole: boolean,
): void {
  const all = before.length - 1;
  for (let covered = 0; covered <= all; covered++) {
    const sum = before[covered]!;
    if (sum === Infinity) continue;
    const rest = adds ? all ^ covered : 0;
    for (let set = rest; ; set = (set - 1) & rest) {
      const cost = sum + (adds ? adds[set]! : 0);
      const both = covered | set;
      if (cost < costs[both]!) {
        costs[both] = cost;
        from[both] = state;
        part[both] = set;
        option[both] = at;
      }
      if (set === 0 || whole) break;
    }
  }
}
