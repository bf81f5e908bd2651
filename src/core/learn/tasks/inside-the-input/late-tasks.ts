/** Tasks on an input that lets go late: which byte is heard. The bytes are sent and read by the floor of signals. */
import {
  BITS_PER_FRAME,
  PLAIN_JOURNEY,
  bitSecondsOf,
  frameBit,
  hexOf,
  sendOnJourney,
} from '../../../signal/index.ts';
import { linkFor } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, makeJack } from '../../../wiring/index.ts';
import { theBytes } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Bytes whose highest bits are 1, so that their stop bit is safe, and that lose something else with each mistake. */
const BYTES = [0xdb, 0xed, 0xcd, 0xf6, 0xd7, 0xb3, 0xee, 0xcb, 0xd3, 0xf5] as const;

/** How late an input lets go, microseconds: well over half a bit, and well under it. */
const LATE = [20, 22, 24] as const;
const IN_TIME = [8, 10, 12] as const;

/** Bits of data in a byte. */
const MASK = 0xff;

const heard = new Map<string, readonly number[]>();

/** What is heard of a byte behind so many inputs that let go late, sent once for each. */
function hear(byte: number, lateMicro: number, inputs: number): readonly number[] {
  const key = `${byte} ${lateMicro} ${inputs}`;
  const known = heard.get(key) ?? send(byte, lateMicro * 1e-6, inputs);
  heard.set(key, known);
  return known;
}

function send(byte: number, lateSeconds: number, inputs: number): readonly number[] {
  const input = makeJack('in', 'din5', 'din', {
    part: 'H11L1',
    values: { toOnSeconds: 0, toOffSeconds: lateSeconds },
  });
  const link = linkFor(makeJack('out', 'din5', 'din'), input, STRAIGHT_DIN);
  return sendOnJourney(link, undefined, [byte], { ...PLAIN_JOURNEY, hops: inputs }).sending.reception.bytes;
}

function lateByte(level: Level, chance: Chance): Drawn {
  const byte = chance.turn(BYTES);
  const inTime = level >= 2 && chance.pick([true, false, false]);
  const inputs = level === 3 ? 2 : 1;
  const late = chance.pick(inTime ? IN_TIME : LATE) / inputs;
  const whole = late * inputs;
  const right = hear(byte, late, inputs);
  const bits = Array.from({ length: BITS_PER_FRAME }, (_, bit) => frameBit(byte, bit));
  const told = inputs === 1 ? 'an input that lets go' : 'two inputs in a row, each of which lets go';
  const half = (bitSecondsOf({}) / 2) * 1e6;
  return {
    ask: `The byte ${hexOf(byte)} goes through ${told} ${late} µs late. Which byte is heard, in hex? The receiver looks in the middle of each bit.`,
    shows: { shows: 'bits', levels: bits },
    ...theBytes(right, [
      {
        slip: 'nothing lost',
        bytes: [byte],
        says: `Each 1 after a 0 begins ${whole} µs late. The look comes after ${half} µs.`,
      },
      {
        slip: 'first 1 of each row lost',
        bytes: [byte & (byte << 1) & MASK],
        says: `The 1 begins ${whole} µs late, and the look comes after ${half} µs. So it is still seen.`,
      },
      {
        slip: 'counted from the other end',
        bytes: [byte & (byte >> 1)],
        says: 'The lowest bit goes first. The 1 that is lost comes right after a 0 in time.',
      },
      {
        slip: 'every 1 lost',
        bytes: [0],
        says: 'A 1 after a 1 needs no edge: the line is up already.',
      },
      {
        slip: 'ones grow',
        bytes: [(byte | (byte << 1)) & MASK],
        says: 'It lets go late, so light lasts longer. Light is a 0: zeros grow, ones shrink.',
      },
    ]),
    hints: [
      'Letting go late makes a 0 longer. It covers the beginning of the 1 after it.',
      `The look at a bit comes ${half} µs after its beginning.${inputs > 1 ? ' Two inputs are late twice.' : ''}`,
      'Go from bit to bit as they are sent, the start bit first. Where a 1 follows a 0, is it up in time?',
    ],
    steps: [
      `Together it is ${whole} µs late. The look comes after ${half} µs.`,
      whole > half
        ? 'So each 1 that follows a 0 is read as a 0. A 1 that follows a 1 is read right.'
        : 'So each 1 is up in time, and nothing is lost.',
      `Heard: ${right.map(hexOf).join(' ')}.`,
    ],
  };
}

/** The tasks on late inputs. */
export const LATE_TASKS: readonly TaskKind[] = [
  { kind: 'late-byte', title: 'Which byte is heard?', draw: lateByte },
];
