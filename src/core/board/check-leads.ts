/** Findings on leads: too short for the way round the devices, used twice, or feeding a device through its spare pins. */
import { inputOf, outputOf, waysRound } from '../plan/index.ts';
import type { BoardGraph, Feed, Plan } from '../plan/index.ts';
import { finding } from './findings.ts';
import type { Finding } from './findings.ts';
import { sayJack, wayMetres } from './jacks.ts';
import type { JackOnBoard } from './jacks.ts';
import type { SolvedOutput } from './solve-outputs.ts';

/** Findings on the leads of each feed. */
export function leadFindings(
  plan: Plan,
  graph: BoardGraph,
  solved: readonly SolvedOutput[],
): readonly Finding[] {
  const ways = waysRound(graph.devices);
  const lengths = new Map(plan.leads.map((lead) => [lead.name, lead.lengthMetres]));
  const used = new Map<string, string>();
  return graph.feeds.flatMap((feed) => {
    const { name: link, inputs } = plan.links[feed.link]!;
    const names = inputs[feed.input]?.leads ?? [];
    const from = { device: graph.devices[feed.fromDevice]!, jack: outputOf(graph, feed) };
    const to = { device: graph.devices[feed.toDevice]!, jack: inputOf(graph, feed) };
    const metres = names.reduce((sum, name) => sum + (lengths.get(name) ?? 0), 0);
    const [way = 0] = wayMetres(ways, from, [to]);
    const carries = solved
      .find(({ links }) => links.some(({ name }) => name === link))
      ?.judgement.notes.some(({ kind }) => kind === 'spare-pins');
    return [
      ...(metres < way - 1e-9 ? [tooShort(link, feed, metres, way)] : []),
      ...usedTwice(link, names, used),
      ...supplyFindings(link, carries === true, [from, to]),
    ];
  });
}

function tooShort(link: string, feed: Feed, metres: number, way: number): Finding {
  const where = { links: [link] };
  return finding('too-short', 'error', where, {
    what: `${link}: ${metres.toFixed(2)} m of lead for a way of ${way.toFixed(2)} m`,
    why: `From ${sayJack(feed.from)} round the devices to ${sayJack(feed.to)}, room for the plugs included.`,
    mend: `Take a lead of at least ${way.toFixed(2)} m, or move the devices.`,
  });
}

/** Leads of this link that stand twice in it, or in an earlier one of those `used`, to which they are added. */
function usedTwice(link: string, names: readonly string[], used: Map<string, string>): readonly Finding[] {
  return [...new Set(names)].flatMap((name) => {
    const other = used.get(name);
    used.set(name, link);
    if (other === undefined && names.filter((one) => one === name).length === 1) return [];
    const where = { links: [...new Set([other ?? link, link])] };
    return [
      finding('lead-twice', 'error', where, {
        what: `${name} is used twice`,
        why: 'One lead cannot be in two places.',
        mend: 'Take another lead of the same kind.',
      }),
    ];
  });
}

function supplyFindings(link: string, carries: boolean, ends: readonly JackOnBoard[]): readonly Finding[] {
  const where = { links: [link] };
  const live = ends.filter(({ jack }) => jack.supplyOnSpares);
  const hungry = ends.find(({ device }) => device.power === 'spare-pins');
  if (live.length === 0 || carries === (hungry !== undefined)) return [];
  if (!hungry) {
    const names = live.map(({ device, jack }) => sayJack({ device: device.name, jack: jack.name }));
    return [
      finding('supply-on-spares', 'error', where, {
        what: `${link}: passes a supply on to a device that does not ask for it`,
        why: `${names.join(' and ')} has a supply on its spare pins, and this lead carries them.`,
        mend: 'Take a lead of three wires, without the spare pins.',
      }),
    ];
  }
  return [
    finding('no-supply', 'error', where, {
      what: `${link}: does not carry the supply that '${hungry.device.name}' lives on`,
      why: 'The device is fed through spare pins, and this lead leaves them out.',
      mend: 'Take a lead that carries all pins, and label it; or give the device a supply of its own.',
    }),
  ];
}
