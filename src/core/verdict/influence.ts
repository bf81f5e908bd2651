/** Which tolerance a value depends on most, from sums kept while builds are drawn. */

/** A tolerance and the share of the value's variance that goes along with it, 0 to 1. */
export interface Influence {
  readonly name: string;
  readonly share: number;
}

/** Sums over builds, one entry a tolerance where there is an array. */
export interface SpreadSums {
  builds: number;
  value: number;
  valueSquared: number;
  readonly place: Float64Array;
  readonly placeSquared: Float64Array;
  readonly both: Float64Array;
}

/** Tolerances named: the three that matter most. */
const NAMED = 3;

/** Sums of nothing yet. */
export function spreadSums(spreads: number): SpreadSums {
  return {
    builds: 0,
    value: 0,
    valueSquared: 0,
    place: new Float64Array(spreads),
    placeSquared: new Float64Array(spreads),
    both: new Float64Array(spreads),
  };
}

/** Count one build: where each tolerance fell in its range, 0 to 1, and the value that came of it. */
export function addShare(sums: SpreadSums, shares: Float64Array, value: number): void {
  sums.builds++;
  sums.value += value;
  sums.valueSquared += value * value;
  for (let at = 0; at < shares.length; at++) {
    const share = shares[at] as number;
    sums.place[at] = (sums.place[at] as number) + share;
    sums.placeSquared[at] = (sums.placeSquared[at] as number) + share * share;
    sums.both[at] = (sums.both[at] as number) + share * value;
  }
}

/** The tolerances that matter most, the greatest first: squares of their correlation with the value. */
export function influenceOf(sums: SpreadSums, names: readonly string[]): readonly Influence[] {
  const { builds, value, valueSquared } = sums;
  const spread = valueSquared - (value * value) / builds;
  return names
    .map((name, at) => {
      const place = sums.place[at] as number;
      const wide = (sums.placeSquared[at] as number) - (place * place) / builds;
      const joint = (sums.both[at] as number) - (place * value) / builds;
      return { name, share: spread > 0 && wide > 0 ? (joint * joint) / (spread * wide) : 0 };
    })
    .sort((a, b) => b.share - a.share)
    .slice(0, NAMED)
    .filter(({ share }) => share > 0);
}
