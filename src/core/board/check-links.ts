/** Findings on single links: the solved circuit with the leads it would really use, their length, and what they carry besides. */
import { inputOf, isPlaced, jackPoint, leadMetres, linkOf, outputOf, waysRound } from '../plan/index.ts';
import type { BoardGraph, Feed, Plan, PlanLink, WholeDevice } from '../plan/index.ts';
import { checkLink, outcomeWords, solveMaps } from '../verdict/index.ts';
import type { LinkMemory, NotedJudgement } from '../verdict/index.ts';
import type { Link } from '../wiring/index.ts';
import { finding, sayJack } from './findings.ts';
import type { Finding } from './findings.ts';

/** All links that leave one output, solved as the one circuit that they are. */
export interface SolvedOutput {
  readonly links: readonly PlanLink[];
  readonly link: Link;
  readonly judgement: NotedJudgement;
}

/** Solve the board output by output. */
export function solveOutputs(plan: Plan, memory: LinkMemory): readonly SolvedOutput[] {
  const groups = new Map<string, PlanLink[]>();
  for (const link of plan.links) {
    const key = JSON.stringify([link.output.device, link.output.jack]);
    groups.set(key, [...(groups.get(key) ?? []), link]);
  }
  return [...groups.values()].map((links) => {
    const parts = links.map((one) => linkOf(plan, one));
    const [first] = parts;
    if (!first) throw new Error('board: an output without a link');
    const link = { output: first.output, branches: parts.flatMap(({ branches }) => branches) };
    return { links, link, judgement: checkLink(link, 'notes', memory) };
  });
}

/** Findings on the circuits of the links. */
export function circuitFindings(solved: readonly SolvedOutput[]): readonly Finding[] {
  return solved.flatMap((one) => [...splitFindings(one), ...outcomeFindings(one), ...noteFindings(one)]);
}

function namesOf(links: readonly PlanLink[]): readonly string[] {
  return links.map(({ name }) => name);
}

function splitFindings({ links, link, judgement }: SolvedOutput): readonly Finding[] {
  if (link.branches.length < 2) return [];
  const output = links[0]?.output ?? { device: '', jack: '' };
  const works = judgement.outcome === 'flows';
  return [
    finding(
      'split',
      works ? 'warning' : 'error',
      { links: namesOf(links), devices: [output.device] },
      {
        what: `${sayJack(output)} feeds ${link.branches.length} inputs`,
        why: `One output drives one input, by the standard. This split was solved as it stands: ${outcomeWords(judgement.outcome).label.toLowerCase()}.`,
        mend: 'Chain the devices by their THRU jacks, or put a hub between.',
      },
    ),
  ];
}

function outcomeFindings({ links, link, judgement }: SolvedOutput): readonly Finding[] {
  const { outcome, notes } = judgement;
  if (outcome === 'flows') return [];
  const where = { links: namesOf(links) };
  const misfit = notes.find(({ kind }) => kind === 'plug-does-not-fit');
  if (misfit) {
    return [
      finding('does-not-fit', 'error', where, {
        what: `${namesOf(links).join(', ')}: a plug does not fit`,
        why: misfit.detail,
        mend: 'Choose a lead with the plugs of these two jacks, or add an adapter.',
      }),
    ];
  }
  if (outcome === 'weak') {
    return [
      finding('weak', 'warning', where, {
        what: `${namesOf(links).join(', ')}: works, but not at every corner of the tolerances`,
        why: checkLink(link).sentence,
        mend: 'Shorten the lead, or use an output with more current or an input that needs less.',
      }),
    ];
  }
  const hopeless = link.branches.filter(({ input }) =>
    solveMaps(link.output, input).candidates.every(
      (one) => one.outcome !== 'flows' && one.outcome !== 'weak',
    ),
  );
  if (hopeless.length > 0) {
    return [
      finding('no-passive-lead', 'error', where, {
        what: `${namesOf(links).join(', ')}: no passive lead can join these two jacks`,
        why: 'Every way to lay the conductors was solved, and none works.',
        mend: 'Use another outlet, set it to another style, or put a powered converter between.',
      }),
    ];
  }
  return [
    finding('link-fails', 'error', where, {
      what: `${namesOf(links).join(', ')}: ${outcomeWords(outcome).label.toLowerCase()}`,
      why: checkLink(link).sentence,
      mend: 'Ask for the right lead between these two jacks, or set the outlet to another style.',
    }),
  ];
}

