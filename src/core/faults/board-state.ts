/** A board of the fault bench as it is: a link or a small chain that works, or one with a fault in it. */
import { DIN_TO_TYPE_A, makeJack, makeLead, wires } from '../wiring/index.ts';
import type { Branch, Jack, Lead, Link } from '../wiring/index.ts';
import type { BenchBoard, BoardFault, BoardFaultKind } from './board-faults.ts';

/** A board as it is: its links as they are wired, and how its devices are set. Pedal 2 counts on a chain only. */
export interface BoardState {
  readonly links: readonly Link[];
  /** Whether the lead into each pedal is in its OUT instead of its IN. */
  readonly inOut: readonly boolean[];
  readonly senderOn: boolean;
  readonly pedalsOn: readonly boolean[];
  readonly thruAlive: boolean;
  readonly softThruOn: boolean;
  readonly outletSet: 'Type A' | 'Type B';
  readonly channelRight: readonly boolean[];
  readonly listening: readonly boolean[];
  readonly filtered: boolean;
  readonly programStep: number;
  readonly bankSent: boolean;
  /** The line whose joint parts when the lead is moved, by lead. */
  readonly cold: readonly ('source' | 'sink' | undefined)[];
}

const OUTLET = makeJack('out', 'trs-3.5', 'type-a');
const THRU = makeJack('out', 'din5', 'din');
const TRS_IN = makeJack('in', 'trs-3.5', 'type-a');
const DIN_IN = makeJack('in', 'din5', 'din');
const TRS_LEAD = makeLead('trs-3.5', 'trs-3.5', wires('ring-ring', 'tip-tip', 'sleeve-sleeve'), {
  name: 'lead 1',
});
const TO_DIN = makeLead('trs-3.5', 'din5', wires('ring-4', 'tip-5', 'sleeve-2'), { name: 'lead 1' });
const FROM_DIN = makeLead('din5', 'trs-3.5', DIN_TO_TYPE_A, { name: 'lead 2' });

const linkOf = (output: Jack, lead: Lead, input: Jack): Link => ({
  output,
  branches: [{ input, leads: [lead] }],
});

/** The board with nothing wrong: a hub outlet set to Type A, then one TRS pedal, or a DIN pedal whose THRU feeds a TRS one. */
export function workingBoard(board: BenchBoard): BoardState {
  const links =
    board === 'link'
      ? [linkOf(OUTLET, TRS_LEAD, TRS_IN)]
      : [linkOf(OUTLET, TO_DIN, DIN_IN), linkOf(THRU, FROM_DIN, TRS_IN)];
  const each = <Value>(value: Value): readonly Value[] => links.map(() => value);
  return {
    links,
    inOut: each(false),
    senderOn: true,
    pedalsOn: each(true),
    thruAlive: true,
    softThruOn: true,
    outletSet: 'Type A',
    channelRight: each(true),
    listening: each(true),
    filtered: false,
    programStep: 0,
    bankSent: true,
    cold: each(undefined),
  };
}

/** A board with a fault of one kind in it; `at` counts the place of the fault along the links. */
type Change = (good: BoardState, at: number, fault: BoardFault) => BoardState;

const put = <Value>(list: readonly Value[], at: number, value: (before: Value) => Value): readonly Value[] =>
  list.map((one, place) => (place === at ? value(one) : one));

const relink = (board: BoardState, at: number, change: (link: Link) => Link): BoardState => ({
  ...board,
  links: put(board.links, at, change),
});

const rebranch = (board: BoardState, at: number, change: (branch: Branch) => Branch): BoardState =>
  relink(board, at, (link) => ({ ...link, branches: link.branches.map(change) }));

/** The board with another lead in one place. */
export function relead(board: BoardState, at: number, change: (lead: Lead) => Lead): BoardState {
  return rebranch(board, at, (branch) => ({ ...branch, leads: branch.leads.map(change) }));
}

const swapped: Change = (good, at) =>
  relead(good, at, (lead) => {
    const [a, b, ...rest] = lead.conductors;
    return a && b
      ? { ...lead, conductors: [{ from: a.from, to: b.to }, { from: b.from, to: a.to }, ...rest] }
      : lead;
  });

const CHANGES: Readonly<Record<BoardFaultKind, Change>> = {
  open: (good, at, { variant }) =>
    relead(good, at, (lead) => ({
      ...lead,
      conductors: lead.conductors.filter((_, number) => number !== variant),
    })),
  short: (good, at) =>
    relead(good, at, (lead) => {
      const [a, b] = lead.conductors;
      return a && b
        ? { ...lead, faults: [{ kind: 'short', side: 'from', between: [a.from, b.from] }] }
        : lead;
    }),
  swapped,
  // On these boards only pins 4 and 5 of the DIN plug are wired beside pin 2, so left and right are source and sink.
  mirrored: swapped,
  'ts-lead': (good, at) => relead(good, at, tsLead),
  'cold-joint': (good, at, { variant }) => ({
    ...good,
    cold: put(good.cold, at, () => (variant === 0 ? 'source' : 'sink')),
  }),
  'wrong-style': (good, at) =>
    rebranch(good, at, (branch) => ({ ...branch, input: makeJack('in', 'trs-3.5', 'type-b') })),
  'outlet-set-wrong': (good, at) => ({
    ...relink(good, at, (link) => ({ ...link, output: makeJack('out', 'trs-3.5', 'type-b') })),
    outletSet: 'Type B',
  }),
  'out-into-out': (good, at) => ({ ...good, inOut: put(good.inOut, at, () => true) }),
  'dead-thru': (good) => ({ ...good, thruAlive: false }),
  'soft-thru-off': (good) => ({ ...good, softThruOn: false }),
  'supply-off': (good, at, { place }) =>
    place === 'sender'
      ? { ...good, senderOn: false }
      : { ...good, pedalsOn: put(good.pedalsOn, at, () => false) },
  'wrong-channel': (good, at) => ({ ...good, channelRight: put(good.channelRight, at, () => false) }),
  'not-listening': (good, at) => ({ ...good, listening: put(good.listening, at, () => false) }),
  'program-off-by-one': (good) => ({ ...good, programStep: 1 }),
  'bank-missing': (good) => ({ ...good, bankSent: false }),
  'message-filtered': (good) => ({ ...good, filtered: true }),
};

/** The board with one fault in it, or with none. */
export function withBoardFault(board: BenchBoard, fault: BoardFault | undefined): BoardState {
  const good = workingBoard(board);
  return fault ? CHANGES[fault.kind](good, fault.place.endsWith('2') ? 1 : 0, fault) : good;
}

/** The same lead with a TS plug where it had a TRS one: its ring wire has nowhere to go. */
function tsLead(lead: Lead): Lead {
  const side = lead.from.connector === 'trs-3.5' ? 'from' : 'to';
  return {
    ...lead,
    [side]: { ...lead[side], connector: 'ts-3.5' },
    conductors: lead.conductors.filter((one) => one[side] !== 'ring'),
  };
}
