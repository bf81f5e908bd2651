/**
 * The room between two connectors: one lane for each conductor, a fan on either side that brings it there, its label, its arrows.
 * Worked out along (from the first connector to the second) and across; the caller turns that into x and y.
 */
import type { Contact } from '../core/wiring/index.ts';
import type { Block, Escape } from './face.ts';

/** A conductor to lay: from a contact of the block before to one of the block after. */
interface Strand {
  readonly from: Contact;
  readonly to: Contact;
}

/** Escapes chosen for both blocks and the order of lanes: `order[k]` is the strand on lane k. */
export interface Choice {
  readonly before: Escape;
  readonly after: Escape;
  readonly order: readonly number[];
  readonly crossings: number;
}

/** Picks the pair of escapes with the fewest crossings, then the least cost to look at. */
export function chooseEscapes(
  strands: readonly Strand[],
  before: Block,
  after: Block,
  across: 'x' | 'y',
): Choice {
  let best: Choice | undefined;
  let least = Infinity;
  for (const first of before.escapes) {
    for (const second of after.escapes) {
      const starts = strands.map(({ from }) => endOf(first, from, across));
      const ends = strands.map(({ to }) => endOf(second, to, across));
      const crossings = countCrossings(starts, ends);
      const cost =
        crossings +
        strands.reduce((sum, { from, to }) => sum + (first.costs[from] ?? 0) + (second.costs[to] ?? 0), 0);
      if (cost >= least) continue;
      least = cost;
      const order = strands
        .map((_, index) => index)
        .sort((i, j) => (starts[i] ?? 0) - (starts[j] ?? 0) || (ends[i] ?? 0) - (ends[j] ?? 0) || i - j);
      best = { before: first, after: second, order, crossings };
    }
  }
  if (best === undefined) throw new Error('channel: each block must have at least one escape, got none');
  return best;
}

function endOf(escape: Escape, contact: Contact, across: 'x' | 'y'): number {
  const last = escape.routes[contact]?.at(-1);
  if (last === undefined)
    throw new RangeError(`channel: contact must have a way out, got '${contact}' without one`);
  return last[across];
}

/** Pairs whose order at the start is not their order at the end. */
function countCrossings(starts: readonly number[], ends: readonly number[]): number {
  let crossings = 0;
  for (let i = 0; i < starts.length; i += 1) {
    for (let j = i + 1; j < starts.length; j += 1) {
      if (((starts[i] ?? 0) - (starts[j] ?? 0)) * ((ends[i] ?? 0) - (ends[j] ?? 0)) < 0) crossings += 1;
    }
  }
  return crossings;
}

/**
 * Places lanes as near to their targets as their order and the least distance `pitch` allow, within `low` and `high`:
 * the least sum of squares, by pooling neighbours that would come too close.
 */
export function placeLanes(
  targets: readonly number[],
  pitch: number,
  low: number,
  high: number,
): readonly number[] {
  const shifted = targets.map((target, index) => target - index * pitch);
  const pools: { sum: number; count: number }[] = [];
  for (const value of shifted) {
    pools.push({ sum: value, count: 1 });
    for (;;) {
      const last = pools.at(-1);
      const previous = pools.at(-2);
      if (
        last === undefined ||
        previous === undefined ||
        previous.sum / previous.count <= last.sum / last.count
      )
        break;
      pools.splice(-2, 2, { sum: previous.sum + last.sum, count: previous.count + last.count });
    }
  }
  const level = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  const top = Math.max(low, high - (targets.length - 1) * pitch);
  return level.map((value, index) => Math.min(top, Math.max(low, value)) + index * pitch);
}
