/** Tasks on messages: their bytes, how long they take, and running status. */
import { BITS_PER_FRAME, bitSecondsOf, bytesOf, hexOf } from '../../../signal/index.ts';
import type { Item } from '../../../signal/index.ts';
import { counted } from '../../say.ts';
import { ROUNDING, aNumber, inHex, plainNumber, theBytes } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Notes and speeds that look different from one another in hex. */
export const NOTES = [0x30, 0x35, 0x37, 0x3c, 0x40, 0x43, 0x48] as const;
const SPEEDS = [0x00, 0x28, 0x40, 0x5a, 0x64, 0x7f] as const;

/** Data bits of a byte. */
export const DATA_BITS = 8;

const CHANNELS = [1, 2, 3, 5, 8, 10, 12, 16] as const;

const MESSAGE_SAID = {
  'channel from 0': 'A player counts channels from 1, the wire from 0.',
  'value first': 'The number of the controller comes first, then its value.',
  'program from 0': 'Counted from 1, the first program is 00 on the wire.',
  'both from 0': 'Both count from 1 for a player and from 0 on the wire: channel and program.',
  'takes a data byte too many': 'A program change has one data byte.',
  'another kind': 'B is for controllers, C for programs.',
};

function messageBytes(level: Level, chance: Chance): Drawn {
  const channel = chance.turn(CHANNELS);
  const program = 2 + chance.pick(Array.from({ length: 126 }, (_, at) => at));
  const controller = chance.pick([7, 11, 64]);
  const value = chance.pick([0, 1, 64, 100, 127]);
  const change = level === 3 && chance.pick([true, false]);
  const item: Item = change
    ? { kind: 'control change', channel: channel - 1, controller, value }
    : { kind: 'program change', channel: channel - 1, program: program - 1 };
  const bytes = bytesOf([item], false);
  const [status = 0] = bytes;
  return {
    ask: change
      ? `Controller ${controller} to ${value} on channel ${channel}, as a player counts channels. Which bytes, in hex?`
      : `Program ${program} on channel ${channel}, as a player counts, from 1. Which bytes, in hex?`,
    ...theBytes(bytes, MESSAGE_SAID, messageSlips(bytes, channel, change)),
    hints: [
      'A status byte says what it is and for which channel, then come the data bytes.',
      change ? 'A control change begins with B.' : 'A program change begins with C.',
      'Take 1 from whatever a player counts from 1, then write it in hex.',
    ],
    steps: [
      `Channel ${channel} is ${channel - 1} on the wire: the status byte is ${hexOf(status)}.`,
      change
        ? `Controller ${controller} is ${hexOf(controller)}, its value ${hexOf(value)}.`
        : `Program ${program} is ${program - 1} on the wire, ${hexOf(program - 1)} in hex.`,
      `${inHex(bytes)}.`,
    ],
  };
}

/** What known mistakes make of the bytes of a message on a channel, which a player counts from 1. */
function messageSlips(bytes: readonly number[], channel: number, change: boolean) {
  const [status = 0, ...data] = bytes;
  const fromZero = (status & 0xf0) | (channel % 16);
  const [program = 0] = data.map((one) => one + 1);
  return {
    'channel from 0': [fromZero, ...data],
    'value first': change && [status, ...data.toReversed()],
    'program from 0': !change && [status, program],
    'both from 0': !change && [fromZero, program],
    'takes a data byte too many': !change && [...bytes, 0],
    'another kind': [(change ? 0xc0 : 0xb0) | (status & 0x0f), ...data],
  };
}

const LIST_TIME_SAID = {
  'eight bits a byte': 'A byte has a start bit and a stop bit too: ten bits in all.',
  'a byte a message': 'Count the bytes of each message: a note has three, a program change two.',
  'three bytes each': 'A program change has two bytes, not three.',
  'bits for bytes': 'That is one bit for each byte. A byte takes ten.',
};

