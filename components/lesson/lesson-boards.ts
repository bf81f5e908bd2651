/** The small invented boards of the lessons: built, checked and timed by the core when the site is built. */
import { EDGE_BUDGET_SECONDS, checkBoard, hopTimings, timePress } from '../../src/core/board/index.ts';
import { boardFacts } from '../../src/core/planner/index.ts';
import { boardGraph, makePlan, pathsFrom, planJack } from '../../src/core/plan/index.ts';
import { checkLink, outcomeWords, sayAmperes } from '../../src/core/verdict/index.ts';
import { makeLead, wires } from '../../src/core/wiring/index.ts';
import type { CircuitKind, Link, Part } from '../../src/core/wiring/index.ts';
import type { Device, Plan, PlanLink, PressItem, Thru } from '../../src/core/plan/index.ts';
import type { Shown, ShownRow } from './shown.ts';
import { jackFrom } from './lesson-links.ts';
import { sayTime } from './in-time.ts';

/** How the pedals of a lesson's board hang together; 'split' and 'two senders' are what the lessons warn of. */
export const LAYOUTS = ['chain', 'hub', 'both', 'split', 'two senders', 'merger'] as const;
export type Layout = (typeof LAYOUTS)[number];

/** A board of the lessons: its layout, how many pedals (1 to 6), and what is in each. */
export interface AuthoredBoard {
  readonly layout: Layout;
  readonly pedals: number;
  readonly part?: Part;
  readonly thru?: Thru;
  readonly press?: readonly PressItem[];
}

/** Names of the pedals, all invented, in the order of the board. */
export const PEDALS = ['echo', 'drive', 'chorus', 'looper', 'tremolo', 'reverb'] as const;

const input = (name: string, part: Part) => planJack(name, 'in', 'din5', 'din', { part });
const output = (name: string) => planJack(name, 'out', 'din5', 'din');
const switcher = (name: string): Device => ({ name, kind: 'controller', jacks: [output('OUT')] });

/** The plan of a lesson's board, every lead a straight DIN lead of 1 m. */
export function boardFrom({
  layout,
  pedals,
  part = 'H11L1',
  thru = 'hardware',
  press = [],
}: AuthoredBoard): Plan {
  const names = PEDALS.slice(0, pedals);
  const boxes = names.map((name, at): Device => ({
    name,
    kind: 'pedal',
    channel: at + 1,
    jacks: [input('IN', part), { ...output('THRU'), role: 'thru', thru }],
  }));
  const hub: Device = {
    name: 'hub',
    kind: 'hub',
    toBuy: true,
    jacks: [input('IN', 'H11L1'), ...names.map((_, at) => output(`OUT ${at + 1}`))],
  };
  const merger: Device = {
    name: 'merger',
    kind: 'merger',
    jacks: [input('IN 1', 'H11L1'), input('IN 2', 'H11L1'), output('OUT')],
  };
  const middle = { hub, both: hub, merger, chain: undefined, split: undefined, 'two senders': undefined }[
    layout
  ];
  const senders = layout === 'merger' || layout === 'two senders' ? ['switcher', 'keyboard'] : ['switcher'];
  const ways = waysOf(layout, names);
  const leads = ways.map((_, at) =>
    makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { name: `lead ${at + 1}`, lengthMetres: 1 }),
  );
  return makePlan({
    title: 'Lesson board (invented)',
    devices: [...senders.map(switcher), ...(middle ? [middle] : []), ...boxes],
    leads: leads.map((lead) => ({ ...lead, origin: 'shop' })),
    links: ways.map(([device, jack, toDevice, toJack], at): PlanLink => ({
      name: `link ${at + 1}`,
      output: { device, jack },
      inputs: [{ device: toDevice, jack: toJack, leads: [`lead ${at + 1}`] }],
    })),
    press,
  });
}

type Way = readonly [string, string, string, string];

