/** Findings on channels: two devices that hear the same messages on one channel, where the press means only one of them. */
import { finding } from './findings.ts';
import type { Finding } from './findings.ts';
import { onlyCarries, pathsFrom, speaks } from '../plan/index.ts';
import type { BoardGraph } from '../plan/index.ts';
import type { Plan } from '../plan/index.ts';

/** Devices that one controller reaches on one channel, and devices that listen to all. */
export function checkChannels(graph: BoardGraph, plan: Plan): readonly Finding[] {
  const addressed = new Set((plan.press ?? []).map(({ device }) => device));
  const found: Finding[] = [];
  const told = new Set<string>();
  graph.devices.forEach((controller, start) => {
    if (!speaks(controller)) return;
    const paths = pathsFrom(graph, start);
    const heard = graph.devices.filter(
      (device, at) => !onlyCarries(device) && !speaks(device) && paths[at] !== undefined,
    );
    for (let channel = 1; channel <= 16; channel++) {
      const names = heard.filter((device) => device.channel === channel).map(({ name }) => name);
      const meant = names.filter((name) => addressed.has(name));
      if (names.length < 2 || told.has(names.join())) continue;
      told.add(names.join());
      const matters = meant.length > 0;
      found.push(
        finding(
          'same-channel',
          matters ? 'warning' : 'note',
          { devices: names },
          {
            what: `${names.map((one) => `'${one}'`).join(' and ')} listen to channel ${channel}`,
            why: matters
              ? `What the press sends to ${meant.map((one) => `'${one}'`).join(' and ')} changes all of them.`
              : 'As long as nothing is sent on that channel it does no harm.',
            mend: 'Give each its own channel, unless they are meant to follow each other.',
          },
        ),
      );
    }
    const open = heard.filter((device) => device.channel === 0).map(({ name }) => name);
    if (open.length === 0 || addressed.size === 0 || heard.length < 2 || told.has(`open ${open.join()}`))
      return;
    told.add(`open ${open.join()}`);
    found.push(
      finding(
        'hears-all',
        'warning',
        { devices: open },
        {
          what: `${open.map((one) => `'${one}'`).join(', ')}: no channel set, so it listens to all`,
          why: 'It changes with every message of the press, whomever it is meant for.',
          mend: 'Set a channel of its own on the device, and write it in the plan.',
        },
      ),
    );
  });
  return found;
}
