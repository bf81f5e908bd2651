/** Tasks on what is sent: bytes by a manual's table, and what in a log is no part of a press. Bytes are encoded by their floor. */
import { REAL_TIME_BYTES, bankSelect, bytesOf } from '../../../signal/index.ts';
import type { Item, Message } from '../../../signal/index.ts';
import { someOf } from '../chance.ts';
import { eachOf, inHex, inRows, theBytes } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Sounds of one bank: what a program change can call up. */
const IN_BANK = 128;

/** Which bank messages a manual asks for. */
const WANTED = {
  high: 'controller 0 takes the bank, and nothing else is wanted',
  both: 'controller 0 takes 0, then controller 32 takes the bank',
  low: 'controller 32 takes the bank, and nothing else is wanted',
} as const;
type Wanted = keyof typeof WANTED;

const HIGH = 0;
const LOW = 32;

const control = (channel: number, controller: number, value: number): Message => ({
  kind: 'control change',
  channel,
  controller,
  value,
});

/** The bank messages of a manual's kind, on a channel counted from 0. */
function bankMessages(wanted: Wanted, channel: number, bank: number): readonly Message[] {
  if (wanted === 'both') return bankSelect(channel, bank);
  return [control(channel, wanted === 'high' ? HIGH : LOW, bank)];
}

const bytes = (items: readonly Item[]): readonly number[] => bytesOf(items, false);

/** A program change, its number counted from 1. */
const callOf = (channel: number, number: number): Message => ({
  kind: 'program change',
  channel,
  program: number - 1,
});

const TABLE_SAID = {
  'one bank byte only': 'This manual wants both controllers: 0 first, and then 32 with the bank.',
  'both bank bytes always':
    'This manual wants one controller for the bank. The other one would be extra, or would set another bank.',
  'the other controller': 'Look at the table again: which controller takes the bank?',
  'bank after program': 'The program is then called up in the old bank. The bank comes first.',
  'program from 1': 'The manual counts programs from 1, the wire from 0.',
  'channel from 1': 'A player counts channels from 1, the wire from 0.',
  'no bank': 'This sound is not in bank 0. The bank has to be sent.',
};

function bytesFromTable(level: Level, chance: Chance): Drawn {
  const wanted = chance.turn<Wanted>(level < 2 ? ['high', 'both'] : ['high', 'both', 'low']);
  const channel = chance.pick([1, 2, 3, 5, 10]);
  const bank = chance.pick([1, 2]);
  const number = chance.pick([3, 9, 17, 33, 72]);
  const sound = bank * IN_BANK + number;
  const wire = channel - 1;
  const call = callOf(wire, number);
  const select = bankMessages(wanted, wire, bank);
  return {
    ask: `Which bytes call up sound ${sound} on channel ${channel}, in hex? Every status byte is sent.`,
    shows: inRows([
      ['sounds 1 to 128', 'bank 0'],
      ['sounds 129 to 256', 'bank 1'],
      ['sounds 257 to 384', 'bank 2'],
      ['in each bank', 'programs counted from 1'],
      ['bank select', WANTED[wanted]],
    ]),
    ...theBytes(bytes([...select, call]), TABLE_SAID, {
      'one bank byte only': wanted === 'both' && bytes([control(wire, HIGH, bank), call]),
      'both bank bytes always': wanted !== 'both' && bytes([...bankSelect(wire, bank), call]),
      'the other controller':
        wanted !== 'both' && bytes([control(wire, wanted === 'high' ? LOW : HIGH, bank), call]),
      'bank after program': bytes([call, ...select]),
      'program from 1': bytes([...select, callOf(wire, number + 1)]),
      'channel from 1': bytes([...bankMessages(wanted, wire + 1, bank), callOf(wire + 1, number)]),
      'no bank': bytes([call]),
    }),
    hints: [
      'Find the bank in the table, and the number of the sound in its bank.',
      `Take ${IN_BANK} from the number of the sound for each bank before its own.`,
      'First what the manual wants for the bank, then the program change, counted from 0.',
    ],
    steps: [
      `Sound ${sound} is number ${number} of bank ${bank}.`,
      `Bank select: ${inHex(bytes(select))}.`,
      `With the program change: ${inHex(bytes([...select, call]))}.`,
    ],
  };
}

