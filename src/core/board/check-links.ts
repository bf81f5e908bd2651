/** Findings on single links: the solved circuit with the leads it would really use, their length, and what they carry besides. */
import { inputOf, isPlaced, jackPoint, leadMetres, wholeLink, outputOf, waysRound } from '../plan/index.ts';
import type { BoardGraph, Feed, Plan, PlanLink, WholeDevice } from '../plan/index.ts';
import { checkLink, outcomeWords, solveMaps, works } from '../verdict/index.ts';
import type { LinkMemory, NoteKind, NotedJudgement } from '../verdict/index.ts';
import type { Link } from '../wiring/index.ts';
import { finding, sayJack } from './findings.ts';
import type { Finding, FindingKind, Severity } from './findings.ts';

/** All links that leave one output, solved as the one circuit that they are, with other outputs that end on the same inputs. */
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
    const link = wholeLink(plan, links[0] as PlanLink);
    return { links, link, judgement: checkLink(link, 'notes', memory) };
  });
}

/** Findings on the circuits of the links. */
export function circuitFindings(solved: readonly SolvedOutput[]): readonly Finding[] {
  const found = solved.flatMap((one) => [
    ...splitFindings(one),
    ...outcomeFindings(one),
    ...noteFindings(one),
  ]);
  return found.toSorted((a, b) => Number(b.kind === 'over-rating') - Number(a.kind === 'over-rating'));
}

function namesOf(links: readonly PlanLink[]): readonly string[] {
  return links.map(({ name }) => name);
}

function splitFindings({ links, link, judgement: { outcome } }: SolvedOutput): readonly Finding[] {
  const [first] = links;
  if (link.branches.length < 2 || !first) return [];
  const where = { links: namesOf(links), devices: [first.output.device] };
  return [
    finding('split', outcome === 'flows' ? 'warning' : 'error', where, {
      what: `${sayJack(first.output)} feeds ${link.branches.length} inputs`,
      why: `One output drives one input, by the standard. This split was solved as it stands: ${outcomeWords(outcome).label.toLowerCase()}.`,
      mend: 'Chain the devices by their THRU jacks, or put a hub between.',
    }),
  ];
}

function outcomeFindings({ links, link, judgement: { outcome, notes } }: SolvedOutput): readonly Finding[] {
  if (outcome === 'flows') return [];
  const where = { links: namesOf(links) };
  const named = where.links.join(', ');
  const misfit = notes.find(({ kind }) => kind === 'plug-does-not-fit');
  if (misfit)
    return [
      finding('does-not-fit', 'error', where, {
        what: `${named}: a plug does not fit`,
        why: misfit.detail,
        mend: 'Choose a lead with the plugs of these two jacks, or add an adapter.',
      }),
    ];
  if (outcome === 'weak')
    return [
      finding('weak', 'warning', where, {
        what: `${named}: works, but not with every part at its worst`,
        why: checkLink(link).sentence,
        mend: 'Shorten the lead, or use an output with more current or an input that needs less.',
      }),
    ];
  if (link.branches.some(({ input }) => !solveMaps(link.output, input).candidates.some(works)))
    return [
      finding('no-passive-lead', 'error', where, {
        what: `${named}: no passive lead can join these two jacks`,
        why: 'Every possible wiring was solved, and none works.',
        mend: 'Use another output, set it to another type, or put a powered converter between.',
      }),
    ];
  return [
    finding('link-fails', 'error', where, {
      what: `${named}: ${outcomeWords(outcome).label.toLowerCase()}`,
      why: checkLink(link).sentence,
      mend: 'Ask for the right lead between these two jacks, or set the output to another type.',
    }),
  ];
}

type FromNote = readonly [kind: FindingKind, severity: Severity, what: string, mend: string];

const SHORTED: FromNote = [
  'link-fails',
  'error',
  'a line of the output is shorted',
  'Change the lead before you connect it.',
];
const HUM = 'Where it hums, use an isolated input or a hub with isolated outputs.';

