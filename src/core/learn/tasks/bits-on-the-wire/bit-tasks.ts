/** Tasks on bits and bytes. Bytes are made and taken apart by the signal floor; the formulas here are those of the mistakes. */
import { hexOf } from '../../../signal/index.ts';
import { inBits, inHex, oneOf, theBytes, whichOf } from '../forms.ts';
import { DATA_BITS, MESSAGE_TASKS, NOTES } from './message-tasks.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';
import { capital } from '../../../verdict/index.ts';

const binary = (byte: number): string => byte.toString(2).padStart(DATA_BITS, '0');
/** The byte read the other way round. */
const turned = (byte: number): number => parseInt([...binary(byte)].toReversed().join(''), 2);
const flipped = (byte: number): number => byte ^ 0xff;
/** The byte read one bit too early: the start bit taken for the lowest. */
const early = (byte: number): number => (byte << 1) & 0xff;

/** Bytes whose mistakes all look different: not the same turned round. */
const BYTES: readonly number[] = [0x90, 0x35, 0x4c, 0x07, 0xb0, 0x13, 0xc2, 0x2e, 0x8d, 0x61, 0x1a, 0x74];
/** The same with longer runs, for level 3. */
const HARD_BYTES: readonly number[] = [0xf8, 0x03, 0x1f, 0x70, 0xe1, 0x0f, 0xbf, 0x01];

const TRACE_SAID = {
  'lowest bit last': 'The lowest bit leaves first. Read from the right-hand end when you write it down.',
  'current means 1': 'Current on is a 0. A 1 is dark.',
  both: 'Two things at once: current on is a 0, and the lowest bit leaves first.',
  'start bit counted': 'The first bit is the start bit. It belongs to no number.',
};
const traceSlips = (byte: number) => ({
  'lowest bit last': [turned(byte)],
  'current means 1': [flipped(byte)],
  both: [turned(flipped(byte))],
  'start bit counted': [early(byte)],
});

const bitWords = (byte: number): string => inBits(byte).levels.map(Number).join(' ');

function traceToHex(level: Level, chance: Chance): Drawn {
  const byte = chance.turn(level === 3 ? HARD_BYTES : BYTES);
  return {
    ask: 'One byte on the wire, from its start bit to its stop bit. Which byte is it, in hex?',
    shows: inBits(byte),
    ...theBytes([byte], TRACE_SAID, traceSlips(byte)),
    hints: [
      'A byte has a start bit, eight data bits, and a stop bit.',
      'Current on is a 0. The lowest bit comes first.',
      'Write the eight data bits from right to left, then make two groups of four.',
    ],
    steps: [
      `With start and stop bit: ${bitWords(byte)}.`,
      `The eight data bits, highest first: ${binary(byte)}.`,
      `In hex: ${hexOf(byte)}.`,
    ],
  };
}

function byteToBits(level: Level, chance: Chance): Drawn {
  const byte = chance.turn(level === 3 ? HARD_BYTES : BYTES);
  const { slips } = theBytes([byte], TRACE_SAID, traceSlips(byte));
  const wrong = slips.map(({ name, answer, sentence }) => ({
    text: bitWords(parseInt(answer, 16)),
    slip: name,
    says: sentence,
  }));
  return {
    ask: `The byte ${hexOf(byte)} is sent. What stands on the wire, from the first bit to the last? A 0 is current on.`,
    ...oneOf([{ text: bitWords(byte), right: true }, ...wrong], chance),
    hints: [
      'A byte has a start bit, eight data bits, and a stop bit.',
      'The start bit is a 0, the stop bit a 1.',
      'The lowest bit leaves first.',
    ],
    steps: [
      `${hexOf(byte)} in binary, highest bit first: ${binary(byte)}.`,
      `Turned round, between a 0 and a 1: ${bitWords(byte)}.`,
    ],
  };
}

const NEITHER = 'neither as it was sent';
const BYTE_BY_BYTE =
  'Take the bytes one by one: a byte from 80 up starts a new message, below it data come in pairs.';
const HEARD = ['both notes', 'the first note only', 'the second note only', NEITHER] as const;

function byteLost(level: Level, chance: Chance): Drawn {
  const note = chance.pick(NOTES);
  const status = 0x90 | chance.pick([0, 2, 9]);
  const running = level === 3;
  const sent = [status, note, 0x40, ...(running ? [] : [status]), note + 4, 0x50];
  const at = chance.turn(sent.map((_, place) => place));
  const left = sent.filter((_, place) => place !== at);
  const heard = notesIn(left);
  const [first, second] = [inHex([note, 0x40]), inHex([note + 4, 0x50])].map((one) => heard.includes(one));
  const right = first
    ? second
      ? 'both notes'
      : 'the first note only'
    : second
      ? 'the second note only'
      : NEITHER;
  return {
    ask: `Two notes are sent: ${inHex(sent)}. Byte number ${at + 1} (${hexOf(sent[at] ?? 0)}) is lost. What is heard as it was sent?`,
    ...whichOf(HEARD, right, capital, (one) => [`says ${one}`, BYTE_BY_BYTE], chance),
    hints: [
      'A status byte begins a message and drops what was not whole.',
      'Data bytes come in pairs; the status byte before them still holds.',
      'Write down the bytes that are left and go through them one by one.',
    ],
    steps: [`Left: ${inHex(left)}.`, `${capital(right)}.`],
  };
}

/** Notes that a receiver takes from the bytes, each with its speed, in hex: pairs of data after a status byte (MIDI 1.0 4.2.1, running status). */
function notesIn(bytes: readonly number[]): readonly string[] {
  const notes: string[] = [];
  let begun = false;
  let held: number | undefined;
  for (const byte of bytes) {
    if (byte >= FIRST_STATUS) {
      begun = true;
      held = undefined;
    } else if (!begun) continue;
    else if (held === undefined) held = byte;
    else {
      notes.push(inHex([held, byte]));
      held = undefined;
    }
  }
  return notes;
}

/** The lowest status byte. */
const FIRST_STATUS = 0x80;

/** The tasks of the lesson. */
export const BIT_TASKS: readonly TaskKind[] = [
  { kind: 'trace-to-hex', title: 'From the wire to a byte', draw: traceToHex },
  { kind: 'byte-to-bits', title: 'From a byte to the wire', draw: byteToBits },
  ...MESSAGE_TASKS,
  { kind: 'byte-lost', title: 'One byte is lost', draw: byteLost },
];
