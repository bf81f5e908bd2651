/** Findings on how the devices hang together. */
import { breakoutWords, breakoutsOf } from './breakouts.ts';
import { finding, sayJack } from './findings.ts';
import type { Finding } from './findings.ts';
import { EDGE_BUDGET_SECONDS, hopTimings } from './hops.ts';
import type { HopTiming } from './hops.ts';
import { inputOf, onlyCarries, passesOn, pathsFrom, ringsOf, speaks } from '../plan/index.ts';
import type { BoardGraph, Feed } from '../plan/index.ts';
import type { Plan, WholeDevice } from '../plan/index.ts';

/** Rings, inputs fed twice, controllers, devices that are not reached, depth, full hubs, and what is no wire. */
export function checkNetwork(graph: BoardGraph, plan: Plan): readonly Finding[] {
  const controllers = graph.devices.flatMap((device, at) =>
    speaks(device) && device.talks === 'jacks' ? [at] : [],
  );
  const paths = new Map(controllers.map((at) => [at, pathsFrom(graph, at)]));
  return [
    ...fedTwice(graph, plan),
    ...rings(graph),
    ...notWires(graph),
    ...controllerFindings(graph, controllers, paths),
    ...unreached(graph, controllers, paths),
    ...depth(graph, plan, paths),
    ...breakouts(plan),
  ];
}

type Paths = ReadonlyMap<number, readonly (readonly Feed[] | undefined)[]>;

const nameOf = (graph: BoardGraph, at: number): string => graph.devices[at]?.name ?? '';

function fedTwice(graph: BoardGraph, plan: Plan): readonly Finding[] {
  const seen = new Map<string, Feed>();
  return graph.feeds.flatMap((feed) => {
    const key = JSON.stringify(feed.to);
    const other = seen.get(key);
    seen.set(key, feed);
    if (!other) return [];
    return [
      finding(
        'fed-twice',
        'error',
        { links: [other, feed].map(({ link }) => plan.links[link]?.name ?? ''), devices: [feed.to.device] },
        {
          what: `${sayJack(feed.to)} is fed by two outputs`,
          why: 'Messages of two senders cannot be joined by wire: their bytes would fall into each other.',
          mend: 'Put a merger in front of the input.',
        },
      ),
    ];
  });
}

function rings(graph: BoardGraph): readonly Finding[] {
  return ringsOf(graph).map((ring) => {
    const names = ring.map((at) => nameOf(graph, at));
    return finding(
      'ring',
      'error',
      { devices: names },
      {
        what: `${[...names, names[0]].join(' to ')}: a ring`,
        why: 'Each message goes round for ever and crowds out all others.',
        mend: 'Take one link of the ring out, or set one THRU to OUT.',
      },
    );
  });
}

function notWires(graph: BoardGraph): readonly Finding[] {
  return graph.devices.flatMap(({ name, talks }) =>
    talks === 'jacks'
      ? []
      : [
          finding(
            'not-a-wire',
            'note',
            { devices: [name] },
            {
              what: `'${name}' speaks ${talks === 'usb-only' ? 'by USB only' : 'by radio'}`,
              why: 'That is not a link of the current loop, so this plan can neither wire nor check it.',
              mend:
                talks === 'usb-only'
                  ? 'It needs a USB host between.'
                  : 'Plan it with its own maker’s manual.',
            },
          ),
        ],
  );
}

function controllerFindings(
  graph: BoardGraph,
  controllers: readonly number[],
  paths: Paths,
): readonly Finding[] {
  if (controllers.length === 0) {
    return graph.devices.length === 0
      ? []
      : [
          finding(
            'no-controller',
            'warning',
            {},
            {
              what: 'No device on this board is a controller',
              why: 'Nothing sends anything of its own.',
              mend: 'Say which device is the controller.',
            },
          ),
        ];
  }
  if (controllers.length === 1) return [];
  const lonely = graph.devices.flatMap(({ name, talks }, at) => {
    if (talks !== 'jacks' || controllers.includes(at) || onlyCarries(graph.devices[at] as WholeDevice))
      return [];
    const hearing = controllers.filter((one) => paths.get(one)?.[at] !== undefined);
    return hearing.length > 0 && hearing.length < controllers.length ? [name] : [];
  });
  return lonely.length === 0
    ? []
    : [
        finding(
          'two-controllers',
          'warning',
          { devices: lonely },
          {
            what: `${lonely.map((one) => `'${one}'`).join(', ')}: not reached by every controller`,
            why: `${controllers.map((at) => `'${nameOf(graph, at)}'`).join(' and ')} each send, and only a merger can join what they send.`,
            mend: 'Put a merger behind the controllers, or leave it so if each has its own devices.',
          },
        ),
      ];
}

