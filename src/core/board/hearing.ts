/** Who hears a message and when: the links it goes along, in the order in which it arrives. */
import { hopTimings } from './hops.ts';
import type { HopTiming } from './hops.ts';
import { boardGraph, pathsFrom, speaks } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';

/** A device that hears the message. `seconds` run from the end of a byte at the sender to its end at this device. */
export interface Hearing {
  readonly device: string;
  readonly seconds: number;
  /** Links between the sender and this device, the last one of the way included. */
  readonly hops: number;
  readonly last: HopTiming;
  /** Names of the links of the way, from the sender on. */
  readonly links: readonly string[];
}

/** Everyone who hears a sender, soonest first, and the devices with jacks that do not. */
export interface Hearers {
  readonly from: string;
  readonly hearings: readonly Hearing[];
  readonly deaf: readonly string[];
}

/** The devices that can start a message. */
export function senders(plan: Plan): readonly string[] {
  return boardGraph(plan).devices.flatMap((device) =>
    speaks(device) && device.talks === 'jacks' ? [device.name] : [],
  );
}

/** Who hears what this device sends. @throws when the plan has no such device. */
export function hearers(plan: Plan, from: string): Hearers {
  const graph = boardGraph(plan);
  const start = graph.devices.findIndex(({ name }) => name === from);
  if (start < 0) throw new Error(`board: no device '${from}'`);
  const paths = pathsFrom(graph, start);
  const hearings = graph.devices.flatMap(({ name }, at): Hearing[] => {
    const path = paths[at];
    if (!path || path.length === 0) return [];
    const timings = hopTimings(graph, path);
    return [
      {
        device: name,
        seconds: timings.reduce((sum, { delaySeconds }) => sum + delaySeconds, 0),
        hops: path.length,
        last: timings[timings.length - 1] as HopTiming,
        links: path.map(({ link }) => plan.links[link]?.name ?? ''),
      },
    ];
  });
  return {
    from,
    hearings: hearings.toSorted((a, b) => a.seconds - b.seconds || a.hops - b.hops),
    deaf: graph.devices.flatMap(({ name, talks }, at) =>
      at !== start && talks === 'jacks' && paths[at] === undefined ? [name] : [],
    ),
  };
}

/** The place of each feed in the chain from the senders, from 1; undefined for one that no message goes along. */
export function hopNumbers(plan: Plan): readonly (readonly (number | undefined)[])[] {
  const graph = boardGraph(plan);
  const numbers = plan.links.map(({ inputs }) => inputs.map((): number | undefined => undefined));
  graph.devices.forEach((device, start) => {
    if (!speaks(device) || device.talks !== 'jacks') return;
    for (const path of pathsFrom(graph, start))
      path?.forEach(({ link, input }, at) => {
        const known = numbers[link]?.[input];
        if (numbers[link]) numbers[link][input] = Math.min(known ?? Infinity, at + 1);
      });
  });
  return numbers;
}
