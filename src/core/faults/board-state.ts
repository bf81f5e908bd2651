/** A board of the fault bench as it is: a link or a small chain, and the one that works. */
import { DIN_TO_TYPE_A, makeJack, makeLead, wires } from '../wiring/index.ts';
import type { Branch, Jack, Lead, Link, Side } from '../wiring/index.ts';
import { SENDER_CHANNEL } from './board-faults.ts';
import type { BenchBoard } from './board-faults.ts';

/** A joint that parts when its plug is moved: on which line, at which end of the lead. */
interface ColdJoint {
  readonly line: 'source' | 'sink';
  readonly side: Side;
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
  /** The channel that each pedal listens on. */
  readonly channels: readonly number[];
  readonly listening: readonly boolean[];
  readonly filtered: boolean;
  readonly programStep: number;
  readonly bankSent: boolean;
  /** The joint that parts when the lead is moved, by lead. */
  readonly cold: readonly (ColdJoint | undefined)[];
  /** The end whose plug is not pushed home, by lead; the link is as its contacts then meet, the lead itself is sound. */
  readonly loose: readonly (Side | undefined)[];
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

/** One object for each sound link, so that what was solved of it once is known. */
const GOOD_LINKS: Readonly<Record<BenchBoard, readonly Link[]>> = {
  link: [linkOf(OUTLET, TRS_LEAD, TRS_IN)],
  chain: [linkOf(OUTLET, TO_DIN, DIN_IN), linkOf(THRU, FROM_DIN, TRS_IN)],
};

/** The board with nothing wrong: a hub outlet set to Type A, then one TRS pedal, or a DIN pedal whose THRU feeds a TRS one. */
export function workingBoard(board: BenchBoard): BoardState {
  const links = GOOD_LINKS[board];
  const each = <Value>(value: Value): readonly Value[] => links.map(() => value);
  return {
    links,
    inOut: each(false),
    senderOn: true,
    pedalsOn: each(true),
    thruAlive: true,
    softThruOn: true,
    channels: each(SENDER_CHANNEL),
    listening: each(true),
    filtered: false,
    programStep: 0,
    bankSent: true,
    cold: each(undefined),
    loose: each(undefined),
  };
}

/** A list with another value in one place. */
export const put = <Value>(
  list: readonly Value[],
  at: number,
  value: (before: Value) => Value,
): readonly Value[] => list.map((one, place) => (place === at ? value(one) : one));

/** The board with another link in one place. */
export const relink = (board: BoardState, at: number, change: (link: Link) => Link): BoardState => ({
  ...board,
  links: put(board.links, at, change),
});

/** The board with another lead and input in one place. */
export const rebranch = (board: BoardState, at: number, change: (branch: Branch) => Branch): BoardState =>
  relink(board, at, (link) => ({ ...link, branches: link.branches.map(change) }));

/** The board with another lead in one place. */
export function relead(board: BoardState, at: number, change: (lead: Lead) => Lead): BoardState {
  return rebranch(board, at, (branch) => ({ ...branch, leads: branch.leads.map(change) }));
}

/** The lead of a link. */
export const leadOf = (link: Link): Lead => link.branches[0]!.leads[0]!;
