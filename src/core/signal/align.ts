/** Two lists of bytes laid side by side: indexes into both, null where one side has no partner. */
interface Pairing {
  readonly sent: number | null;
  readonly heard: number | null;
}

/** A byte and the moment it began, seconds. */
interface TimedValue {
  readonly value: number;
  readonly startSeconds: number;
}

/** Costs only rank the ways to lay the lists side by side: a byte changed costs a little less than one lost and one found. */
const CHANGED = 1.5;
const UNPAIRED = 1;
/** Weight of one byte time of delay; small, so that time only decides between equal values. */
const LAG_WEIGHT = 0.001;
const MOST_LAG_COST = 0.4;

/**
 * Lays received bytes beside sent ones, in order, with the fewest changes; among equal ways the least delay wins. A byte
 * never pairs with one sent more than `slackSeconds` after it arrived. Work grows with the product of the two lengths.
 */
export function alignBytes(
  sent: readonly TimedValue[],
  heard: readonly TimedValue[],
  byteSeconds: number,
  slackSeconds: number,
): readonly Pairing[] {
  const width = heard.length + 1;
  const cost = new Float64Array((sent.length + 1) * width);
  const pairCost = (row: number, column: number): number => {
    const one = sent[row];
    const other = heard[column];
    if (!one || !other) return Infinity;
    const lag = other.startSeconds - one.startSeconds;
    if (lag < -slackSeconds) return Infinity;
    const delay = Math.min(MOST_LAG_COST, (LAG_WEIGHT * Math.abs(lag)) / byteSeconds);
    return (one.value === other.value ? 0 : CHANGED) + delay;
  };
  const at = (row: number, column: number): number => cost[row * width + column] ?? Infinity;
  for (let row = sent.length; row >= 0; row -= 1) {
    for (let column = heard.length; column >= 0; column -= 1) {
      if (row === sent.length && column === heard.length) continue;
      const pair =
        row < sent.length && column < heard.length
          ? pairCost(row, column) + at(row + 1, column + 1)
          : Infinity;
      const lost = row < sent.length ? UNPAIRED + at(row + 1, column) : Infinity;
      const found = column < heard.length ? UNPAIRED + at(row, column + 1) : Infinity;
      cost[row * width + column] = Math.min(pair, lost, found);
    }
  }
  const pairs: Pairing[] = [];
  let row = 0;
  let column = 0;
  while (row < sent.length || column < heard.length) {
    const here = at(row, column);
    if (
      row < sent.length &&
      column < heard.length &&
      pairCost(row, column) + at(row + 1, column + 1) === here
    ) {
      pairs.push({ sent: row, heard: column });
      row += 1;
      column += 1;
    } else if (row < sent.length && UNPAIRED + at(row + 1, column) === here) {
      pairs.push({ sent: row, heard: null });
      row += 1;
    } else {
      pairs.push({ sent: null, heard: column });
      column += 1;
    }
  }
  return pairs;
}