function waysOf(layout: Layout, names: readonly string[]): readonly Way[] {
  const chain = (from: readonly string[]): readonly Way[] =>
    from.slice(1).map((name, at): Way => [from[at] ?? '', 'THRU', name, 'IN']);
  const first = names[0] ?? '';
  switch (layout) {
    case 'chain':
      return [['switcher', 'OUT', first, 'IN'], ...chain(names)];
    case 'split':
      return names.map((name): Way => ['switcher', 'OUT', name, 'IN']);
    case 'hub':
      return [
        ['switcher', 'OUT', 'hub', 'IN'],
        ...names.map((name, at): Way => ['hub', `OUT ${at + 1}`, name, 'IN']),
      ];
    case 'both': {
      const half = Math.ceil(names.length / 2);
      return [
        ['switcher', 'OUT', 'hub', 'IN'],
        ['hub', 'OUT 1', first, 'IN'],
        ...chain(names.slice(0, half)),
        ['hub', 'OUT 2', names[half] ?? '', 'IN'],
        ...chain(names.slice(half)),
      ];
    }
    case 'two senders':
      return [['switcher', 'OUT', first, 'IN'], ['keyboard', 'OUT', first, 'IN'], ...chain(names)];
    case 'merger':
      return [
        ['switcher', 'OUT', 'merger', 'IN 1'],
        ['keyboard', 'OUT', 'merger', 'IN 2'],
        ['merger', 'OUT', first, 'IN'],
        ...chain(names),
      ];
  }
}

/** What the core finds wrong with a board, or that nothing stands in the way. */
export function shownCheck(label: string, authored: AuthoredBoard): Shown {
  const { findings, passes } = checkBoard(boardFrom(authored));
  const found = findings.filter(({ severity }) => severity !== 'note');
  const [first] = found;
  return {
    label,
    grade: passes ? (first ? 'doubtful' : 'good') : 'bad',
    headline: first ? first.what : 'Nothing stands in the way',
    rows: [],
    sentence: first
      ? `${first.why} ${first.mend}`
      : 'Each output feeds one input, and every device is reached.',
  };
}

/** What each device loses when one is off. */
export function shownSilence(label: string, authored: AuthoredBoard): Shown {
  const plan = boardFrom(authored);
  const { silentWithout } = boardFacts(plan);
  const most = Math.max(0, ...silentWithout.map(({ silent }) => silent.length));
  const rows = plan.devices
    .filter(({ kind }) => kind !== 'controller')
    .map(({ name }): ShownRow => {
      const silent = silentWithout.find(({ device }) => device === name)?.silent ?? [];
      return {
        name: `${name} off`,
        words: silent.length === 0 ? 'no other' : silent.join(', '),
        amount: silent.length,
        good: silent.length === 0,
      };
    });
  return {
    label,
    grade: most > 1 ? 'doubtful' : 'good',
    headline: `At worst ${most} of ${authored.pedals} go silent with one box`,
    rows,
    sentence: 'Each row names the pedals that hear nothing when that one box is off, besides the box itself.',
  };
}

/** How far edges have shifted at each device, against what a receiver has left. */
export function shownDepth(label: string, authored: AuthoredBoard): Shown {
  const graph = boardGraph(boardFrom(authored));
  const rows = pathsFrom(graph, 0).flatMap((path, at): ShownRow[] => {
    const last = path && hopTimings(graph, path).at(-1);
    if (!path || !last) return [];
    const good = last.shiftSeconds <= EDGE_BUDGET_SECONDS;
    const links = path.length === 1 ? '1 link' : `${path.length} links`;
    return [
      {
        name: `${graph.devices[at]?.name ?? ''}, ${links} deep`,
        words: sayTime(last.shiftSeconds),
        amount: last.shiftSeconds,
        good,
      },
    ];
  });
  const bad = rows.filter(({ good }) => !good).length;
  return {
    label,
    grade: bad === 0 ? 'good' : 'bad',
    headline: bad === 0 ? 'Every pedal is within the limit' : `${bad} of ${rows.length} are too deep`,
    rows,
    bound: {
      amount: EDGE_BUDGET_SECONDS,
      words: `${sayTime(EDGE_BUDGET_SECONDS)} is all that a receiver has left`,
    },
    sentence: `Edges shift by ${rows.at(-1)?.words ?? ''} on the way to the last pedal.`,
  };
}

