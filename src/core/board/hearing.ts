/** Who hears a message and when: the links it goes along, in the order in which it arrives. */
import { boardGraph, pathsFrom, speaks } from '../plan/index.ts';
import type { BoardGraph, Plan } from '../plan/index.ts';
import { hopTimings } from './hops.ts';
import type { HopTiming } from './hops.ts';

/** The way of a message to a device: its hops in order, and the time from the end of a byte at the sender to its end there. */
export interface Way {
  readonly hops: readonly HopTiming[];
  readonly delaySeconds: number;
}

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

/** The way from one device to each other one, undefined where what it sends does not come. */
export function waysFrom(graph: BoardGraph, start: number): readonly (Way | undefined)[] {
  return pathsFrom(graph, start).map((path) => {
    if (!path) return undefined;
    const hops = hopTimings(graph, path);
    return { hops, delaySeconds: hops.reduce((sum, hop) => sum + hop.delaySeconds, 0) };
  });
}

/** The first controller of the board with the way to each device; nothing is reached where there is none. */
export function firstSender(graph: BoardGraph) {
  const start = graph.devices.findIndex((device) => speaks(device));
  return { start, ways: start < 0 ? [] : waysFrom(graph, start) };
}

/** The devices that can start a message. */
export function senders(plan: Plan): readonly string[] {
  return boardGraph(plan)
    .devices.filter((device) => speaks(device) && device.talks === 'jacks')
    .map(({ name }) => name);
}

/** Everyone who hears what a device sends, soonest first, and the devices with jacks that do not. @throws when the plan has no such device. */
export function hearers(plan: Plan, from: string) {
  const graph = boardGraph(plan);
  const start = graph.devices.findIndex(({ name }) => name === from);
  if (start < 0) throw new Error(`board: no device '${from}'`);
  const ways = waysFrom(graph, start);
  const hearings = graph.devices.flatMap(({ name }, at): Hearing[] => {
    const { hops = [], delaySeconds: seconds = 0 } = ways[at] ?? {};
    const last = hops.at(-1);
    if (!last) return [];
    const links = hops.map(({ feed }) => plan.links[feed.link]!.name);
    return [{ device: name, seconds, hops: hops.length, last, links }];
  });
  return {
    hearings: hearings.toSorted((a, b) => a.seconds - b.seconds || a.hops - b.hops),
    deaf: graph.devices
      .filter(({ talks }, at) => at !== start && talks === 'jacks' && ways[at] === undefined)
      .map(({ name }) => name),
  };
}

/** The place of each feed in the chain from the senders, from 1; undefined for one that no message goes along. */
export function hopNumbers(plan: Plan): readonly (readonly (number | undefined)[])[] {
  const graph = boardGraph(plan);
  const starts = senders(plan).map((name) => graph.devices.findIndex((device) => device.name === name));
  const numbers = plan.links.map(({ inputs }) => inputs.map((): number | undefined => undefined));
  for (const path of starts.flatMap((start) => pathsFrom(graph, start)))
    path?.forEach(({ link, input }, at) => {
      const row = numbers[link]!;
      row[input] = Math.min(row[input] ?? Infinity, at + 1);
    });
  return numbers;
}
