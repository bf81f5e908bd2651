/** One press: the bytes that leave the controller, and when each device has the last one meant for it. */
import { encode } from '../signal/index.ts';
import { bankSelect } from '../signal/index.ts';
import type { Message } from '../signal/index.ts';
import { BYTE_SECONDS, hopTimings } from './hops.ts';
import type { HopTiming } from './hops.ts';
import { boardGraph, pathsFrom, speaks } from '../plan/index.ts';
import { PLAN_DEFAULTS } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';
import type { PressItem } from '../plan/index.ts';

/** One message of the press on the wire of the controller. Times in seconds from the start of the first byte. */
export interface SentItem {
  readonly item: PressItem;
  /** 1 to 16; 0 where the device has none, and then channel 1 is used. */
  readonly channel: number;
  readonly bytes: readonly number[];
  readonly startSeconds: number;
  readonly endSeconds: number;
  /** When its device has the last byte, or undefined where it is not reached. */
  readonly arrivesSeconds: number | undefined;
}

/** A device of the press: when the last message meant for it is there, and the way it came. */
export interface Arrival {
  readonly device: string;
  readonly seconds: number | undefined;
  readonly delaySeconds: number;
  readonly hops: readonly HopTiming[];
}

/** A whole press. `seconds` is when the last device has its last message; undefined where one is not reached. */
export interface PressTiming {
  readonly items: readonly SentItem[];
  readonly arrivals: readonly Arrival[];
  readonly bytes: number;
  readonly sendSeconds: number;
  readonly seconds: number | undefined;
  readonly overLimit: boolean;
  readonly warnings: readonly string[];
}

/** Options of a press. `runningStatus` leaves out a status byte that repeats the one before. */
export interface PressOptions {
  readonly runningStatus?: boolean;
}

/** The messages of one item: a bank is two control changes, the high seven bits first. */
export function messagesOf(item: PressItem, channel: number): readonly Message[] {
  const wire = Math.max(0, channel - 1);
  switch (item.send) {
    case 'program':
      return [{ kind: 'program change', channel: wire, program: item.program - 1 }];
    case 'bank':
      return bankSelect(wire, item.bank);
    case 'control':
      return [{ kind: 'control change', channel: wire, controller: item.controller, value: item.value }];
  }
}

/**
 * Time one press of a plan. Messages leave back to back in the owner's order, 320 us a byte; each link adds the delay of its
 * input, each software THRU and merger a byte and its own time besides. Where two controllers reach a device, the first of
 * the plan counts.
 */
export function timePress(plan: Plan, { runningStatus = false }: PressOptions = {}): PressTiming {
  const graph = boardGraph(plan);
  const start = graph.devices.findIndex((device) => speaks(device));
  const paths = start < 0 ? [] : pathsFrom(graph, start);
  const ways = new Map(
    graph.devices.map((device, at) => {
      const path = paths[at];
      const hops = path ? hopTimings(graph, path) : [];
      const delaySeconds = hops.reduce((sum, hop) => sum + hop.delaySeconds, 0);
      return [device.name, { device, reached: path !== undefined, hops, delaySeconds }] as const;
    }),
  );
  const press = plan.press ?? [];
  const messages = press.map((item) => messagesOf(item, ways.get(item.device)?.device.channel ?? 0));
  let count = 0;
  const sent: Message[] = [];
  const items = press.map((item, at): SentItem => {
    const before = encode(sent, { runningStatus }).length;
    sent.push(...(messages[at] ?? []));
    const all = encode(sent, { runningStatus });
    const startSeconds = count * BYTE_SECONDS;
    count = all.length;
    const way = ways.get(item.device);
    const endSeconds = count * BYTE_SECONDS;
    return {
      item,
      channel: way?.device.channel ?? 0,
      bytes: all.slice(before),
      startSeconds,
      endSeconds,
      arrivesSeconds: way?.reached === true ? endSeconds + way.delaySeconds : undefined,
    };
  });
  const arrivals = [...new Set(press.map(({ device }) => device))].map((device): Arrival => {
    const last = items.findLast(({ item }) => item.device === device);
    const way = ways.get(device);
    return {
      device,
      seconds: last?.arrivesSeconds,
      delaySeconds: way?.delaySeconds ?? 0,
      hops: way?.hops ?? [],
    };
  });
  const lost = arrivals.filter(({ seconds }) => seconds === undefined).map(({ device }) => device);
  const seconds = lost.length > 0 ? undefined : Math.max(0, ...arrivals.map((one) => one.seconds ?? 0));
  const limit = plan.pressLimitSeconds ?? PLAN_DEFAULTS.pressLimitSeconds;
  const latest = Math.max(0, ...arrivals.map((one) => one.seconds ?? 0));
  const overLimit = latest > limit;
  return {
    items,
    arrivals,
    bytes: count,
    sendSeconds: count * BYTE_SECONDS,
    seconds,
    overLimit,
    warnings: [
      ...(overLimit
        ? [`The last device has its message after ${ms(latest)}; your limit is ${ms(limit)}.`]
        : []),
      ...lost.map((device) => `'${device}' is not reached, so what is meant for it goes nowhere.`),
      ...channelless(press, (device) => ways.get(device)?.device.channel ?? 0),
      ...banksWithoutProgram(press),
    ],
  };
}

/** What is on one wire at one time: a row of the timeline for each link on the way to each device. */
export interface TimelineRow {
  readonly device: string;
  readonly spans: readonly {
    readonly item: number;
    readonly startSeconds: number;
    readonly endSeconds: number;
  }[];
}

/** The press as it arrives at each device of the plan that is reached: every item passes by, whomever it is meant for. */
export function pressTimeline(plan: Plan, timing: PressTiming): readonly TimelineRow[] {
  const graph = boardGraph(plan);
  const start = graph.devices.findIndex((device) => speaks(device));
  if (start < 0) return [];
  const row = (device: string, delaySeconds: number): TimelineRow => ({
    device,
    spans: timing.items.map(({ startSeconds, endSeconds }, item) => ({
      item,
      startSeconds: startSeconds + delaySeconds,
      endSeconds: endSeconds + delaySeconds,
    })),
  });
  return [
    row(graph.devices[start]?.name ?? '', 0),
    ...pathsFrom(graph, start).flatMap((path, at) =>
      path
        ? [
            row(
              graph.devices[at]?.name ?? '',
              hopTimings(graph, path).reduce((sum, hop) => sum + hop.delaySeconds, 0),
            ),
          ]
        : [],
    ),
  ];
}

function ms(seconds: number): string {
  return `${(seconds * 1e3).toFixed(1)} ms`;
}

function channelless(press: readonly PressItem[], channelOf: (device: string) => number): readonly string[] {
  const names = new Set(press.map(({ device }) => device).filter((device) => channelOf(device) === 0));
  return [...names].map((device) => `'${device}' has no channel in the plan; channel 1 is used for it.`);
}

/** A bank takes effect at the next program change of the same channel. */
function banksWithoutProgram(press: readonly PressItem[]): readonly string[] {
  return press.flatMap((item, at) => {
    if (item.send !== 'bank') return [];
    const follows = press.slice(at + 1).some((one) => one.device === item.device && one.send === 'program');
    return follows ? [] : [`The bank for '${item.device}' waits for a program change that does not come.`];
  });
}