function noteFindings({ links, judgement }: SolvedOutput): readonly Finding[] {
  const where = { links: namesOf(links) };
  return judgement.notes.flatMap(({ kind, detail }): readonly Finding[] => {
    switch (kind) {
      case 'over-rating':
      case 'source-shorted':
      case 'stage-shorted':
        return [
          finding('over-rating', 'error', where, {
            what: `${where.links.join(', ')}: a part carries more than it should`,
            why: detail,
            mend: 'Do not connect it. Change the lead first.',
          }),
        ];
      case 'too-long':
        return [
          finding('too-long', 'warning', where, {
            what: `${where.links.join(', ')}: longer than the standard allows`,
            why: detail,
            mend: 'Use a shorter lead, or move the devices closer.',
          }),
        ];
      case 'spare-pins':
        return [
          finding('supply-on-spares', 'note', where, {
            what: `${where.links.join(', ')}: the lead carries spare pins`,
            why: detail,
            mend: 'A lead of three wires is the safe choice; label one that carries more.',
          }),
        ];
      case 'depends-on-grounds':
      case 'grounds-joined':
        return [
          finding('grounds', kind === 'grounds-joined' ? 'note' : 'warning', where, {
            what: `${where.links.join(', ')}: ${kind === 'grounds-joined' ? 'joins the grounds of two devices' : 'works or not by how grounds are joined'}`,
            why: detail,
            mend: 'Where it hums, use an isolated input or a hub with isolated outlets.',
          }),
        ];
      case 'shield-open':
      case 'split':
      case 'plug-does-not-fit':
      case 'practice':
        return [];
    }
  });
}

/** Findings on leads: too short for the way round the devices, used twice, or feeding a device through its spare pins. */
export function leadFindings(
  plan: Plan,
  graph: BoardGraph,
  solved: readonly SolvedOutput[],
): readonly Finding[] {
  const ways = waysRound(graph.devices);
  const used = new Map<string, string>();
  const leads = new Map(plan.leads.map((lead) => [lead.name, lead]));
  return graph.feeds.flatMap((feed) => {
    const link = plan.links[feed.link] as PlanLink;
    const names = link.inputs[feed.input]?.leads ?? [];
    const found: Finding[] = [];
    const metres = names.reduce((sum, name) => sum + (leads.get(name)?.lengthMetres ?? 0), 0);
    const way = wayMetres(graph, feed, ways);
    if (metres < way - 1e-9) {
      found.push(
        finding(
          'too-short',
          'error',
          { links: [link.name] },
          {
            what: `${link.name}: ${metres.toFixed(2)} m of lead for a way of ${way.toFixed(2)} m`,
            why: `From ${sayJack(feed.from)} round the devices to ${sayJack(feed.to)}, room for the plugs included.`,
            mend: `Take a lead of at least ${way.toFixed(2)} m, or move the devices.`,
          },
        ),
      );
    }
    for (const name of new Set(names)) {
      const other = used.get(name);
      used.set(name, link.name);
      if (other === undefined && names.filter((one) => one === name).length === 1) continue;
      found.push(
        finding(
          'lead-twice',
          'error',
          { links: [...new Set([other ?? link.name, link.name])] },
          {
            what: `${name} is used twice`,
            why: 'One lead cannot be in two places.',
            mend: 'Take another lead of the same kind.',
          },
        ),
      );
    }
    return [...found, ...supplyFindings(graph, feed, link.name, solved)];
  });
}

function wayMetres(graph: BoardGraph, feed: Feed, ways: ReturnType<typeof waysRound>): number {
  const from = graph.devices[feed.fromDevice] as WholeDevice;
  const to = graph.devices[feed.toDevice] as WholeDevice;
  if (!isPlaced(from) || !isPlaced(to)) return 0;
  const [length = 0] = ways.lengths(jackPoint(from, outputOf(graph, feed)), [
    jackPoint(to, inputOf(graph, feed)),
  ]);
  return leadMetres(length);
}

function supplyFindings(
  graph: BoardGraph,
  feed: Feed,
  link: string,
  solved: readonly SolvedOutput[],
): readonly Finding[] {
  const carries = solved
    .find(({ links }) => links.some(({ name }) => name === link))
    ?.judgement.notes.some(({ kind }) => kind === 'spare-pins');
  const ends = [
    { at: feed.from, jack: outputOf(graph, feed), device: graph.devices[feed.fromDevice] },
    { at: feed.to, jack: inputOf(graph, feed), device: graph.devices[feed.toDevice] },
  ] as const;
  const live = ends.filter(({ jack }) => jack.supplyOnSpares);
  const hungry = ends.filter(({ device }) => device?.power === 'spare-pins');
  if (carries === true && live.length > 0 && hungry.length === 0) {
    return [
      finding(
        'supply-on-spares',
        'error',
        { links: [link] },
        {
          what: `${link}: passes a supply on to a device that does not ask for it`,
          why: `${live.map(({ at }) => sayJack(at)).join(' and ')} has a supply on its spare pins, and this lead carries them.`,
          mend: 'Take a lead of three wires, without the spare pins.',
        },
      ),
    ];
  }
  if (carries !== true && live.length > 0 && hungry.length > 0) {
    return [
      finding(
        'no-supply',
        'error',
        { links: [link] },
        {
          what: `${link}: does not carry the supply that '${hungry[0]?.device?.name ?? ''}' lives on`,
          why: 'The device is fed through spare pins, and this lead leaves them out.',
          mend: 'Take a lead that carries all pins, and label it; or give the device a supply of its own.',
        },
      ),
    ];
  }
  return [];
}
