/** Which part a fault is in: the wire, the plug, the setting or the value, read off the board with the fault in it. */
import { contactWords, styleEntry } from '../wiring/index.ts';
import type { Contact, Lead, Side } from '../wiring/index.ts';
import { withBoardFault } from './board-changes.ts';
import { SENDER_CHANNEL } from './board-faults.ts';
import type { BenchBoard, BoardFault } from './board-faults.ts';
import { leadOf, workingBoard } from './board-state.ts';
import type { BoardState } from './board-state.ts';
import { capital } from '../verdict/index.ts';

/** A link of the board with the fault, and the place of that link. */
interface Spot {
  readonly state: BoardState;
  readonly at: number;
  readonly lead: Lead;
}

/** The device that a plug of a lead is in. */
function deviceAt(at: number, side: Side): string {
  if (side === 'to') return `pedal ${at + 1}`;
  return at === 0 ? 'the sender' : `pedal ${at}`;
}

/** A contact in a sentence: 'the ring', 'pin 4'. */
const said = (contact: Contact): string =>
  contactWords(contact).startsWith('pin') ? contactWords(contact) : `the ${contactWords(contact)}`;

const inPlug = (at: number, side: Side): string => `in the plug at ${deviceAt(at, side)}`;

/** What the faults that stand in the lead itself say: a wire off, a bad joint, contacts that touch. */
function sayLeadFault({ lead, at }: Spot): string {
  const [fault] = lead.faults ?? [];
  switch (fault?.kind) {
    case 'open':
      return `The wire on ${said(fault.contact)} is off, ${inPlug(at, fault.side)}.`;
    case 'joint':
      return `The joint on ${said(fault.contact)}, ${inPlug(at, fault.side)}, has ${fault.ohms} ohm.`;
    case 'short': {
      const [one, other] = fault.between.map(said);
      return capital(`${one} and ${other} touch, ${inPlug(at, fault.side)}.`);
    }
    case undefined:
      return '';
  }
}

/** Wires that go to another contact than on the board in order. */
function sayMoved({ lead, at }: Spot, board: BenchBoard): string {
  const good = leadOf(workingBoard(board).links[at]!).conductors;
  const moved = lead.conductors.flatMap(({ to }, wire) => (to === good[wire]?.to ? [] : [said(to)]));
  return `The wires on ${moved.join(' and ')} have changed places, ${inPlug(at, 'to')}.`;
}

function sayTsPlugs({ lead, at }: Spot): string {
  const sides = (['from', 'to'] as const).filter((side) => lead[side].connector === 'ts-3.5');
  const [side = 'from'] = sides;
  return sides.length > 1 ? 'Both of its plugs are TS.' : `The plug at ${deviceAt(at, side)} is TS.`;
}

function sayCold({ state, lead, at }: Spot): string {
  const cold = state.cold[at];
  const contact: Contact | undefined = cold && lead.conductors[cold.line === 'source' ? 0 : 1]?.[cold.side];
  return cold && contact ? `It is the joint on ${said(contact)}, ${inPlug(at, cold.side)}.` : '';
}

function sayOutputPart({ state }: Spot): string {
  const { sourceOhms, sinkOhms } = state.links[0]?.output.values ?? {};
  return `The resistor in the ${sourceOhms === undefined ? 'sink' : 'source'} line has ${sourceOhms ?? sinkOhms} ohm.`;
}

function sayInputPart({ state, at }: Spot): string {
  const ohms = state.links[at]?.branches[0]?.input.values?.seriesOhms;
  return ohms === undefined
    ? 'The diode that protects the LED is the wrong way round.'
    : `The resistor in series with the LED has ${ohms} ohm.`;
}

/** The part that a fault is in, as a sentence: 'The wire on the ring is off, in the plug at the sender.' Empty where its name says all. */
export function sayFaultPart(board: BenchBoard, fault: BoardFault): string {
  const state = withBoardFault(board, fault);
  const at = fault.place.endsWith('2') ? 1 : 0;
  const link = state.links[at]!;
  const spot = { state, at, lead: leadOf(link) };
  switch (fault.kind) {
    case 'open':
    case 'short':
    case 'bad-joint':
      return sayLeadFault(spot);
    case 'swapped':
    case 'mirrored':
      return sayMoved(spot, board);
    case 'ts-lead':
      return sayTsPlugs(spot);
    case 'cold-joint':
      return sayCold(spot);
    case 'half-in':
      return `It is the plug at ${deviceAt(at, state.loose[at] ?? 'from')}.`;
    case 'odd-jack':
      return `Its jack is: ${styleEntry(link.branches[0]!.input.style).label}.`;
    case 'outlet-set-wrong':
      return `The output is set to: ${styleEntry(link.output.style).label}.`;
    case 'output-part':
      return sayOutputPart(spot);
    case 'input-part':
      return sayInputPart(spot);
    case 'supply-low':
      return `Its output has ${link.output.values?.supplyVolts} V.`;
    case 'wrong-channel':
      return `It listens on channel ${state.channels[at]}; the sender uses channel ${SENDER_CHANNEL}.`;
    case 'program-off-by-one':
      return `Its numbers are one too ${state.programStep > 0 ? 'high' : 'low'}.`;
    case 'wrong-style':
    case 'out-into-out':
    case 'dead-thru':
    case 'soft-thru-off':
    case 'supply-off':
    case 'bank-missing':
    case 'message-filtered':
    case 'not-listening':
      return '';
  }
}