/** Leads, delay, depth and silence of a board. */
export function shownFacts(label: string, authored: AuthoredBoard): Shown {
  const plan = boardFrom(authored);
  const facts = boardFacts(plan);
  const most = Math.max(0, ...facts.silentWithout.map(({ silent }) => silent.length));
  return {
    label,
    grade: checkBoard(plan).passes ? 'good' : 'bad',
    headline: `${facts.leads} leads, ${facts.hubs} ${facts.hubs === 1 ? 'hub' : 'hubs'}`,
    rows: [
      plain('longest way', `${facts.deepestLinks} ${facts.deepestLinks === 1 ? 'link' : 'links'}`),
      plain('worst delay', sayTime(facts.worstDelaySeconds)),
      plain('silent at worst', String(most)),
    ],
    sentence: `With ${label}, the last pedal hears ${sayTime(facts.worstDelaySeconds)} late, and at worst ${most} go silent with one box.`,
  };
}

function plain(name: string, words: string): ShownRow {
  return { name, words, good: true };
}

/** When each device of a press has the last message meant for it. */
export function shownPress(label: string, authored: AuthoredBoard, runningStatus = false): Shown {
  const timing = timePress(boardFrom(authored), { runningStatus });
  const [warning] = timing.warnings;
  return {
    label,
    grade: warning === undefined ? 'good' : 'doubtful',
    headline: `${timing.bytes} bytes; the last is there after ${sayTime(timing.seconds ?? NaN)}`,
    rows: timing.arrivals.map(({ device, seconds }) => ({
      name: device,
      words: sayTime(seconds ?? NaN),
      amount: seconds ?? 0,
      good: true,
    })),
    sentence: [
      `Sent: ${timing.items.map(({ item, bytes }) => `${item.send} to ${item.device} in ${bytes.length} bytes`).join('; ')}.`,
      ...timing.warnings,
    ].join(' '),
  };
}

/** One output split by wire to inputs of these parts. */
export interface AuthoredSplit {
  readonly circuit?: CircuitKind;
  readonly parts: readonly Part[];
}

/** The link of a passive split: a lead of 1 m to each input. */
export function splitFrom({ circuit = 'driver-5v', parts }: AuthoredSplit): Link {
  const lead = makeLead('din5', 'din5', wires('4-4', '5-5', '2-2'), { lengthMetres: 1 });
  return {
    output: jackFrom('out', { connector: 'din5', style: 'din', circuit }),
    branches: parts.map((part) => ({
      input: jackFrom('in', { connector: 'din5', style: 'din', part }),
      leads: [lead],
    })),
  };
}

/** The current of each LED in a split, and what it needs. */
export function shownSplit(label: string, authored: AuthoredSplit): Shown {
  const verdict = checkLink(splitFrom(authored));
  const words = outcomeWords(verdict.outcome);
  const needed = verdict.inputs[verdict.decides]?.on ?? 0;
  return {
    label,
    grade: words.grade,
    headline: words.label,
    bound: { amount: needed, words: `${sayAmperes(needed)} turns it on` },
    rows: verdict.inputs.map(({ active, on }, at) => ({
      name: `${authored.parts[at] ?? ''} number ${at + 1}`,
      words: sayAmperes(active),
      amount: active,
      good: active >= on,
    })),
    sentence: [
      verdict.sentence,
      ...(authored.parts.length > 1 ? ['More than one input on an output: outside the standard.'] : []),
    ].join(' '),
  };
}
