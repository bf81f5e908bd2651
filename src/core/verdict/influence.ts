/** Which tolerance a value depends on most, over builds drawn by chance. */

/** A tolerance and the share of the value's variance that goes along with it, 0 to 1. */
export interface Influence {
  readonly name: string;
  readonly share: number;
}

/** Tolerances named: the three that matter most. */
const NAMED = 3;

/**
 * The tolerances that matter most, the greatest first: squares of their correlation with the value.
 * @param places where each tolerance fell in its range, 0 to 1, one column a tolerance and one entry a build.
 * @param values the value that came of each build.
 */
export function influenceOf(
  names: readonly string[],
  places: readonly Float64Array[],
  values: Float64Array,
): readonly Influence[] {
  return places
    .map((column, at) => ({ name: names[at] as string, share: squaredCorrelation(column, values) }))
    .sort((a, b) => b.share - a.share)
    .slice(0, NAMED)
    .filter(({ share }) => share > 0);
}

/** 0 where either column never varies. */
function squaredCorrelation(a: Float64Array, b: Float64Array): number {
  const mean = (column: Float64Array): number => column.reduce((sum, one) => sum + one, 0) / column.length;
  const [meanA, meanB] = [mean(a), mean(b)];
  let [aa, bb, ab] = [0, 0, 0];
  a.forEach((one, at) => {
    const [awayA, awayB] = [one - meanA, (b[at] as number) - meanB];
    aa += awayA * awayA;
    bb += awayB * awayB;
    ab += awayA * awayB;
  });
  return aa > 0 && bb > 0 ? (ab * ab) / (aa * bb) : 0;
}
