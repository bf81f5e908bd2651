/** The small invented boards of the lessons, and splits by wire: from an author's few words to a plan and a link. */
import { makePlan, planJack } from '../plan/index.ts';
import { STRAIGHT_DIN, makeLead } from '../wiring/index.ts';
import type { CircuitKind, Link, Part } from '../wiring/index.ts';
import type { Device, Plan, PlanLink, PressItem, Thru } from '../plan/index.ts';
import { jackFrom } from './links.ts';

/** How the pedals of a lesson's board hang together; 'split' and 'two senders' are what the lessons warn of. */
type Layout = 'chain' | 'hub' | 'both' | 'split' | 'two senders' | 'merger';
/** How the boxes of a board that a task tells follow one another. */
export type Shape = 'chain' | 'hub' | 'both' | 'hub behind' | 'two hubs';

/** A board of the lessons: its layout, how many pedals (1 to 6), and what is in each. */
export interface AuthoredBoard {
  readonly layout: Layout;
  readonly pedals: number;
  readonly part?: Part;
  readonly thru?: Thru;
  readonly press?: readonly PressItem[];
  /** Whether the press is sent with running status. */
  readonly runningStatus?: boolean;
}

/** Names of the pedals, all invented, in the order of the board. */
export const PEDALS = ['echo', 'drive', 'chorus', 'looper', 'tremolo', 'reverb'] as const;

const input = (name: string, part: Part) => planJack(name, 'in', 'din5', 'din', { part });
const output = (name: string) => planJack(name, 'out', 'din5', 'din');

/** Part of the boxes that only carry: quick both ways. */
const QUICK_PART: Part = 'H11L1';

/** A sender with one output. */
export const senderOf = (name: string): Device => ({ name, kind: 'controller', jacks: [output('OUT')] });

/** A pedal with an input and, unless it has none, a THRU; `channel` 1 to 16. */
export function pedalOf(
  name: string,
  channel: number,
  { part = QUICK_PART, thru = 'hardware' }: { readonly part?: Part; readonly thru?: Thru | 'none' } = {},
): Device {
  return {
    name,
    kind: 'pedal',
    channel,
    jacks: [
      input('IN', part),
      ...(thru === 'none' ? [] : [{ ...output('THRU'), role: 'thru' as const, thru }]),
    ],
  };
}

/** A hub with so many outputs, still to be bought. */
export const hubOf = (outputs: number, name = 'hub'): Device => ({
  name,
  kind: 'hub',
  toBuy: true,
  jacks: [input('IN', QUICK_PART), ...Array.from({ length: outputs }, (_, at) => output(`OUT ${at + 1}`))],
});

const MERGER: Device = {
  name: 'merger',
  kind: 'merger',
  jacks: [input('IN 1', QUICK_PART), input('IN 2', QUICK_PART), output('OUT')],
};

/** One lead of a board: from this jack of a device to that jack of another. */
export type Way = readonly [from: string, jack: string, to: string, into: string];

/** The plan of devices and the ways between them, every lead a straight DIN lead of 1 m. */
export function planOfWays(
  devices: readonly Device[],
  ways: readonly Way[],
  press: readonly PressItem[] = [],
): Plan {
  return makePlan({
    title: 'Lesson board (invented)',
    devices: [...devices],
    leads: ways.map((_, at) => ({
      ...makeLead('din5', 'din5', STRAIGHT_DIN, { name: `lead ${at + 1}`, lengthMetres: 1 }),
      origin: 'shop',
    })),
    links: ways.map(([device, jack, toDevice, toJack], at): PlanLink => ({
      name: `link ${at + 1}`,
      output: { device, jack },
      inputs: [{ device: toDevice, jack: toJack, leads: [`lead ${at + 1}`] }],
    })),
    press,
  });
}

/** The plan of a lesson's board. */
export function boardFrom({
  layout,
  pedals,
  part = QUICK_PART,
  thru = 'hardware',
  press = [],
}: AuthoredBoard): Plan {
  const names = PEDALS.slice(0, pedals);
  const two = layout === 'merger' || layout === 'two senders';
  const hub = layout === 'hub' || layout === 'both';
  const devices = [
    senderOf(CONTROLLER),
    ...(two ? [senderOf(KEYBOARD)] : []),
    ...(hub ? [hubOf(names.length)] : layout === 'merger' ? [MERGER] : []),
    ...names.map((name, at) => pedalOf(name, at + 1, { part, thru })),
  ];
  return planOfWays(devices, waysOf(layout, names), press);
}

/** Where every board of a lesson or a task begins, and a second sender. */
export const CONTROLLER = 'foot controller';
const KEYBOARD = 'keyboard';
/** Names of hubs, the first one of a board first. */
export const HUBS = ['hub', 'second hub'] as const;

const start = (name: string, into = 'IN', from: string = CONTROLLER): Way => [from, 'OUT', name, into];

/** Leads from one box to the next, by THRU. */
const chained = (names: readonly string[]): readonly Way[] =>
  names.slice(1).map((name, at): Way => [names[at] ?? '', 'THRU', name, 'IN']);

/** Leads from a hub, one to the first of each row, and on along the row. */
function fanned(hub: string, rows: readonly (readonly string[])[], first = 1): readonly Way[] {
  return rows.flatMap(([head, ...rest], at): readonly Way[] =>
    head === undefined ? [] : [[hub, `OUT ${at + first}`, head, 'IN'], ...chained([head, ...rest])],
  );
}

/** The leads of a board, from the foot controller on. Shapes with a box before a hub need three boxes or more. */
export function waysOf(layout: Layout | Shape, names: readonly string[]): readonly Way[] {
  const [head = '', ...rest] = names;
  const half = Math.ceil(names.length / 2);
  const each = (list: readonly string[]): readonly (readonly string[])[] => list.map((name) => [name]);
  switch (layout) {
    case 'chain':
      return [start(head), ...chained(names)];
    case 'split':
      return names.map((name) => start(name));
    case 'two senders':
      return [start(head), start(head, 'IN', KEYBOARD), ...chained(names)];
    case 'merger':
      return [
        start('merger', 'IN 1'),
        start('merger', 'IN 2', KEYBOARD),
        start(head, 'IN', 'merger'),
        ...chained(names),
      ];
    case 'hub':
      return [start(HUBS[0]), ...fanned(HUBS[0], each(names))];
    case 'both':
      return [start(HUBS[0]), ...fanned(HUBS[0], [names.slice(0, half), names.slice(half)])];
    case 'hub behind':
      return [start(head), [head, 'THRU', HUBS[0], 'IN'], ...fanned(HUBS[0], each(rest))];
    case 'two hubs':
      return [
        start(HUBS[0]),
        [HUBS[0], 'OUT 1', HUBS[1], 'IN'],
        ...fanned(HUBS[0], each(names.slice(half)), 2),
        ...fanned(HUBS[1], each(names.slice(0, half))),
      ];
  }
}

/** One output split by wire to inputs of these parts. */
export interface AuthoredSplit {
  readonly circuit?: CircuitKind;
  readonly parts: readonly Part[];
}

/** The link of a passive split: a lead of 1 m to each input. */
export function splitFrom({ circuit = 'driver-5v', parts }: AuthoredSplit): Link {
  const lead = makeLead('din5', 'din5', STRAIGHT_DIN, { lengthMetres: 1 });
  return {
    output: jackFrom('out', { connector: 'din5', style: 'din', circuit }),
    branches: parts.map((part) => ({
      input: jackFrom('in', { connector: 'din5', style: 'din', part }),
      leads: [lead],
    })),
  };
}
