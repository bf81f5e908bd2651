/** What to do once a fault of the fault bench is found. */
import type { BoardFaultKind } from './board-faults.ts';

const REMEDIES: Readonly<Record<BoardFaultKind, string>> = {
  open: 'Take the lead out of use. Power off, open the plug, make the joint again, and test the lead before it goes back.',
  short:
    'Take the lead out of use at once. Open the plug, part what touches, and test the lead before it goes back.',
  swapped: 'Move one wire at one plug so that each line keeps its own, then test the lead.',
  mirrored: 'Solder the DIN plug again, seen from the side that is soldered, then test the lead.',
  'ts-lead': 'Take it out and use a TRS lead: a TS plug also joins ring and sleeve of the jack it is in.',
  'cold-joint': 'Heat that joint again with fresh solder, and test the lead while you move it.',
  'wrong-style':
    'Use a lead that swaps tip and ring here, or the device’s own switch for Type A, if it has one.',
  'outlet-set-wrong': 'Power off, then set the output to the type that the pedal’s manual names.',
  'out-into-out': 'Power off, then move the plug to the IN.',
  'dead-thru': 'Feed the next pedal from a hub output. Leave the repair to qualified people.',
  'soft-thru-off': 'Switch the THRU on in the menu.',
  'supply-off':
    'Check switch, plug and supply. Anything behind a mains plug or a screw is for qualified people.',
  'wrong-channel': 'Set the channel of the pedal to the one that the sender uses for it.',
  'program-off-by-one': 'Choose one way to count, from 0 or from 1, or send one number more or less.',
  'bank-missing': 'Let the sender send the bank (controllers 0 and 32) before the program change.',
  'message-filtered': 'Let program changes through in the sender’s filter.',
  'bad-joint': 'Clean that joint, solder it again, and measure the line: it should have less than an ohm.',
  'half-in': 'Power off, then push the plug in as far as it goes.',
  'odd-jack': 'Use an adapter that the pedal’s manual names, or feed this pedal in another way.',
  'output-part': 'Use another output of the sender. Leave the repair to qualified people.',
  'input-part': 'Take the pedal out of use. Leave the repair of its input to qualified people.',
  'supply-low': 'Use the supply that the manual names. Leave the inside of a supply to qualified people.',
  'not-listening': 'Let the pedal receive program changes, in its menu.',
};

/** What to do about a fault, as sentences. Common practice, no source. */
export function remedyFor(kind: BoardFaultKind): string {
  return REMEDIES[kind];
}
