/** Findings on how the devices hang together. */
import { onlyCarries, pathsFrom, ringsOf, speaks } from '../plan/index.ts';
import type { BoardGraph, Feed, Plan } from '../plan/index.ts';
import { breakoutWords, breakoutsOf } from './breakouts.ts';
import { depthFindings } from './check-depth.ts';
import { unreachedFindings } from './check-reach.ts';
import { finding, quoted } from './findings.ts';
import type { Finding } from './findings.ts';
import { sayJack } from './jacks.ts';
import type { SolvedOutput } from './solve-outputs.ts';

/** Rings, inputs fed twice, controllers, devices that are not reached, depth, full hubs, and what is no wire. */
export function checkNetwork(
  graph: BoardGraph,
  plan: Plan,
  solved: readonly SolvedOutput[],
): readonly Finding[] {
  const controllers = graph.devices.flatMap((device, at) =>
    speaks(device) && device.talks === 'jacks' ? [at] : [],
  );
  const paths = controllers.map((at) => pathsFrom(graph, at));
  return [
    ...fedTwice(graph, plan),
    ...rings(graph),
    ...notWires(graph),
    ...controllerFindings(graph, controllers, paths),
    ...unreachedFindings(graph, paths),
    ...depthFindings(graph, plan, paths, solved),
    ...breakouts(plan),
  ];
}

function fedTwice(graph: BoardGraph, plan: Plan): readonly Finding[] {
  const seen = new Map<string, Feed>();
  return graph.feeds.flatMap((feed) => {
    const key = JSON.stringify(feed.to);
    const other = seen.get(key);
    seen.set(key, feed);
    if (!other) return [];
    const where = {
      links: [other, feed].map(({ link }) => plan.links[link]!.name),
      devices: [feed.to.device],
    };
    return [
      finding('fed-twice', 'error', where, {
        what: `${sayJack(feed.to)} is fed by two outputs`,
        why: 'Messages of two senders cannot be joined by wire: their bytes would fall into each other.',
        mend: 'Put a merger in front of the input.',
      }),
    ];
  });
}

function rings(graph: BoardGraph): readonly Finding[] {
  return ringsOf(graph).map((ring) => {
    const devices = ring.map((at) => graph.devices[at]!.name);
    const where = { devices };
    return finding('ring', 'error', where, {
      what: `${[...devices, devices[0]].join(' to ')}: a feedback loop`,
      why: 'Each message goes round for ever and crowds out all others.',
      mend: 'Remove one link of the loop, or set one THRU to OUT.',
    });
  });
}

function notWires(graph: BoardGraph): readonly Finding[] {
  return graph.devices.flatMap(({ name, talks }) => {
    if (talks === 'jacks') return [];
    const usb = talks === 'usb-only';
    const where = { devices: [name] };
    return [
      finding('not-a-wire', 'note', where, {
        what: `'${name}' connects ${usb ? 'by USB only' : 'by radio'}`,
        why: 'That is not a link of the current loop, so this plan can neither wire nor check it.',
        mend: usb ? 'Put a USB host box between them.' : 'Plan it with its own maker’s manual.',
      }),
    ];
  });
}

function controllerFindings(
  graph: BoardGraph,
  controllers: readonly number[],
  paths: readonly ReturnType<typeof pathsFrom>[],
): readonly Finding[] {
  if (controllers.length === 0) {
    const where = {};
    return graph.devices.length === 0
      ? []
      : [
          finding('no-controller', 'warning', where, {
            what: 'No device on this board is a controller',
            why: 'Nothing sends anything of its own.',
            mend: 'Say which device is the controller.',
          }),
        ];
  }
  const devices = graph.devices.flatMap((device, at) => {
    if (device.talks !== 'jacks' || controllers.includes(at) || onlyCarries(device)) return [];
    const hearing = paths.filter((reached) => reached[at] !== undefined).length;
    return hearing > 0 && hearing < controllers.length ? [device.name] : [];
  });
  if (devices.length === 0) return [];
  const where = { devices };
  return [
    finding('two-controllers', 'warning', where, {
      what: `${quoted(devices)}: not reached by every controller`,
      why: `${quoted(
        controllers.map((at) => graph.devices[at]!.name),
        ' and ',
      )} each send, and only a merger can join what they send.`,
      mend: 'Put a merger behind the controllers, or leave it so if each has its own devices.',
    }),
  ];
}

function breakouts(plan: Plan): readonly Finding[] {
  return breakoutsOf(plan).map((one) => {
    const where = { devices: [one.device], links: one.links };
    return finding('breakout', 'note', where, {
      what: `'${one.device}' receives and sends through one hole`,
      why: `${one.into} and ${one.out} share it, so both leads end in one plug.`,
      mend: `Make or buy one ${breakoutWords(one.connector)}. Wire ${one.intoWires} to the jack for ${one.intoLead}, ${one.outWires} to the jack for ${one.outLead}. It is on the shopping list.`,
    });
  });
}