/** What may stand in a log besides a press. */
const EXTRAS: readonly ((channels: readonly number[], chance: Chance) => Item)[] = [
  () => ({ kind: 'bytes', bytes: [REAL_TIME_BYTES.clock] }),
  (channels, chance) => ({
    kind: 'program change',
    channel: chance.pick([4, 6, 8].filter((one) => !channels.includes(one))),
    program: chance.pick([1, 5, 9]),
  }),
  () => ({ kind: 'bytes', bytes: [REAL_TIME_BYTES['active sensing']] }),
  (channels, chance) => ({
    kind: 'note on',
    channel: chance.pick([5, 9, 11].filter((one) => !channels.includes(one))),
    note: 60,
    velocity: chance.pick([64, 100]),
  }),
  (channels) => control(channels[0] ?? 0, HIGH, 0),
];

const hex = (item: Item): string => inHex(bytes([item]));
const oneChannelOn = (item: Message): Message =>
  'channel' in item ? { ...item, channel: item.channel + 1 } : item;

const LOG_SAID = {
  'only single bytes': 'Those are extra. But look at the channel and the kind of the longer ones, too.',
  'single bytes belong to it':
    'A clock (F8) or a sign of life (FE) may come at any time. It belongs to no press.',
  'channels from 1 on the wire': 'On the wire channels are counted from 0: C0 is for channel 1.',
  'all is part of it': 'Hold each line against what the press is to send. Some were not asked for.',
};

/** Lines of a log that are no part of the press, by level. */
const EXTRA_LINES = [2, 2, 3, 4] as const;
/** Channels of two pedals, counted from 0. */
const PAIRS = ['0 1', '2 3', '1 4', '0 9', '3 5'].map((pair) => pair.split(' ').map(Number));

function extraInLog(level: Level, chance: Chance): Drawn {
  const channels = chance.turn(PAIRS);
  const programs = channels.map(() => chance.pick([3, 6, 10, 21]));
  const needed: readonly Message[] = [
    ...channels.map((channel, at) => callOf(channel, programs[at]!)),
    ...(level >= 2 ? [control(channels[0]!, 7, 100)] : []),
  ];
  const extras = someOf(EXTRAS, EXTRA_LINES[level], chance);
  const isPart = new Set(needed.map(hex));
  const lines = [...needed, ...extras.map((extra) => extra(channels, chance))].map(hex);
  /** The lines of the press for who takes C1 for channel 1. */
  const shifted = new Set(needed.map(oneChannelOn).map(hex));
  const isShort = (text: string): boolean => text.length === 2;
  const [one = 0, other = 0] = channels.map((channel) => channel + 1);
  return {
    ask: `A press is to send program ${programs[0] ?? ''} on channel ${one} and program ${programs[1] ?? ''} on channel ${other}, as a player counts${level >= 2 ? `, and controller 7 to 100 on channel ${one}` : ''}. These lines come out. Which of them are no part of the press?`,
    ...eachOf(lines, chance, {
      text: (line) => line,
      right: (line) => !isPart.has(line),
      said: LOG_SAID,
      ticks: {
        'only single bytes': isShort,
        'single bytes belong to it': (line) => !isPart.has(line) && !isShort(line),
        'channels from 1 on the wire': (line) => !shifted.has(line),
        'all is part of it': () => false,
      },
    }),
    hints: [
      'Write down first the bytes that the press has to send.',
      'The first digit is the kind, the second the channel, counted from 0.',
      'Tick each line that is not among them.',
    ],
    steps: [
      `The press is: ${[...isPart].join(', ')}.`,
      `All else is extra: ${lines.filter((text) => !isPart.has(text)).join(', ')}.`,
    ],
  };
}

/** The tasks on what is sent. */
export const TABLE_TASKS: readonly TaskKind[] = [
  { kind: 'bytes-from-table', title: "A manual's table", draw: bytesFromTable },
  { kind: 'extra-in-log', title: 'What is extra?', draw: extraInLog },
];
