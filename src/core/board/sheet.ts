/** The board on one page: every device with its channel and its feed, every link with its leads. */
import { boardGraph, makePlan } from '../plan/index.ts';
import type { Plan, PressItem } from '../plan/index.ts';
import { linkWords } from '../verdict/index.ts';
import type { LinkOutcome } from '../verdict/index.ts';
import { firstSender } from './hearing.ts';
import { samePlace } from './jacks.ts';
import { timePress } from './one-press.ts';

/**
 * Every device of the plan in its order. `links` counts them from the controller, 0 for the controller itself and undefined
 * where it is not reached; `sends` is what the press sends to it, in order: 'program 5', 'bank 2', 'control 80 to 127'.
 */
export function deviceRows(plan: Plan) {
  const graph = boardGraph(plan);
  const { start, ways } = firstSender(graph);
  const { arrivals } = timePress(plan);
  return graph.devices.map(({ name, kind, channel, power }, at) => {
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

/** The number in a link's own name, so that drawing, lists and papers call it the same; otherwise its place in the plan. */
export function linkNumber({ links }: Plan, at: number): number {
  return Number(/^link (\d{1,3})$/.exec(links[at]?.name ?? '')?.[1] ?? at + 1);
}

/** Every link of the plan, one row an input; `outcomes` are those of the check, in the order of the links. */
export function linkRows(plan: Plan, outcomes: readonly LinkOutcome[]) {
  const leads = new Map(plan.leads.map((lead) => [lead.name, lead]));
  return plan.links.flatMap((link, at) =>
    link.inputs.map((input) => ({
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
  const feeds = plan.links.flatMap((link) => link.inputs.map((input) => ({ link, input })));
  const feed = feeds.find(({ input }) => input.leads.includes(lead));
  if (!feed) throw new Error(`plan: no link uses a lead '${lead}'`);
  const { link, input } = feed;
  const devices = plan.devices.flatMap(({ name: device, jacks }) => {
    const kept = jacks.filter(({ name: jack }) =>
      [link.output, input].some((place) => samePlace(place, { device, jack })),
    );
    // A jack whose other half is not in this plan shares its hole with nothing here.
    return kept.length > 0 ? [{ name: device, jacks: kept.map(({ sharesHole: _, ...jack }) => jack) }] : [];
  });
  const used = plan.leads.filter(({ name }) => input.leads.includes(name));
  const leads = used.toSorted((a, b) => Number(b.name === lead) - Number(a.name === lead));
  return makePlan({ title: plan.title, devices, leads, links: [{ ...link, inputs: [input] }] });
}
