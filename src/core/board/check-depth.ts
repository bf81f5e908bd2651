/** Findings on depth: edges that shift too far on a chain, and more links than the owner wishes. */
import { inputOf } from '../plan/index.ts';
import type { BoardGraph, Feed, Plan, pathsFrom } from '../plan/index.ts';
import { finding } from './findings.ts';
import type { Finding } from './findings.ts';
import { EDGE_BUDGET_SECONDS, hopTimings } from './hops.ts';

/** What lies too deep along these paths, one set of them a controller. */
export function depthFindings(
  graph: BoardGraph,
  plan: Plan,
  paths: readonly ReturnType<typeof pathsFrom>[],
): readonly Finding[] {
  const wish = plan.wishes?.mostHops ?? 0;
  return paths.flatMap((reached) => {
    const shifts = lastShifts(graph, reached);
    return reached.flatMap((path, at) => {
      if (!path || path.length === 0) return [];
      const shift = shifts.get(at) ?? 0;
      return [
        ...(shift > EDGE_BUDGET_SECONDS ? [shifted(graph, path, shift)] : []),
        ...(wish > 0 && path.length > wish
          ? [tooDeep('too-deep', 'warning', graph, path, `You asked for at most ${wish}.`)]
          : []),
      ];
    });
  });
}

/** Shift of edges at each device, seconds. The longest paths first: the hops on the way to a device are those of every path through it. */
function lastShifts(graph: BoardGraph, reached: ReturnType<typeof pathsFrom>): ReadonlyMap<number, number> {
  const shifts = new Map<number, number>();
  const longest = reached.filter((path) => path !== undefined).sort((a, b) => b.length - a.length);
  for (const path of longest)
    if (!shifts.has(path.at(-1)?.toDevice ?? -1))
      for (const { feed, shiftSeconds } of hopTimings(graph, path)) shifts.set(feed.toDevice, shiftSeconds);
  return shifts;
}

function shifted(graph: BoardGraph, path: readonly Feed[], shiftSeconds: number): Finding {
  const unsure = path.some((feed) => inputOf(graph, feed).part === 'unknown');
  const why = `Edges shift by ${(shiftSeconds * 1e6).toFixed(1)} µs on the way; ${(EDGE_BUDGET_SECONDS * 1e6).toFixed(1)} µs is all that a receiver has left.`;
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
  return finding(kind, severity, where, {
    what: `'${name}' is ${path.length} links from the controller`,
    why,
    mend: 'Feed it from a hub, or nearer to the controller.',
  });
}
