/** The ways to put hubs on the outputs, one by one, for boards too large for tables over sets. */
import { chainFits } from './problem.ts';
import type { PlanProblem } from './problem.ts';

/** One way to use the outputs: -1 for a chain of its own or nothing, else the number of a hub. */
export type Frame = readonly number[];

/** A place of a frame for one chain: its source, the output it belongs to, the hub, -1 for none, and the longest chain there. */
export interface Head {
  readonly source: number;
  readonly output: number;
  readonly hub: number;
  readonly longest: number;
}

/** Every frame that the topology and the limits allow. */
export function framesOf(problem: PlanProblem): readonly Frame[] {
  const { outputs, ways, hubs, topology, spareOutlets } = problem;
  const options = [-1, ...(topology === 'chain' ? [] : hubs.keys())];
  const chains = fewestChains(problem);
  const alike = outputs.map(
    (output, at) => at > 0 && JSON.stringify(ways[output]) === JSON.stringify(ways[outputs[at - 1]!]),
  );
  let frames: Frame[] = [[]];
  for (const at of outputs.keys())
    frames = frames.flatMap((frame) =>
      options
        .filter((hub) => hub < 0 || frame.filter((one) => one === hub).length < hubs[hub]!.limit)
        // Outputs that are alike may change places: one order of them is enough.
        .filter((hub) => !alike[at] || hub >= frame[at - 1]!)
        .map((hub) => [...frame, hub]),
    );
  return frames
    .filter((frame) => headsOf(problem, frame).length - spareOutlets >= chains)
    .filter((frame) => topology !== 'hub' || frame.some((hub) => hub >= 0));
}

/** The places of a frame. */
export function headsOf(problem: PlanProblem, frame: Frame): readonly Head[] {
  return frame.flatMap((hub, output) => {
    const longest = longestChain(problem, hub);
    const sources = hub < 0 ? [problem.outputs[output]!] : problem.hubs[hub]!.outlets;
    return sources.map((source) => ({ source, output, hub, longest }));
  });
}

/** Length of the longest chain that the hops and the shift of edges allow. */
function longestChain(problem: PlanProblem, hub: number): number {
  let [length, sum] = [0, 0];
  for (const shift of problem.shift.toSorted((a, b) => a - b)) {
    sum += shift;
    if (!chainFits(problem, length + 1, sum, problem.hubs[hub])) break;
    length++;
  }
  return length;
}

/**
 * The fewest chains into which the devices can be laid, circles allowed: every device that no other follows ends one. A
 * matching of devices to the devices that follow them leaves that many over; where all are in circles there is one chain still.
 */
function fewestChains({ count, ways }: PlanProblem): number {
  const before = new Int32Array(count).fill(-1);
  const follow = (from: number, seen: Set<number>): boolean => {
    for (let to = 0; to < count; to++) {
      if (seen.has(to) || ways[from]![to]!.length === 0) continue;
      seen.add(to);
      if (before[to]! >= 0 && !follow(before[to]!, seen)) continue;
      before[to] = from;
      return true;
    }
    return false;
  };
  let chains = count;
  for (let from = 0; from < count; from++) if (follow(from, new Set())) chains--;
  return Math.max(1, chains);
}
