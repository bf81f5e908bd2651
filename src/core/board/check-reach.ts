/** Findings on devices that no controller reaches, and on hubs that have no output left for them. */
import { passesOn, speaks } from '../plan/index.ts';
import type { BoardGraph, pathsFrom } from '../plan/index.ts';
import { finding, quoted } from './findings.ts';
import type { Finding } from './findings.ts';
import { sayJack } from './jacks.ts';

/** What is not reached along any of these paths, one set of them a controller. */
export function unreachedFindings(
  graph: BoardGraph,
  paths: readonly ReturnType<typeof pathsFrom>[],
): readonly Finding[] {
  const lost = [...graph.devices.keys()].filter((at) => {
    const device = graph.devices[at]!;
    return device.talks === 'jacks' && !speaks(device) && paths.every((reached) => reached[at] === undefined);
  });
  const free = freeOutputs(graph, 'hub');
  const own = freeOutputs(graph, 'controller');
  // A hub is fed by the controller first; what a hub has left is for the others.
  const found = lost.map((at) =>
    unreached(graph, at, graph.devices[at]!.kind === 'hub' ? own[0] : (free[0] ?? own[0])),
  );
  const devices = graph.devices.filter(({ kind }) => kind === 'hub').map(({ name }) => name);
  if (lost.length === 0 || devices.length === 0 || free.length > 0) return found;
  const where = { devices };
  const full = finding('hub-full', 'error', where, {
    what: `${quoted(devices)}: no output is free`,
    why: `${lost.length} ${lost.length === 1 ? 'device is' : 'devices are'} still without a link.`,
    mend: 'Chain two devices behind one output, or take a larger hub.',
  });
  return [...found, full];
}

/** Outputs of the devices of a kind that feed nothing yet. */
function freeOutputs({ devices, feeds }: BoardGraph, wanted: 'hub' | 'controller'): readonly string[] {
  return devices.flatMap(({ kind, jacks, name: device }, at) => {
    const used = new Set(feeds.filter(({ fromDevice }) => fromDevice === at).map(({ from }) => from.jack));
    return jacks
      .filter(({ direction, name }) => kind === wanted && direction === 'out' && !used.has(name))
      .map(({ name }) => sayJack({ device, jack: name }));
  });
}

/** The link that feeds a device, with the device before it, and its jack there where that one sends nothing of what comes in. */
function feedOf(graph: BoardGraph, at: number) {
  const feed = graph.feeds.find(({ toDevice }) => toDevice === at);
  const before = feed && graph.devices[feed.fromDevice];
  const jack = before?.jacks.find(({ name }) => name === feed?.from.jack);
  const stuck = before && jack && !speaks(before) && passesOn(before, jack) === 'nothing' ? jack : undefined;
  return feed && before && { feed, before, stuck };
}

/** The device up the chain where the break is: the first that nothing feeds, or that is fed by a jack that passes nothing on; undefined in a loop. */
function breakAbove(graph: BoardGraph, at: number): string | undefined {
  const seen = new Set([at]);
  for (let here = at; ;) {
    const fed = feedOf(graph, here);
    if (!fed || fed.stuck) return graph.devices[here]!.name;
    here = fed.feed.fromDevice;
    if (seen.has(here)) return undefined;
    seen.add(here);
  }
}

function unreached(graph: BoardGraph, at: number, free: string | undefined): Finding {
  const device = graph.devices[at]!;
  const fed = feedOf(graph, at);
  const where = { devices: [device.name] };
  const why = !device.jacks.some(({ direction }) => direction === 'in')
    ? 'It has no input.'
    : fed?.stuck
      ? `${sayJack(fed.feed.from)} does not pass on what its device receives.`
      : fed
        ? `What feeds it, '${fed.before.name}', is not reached by any controller itself.`
        : 'No link leads to it.';
  return finding('unreached', 'error', where, {
    what: `'${device.name}' is not reached`,
    why,
    mend: fed?.stuck ? byMenu(fed.stuck.role) : fed ? byBreak(breakAbove(graph, at)) : byHand(free),
  });
}

function byHand(free: string | undefined): string {
  return free
    ? `Join it to ${free}, which is free, or let ‘Plan it for me’ join everything.`
    : 'Give it a link from an output or a THRU that is free.';
}

function byMenu(role: string): string {
  return role === 'out-or-thru' ? 'Set that jack to THRU in its menu.' : 'Use a THRU jack, or a hub.';
}

/** What is fed by a device that is not reached keeps its link: the cure is further up the chain. */
function byBreak(name: string | undefined): string {
  return name === undefined
    ? 'Open the loop: take off one of its links, and join that input to a controller.'
    : `First '${name}', further up the chain; the link to this one can stay.`;
}
