/** Each cause in plain words: what it is, where to look, what to change, and how strong. */
import { BAUD, sayMicroseconds } from '../signal/index.ts';
import type { Candidate, Cause } from './causes.ts';

/** What a reader is told of a cause. */
export interface CauseWords {
  readonly name: string;
  /** What it does, in a sentence. */
  readonly does: string;
  readonly look: string;
  readonly change: string;
}

/** Where to look and what to change are common practice, no source, except where a sentence follows from the simulation. */
export const CAUSE_WORDS: Readonly<Record<Cause, CauseWords>> = {
  'upside down': {
    name: 'The line is upside down',
    does: 'Every 1 arrives as a 0 and every 0 as a 1.',
    look: 'Look at the serial port’s setting for ‘inverted’, and count the inverting stages between the optocoupler and the port.',
    change: 'Take one inverting stage out, or put one in, or turn the setting round.',
  },
  'swapped and lit': {
    name: 'Two wires are swapped, and the input is lit at rest',
    does: 'Current flows when it should rest, and rests when it should flow; the optocoupler also lets go late.',
    look: 'Look at pins 4 and 5, or tip and ring, at both plugs. Does current flow while nothing is played?',
    change: 'Swap the two wires at one end of the lead.',
  },
  'slow to release': {
    name: 'The input is slow to let go',
    does: 'Each 0 lasts too long, so that the 1 after it is read as a 0.',
    look: 'Look at the optocoupler: its type, and the resistor from its output to the supply.',
    change:
      'Use a smaller pull-up resistor, add the base resistor that the data sheet shows, or use a faster part.',
  },
  'slow to turn on': {
    name: 'The input is slow to turn on',
    does: 'Each 0 begins too late, so that a short one is read as a 1.',
    look: 'Look for too little current, too small a base resistor, or a large capacitor across the input.',
    change: 'Give the input more current, or take the capacitor away.',
  },
  'clock off': {
    name: 'The clocks do not agree',
    does: 'The last bits of a byte are read in the wrong place. Which end is wrong does not show.',
    look: 'Look at the clock of whichever end was built or programmed last: a divider that cannot reach 31250, or a chip that runs without a crystal.',
    change: 'Use a crystal, or a clock that divides to 31250 bits a second.',
  },
  'wrong speed': {
    name: 'A port runs at the wrong speed',
    does: 'One end reads bits of one length while the other sends another.',
    look: 'Look at the speed that the port is set to. It has to be 31250 bits a second.',
    change: 'Set it to 31250. A driver or a program may have chosen the nearest usual speed.',
  },
  weak: {
    name: 'There is hardly enough current',
    does: 'Now and then a 0 is not seen at all.',
    look: 'Look at the resistors of output and input, a second input on the same output, and a 3.3 V output with resistors for 5 V.',
    change: 'Give each input an output of its own, and put in the resistors that belong to the supply.',
  },
  'ground missing': {
    name: 'A ground is missing, and hum gets in',
    does: 'Mains hum holds the line at 0 for some milliseconds, again and again.',
    look: 'Look at the sleeve or the shield of a jack that sends its signal against ground. An isolated input does not need it.',
    change: 'Mend the shield at both plugs.',
  },
  'two senders': {
    name: 'Two outputs send on one line',
    does: 'Bytes of both stand in the log, and where two meet, both are spoiled.',
    look: 'Look for a Y lead that joins two outputs, or a thru that also merges.',
    change: 'Use a merger, or send from one device at a time. Two outputs must never be joined.',
  },
  'running status': {
    name: 'The reader does not understand running status',
    does: 'A message whose status byte is left out, because it is the same as before, is dropped.',
    look: 'Look for a setting ‘running status’ at the sender, and at the program that reads.',
    change: 'Switch it off at the sender, or let the reader keep the last status byte.',
  },
  'real-time inside': {
    name: 'A clock inside a message breaks it',
    does: 'The reader ends the message at a clock byte, which may stand between any two bytes.',
    look: 'Look at the program that reads: bytes from F8 on must not change what it is waiting for.',
    change: 'Switch the clock off at the sender, or mend the program.',
  },
  'full buffer': {
    name: 'A buffer is full',
    does: 'The first bytes arrive; then some are lost, because they come faster than they are read.',
    look: 'Look at the program that reads, and at whatever else it does meanwhile.',
    change: 'Read more often, give the buffer more room, or send with pauses.',
  },
  'program count': {
    name: 'Programs or banks are counted from 0 at one end and from 1 at the other',
    does: 'Every byte is right but for presets, which are one off.',
    look: 'Compare what both devices call their first preset: 0, 1 or A1.',
    change: 'Add or subtract one at the sender, or change how one of them counts.',
  },
  'channel count': {
    name: 'Channels are counted from 0 at one end and from 1 at the other',
    does: 'Every message is right, on the channel beside the one that was meant.',
    look: 'Compare what both call the first channel. On the wire it is 0; on most panels it is 1.',
    change: 'Set one of them one higher or lower.',
  },
  'hidden real-time': {
    name: 'The monitor hides real-time bytes',
    does: 'Clock, or active sensing, arrives and is not shown.',
    look: 'Look for a filter in the monitor, or in the interface that it listens to.',
    change: 'Switch the filter off. Nothing is wrong with the lead.',
  },
  'empty as FF': {
    name: '‘Nothing to read’ is taken for the byte FF',
    does: 'A program reads its port when nothing has come, and takes the answer for FF, or for channel 16.',
    look: 'Look at the program that reads: does it ask whether a byte is there?',
    change: 'Ask first, and read only what is there.',
  },
};

const percent = (fraction: number): string => `${(100 * fraction).toFixed(1)} %`;

const inOneOrder = (amounts: readonly [number, number]): readonly [number, number] => {
  const [one, other] = amounts.map(Math.abs) as [number, number];
  return [Math.min(one, other), Math.max(one, other)];
};

/** Two amounts as one, or as a range. */
function range([least, most]: readonly [number, number], say: (one: number) => string): string {
  return least === most ? say(least) : `${say(least)} to ${say(most)}`;
}

/** How strong a cause is, in words; empty where it has no strength. */
export function sayStrength(candidate: Candidate, amounts: readonly [number, number]): string {
  const way = candidate.amount < 0 ? 'slow' : 'fast';
  const between = inOneOrder(amounts);
  switch (candidate.cause) {
    case 'slow to release':
    case 'slow to turn on':
    case 'swapped and lit':
      return `late by ${range(between, sayMicroseconds)}`;
    case 'clock off':
      return `the reader’s clock runs ${way} by ${range(between, percent)}, or the sender’s the other way`;
    case 'wrong speed': {
      const speed = Math.abs(candidate.amount);
      return `${candidate.amount > 0 ? 'the reader' : 'the sender'} runs at ${speed} bits a second in place of ${BAUD}`;
    }
    case 'weak':
      return `about ${range(between, percent)} of all 0s are missed`;
    case 'program count':
      return candidate.amount > 0 ? 'one more is seen than sent' : 'one less is seen than sent';
    case 'channel count':
      return candidate.amount > 0 ? 'the channel is one higher' : 'the channel is one lower';
    case 'full buffer':
      return `about ${range(between, percent)} of all bytes are lost`;
    case 'upside down':
    case 'ground missing':
    case 'two senders':
    case 'running status':
    case 'real-time inside':
    case 'hidden real-time':
    case 'empty as FF':
      return '';
  }
}
