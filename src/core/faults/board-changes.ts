/** What each fault of the fault bench changes in the circuit of a board or in its settings, variant by variant. */
import { SIDES, makeJack } from '../wiring/index.ts';
import type { Contact, Jack, Lead, Side, Style } from '../wiring/index.ts';
import { WRONG_CHANNELS } from './board-faults.ts';
import type { BenchBoard, BoardFault, BoardFaultKind } from './board-faults.ts';
import { put, rebranch, relead, relink, workingBoard } from './board-state.ts';
import type { BoardState } from './board-state.ts';

/** A board with a fault of one kind in it; `at` counts the place of the fault along the links. */
type Change = (good: BoardState, at: number, fault: BoardFault) => BoardState;

const withInput = (board: BoardState, at: number, input: Jack): BoardState =>
  rebranch(board, at, (branch) => ({ ...branch, input }));

/** Pairs of a lead's three wires, by their place in it: source and sink, source and shield, sink and shield. */
const PAIRS = [
  [0, 1],
  [0, 2],
  [1, 2],
] as const;

const pairOf = (variant: number): (typeof PAIRS)[number] => PAIRS[variant % PAIRS.length] ?? PAIRS[0];
const sideOf = (number: number): Side => (number === 0 ? 'from' : 'to');

/** Two wires change places; variants by pair. Which of the two plugs it is done at makes no difference. */
const swapped: Change = (good, at, { variant }) =>
  relead(good, at, (lead) => {
    const [one, other] = pairOf(variant);
    const to = (number: number): Contact | undefined => lead.conductors[number]?.to;
    const conductors = lead.conductors.map((wire, number) => ({
      ...wire,
      to: (number === one ? to(other) : number === other ? to(one) : undefined) ?? wire.to,
    }));
    return { ...lead, conductors };
  });

/** Contacts that touch in a plug; variants by pair, then by plug. */
const short: Change = (good, at, { variant }) =>
  relead(good, at, (lead) => {
    const side = sideOf(Math.floor(variant / PAIRS.length));
    const [a, b] = pairOf(variant).map((number) => lead.conductors[number]?.[side]);
    return a && b ? { ...lead, faults: [{ kind: 'short', side, between: [a, b] }] } : lead;
  });

/** Ohms of a bad joint: a loop that has so many starves, and a meter tells one from the other. Invented. */
const BAD_JOINT_OHMS = [4700, 22000] as const;

/** A joint of a line, by variant: source or sink line, then by plug, then by ohms; without ohms it is open. */
const joint = (good: BoardState, at: number, variant: number, ohms?: number): BoardState =>
  relead(good, at, (lead) => {
    const side = sideOf((variant >> 1) & 1);
    const contact = lead.conductors[variant & 1]?.[side];
    if (!contact) return lead;
    return {
      ...lead,
      faults: [ohms === undefined ? { kind: 'open', side, contact } : { kind: 'joint', side, contact, ohms }],
    };
  });

/** The contact of a jack that a plug's contact meets when it is one step out; the sleeve then meets none. */
const STEP_OUT: Readonly<Partial<Record<Contact, Contact>>> = { tip: 'ring', ring: 'sleeve' };

const halfIn: Change = (good, at, { variant }) => {
  const lead = good.links[at]?.branches[0]?.leads[0];
  const side = SIDES.filter((one) => lead?.[one].connector === 'trs-3.5')[variant] ?? 'from';
  const out = relead(good, at, (one) => ({
    ...one,
    conductors: one.conductors.flatMap((wire) => {
      const meets = STEP_OUT[wire[side]];
      return meets ? [{ ...wire, [side]: meets }] : [];
    }),
  }));
  return { ...out, loose: put(good.loose, at, () => side) };
};

/** What a hub's output may be set to by mistake. */
const WRONG_OUTLETS = [
  'type-b',
  'two-contact',
  'two-contact-turned',
  'ring-signal',
  'tip-signal',
] as const satisfies readonly Style[];

/** Jacks of a pedal that a lead for Type A or B does not suit. */
const ODD_INPUTS = ['two-contact', 'two-contact-turned', 'ring-signal'] as const satisfies readonly Style[];

/** Output resistors far above the 220 ohm of the standard: ten times and a hundred times, and on which line. Invented. */
const WRONG_OUTPUTS = [
  { sourceOhms: 2200 },
  { sourceOhms: 22000 },
  { sinkOhms: 2200 },
  { sinkOhms: 22000 },
] as const;

