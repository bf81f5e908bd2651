/** Findings on depth: edges that shift too far on a chain, and more links than the owner wishes. */
import { inputOf } from '../plan/index.ts';
import type { BoardGraph, Feed, Plan, pathsFrom } from '../plan/index.ts';
import { STANDARD_EDGE_BUDGET } from '../signal/index.ts';
import { finding } from './findings.ts';
import type { Finding } from './findings.ts';
import { hopTimings, pathReads } from './hops.ts';
import type { SolvedOutput } from './solve-outputs.ts';

/** What lies too deep along these paths, one set of them a controller. */
export function depthFindings(
  graph: BoardGraph,
  plan: Plan,
  paths: readonly ReturnType<typeof pathsFrom>[],
  solved: readonly SolvedOutput[],
): readonly Finding[] {
  const wish = plan.wishes?.mostHops ?? 0;
  return paths.flatMap((reached) => {
    const ends = endsOf(graph, reached, solved);
    return reached.flatMap((path, at) => {
      if (!path || path.length === 0) return [];
      return [
        ...(ends.get(at)?.reads === false ? [shifted(graph, path, ends.get(at)!.shiftSeconds)] : []),
        ...(wish > 0 && path.length > wish
          ? [tooDeep('too-deep', 'warning', graph, path, `You asked for at most ${wish}.`)]
          : []),
      ];
    });
  });
}

/** What has become of a message at a device. */
interface PathEnd {
  readonly reads: boolean;
  readonly shiftSeconds: number;
}

/** The end of the way to each device. The longest paths first: the hops on the way to a device are those of every path through it. */
function endsOf(
  graph: BoardGraph,
  reached: ReturnType<typeof pathsFrom>,
  solved: readonly SolvedOutput[],
): ReadonlyMap<number, PathEnd> {
  const ends = new Map<number, PathEnd>();
  const longest = reached.filter((path) => path !== undefined).sort((a, b) => b.length - a.length);
  for (const path of longest) {
    if (ends.has(path.at(-1)?.toDevice ?? -1)) continue;
    const reads = pathReads(graph, path, solved);
    hopTimings(graph, path).forEach(({ feed, shiftSeconds }, at) =>
      ends.set(feed.toDevice, { reads: reads[at]!, shiftSeconds }),
    );
  }
  return ends;
}

const sayMicroseconds = (seconds: number): string => `${(Math.abs(seconds) * 1e6).toFixed(1)} µs`;

function shifted(graph: BoardGraph, path: readonly Feed[], shiftSeconds: number): Finding {
  const unsure = path.some((feed) => inputOf(graph, feed).part === 'unknown');
  const { lateSeconds, earlySeconds } = STANDARD_EDGE_BUDGET;
  const left = sayMicroseconds(shiftSeconds > 0 ? lateSeconds : earlySeconds);
  const why = `Edges shift by about ${sayMicroseconds(shiftSeconds)} on the way; ${left} is all that a receiver has left, by our reading of one that looks once in the middle of each bit.`;
  return unsure
    ? tooDeep(
        'unproven-depth',
        'warning',
        graph,
        path,
        `${why} Parts that are not known are counted as slow ones.`,
      )
    : tooDeep('too-deep', 'error', graph, path, why);
}

function tooDeep(
  kind: 'unproven-depth' | 'too-deep',
  severity: 'error' | 'warning',
  graph: BoardGraph,
  path: readonly Feed[],
  why: string,
): Finding {
  const { name } = graph.devices[path.at(-1)!.toDevice]!;
  const where = { devices: [name] };
  if (path.length === 1)
    return finding(kind, severity, where, {
      what: `'${name}' loses bits in its own input`,
      why,
      mend: 'Change what stands behind the LED of its input, the pull-up or the base resistor, or take another input.',
    });
  return finding(kind, severity, where, {
    what: `'${name}' is ${path.length} links from the controller`,
    why,
    mend: 'Feed it from a hub, or nearer to the controller.',
  });
}
