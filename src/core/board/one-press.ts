/** One press: the bytes that leave the controller, and when each device has the last one meant for it. */
import { PLAN_DEFAULTS, boardGraph } from '../plan/index.ts';
import type { Plan, PressItem } from '../plan/index.ts';
import { bankSelect, encode } from '../signal/index.ts';
import type { Message } from '../signal/index.ts';
import { quoted } from './findings.ts';
import { firstSender } from './hearing.ts';
import type { Way } from './hearing.ts';
import { BYTE_SECONDS } from './hops.ts';

/** One message of the press on the wire of the controller. Times in seconds from the start of the first byte. */
interface SentItem {
  readonly item: PressItem;
  readonly bytes: readonly number[];
  readonly startSeconds: number;
  readonly endSeconds: number;
  /** When its device has the last byte, or undefined where it is not reached. */
  readonly arrivesSeconds: number | undefined;
}

/** A device of the press: when the last message meant for it is there, and the way it came. */
interface Arrival extends Way {
  readonly device: string;
  readonly seconds: number | undefined;
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

/** How a press is sent. `runningStatus` leaves out a status byte that repeats the one before. */
interface PressOptions {
  readonly runningStatus?: boolean;
}

/**
 * Time one press of a plan. Messages leave back to back in the owner's order, 320 µs a byte; each link adds the delay of its
 * input, each software THRU and merger a byte and its own time besides. Where two controllers reach a device, the first of
 * the plan counts.
 */
export function timePress(plan: Plan, options: PressOptions = {}): PressTiming {
  const graph = boardGraph(plan);
  const { ways } = firstSender(graph);
  const found = new Map(graph.devices.map(({ name, channel }, at) => [name, { channel, way: ways[at] }]));
  const press = plan.press ?? [];
  const items = sentItems(press, (name) => found.get(name)?.channel ?? 0, options).map((sent): SentItem => {
    const way = found.get(sent.item.device)?.way;
    return { ...sent, arrivesSeconds: way && sent.endSeconds + way.delaySeconds };
  });
  const arrivals = [...new Set(press.map(({ device }) => device))].map((device): Arrival => {
    const way = found.get(device)?.way ?? { hops: [], delaySeconds: 0 };
    const seconds = items.findLast(({ item }) => item.device === device)?.arrivesSeconds;
    return { device, seconds, ...way };
  });
  const lost = arrivals.filter(({ seconds }) => seconds === undefined).map(({ device }) => device);
  const latest = Math.max(0, ...arrivals.map(({ seconds = 0 }) => seconds));
  const limit = plan.pressLimitSeconds ?? PLAN_DEFAULTS.pressLimitSeconds;
  const unset = arrivals.filter(({ device }) => (found.get(device)?.channel ?? 0) === 0);
  const sendSeconds = items.at(-1)?.endSeconds ?? 0;
  return {
    items,
    arrivals,
    bytes: Math.round(sendSeconds / BYTE_SECONDS),
    sendSeconds,
    seconds: lost.length > 0 ? undefined : latest,
    overLimit: latest > limit,
    warnings: [
      ...(latest > limit
        ? [`The last device has its message after ${ms(latest)}; your limit is ${ms(limit)}.`]
        : []),
      ...lost.map((name) => `${quoted([name])} is not reached, so what is meant for it goes nowhere.`),
      ...unset.map(({ device }) => `'${device}' has no channel in the plan; channel 1 is used for it.`),
      ...banksWithoutProgram(press),
    ],
  };
}

/** The messages of one item on its channel, 1 to 16, or 1 where none is set: a bank is two control changes, the high seven bits first. */
function messagesOf(item: PressItem, channel: number): readonly Message[] {
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

function sentItems(
  press: readonly PressItem[],
  channelOf: (device: string) => number,
  { runningStatus = false }: PressOptions,
): readonly Omit<SentItem, 'arrivesSeconds'>[] {
  const sent: Message[] = [];
  let before = 0;
  return press.map((item) => {
    sent.push(...messagesOf(item, channelOf(item.device)));
    const all = encode(sent, { runningStatus });
    const [startSeconds, endSeconds] = [before * BYTE_SECONDS, all.length * BYTE_SECONDS];
    const bytes = all.slice(before);
    before = all.length;
    return { item, bytes, startSeconds, endSeconds };
  });
}

/** The press as it arrives at each device of the plan that is reached: every item passes by, whomever it is meant for. */
export function pressTimeline(plan: Plan, { items }: PressTiming) {
  const graph = boardGraph(plan);
  const { start, ways } = firstSender(graph);
  const row = (at: number, delaySeconds: number) => ({
    device: graph.devices[at]!.name,
    spans: items.map(({ startSeconds, endSeconds }, item) => ({
      item,
      startSeconds: startSeconds + delaySeconds,
      endSeconds: endSeconds + delaySeconds,
    })),
  });
  if (start < 0) return [];
  return [row(start, 0), ...ways.flatMap((way, at) => (way ? [row(at, way.delaySeconds)] : []))];
}

function ms(seconds: number): string {
  return `${(seconds * 1e3).toFixed(1)} ms`;
}

/** A bank takes effect at the next program change of the same channel. */
function banksWithoutProgram(press: readonly PressItem[]): readonly string[] {
  return press.flatMap((item, at) => {
    if (item.send !== 'bank') return [];
    const follows = press.slice(at + 1).some((one) => one.device === item.device && one.send === 'program');
    return follows ? [] : [`The bank for '${item.device}' waits for a program change that does not come.`];
  });
}