/** Volts of an output that no longer light the LED of an input. Invented. */
const LOW_VOLTS = [1.2, 1.6] as const;

/** What may be wrong in an input: its resistor ten or a hundred times too large, or its protection diode turned. Invented. */
const WRONG_INPUTS = [
  { values: { seriesOhms: 2200 } },
  { values: { seriesOhms: 22000 } },
  { extras: ['turned-diode'] },
] as const;

const withOutput = (good: BoardState, at: number, values: Jack['values']): BoardState =>
  relink(good, at, (link) => ({ ...link, output: { ...link.output, values } }));

const CHANGES: Readonly<Record<BoardFaultKind, Change>> = {
  open: (good, at, { variant }) => joint(good, at, variant),
  short,
  swapped,
  // On these boards only pins 4 and 5 of the DIN plug are wired beside pin 2, so left and right are source and sink.
  mirrored: swapped,
  'ts-lead': (good, at, { variant }) => relead(good, at, (lead) => tsLead(lead, variant)),
  'cold-joint': (good, at, { variant }) => ({
    ...good,
    cold: put(good.cold, at, () => ({
      line: variant & 1 ? 'sink' : 'source',
      side: sideOf(variant >> 1),
    })),
  }),
  'bad-joint': (good, at, { variant }) => joint(good, at, variant, BAD_JOINT_OHMS[variant >> 2]),
  'half-in': halfIn,
  'wrong-style': (good, at) => withInput(good, at, makeJack('in', 'trs-3.5', 'type-b')),
  'odd-jack': (good, at, { variant }) =>
    withInput(good, at, makeJack('in', 'trs-3.5', ODD_INPUTS[variant] ?? ODD_INPUTS[0])),
  'outlet-set-wrong': (good, at, { variant }) =>
    relink(good, at, (link) => ({
      ...link,
      output: makeJack('out', 'trs-3.5', WRONG_OUTLETS[variant] ?? WRONG_OUTLETS[0]),
    })),
  'output-part': (good, at, { variant }) => withOutput(good, at, WRONG_OUTPUTS[variant] ?? WRONG_OUTPUTS[0]),
  'supply-low': (good, at, { variant }) =>
    withOutput(good, at, { supplyVolts: LOW_VOLTS[variant] ?? LOW_VOLTS[0] }),
  'input-part': (good, at, { variant }) =>
    rebranch(good, at, (branch) => ({
      ...branch,
      input: { ...branch.input, ...(WRONG_INPUTS[variant] ?? WRONG_INPUTS[0]) },
    })),
  'out-into-out': (good, at) => ({ ...good, inOut: put(good.inOut, at, () => true) }),
  'dead-thru': (good) => ({ ...good, thruAlive: false }),
  'soft-thru-off': (good) => ({ ...good, softThruOn: false }),
  'supply-off': (good, at, { place }) =>
    place === 'sender'
      ? { ...good, senderOn: false }
      : { ...good, pedalsOn: put(good.pedalsOn, at, () => false) },
  'wrong-channel': (good, at, { variant }) => ({
    ...good,
    channels: put(good.channels, at, () => WRONG_CHANNELS[variant] ?? WRONG_CHANNELS[0]),
  }),
  'not-listening': (good, at) => ({ ...good, listening: put(good.listening, at, () => false) }),
  'program-off-by-one': (good, _, { variant }) => ({ ...good, programStep: variant === 0 ? 1 : -1 }),
  'bank-missing': (good) => ({ ...good, bankSent: false }),
  'message-filtered': (good) => ({ ...good, filtered: true }),
};

/** The board with one fault in it, or with none. */
export function withBoardFault(board: BenchBoard, fault: BoardFault | undefined): BoardState {
  const good = workingBoard(board);
  return fault ? CHANGES[fault.kind](good, fault.place.endsWith('2') ? 1 : 0, fault) : good;
}

/** The same lead with a TS plug where it had a TRS one: its ring wire has nowhere to go. With two, at either end or at both. */
function tsLead(lead: Lead, variant: number): Lead {
  const phones = SIDES.filter((side) => lead[side].connector === 'trs-3.5');
  const sides = variant === 2 ? phones : phones.slice(variant, variant + 1);
  return sides.reduce<Lead>(
    (made, side) => ({
      ...made,
      [side]: { ...made[side], connector: 'ts-3.5' },
      conductors: made.conductors.filter((one) => one[side] !== 'ring'),
    }),
    lead,
  );
}
