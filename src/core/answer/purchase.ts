/** The fewest goods that serve whatever the types turn out to be. */
import { gradeOf } from './grade.ts';
import type { TalkMemory, TypedPair } from './grade.ts';
import type { Goods } from '../wiring/index.ts';

/** Goods in series between two jacks. */
interface Series {
  readonly goods: readonly Goods[];
  readonly leads: Parameters<typeof gradeOf>[1];
}

/** Most goods that a purchase names; beyond it, finding out the type is the better buy (our choice). */
const MOST_GOODS = 4;

/**
 * The fewest goods such that for each pair of types that some ready-made series serves, one made of them serves it, and none made of them harms
 * anything whatever the types are. Among equals the earliest in the list of goods. Undefined where no series serves any pair, or where more
 * than `MOST_GOODS` would be needed.
 */
export function smallestPurchase(
  pairs: readonly TypedPair[],
  ready: readonly Series[],
  memory: TalkMemory,
): readonly Goods[] | undefined {
  const graded = ready.map(({ goods, leads }) => ({
    goods,
    grades: pairs.map((pair) => gradeOf(pair, leads, memory)),
  }));
  const safe = graded.filter(({ grades }) => !grades.includes('harm'));
  const serves = pairs.map((_, at) =>
    safe.filter(({ grades }) => grades[at] === 'works' || grades[at] === 'marginal'),
  );
  const needs = serves.filter((series) => series.length > 0);
  if (needs.length === 0) return undefined;
  const all = [...new Set(needs.flat().flatMap(({ goods }) => goods))];
  for (let size = 1; size <= MOST_GOODS; size++)
    for (const chosen of subsets(all, size))
      if (needs.every((series) => series.some(({ goods }) => goods.every((one) => chosen.includes(one)))))
        return chosen;
  return undefined;
}

/** Every subset of a size, in the order of the list. */
function* subsets<T>(list: readonly T[], size: number, start = 0): Generator<readonly T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let at = start; at + size <= list.length; at++)
    for (const rest of subsets(list, size - 1, at + 1)) yield [list[at] as T, ...rest];
}
