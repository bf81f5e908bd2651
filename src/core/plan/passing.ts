/** What an output gives: a device's own messages, or a copy of what reaches its inputs. */
import type { Thru } from './kinds.ts';
import { wholeDevice } from './whole.ts';
import type { WholeDevice, WholeJack } from './whole.ts';
import type { Device, JackPlace, Plan, PlanLink } from './plan.ts';

/** How an output passes its device's input on, or 'nothing' when it gives the device's own messages only. */
export function passesOn(device: Pick<WholeDevice, 'kind'>, jack: WholeJack): Thru | 'nothing' {
  if (jack.direction === 'in') return 'nothing';
  if (jack.role === 'thru' || (jack.role === 'out-or-thru' && jack.setTo === 'thru')) return jack.thru;
  if (jack.role === 'out-or-thru') return 'nothing';
  switch (device.kind) {
    case 'hub':
    case 'converter':
      return jack.thru;
    case 'merger':
      return 'software';
    case 'other':
    case 'controller':
    case 'pedal':
    case 'instrument':
    case 'computer':
      return 'nothing';
  }
}

/** Whether a device has messages of its own to start with. */
export function speaks(device: Pick<WholeDevice, 'kind'>): boolean {
  return device.kind === 'controller' || device.kind === 'computer';
}

/** Whether a device only carries messages and needs no channel. */
export function onlyCarries(device: Pick<WholeDevice, 'kind'>): boolean {
  return device.kind === 'hub' || device.kind === 'merger' || device.kind === 'converter';
}

/** One input fed by one output. `link` and `input` number the plan's link and its input. */
export interface Feed {
  readonly link: number;
  readonly input: number;
  readonly from: JackPlace;
  readonly to: JackPlace;
  readonly fromDevice: number;
  readonly toDevice: number;
}

/** The board as a graph: whole devices, and every feed in the order of the links. */
export interface BoardGraph {
  readonly devices: readonly WholeDevice[];
  readonly feeds: readonly Feed[];
  readonly links: readonly PlanLink[];
}

/** Devices and feeds of a plan; feeds that name no device are left out (a read plan has none). */
export function boardGraph(plan: Plan): BoardGraph {
  const devices = plan.devices.map((device: Device) => wholeDevice(device));
  const numbers = new Map(devices.map(({ name }, at) => [name, at]));
  const feeds = plan.links.flatMap(({ output, inputs }, link) =>
    inputs.flatMap(({ device, jack }, input) => {
      const fromDevice = numbers.get(output.device);
      const toDevice = numbers.get(device);
      if (fromDevice === undefined || toDevice === undefined) return [];
      return [{ link, input, from: output, to: { device, jack }, fromDevice, toDevice }];
    }),
  );
  return { devices, feeds, links: plan.links };
}

/** The output jack of a feed. @throws when the plan has no such jack (read plans are checked). */
export function outputOf({ devices }: BoardGraph, feed: Feed): WholeJack {
  return jackAt(devices[feed.fromDevice], feed.from.jack);
}

/** The input jack of a feed. @throws when the plan has no such jack. */
export function inputOf({ devices }: BoardGraph, feed: Feed): WholeJack {
  return jackAt(devices[feed.toDevice], feed.to.jack);
}

function jackAt(device: WholeDevice | undefined, name: string): WholeJack {
  const jack = device?.jacks.find((one) => one.name === name);
  if (!jack) throw new Error(`device '${device?.name ?? ''}': no jack '${name}'`);
  return jack;
}

/**
 * The feeds along which a device's own messages reach each other device, shortest first; undefined where they do not.
 * A feed counts when it leaves the start's own output, or a jack that passes its device's input on.
 */
export function pathsFrom(graph: BoardGraph, start: number): readonly (readonly Feed[] | undefined)[] {
  const paths: (readonly Feed[] | undefined)[] = graph.devices.map(() => undefined);
  let front: readonly number[] = [start];
  const seen = new Set<number>([start]);
  while (front.length > 0) {
    const next: number[] = [];
    for (const at of front) {
      for (const feed of graph.feeds) {
        if (feed.fromDevice !== at || seen.has(feed.toDevice)) continue;
        const device = graph.devices[at] as WholeDevice;
        const jack = outputOf(graph, feed);
        if (at === start ? ownSilent(jack) : passesOn(device, jack) === 'nothing') continue;
        seen.add(feed.toDevice);
        paths[feed.toDevice] = [...(paths[at] ?? []), feed];
        next.push(feed.toDevice);
      }
    }
    front = next;
  }
  return paths;
}

/** A pure THRU says nothing of its own device. */
function ownSilent(jack: WholeJack): boolean {
  return jack.role === 'thru' || (jack.role === 'out-or-thru' && jack.setTo === 'thru');
}

/** Rings: each a list of device numbers whose copies go round for ever. */
export function ringsOf(graph: BoardGraph): readonly (readonly number[])[] {
  const next = graph.devices.map((device, at) =>
    graph.feeds
      .filter((feed) => feed.fromDevice === at && passesOn(device, outputOf(graph, feed)) !== 'nothing')
      .map((feed) => feed.toDevice),
  );
  const state = graph.devices.map(() => 0);
  const path: number[] = [];
  const rings: number[][] = [];
  const visit = (at: number): void => {
    state[at] = 1;
    path.push(at);
    for (const to of next[at] ?? []) {
      if (state[to] === 1) rings.push(path.slice(path.indexOf(to)));
      else if (state[to] === 0) visit(to);
    }
    path.pop();
    state[at] = 2;
  };
  graph.devices.forEach((_, at) => {
    if (state[at] === 0) visit(at);
  });
  return rings;
}
