/** Suspects and the observations that part them: what tells most, and the fewest observations in expectation. */

/** Suspects with what each would show at each observation. `names` are what a suspect is called; weights are positive. */
export interface Suspects {
  readonly names: readonly string[];
  readonly weights: readonly number[];
  /** Number of the answer by observation, then by suspect: suspects with the same number show the same. */
  readonly answers: readonly (readonly number[])[];
}

/** Suspects that may be handled by `fewestExpected`: sets of them are numbers of 30 bits. */
const MOST_SUSPECTS = 30;

/** Expected information of an observation about the name among some suspects, bits. */
export function bitsOfObservation(suspects: Suspects, left: readonly number[], observation: number): number {
  const entropy = (groups: ReadonlyMap<string | number, number>, total: number): number =>
    [...groups.values()].reduce((sum, weight) => sum - (weight / total) * Math.log2(weight / total), 0);
  const names = new Map<string, number>();
  const byAnswer = new Map<number, { weight: number; names: Map<string, number> }>();
  let total = 0;
  for (const at of left) {
    const weight = suspects.weights[at] as number;
    const name = suspects.names[at] as string;
    const answer = suspects.answers[observation]?.[at] as number;
    total += weight;
    names.set(name, (names.get(name) ?? 0) + weight);
    const branch = byAnswer.get(answer) ?? { weight: 0, names: new Map<string, number>() };
    byAnswer.set(answer, branch);
    branch.weight += weight;
    branch.names.set(name, (branch.names.get(name) ?? 0) + weight);
  }
  let bits = entropy(names, total);
  for (const branch of byAnswer.values())
    bits -= (branch.weight / total) * entropy(branch.names, branch.weight);
  return bits;
}

/**
 * Names that no observation can tell apart among some suspects, in groups: a group has several names where suspects of
 * different names answer alike everywhere.
 */
export function alikeNames(suspects: Suspects, left: readonly number[]): readonly (readonly string[])[] {
  return groupsAlike(suspects, left).map(({ names }) => [...names]);
}

/**
 * The fewest observations, in expectation over the weights of the suspects left, until only one name is left or nothing
 * more can tell: the best of all ways to go on, found by trying all of them once for each set of suspects that can come up.
 * @throws when there are more than `MOST_SUSPECTS`.
 */
export function fewestExpected(suspects: Suspects, left: readonly number[]): number {
  const merged = mergeAlike(suspects, left);
  const { masks, weights, classes } = merged;
  if (weights.length > MOST_SUSPECTS)
    throw new Error(`suspects: at most ${MOST_SUSPECTS} that differ, got ${weights.length}`);
  const known = new Map<number, number>();
  const all = weights.length === 0 ? 0 : 2 ** weights.length - 1;
  const total = weightOf(all, weights);
  return total === 0 ? 0 : cost(all) / total;

  /** Expected observations times weight. */
  function cost(set: number): number {
    if (isOneName(set, classes)) return 0;
    const found = known.get(set);
    if (found !== undefined) return found;
    const weight = weightOf(set, weights);
    let best = Infinity;
    const tried = new Set<string>();
    const splits = masks
      .map((branches) => branches.map((branch) => branch & set).filter((branch) => branch !== 0))
      .filter((branches) => branches.length > 1)
      .map((branches) => ({ branches, bound: weight + branches.reduce((sum, one) => sum + least(one), 0) }))
      .sort((a, b) => a.bound - b.bound);
    for (const { branches, bound } of splits) {
      if (bound >= best) break;
      const key = branches.sort((a, b) => a - b).join();
      if (tried.has(key)) continue;
      tried.add(key);
      let sum = weight;
      for (const branch of branches) {
        sum += cost(branch);
        if (sum >= best) break;
      }
      best = Math.min(best, sum);
    }
    if (best === Infinity) best = 0;
    known.set(set, best);
    return best;
  }

  /** Less than the cost of a set can never be: one observation more unless it is of one name, by what is known of it. */
  function least(set: number): number {
    return isOneName(set, classes) ? 0 : (known.get(set) ?? weightOf(set, weights));
  }
}

interface Merged {
  readonly weights: readonly number[];
  readonly classes: readonly string[];
  /** By observation: the set of suspects of each answer. Observations that split alike are kept once. */
  readonly masks: readonly (readonly number[])[];
}

interface Group {
  weight: number;
  readonly names: Set<string>;
  /** The first of them. */
  readonly at: number;
}

/** Suspects that answer alike everywhere, whatever they are called. */
function groupsAlike(suspects: Suspects, left: readonly number[]): readonly Group[] {
  const groups = new Map<string, Group>();
  for (const at of left) {
    const key = suspects.answers.map((row) => row[at]).join();
    const group = groups.get(key) ?? { weight: 0, names: new Set<string>(), at };
    groups.set(key, group);
    group.weight += suspects.weights[at] as number;
    group.names.add(suspects.names[at] as string);
  }
  return [...groups.values()];
}

/**
 * The same suspects with the answers of each observation that only one name gives counted as one: each of them settles the
 * name, so no way of going on costs more or less.
 */
function settleNames(suspects: Suspects, left: readonly number[]): Suspects {
  return {
    ...suspects,
    answers: suspects.answers.map((row) => {
      const names = new Map<number, Set<string>>();
      for (const at of left) {
        const answer = row[at] as number;
        names.set(answer, (names.get(answer) ?? new Set<string>()).add(suspects.names[at] as string));
      }
      const first = new Map<string, number>();
      return row.map((answer) => {
        const [name, other] = names.get(answer) ?? [];
        if (name === undefined || other !== undefined) return answer;
        return first.get(name) ?? (first.set(name, answer), answer);
      });
    }),
  };
}

/** Suspects that answer alike, or apart only where their one name is settled, count as one. */
function mergeAlike(given: Suspects, left: readonly number[]): Merged {
  const suspects = settleNames(given, left);
  const all = groupsAlike(suspects, left);
  const splits = new Map<string, readonly number[]>();
  for (const row of suspects.answers) {
    const branches = new Map<number, number>();
    all.forEach(({ at }, bit) =>
      branches.set(row[at] as number, (branches.get(row[at] as number) ?? 0) | (1 << bit)),
    );
    const masks = [...branches.values()].sort((a, b) => a - b);
    if (masks.length > 1) splits.set(masks.join(), masks);
  }
  return {
    weights: all.map(({ weight }) => weight),
    classes: all.map(({ names }) => [...names].sort().join('|')),
    masks: [...splits.values()],
  };
}

function weightOf(set: number, weights: readonly number[]): number {
  let sum = 0;
  for (let rest = set; rest !== 0; rest &= rest - 1) sum += weights[31 - Math.clz32(rest & -rest)] as number;
  return sum;
}

function isOneName(set: number, classes: readonly string[]): boolean {
  const first = classes[31 - Math.clz32(set & -set)];
  for (let rest = set; rest !== 0; rest &= rest - 1)
    if (classes[31 - Math.clz32(rest & -rest)] !== first) return false;
  return true;
}
