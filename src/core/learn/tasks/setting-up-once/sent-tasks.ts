/** Tasks on what is sent: which kind of message, numbers counted from 0 or 1, and the clock. Bytes are encoded by their floor. */
import { bytesOf, hexOf } from '../../../signal/index.ts';
import { counted } from '../../say.ts';
import { EXACT, aNumber, casesAt, inHex, plainNumber, theBytes, whichText, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** What can be sent to a pedal. */
const KINDS = { program: 'A program change', control: 'A control change', clock: 'A clock' };
type Kind = keyof typeof KINDS;

/** Wishes, and what serves each. */
const WISHES: readonly (readonly [wish: string, kind: Kind])[] = [
  ['The reverb is to call up its stored sound for the next song.', 'program'],
  ['The echo is to go off for one verse, and all its knobs are to stay as they are.', 'control'],
  ['The echo is to repeat in time with the drum machine.', 'clock'],
  ['The volume of the drive is to go down a little, and nothing else.', 'control'],
  ['Amount, tone and level of the chorus are all to change at once, as they are stored.', 'program'],
  ['The tremolo is to speed up as the song speeds up.', 'clock'],
  ['The looper is to stop recording, and its settings are to stay.', 'control'],
  ['One footswitch press is to bring back the sound that was saved under number 12.', 'program'],
  ['A foot pedal is to sweep one knob of the phaser from end to end.', 'control'],
];

const SERVES = {
  program: 'A whole stored sound.',
  control: 'One thing in the sound that is there.',
  clock: 'The tempo.',
};
const KIND_SAID: Readonly<Record<Kind, Mistake>> = {
  program: [
    'a whole sound for one knob',
    'A program change calls up a whole stored sound. Is that what is wanted?',
  ],
  control: [
    'one knob for a whole sound',
    'A control change moves one thing in the sound that is there. Is that enough here?',
  ],
  clock: ['clock for a message', 'A clock tells the tempo and nothing else.'],
};

function programOrControl(level: Level, chance: Chance): Drawn {
  const [wish, kind] = chance.turn(casesAt(level, WISHES, [5, 9]));
  return {
    ask: `${wish} What do you send?`,
    ...whichText(KINDS, kind, (one) => KIND_SAID[one], chance),
    hints: [
      'A program change calls up a stored sound, a control change moves one thing, a clock tells the tempo.',
      'Is it a whole sound, one thing in it, or the tempo?',
      'What is to stay as it is? A program change leaves nothing as it is.',
    ],
    steps: [SERVES[kind], `${KINDS[kind]}.`],
  };
}

const nextDoorSaid = (fromZero: boolean) => ({
  'the preset next door': fromZero
    ? 'This manual counts from 0, as the wire does: its number goes out as it is.'
    : 'This manual counts from 1, the wire from 0. One has to be taken off.',
  'channel from 0': 'Channels are counted from 1 in the manual and from 0 on the wire.',
  'decimal as hex': 'That is the number in decimal. Write it in hex.',
  'control change sent': 'B begins a control change. A program change begins with C.',
});

function nextDoor(level: Level, chance: Chance): Drawn {
  const fromZero = chance.turn([true, false]);
  const preset = chance.pick([3, 8, 12, 17, 31, 64]);
  const channel = chance.pick(level < 2 ? [1] : [2, 3, 10]);
  const program = fromZero ? preset : preset - 1;
  const bytes = (wire: number, number: number): readonly number[] =>
    bytesOf([{ kind: 'program change', channel: wire, program: number }], false);
  return {
    ask: `A manual counts its presets from ${fromZero ? '0' : '1'}, and channels from 1. Which bytes call up preset ${preset} on channel ${channel}, in hex?`,
    ...theBytes(bytes(channel - 1, program), nextDoorSaid(fromZero), {
      'the preset next door': bytes(channel - 1, fromZero ? preset - 1 : preset),
      'channel from 0': bytes(channel, program),
      'decimal as hex': [0xc0 | (channel - 1), parseInt(String(program), 16)],
      'control change sent': [0xb0 | (channel - 1), program],
    }),
    hints: [
      'The wire counts everything from 0.',
      `This manual counts presets from ${fromZero ? '0' : '1'}: is one to be taken off?`,
      'C and the channel less 1, then the number of the program in hex.',
    ],
    steps: [
      `Channel ${channel} is ${channel - 1} on the wire, preset ${preset} is ${program}.`,
      `${inHex(bytes(channel - 1, program))}.`,
    ],
  };
}

/** Clocks for a quarter note: MIDI 1.0 Detailed Specification 4.2.1. */
const CLOCKS_A_BEAT = 24;
const SECONDS_A_MINUTE = 60;
/** Bits of a byte on the wire. */
const BITS = 10;

const CLOCK_BYTES_SAID = {
  'one clock a beat': `A clock comes ${CLOCKS_A_BEAT} times for each quarter note, not once.`,
  'a minute for the time asked':
    'That is for a whole minute. How many quarter notes are there in the time that is asked for?',
  'clock of three bytes': 'A clock is one byte alone. It has no channel and no number.',
  'bits for bytes': 'Those are bits. Ten of them make a byte.',
  'programs left out': 'The program changes are sent too, two bytes each.',
};

function clockBytes(level: Level, chance: Chance): Drawn {
  const tempo = chance.turn(level < 2 ? [60, 120, 90, 150] : [60, 75, 100, 120, 140, 180]);
  const seconds = level < 2 ? 1 : chance.pick([2, 10, 30]);
  const programs = level === 3 ? chance.pick([2, 4]) : 0;
  const beats = (tempo * seconds) / SECONDS_A_MINUTE;
  const clocks = Math.round(beats * CLOCKS_A_BEAT);
  const [one = 0] = bytesOf([{ kind: 'real-time', signal: 'clock' }], false);
  const program = bytesOf([{ kind: 'program change', channel: 0, program: 0 }], false).length;
  const right = clocks + programs * program;
  return {
    ask: `The tempo is ${tempo} quarter notes a minute, and a clock is sent ${CLOCKS_A_BEAT} times for each.${programs > 0 ? ` In between, ${programs} program changes are sent.` : ''} How many bytes leave in ${counted(seconds, 'second')}?`,
    ...aNumber(right, 'bytes', EXACT, CLOCK_BYTES_SAID, {
      'one clock a beat': beats + programs * program,
      'a minute for the time asked': tempo * CLOCKS_A_BEAT + programs * program,
      'clock of three bytes': 3 * clocks + programs * program,
      'bits for bytes': right * BITS,
      'programs left out': programs > 0 && clocks,
    }),
    hints: [
      'First the quarter notes in that time, then the clocks.',
      `A clock is one byte, ${hexOf(one)}.`,
      programs > 0 ? 'Add two bytes for each program change.' : `Quarter notes times ${CLOCKS_A_BEAT}.`,
    ],
    steps: [
      `Quarter notes in that time: ${plainNumber(beats)}. Clocks: ${clocks}, of one byte each.`,
      programs > 0
        ? `With ${programs} program changes of ${program} bytes: ${right} bytes.`
        : `${right} bytes.`,
    ],
  };
}

/** The tasks on what is sent. */
export const SENT_TASKS: readonly TaskKind[] = [
  { kind: 'program-or-control', title: 'What do you send?', draw: programOrControl },
  { kind: 'next-door', title: 'The preset next door', draw: nextDoor },
  { kind: 'clock-bytes', title: 'The clock', draw: clockBytes },
];