/** Notes of a link that are findings of a board; the others are said elsewhere, or only on the bench. */
const FROM_NOTES: Readonly<Partial<Record<NoteKind, FromNote>>> = {
  'over-rating': [
    'over-rating',
    'error',
    'do not connect: a part is over its rating',
    'Change the lead first.',
  ],
  'source-shorted': SHORTED,
  'stage-shorted': SHORTED,
  'too-long': [
    'too-long',
    'warning',
    'longer than the standard allows',
    'Use a shorter lead, or move the devices closer.',
  ],
  'spare-pins': [
    'supply-on-spares',
    'note',
    'the lead carries spare pins',
    'A lead of three wires is the safe choice; label one that carries more.',
  ],
  merged: [
    'fed-twice',
    'note',
    'solved with the other output at rest',
    'Put a merger in front of the input.',
  ],
  'depends-on-grounds': ['grounds', 'warning', 'works or not by how grounds are joined', HUM],
  'grounds-joined': ['grounds', 'note', 'joins the grounds of two devices', HUM],
};

function noteFindings({ links, judgement }: SolvedOutput): readonly Finding[] {
  const where = { links: namesOf(links) };
  return judgement.notes.flatMap(({ kind: note, detail }) => {
    const from = FROM_NOTES[note];
    if (!from || (from === SHORTED && judgement.danger !== undefined)) return [];
    const [kind, severity, what, mend] = from;
    return [
      finding(kind, severity, where, { what: `${where.links.join(', ')}: ${what}`, why: detail, mend }),
    ];
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
  const lengths = new Map(plan.leads.map(({ name, lengthMetres }) => [name, lengthMetres]));
  return graph.feeds.flatMap((feed) => {
    const link = plan.links[feed.link] as PlanLink;
    const names = link.inputs[feed.input]?.leads ?? [];
    const metres = names.reduce((sum, name) => sum + (lengths.get(name) ?? 0), 0);
    const way = wayMetres(graph, feed, ways);
    const short =
      metres < way - 1e-9
        ? [
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
          ]
        : [];
    const twice = [...new Set(names)].flatMap((name) => {
      const other = used.get(name);
      used.set(name, link.name);
      if (other === undefined && names.filter((one) => one === name).length === 1) return [];
      return [
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
      ];
    });
    return [...short, ...twice, ...supplyFindings(graph, feed, link, solved)];
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
  link: PlanLink,
  solved: readonly SolvedOutput[],
): readonly Finding[] {
  const notes = solved.find(({ links }) => links.includes(link))?.judgement.notes ?? [];
  const carries = notes.some(({ kind }) => kind === 'spare-pins');
  const live = [
    { at: feed.from, jack: outputOf(graph, feed) },
    { at: feed.to, jack: inputOf(graph, feed) },
  ].filter(({ jack }) => jack.supplyOnSpares);
  const hungry = [feed.fromDevice, feed.toDevice]
    .map((device) => graph.devices[device])
    .find((device) => device?.power === 'spare-pins');
  if (live.length === 0 || carries === (hungry !== undefined)) return [];
  return carries
    ? [
        finding(
          'supply-on-spares',
          'error',
          { links: [link.name] },
          {
            what: `${link.name}: passes a supply on to a device that does not ask for it`,
            why: `${live.map(({ at }) => sayJack(at)).join(' and ')} has a supply on its spare pins, and this lead carries them.`,
            mend: 'Take a lead of three wires, without the spare pins.',
          },
        ),
      ]
    : [
        finding(
          'no-supply',
          'error',
          { links: [link.name] },
          {
            what: `${link.name}: does not carry the supply that '${hungry?.name ?? ''}' lives on`,
            why: 'The device is fed through spare pins, and this lead leaves them out.',
            mend: 'Take a lead that carries all pins, and label it; or give the device a supply of its own.',
          },
        ),
      ];
}