function unreached(graph: BoardGraph, controllers: readonly number[], paths: Paths): readonly Finding[] {
  const free = graph.devices.flatMap((device, at) =>
    device.kind === 'hub'
      ? device.jacks
          .filter(({ direction, name }) => {
            const used = graph.feeds.some((feed) => feed.fromDevice === at && feed.from.jack === name);
            return direction === 'out' && !used;
          })
          .map(({ name }) => sayJack({ device: device.name, jack: name }))
      : [],
  );
  const hubs = graph.devices.filter(({ kind }) => kind === 'hub');
  const lost = graph.devices.flatMap((device, at) => {
    if (device.talks !== 'jacks' || speaks(device)) return [];
    return controllers.some((one) => paths.get(one)?.[at] !== undefined) ? [] : [{ device, at }];
  });
  const found = lost.map(({ device, at }) => {
    const feed = graph.feeds.find((one) => one.toDevice === at);
    const before = feed && graph.devices[feed.fromDevice];
    const jack = before?.jacks.find(({ name }) => name === feed?.from.jack);
    const stuck = before && jack && !speaks(before) && passesOn(before, jack) === 'nothing';
    return finding(
      'unreached',
      'error',
      { devices: [device.name] },
      {
        what: `'${device.name}' is not reached`,
        why: !device.jacks.some(({ direction }) => direction === 'in')
          ? 'It has no input.'
          : stuck
            ? `${sayJack({ device: before.name, jack: jack.name })} does not pass on what its device receives.`
            : feed
              ? `What feeds it, '${before?.name ?? ''}', is not reached by any controller itself.`
              : 'No link leads to it.',
        mend: stuck
          ? jack.role === 'out-or-thru'
            ? 'Set that jack to THRU in its menu.'
            : 'Use a THRU jack, or a hub.'
          : free.length > 0
            ? `${free[0]} is free.`
            : 'Give it a link from an output or a THRU that is free.',
      },
    );
  });
  if (lost.length === 0 || hubs.length === 0 || free.length > 0) return found;
  return [
    ...found,
    finding(
      'hub-full',
      'error',
      { devices: hubs.map(({ name }) => name) },
      {
        what: `${hubs.map(({ name }) => `'${name}'`).join(', ')}: out of outlets`,
        why: `${lost.length} ${lost.length === 1 ? 'device is' : 'devices are'} still without a link.`,
        mend: 'Chain two devices behind one outlet, or take a larger hub.',
      },
    ),
  ];
}

function depth(graph: BoardGraph, plan: Plan, paths: Paths): readonly Finding[] {
  const wish = plan.wishes?.mostHops ?? 0;
  const found: Finding[] = [];
  for (const reached of paths.values()) {
    // The longest paths first: the hops on the way to a device are those of every path through it.
    const lastHops = new Map<number, HopTiming>();
    const longest = reached.filter((path) => path !== undefined).sort((a, b) => b.length - a.length);
    for (const path of longest) {
      if (lastHops.has(path.at(-1)?.toDevice ?? -1)) continue;
      for (const hop of hopTimings(graph, path)) lastHops.set(hop.feed.toDevice, hop);
    }
    reached.forEach((path, at) => {
      const last = lastHops.get(at);
      if (!path || !last) return;
      const name = nameOf(graph, at);
      if (last.shiftSeconds > EDGE_BUDGET_SECONDS) {
        const unsure = path.some((feed) => inputOf(graph, feed).part === 'unknown');
        found.push(
          finding(
            unsure ? 'unproven-depth' : 'too-deep',
            unsure ? 'warning' : 'error',
            { devices: [name] },
            {
              what: `'${name}' hangs ${path.length} links deep`,
              why: `Edges shift by ${(last.shiftSeconds * 1e6).toFixed(1)} us on the way; ${(EDGE_BUDGET_SECONDS * 1e6).toFixed(1)} us is all that a receiver has left.${unsure ? ' Parts that are not known are counted as slow ones.' : ''}`,
              mend: 'Feed it from a hub, or nearer to the controller.',
            },
          ),
        );
      }
      if (wish > 0 && path.length > wish) {
        found.push(
          finding(
            'too-deep',
            'warning',
            { devices: [name] },
            {
              what: `'${name}' hangs ${path.length} links deep`,
              why: `Your wish is at most ${wish}.`,
              mend: 'Feed it from a hub, or nearer to the controller.',
            },
          ),
        );
      }
    });
  }
  return found;
}

function breakouts(plan: Plan): readonly Finding[] {
  return breakoutsOf(plan).map((one) =>
    finding(
      'breakout',
      'note',
      { devices: [one.device], links: one.links },
      {
        what: `'${one.device}' receives and sends through one hole`,
        why: `${one.into} and ${one.out} share it, so both leads end in one plug.`,
        mend: `Make or buy one ${breakoutWords(one)}. Wire ${one.intoWires} to the jack for ${one.intoLead}, ${one.outWires} to the jack for ${one.outLead}. It is on the shopping list.`,
      },
    ),
  );
}
