/** What the owner weighs of a plan besides its cost. */
import { waysFrom } from '../board/index.ts';
import { boardGraph, speaks } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';

/** Leads, hubs, delay and depth of a plan, and what goes silent with each device. */
export interface BoardFacts {
  readonly leads: number;
  readonly hubs: number;
  /** From the end of a byte at the controller to its end at the last device, seconds. */
  readonly worstDelaySeconds: number;
  readonly deepestLinks: number;
  /** For each device that others hang on: who hears nothing while it is off. */
  readonly silentWithout: readonly { readonly device: string; readonly silent: readonly string[] }[];
}

/** The facts of a plan as it stands. */
export function boardFacts(plan: Plan): BoardFacts {
  const graph = boardGraph(plan);
  const ways = graph.devices.flatMap((device, start) =>
    speaks(device) ? waysFrom(graph, start).filter((way) => way !== undefined) : [],
  );
  const silent = new Map<string, Set<string>>();
  for (const { hops } of ways)
    for (const { feed } of hops.slice(1))
      silent.set(
        feed.from.device,
        (silent.get(feed.from.device) ?? new Set()).add(hops.at(-1)!.feed.to.device),
      );
  return {
    leads: new Set(plan.links.flatMap(({ inputs }) => inputs.flatMap(({ leads }) => leads))).size,
    hubs: graph.devices.filter(({ kind }) => kind === 'hub' || kind === 'converter').length,
    worstDelaySeconds: Math.max(0, ...ways.map(({ delaySeconds }) => delaySeconds)),
    deepestLinks: Math.max(0, ...ways.map(({ hops }) => hops.length)),
    silentWithout: [...silent].map(([device, names]) => ({ device, silent: [...names] })),
  };
}
