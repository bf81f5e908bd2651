/** Tasks on an input that lets go late: which byte is heard. The bytes are sent and read by the floor of signals. */
import { PLAIN_JOURNEY, bitSecondsOf, hexOf, sendOnJourney } from '../../../signal/index.ts';
import { dinLink } from '../../links.ts';
import { remembered } from '../chance.ts';
import { inBits, inHex, theBytes } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Bytes whose highest bits are 1, so that their stop bit is safe, and that lose something else with each mistake. */
const BYTES = [0xdb, 0xed, 0xcd, 0xf6, 0xd7, 0xb3, 0xee, 0xcb, 0xd3, 0xf5] as const;

/** How late an input lets go, microseconds: well over half a bit, and well under it. */
const LATE = [20, 22, 24] as const;
const IN_TIME = [8, 10, 12] as const;

/** Bits of data in a byte. */
const MASK = 0xff;

/** What is heard of a byte behind so many inputs that let go late. */
const hear = remembered((byte: number, lateMicro: number, inputs: number): readonly number[] => {
  const late = dinLink({}, { part: 'H11L1', values: { toOnSeconds: 0, toOffSeconds: lateMicro * 1e-6 } });
  return sendOnJourney(late, undefined, [byte], { ...PLAIN_JOURNEY, hops: inputs }).sending.reception.bytes;
});

/** Half a bit, microseconds. */
const HALF = (bitSecondsOf({}) / 2) * 1e6;

const saidWhere = (whole: number) => ({
  'nothing lost': `Each 1 after a 0 begins ${whole} µs late. The look comes after ${HALF} µs.`,
  'first 1 of each row lost': `The 1 begins ${whole} µs late, and the look comes after ${HALF} µs. So it is still seen.`,
  'counted from the other end':
    'The lowest bit goes first. The 1 that is lost comes right after a 0 in time.',
  'every 1 lost': 'A 1 after a 1 needs no edge: the line is up already.',
  'ones grow': 'It lets go late, so light lasts longer. Light is a 0: zeros grow, ones shrink.',
});

function lateByte(level: Level, chance: Chance): Drawn {
  const byte = chance.turn(BYTES);
  const inTime = level >= 2 && chance.pick([true, false, false]);
  const inputs = level === 3 ? 2 : 1;
  const late = chance.pick(inTime ? IN_TIME : LATE) / inputs;
  const whole = late * inputs;
  const right = hear(byte, late, inputs);
  const told = inputs === 1 ? 'an input that lets go' : 'two inputs in a row, each of which lets go';
  return {
    ask: `The byte ${hexOf(byte)} goes through ${told} ${late} µs late. Which byte is heard, in hex? The receiver looks in the middle of each bit.`,
    shows: inBits(byte),
    ...theBytes(right, saidWhere(whole), {
      'nothing lost': [byte],
      'first 1 of each row lost': [byte & (byte << 1) & MASK],
      'counted from the other end': [byte & (byte >> 1)],
      'every 1 lost': [0],
      'ones grow': [(byte | (byte << 1)) & MASK],
    }),
    hints: [
      'Letting go late makes a 0 longer. It covers the beginning of the 1 after it.',
      `The look at a bit comes ${HALF} µs after its beginning.${inputs > 1 ? ' Two inputs are late twice.' : ''}`,
      'Go from bit to bit as they are sent, the start bit first. Where a 1 follows a 0, is it up in time?',
    ],
    steps: [
      `Together it is ${whole} µs late. The look comes after ${HALF} µs.`,
      whole > HALF
        ? 'So each 1 that follows a 0 is read as a 0. A 1 that follows a 1 is read right.'
        : 'So each 1 is up in time, and nothing is lost.',
      `Heard: ${inHex(right)}.`,
    ],
  };
}

/** The tasks on late inputs. */
export const LATE_TASKS: readonly TaskKind[] = [
  { kind: 'late-byte', title: 'Which byte is heard?', draw: lateByte },
];
