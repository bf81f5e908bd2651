/** The board on one page: every device with its channel and its feed, every link with its leads. */
import { boardGraph } from '../plan/index.ts';
import type { DeviceKind, Plan, Power, PressItem } from '../plan/index.ts';
import { linkWords } from '../verdict/index.ts';
import type { LinkOutcome } from '../verdict/index.ts';
import { firstSender } from './hearing.ts';
import { timePress } from './one-press.ts';

/** One device. `links` counts them from the controller, 0 for the controller itself and undefined where it is not reached. */
interface DeviceRow {
  readonly device: string;
  readonly kind: DeviceKind;
  /** 1 to 16, or 0 for none. */
  readonly channel: number;
  readonly power: Power;
  readonly fedBy: string;
  readonly input: string;
  readonly links: number | undefined;
  /** What the press sends to it, in order: 'program 5', 'bank 2', 'control 80 to 127'. */
  readonly sends: string;
  readonly arrivesSeconds: number | undefined;
}

/** Every device of the plan in its order. */
export function deviceRows(plan: Plan): readonly DeviceRow[] {
  const graph = boardGraph(plan);
  const { start, ways } = firstSender(graph);
  const { arrivals } = timePress(plan);
  return graph.devices.map(({ name, kind, channel, power }, at): DeviceRow => {
    const feed = graph.feeds.find(({ toDevice }) => toDevice === at);
    const items = (plan.press ?? []).filter(({ device }) => device === name);
    return {
      device: name,
      kind,
      channel,
      power,
      fedBy: feed ? `${feed.from.device}: ${feed.from.jack}` : '',
      input: feed?.to.jack ?? '',
      links: at === start ? 0 : ways[at]?.hops.length,
      sends: items.map(sayItem).join(', '),
      arrivesSeconds: arrivals.find(({ device }) => device === name)?.seconds,
    };
  });
}

function sayItem(item: PressItem): string {
  switch (item.send) {
    case 'program':
      return `program ${item.program}`;
    case 'bank':
      return `bank ${item.bank}`;
    case 'control':
      return `control ${item.controller} to ${item.value}`;
  }
}

/** One way from an output to an input. */
interface LinkRow {
  readonly link: string;
  readonly from: string;
  readonly to: string;
  readonly leads: string;
  readonly lengthMetres: number;
  readonly outcome: string;
}

/** Every link of the plan, one row an input; `outcomes` are those of the check, in the order of the links. */
export function linkRows(plan: Plan, outcomes: readonly LinkOutcome[]): readonly LinkRow[] {
  const leads = new Map(plan.leads.map((lead) => [lead.name, lead]));
  return plan.links.flatMap((link, at) =>
    link.inputs.map((input): LinkRow => ({
      link: link.name,
      from: `${link.output.device}: ${link.output.jack}`,
      to: `${input.device}: ${input.jack}`,
      leads: input.leads.join(', '),
      lengthMetres: input.leads.reduce((sum, name) => sum + (leads.get(name)?.lengthMetres ?? 0), 0),
      outcome: saidOf(outcomes[at] as LinkOutcome),
    })),
  );
}

/** The word of an outcome; of a part over its rating also which, as a list has no other place for it. */
function saidOf(outcome: LinkOutcome): string {
  const { label } = linkWords(outcome);
  return outcome.danger === undefined ? label : `${label}: ${outcome.danger}`;
}

/** The plan of one lead alone: its link, the two devices with their two jacks, and this lead first. @throws when no link uses it. */
export function planOfLead(plan: Plan, lead: string): Plan {
  for (const link of plan.links) {
    const input = link.inputs.find(({ leads }) => leads.includes(lead));
    if (!input) continue;
    const places = [link.output, input];
    const devices = plan.devices.flatMap((device) => {
      const jacks = device.jacks.filter(({ name }) =>
        places.some((place) => place.device === device.name && place.jack === name),
      );
      return jacks.length > 0 ? [{ name: device.name, jacks: jacks.map(alone) }] : [];
    });
    const others = plan.leads.filter(({ name }) => name !== lead && input.leads.includes(name));
    return {
      format: plan.format,
      version: plan.version,
      title: plan.title,
      devices,
      leads: [...plan.leads.filter(({ name }) => name === lead), ...others],
      links: [{ ...link, inputs: [input] }],
    };
  }
  throw new Error(`plan: no link uses a lead '${lead}'`);
}

/** A jack whose other half is not in this plan shares its hole with nothing here. */
function alone(jack: Plan['devices'][number]['jacks'][number]): Plan['devices'][number]['jacks'][number] {
  const { sharesHole: _, ...others } = jack;
  return others;
}
