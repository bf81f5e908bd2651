/** The fault bench: a link or a small chain that works, and everything that may be wrong with it. */
import type { Jack, Lead, Link } from '../wiring/index.ts';
import { DIN_TO_TYPE_A, makeJack, makeLead, wires } from '../wiring/index.ts';

/** Boards of the bench: one pedal, or two in a chain. */
export const BENCH_BOARDS = ['link', 'chain'] as const;

/** One of the boards of the bench. */
export type BenchBoard = (typeof BENCH_BOARDS)[number];

/** Everything that may be wrong. */
export const BOARD_FAULTS = [
  'open',
  'short',
  'swapped',
  'mirrored',
  'ts-lead',
  'cold-joint',
  'wrong-style',
  'outlet-set-wrong',
  'out-into-out',
  'dead-thru',
  'soft-thru-off',
  'supply-off',
  'wrong-channel',
  'program-off-by-one',
  'bank-missing',
  'message-filtered',
  'not-listening',
] as const;

/** What one fault is. */
export type BoardFaultKind = (typeof BOARD_FAULTS)[number];

/** Where a fault can be: the sender, a lead (1 is nearest the sender), or a pedal. */
export type BoardPlace = 'sender' | 'lead 1' | 'pedal 1' | 'lead 2' | 'pedal 2';

/** One fault in one place; `variant` tells ways that have the same name apart: which conductor, which joint. */
export interface BoardFault {
  readonly kind: BoardFaultKind;
  readonly place: BoardPlace;
  readonly variant: number;
}

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

/** Every fault that a board may have. */
export function boardFaults(board: BenchBoard): readonly BoardFault[] {
  const one = (kind: BoardFaultKind, place: BoardPlace, variants = 1): readonly BoardFault[] =>
    Array.from({ length: variants }, (_, variant) => ({ kind, place, variant }));
  const pedals = board === 'link' ? (['pedal 1'] as const) : (['pedal 1', 'pedal 2'] as const);
  const leads = board === 'link' ? (['lead 1'] as const) : (['lead 1', 'lead 2'] as const);
  return [
    ...leads.flatMap((place) => [
      ...one('open', place, 2),
      ...one('short', place),
      ...one('swapped', place),
      ...one('ts-lead', place),
      ...one('cold-joint', place, 2),
      ...(board === 'chain' ? one('mirrored', place) : []),
    ]),
    ...one('wrong-style', board === 'link' ? 'pedal 1' : 'pedal 2'),
    ...one('outlet-set-wrong', 'sender'),
    ...(board === 'chain' ? [...one('dead-thru', 'pedal 1'), ...one('soft-thru-off', 'pedal 1')] : []),
    ...one('supply-off', 'sender'),
    ...pedals.flatMap((place) => [
      ...one('out-into-out', place),
      ...one('supply-off', place),
      ...one('wrong-channel', place),
      ...one('not-listening', place),
    ]),
    ...one('program-off-by-one', 'sender'),
    ...one('bank-missing', 'sender'),
    ...one('message-filtered', 'sender'),
  ];
}

/** The board with one fault in it. */
export function withBoardFault(board: BenchBoard, fault: BoardFault | undefined): BoardState {
  const good = workingBoard(board);
  if (!fault) return good;
  const at = fault.place.endsWith('2') ? 1 : 0;
  const put = <Value>(list: readonly Value[], value: Value): readonly Value[] =>
    list.map((one, place) => (place === at ? value : one));
  const relead = (change: (lead: Lead) => Lead): BoardState => ({
    ...good,
    links: good.links.map((link, place) =>
      place === at
        ? {
            ...link,
            branches: link.branches.map((branch) => ({ ...branch, leads: branch.leads.map(change) })),
          }
        : link,
    ),
  });
  switch (fault.kind) {
    case 'open':
      return relead((lead) => ({
        ...lead,
        conductors: lead.conductors.filter((_, number) => number !== fault.variant),
      }));
    case 'short':
      return relead((lead) => {
        const [a, b] = lead.conductors;
        return a && b
          ? { ...lead, faults: [{ kind: 'short', side: 'from', between: [a.from, b.from] }] }
          : lead;
      });
    case 'swapped':
      return relead((lead) => {
        const [a, b, ...rest] = lead.conductors;
        return a && b
          ? { ...lead, conductors: [{ from: a.from, to: b.to }, { from: b.from, to: a.to }, ...rest] }
          : lead;
      });
    case 'mirrored':
      // On these boards only pins 4 and 5 of the DIN plug are wired beside pin 2, so left and right are source and sink.
      return withBoardFault(board, { ...fault, kind: 'swapped' });
    case 'ts-lead':
      return relead(tsLead);
    case 'cold-joint':
      return { ...good, cold: put(good.cold, fault.variant === 0 ? 'source' : 'sink') };
    case 'wrong-style':
      return {
        ...good,
        links: put(good.links, {
          ...(good.links[at] as Link),
          branches: [
            { ...(good.links[at] as Link).branches[0]!, input: makeJack('in', 'trs-3.5', 'type-b') },
          ],
        }),
      };
    case 'outlet-set-wrong':
      return {
        ...good,
        outletSet: 'Type B',
        links: put(good.links, { ...(good.links[at] as Link), output: makeJack('out', 'trs-3.5', 'type-b') }),
      };
    case 'out-into-out':
      return { ...good, inOut: put(good.inOut, true) };
    case 'dead-thru':
      return { ...good, thruAlive: false };
    case 'soft-thru-off':
      return { ...good, softThruOn: false };
    case 'supply-off':
      return fault.place === 'sender'
        ? { ...good, senderOn: false }
        : { ...good, pedalsOn: put(good.pedalsOn, false) };
    case 'wrong-channel':
      return { ...good, channelRight: put(good.channelRight, false) };
    case 'not-listening':
      return { ...good, listening: put(good.listening, false) };
    case 'program-off-by-one':
      return { ...good, programStep: 1 };
    case 'bank-missing':
      return { ...good, bankSent: false };
    case 'message-filtered':
      return { ...good, filtered: true };
  }
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

const KIND_WORDS: Readonly<Record<BoardFaultKind, string>> = {
  open: 'a conductor is open',
  short: 'two conductors touch',
  swapped: 'two wires are swapped',
  mirrored: 'the DIN plug is wired mirrored',
  'ts-lead': 'it is a TS lead where a TRS lead is needed',
  'cold-joint': 'a joint is cold',
  'wrong-style': 'its jack is Type B, not Type A',
  'outlet-set-wrong': 'the outlet is set to the wrong type',
  'out-into-out': 'the lead is in its OUT, not in its IN',
  'dead-thru': 'its THRU is dead',
  'soft-thru-off': 'its software THRU is switched off',
  'supply-off': 'its supply is off',
  'wrong-channel': 'it listens on another channel',
  'program-off-by-one': 'it counts programs from another number',
  'bank-missing': 'it sends no bank before the program',
  'message-filtered': 'it filters program changes out',
  'not-listening': 'it is set not to listen',
};

/** What is wrong, in words, wherever it is: 'a conductor is open'. */
export function sayFaultKind(kind: BoardFaultKind): string {
  return KIND_WORDS[kind];
}

/** What a fault is called when it is named: kind and place. Variants share a name. */
export function faultName({ kind, place }: Pick<BoardFault, 'kind' | 'place'>): string {
  return `${place}: ${kind}`;
}

/** A fault in words: 'lead 1: a conductor is open'. */
export function sayBoardFault({ kind, place }: Pick<BoardFault, 'kind' | 'place'>): string {
  return `${place}: ${KIND_WORDS[kind]}`;
}