function listTime(level: Level, chance: Chance): Drawn {
  const notes = chance.turn([1, 2, 3, 4, 5, 6]);
  const programs = chance.pick(level >= 2 ? [1, 2, 3, 4] : [0, 1]);
  const controls = level === 3 ? chance.pick([1, 2, 3]) : 0;
  const items = listOf(notes, programs, controls);
  const bytes = bytesOf(items, false).length;
  const milliseconds = (bits: number): number => bits * bitSecondsOf({}) * 1e3;
  const told = [
    counted(notes, 'note-on'),
    counted(programs, 'program change'),
    counted(controls, 'control change'),
  ];
  return {
    ask: `How long does this take on the wire, one right after the other: ${told.filter((one) => !one.startsWith('0')).join(', ')}? Every status byte is sent.`,
    ...aNumber(milliseconds(bytes * BITS_PER_FRAME), 'ms', ROUNDING, LIST_TIME_SAID, {
      'eight bits a byte': milliseconds(bytes * DATA_BITS),
      'a byte a message': milliseconds(items.length * BITS_PER_FRAME),
      'three bytes each': milliseconds(items.length * 3 * BITS_PER_FRAME),
      'bits for bytes': milliseconds(bytes),
    }),
    hints: [
      'Count the bytes, then the bits.',
      `One bit lasts ${plainNumber(bitSecondsOf({}) * 1e6)} µs.`,
      `A byte takes ${BITS_PER_FRAME} bits.`,
    ],
    steps: [
      `${items.length} messages make ${bytes} bytes.`,
      `${bytes} bytes of ${BITS_PER_FRAME} bits: ${bytes * BITS_PER_FRAME} bits.`,
      `Each lasts ${plainNumber(bitSecondsOf({}) * 1e6)} µs: ${plainNumber(milliseconds(bytes * BITS_PER_FRAME))} ms.`,
    ],
  };
}

/** So many notes, program changes and controllers, each on a channel of its own. */
function listOf(notes: number, programs: number, controls: number): readonly Item[] {
  const each = (count: number, item: (channel: number) => Item): readonly Item[] =>
    Array.from({ length: count }, (_, channel) => item(channel));
  return [
    ...each(notes, (channel) => ({ kind: 'note on', channel, note: 60, velocity: 64 })),
    ...each(programs, (channel) => ({ kind: 'program change', channel, program: 4 })),
    ...each(controls, (channel) => ({ kind: 'control change', channel, controller: 7, value: 100 })),
  ];
}

const CLOCK = 0xf8;

const EXPAND_RUNNING_SAID = {
  'real-time ends running status':
    'A clock may stand anywhere and ends nothing: the status byte before it still holds.',
  'left as it is': 'Put the status byte before each pair of data bytes.',
  'only the first': 'The data bytes that follow are notes too: the status byte still holds.',
  'clock kept': 'The clock was to be left out.',
};

function expandRunning(level: Level, chance: Chance): Drawn {
  const channel = chance.turn([0, 1, 2, 3, 4, 5, 6, 7]);
  const count = level === 3 ? 4 : 3;
  const notes = Array.from({ length: count }, () => [chance.pick(NOTES), chance.pick(SPEEDS)] as const);
  const status = 0x90 | channel;
  const clockAfter = level >= 2 ? 1 + chance.pick([0, 1]) : undefined;
  /** Notes one after the other, each with something before it, and the clock where it is asked for. */
  const written = (before: readonly number[], clock: boolean): readonly number[] =>
    notes.flatMap((note, at) => [...before, ...note, ...(clock && at + 1 === clockAfter ? [CLOCK] : [])]);
  const sent = [status, ...written([], true)];
  const right = written([status], false);
  return {
    ask: `These bytes use running status: ${inHex(sent)}. Write the notes out in full, each with its status byte${clockAfter === undefined ? '' : ', and leave the clock (F8) out'}.`,
    ...theBytes(right, EXPAND_RUNNING_SAID, {
      'real-time ends running status': clockAfter !== undefined && right.slice(0, 3 * clockAfter),
      'left as it is': [status, ...written([], false)],
      'only the first': right.slice(0, 3),
      'clock kept': clockAfter !== undefined && written([status], true),
    }),
    hints: [
      'A status byte holds until another one comes.',
      'A byte below 80 is data.',
      'Two data bytes make a note.',
    ],
    steps: [`The status byte is ${hexOf(status)}; pairs of data bytes follow.`, `In full: ${inHex(right)}.`],
  };
}

/** The tasks on messages. */
export const MESSAGE_TASKS: readonly TaskKind[] = [
  { kind: 'message-bytes', title: 'Which bytes?', draw: messageBytes },
  { kind: 'list-time', title: 'How long does it take?', draw: listTime },
  { kind: 'expand-running', title: 'Write it out in full', draw: expandRunning },
];
