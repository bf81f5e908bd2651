/** Findings on channels: two devices that hear the same messages on one channel, and devices that listen to all. */
import { onlyCarries, pathsFrom, speaks } from '../plan/index.ts';
import type { BoardGraph, Plan } from '../plan/index.ts';
import { finding, quoted } from './findings.ts';
import type { Finding } from './findings.ts';

/** Devices that one controller reaches on one channel, and devices without a channel. */
export function checkChannels(graph: BoardGraph, plan: Plan): readonly Finding[] {
  const addressed = new Set((plan.press ?? []).map(({ device }) => device));
  const found = new Map<string, Finding>();
  graph.devices.forEach((controller, start) => {
    if (!speaks(controller)) return;
    const paths = pathsFrom(graph, start);
    const heard = graph.devices.filter(
      (device, at) => !onlyCarries(device) && !speaks(device) && paths[at] !== undefined,
    );
    if (heard.length < 2) return;
    for (const channel of new Set(heard.map((device) => device.channel))) {
      const devices = heard.filter((device) => device.channel === channel).map(({ name }) => name);
      const one =
        channel === 0
          ? hearsAll(devices, addressed.size > 0, devices.length === heard.length)
          : sameChannel(channel, devices, addressed);
      if (one) found.set(JSON.stringify([channel, devices]), one);
    }
  });
  return [...found.values()];
}

function sameChannel(
  channel: number,
  devices: readonly string[],
  addressed: ReadonlySet<string>,
): Finding | undefined {
  if (devices.length < 2) return undefined;
  const meant = devices.filter((name) => addressed.has(name));
  const where = { devices };
  return finding('same-channel', meant.length > 0 ? 'warning' : 'note', where, {
    what: `${quoted(devices, ' and ')} listen to channel ${channel}`,
    why:
      meant.length > 0
        ? `What the press sends to ${quoted(meant, ' and ')} changes all of them.`
        : 'As long as nothing is sent on that channel it does no harm.',
    mend: 'Give each its own channel, unless they are meant to follow each other.',
  });
}

/** Devices that listen to all matter when the press means someone, and when no device at all has a channel. */
function hearsAll(devices: readonly string[], pressed: boolean, everyone: boolean): Finding | undefined {
  if (!pressed && !everyone) return undefined;
  const where = { devices };
  return finding('hears-all', 'warning', where, {
    what: everyone
      ? 'No device has a channel yet, so each listens to all'
      : `${quoted(devices)}: no channel set, so it listens to all`,
    why: pressed
      ? 'It changes with every message of the press, whomever it is meant for.'
      : 'Whatever is sent to one of them changes all of them.',
    mend: 'Set a channel of its own on each device, and write it in the plan.',
  });
}
