/** Tasks on chains: what delays do to bits, how long a chain may be, and kinds of THRU. Delays here are drawn by the seed. */
import { STANDARD_EDGE_BUDGET, bitSecondsOf } from '../../../signal/index.ts';
import { EXACT, ROUNDING, aNumber, inRows, plainNumber, whichText } from '../forms.ts';
import { THRU_TASKS } from './thru-tasks.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Microseconds in a second: delays are told in microseconds. */
const MICRO = 1e6;

/** Delays of an input's output after its LED, microseconds. */
interface Delays {
  readonly on: number;
  readonly off: number;
}

/** Slower to off than to on, as optocouplers are; the last two are for level 3, where one is slower to on. */
const DELAYS: readonly Delays[] = [
  { on: 0.5, off: 1.1 },
  { on: 0.8, off: 1.6 },
  { on: 1, off: 2.5 },
  { on: 0.4, off: 2 },
  { on: 1.2, off: 1.9 },
  { on: 0.6, off: 2.1 },
];
const ODD_DELAYS: readonly Delays[] = [...DELAYS, { on: 2.2, off: 1 }, { on: 1.8, off: 0.7 }];

const shiftOf = ({ on, off }: Delays): number => Math.abs(off - on);
const delayRows = ({ on, off }: Delays): readonly (readonly [string, string])[] => [
  ['each input is on', `${on} µs after light begins`],
  ['and off', `${off} µs after light ends`],
];
const drawnDelays = (level: Level, chance: Chance): Delays => chance.turn(level === 3 ? ODD_DELAYS : DELAYS);

const SHIFT_AFTER_SAID = {
  'adds delays':
    'Both edges come late. What changes the bit is only how much later the one is than the other.',
  'takes one delay':
    'An edge that is late on both sides moves the bit and does not stretch it. Take the difference.',
  'own input forgotten': 'The last device has an input too: every link counts.',
  'one link': 'That is one link. They add up.',
};

function shiftAfter(level: Level, chance: Chance): Drawn {
  const delays = drawnDelays(level, chance);
  const links = chance.pick([3, 4, 5, 6]);
  const shift = shiftOf(delays);
  return {
    ask: `Bits go through ${links} links one after the other, each with such an input. By how many microseconds is a lone bit longer or shorter at the end?`,
    shows: inRows([...delayRows(delays), ['links', String(links)]]),
    ...aNumber(links * shift, 'µs', ROUNDING, SHIFT_AFTER_SAID, {
      'adds delays': links * (delays.on + delays.off),
      'takes one delay': links * Math.max(delays.on, delays.off),
      'own input forgotten': (links - 1) * shift,
      'one link': shift,
    }),
    hints: [
      'A bit is stretched by the difference of the two delays.',
      'Work out the difference for one input.',
      'Take it as often as there are links.',
    ],
    steps: [
      `One input: ${delays.off} µs and ${delays.on} µs differ by ${plainNumber(shift)} µs.`,
      `${links} links: ${plainNumber(links * shift)} µs.`,
    ],
  };
}

const LONE_BIT_SAID = {
  'wrong way': 'A 0 is light. Slow to go off makes light longer and dark shorter.',
  unchanged: 'It would be so if both delays were alike. They are not.',
  'one link': 'That is after one link. Each link does it again.',
};

function loneBit(level: Level, chance: Chance): Drawn {
  const delays = drawnDelays(level, chance);
  const links = chance.pick([2, 3, 4, 5]);
  const bit = chance.pick([0, 1] as const);
  const whole = bitSecondsOf({}) * MICRO;
  const longerOff = delays.off > delays.on;
  const change = links * shiftOf(delays);
  const right = whole + (longerOff === (bit === 0) ? change : -change);
  return {
    ask: `A lone ${bit} is sent between bits of the other kind. How long is it after ${links} links, in microseconds?`,
    shows: inRows([...delayRows(delays), ['a bit as it is sent', `${plainNumber(whole)} µs`]]),
    ...aNumber(right, 'µs', LONE_SHARE, LONE_BIT_SAID, {
      'wrong way': 2 * whole - right,
      unchanged: whole,
      'one link': whole + (right > whole ? 1 : -1) * shiftOf(delays),
    }),
    hints: [
      'A 0 is light, a 1 is dark.',
      'Work out by how much light grows in one input: off less on.',
      'Take that as often as there are links, and add it to a 0 or take it from a 1.',
    ],
    steps: [
      `In one input light grows by ${plainNumber(delays.off - delays.on)} µs, in ${links} by ${plainNumber(links * (delays.off - delays.on))} µs.`,
      `A lone ${bit} is ${bit === 0 ? 'light' : 'dark'}: ${plainNumber(whole)} µs become ${plainNumber(right)} µs.`,
    ],
  };
}

/** Share by which the length of a bit may be off: small against what one link changes. */
const LONE_SHARE = 0.004;

const GROWN = {
  zeros: 'Zeros grow and ones shrink.',
  ones: 'Ones grow and zeros shrink.',
  none: 'Neither: all bits keep their length.',
};
const GROWN_SAID = {
  zeros: 'A 0 is light. It lasts longer when the input is slower to off than to on.',
  ones: 'A 1 is dark. It lasts longer when the input is slower to on than to off.',
  none: 'Bits keep their length only where both delays are alike.',
};

function whatGrows(level: Level, chance: Chance): Drawn {
  const delays = chance.turn([...ODD_DELAYS, ...(level >= 2 ? [{ on: 1.5, off: 1.5 }] : [])]);
  const right = delays.off > delays.on ? 'zeros' : delays.off < delays.on ? 'ones' : 'none';
  return {
    ask: 'What does a chain of such inputs do to the bits?',
    shows: inRows(delayRows(delays)),
    ...whichText(GROWN, right, (one) => [`says ${one}`, GROWN_SAID[one]], chance),
    hints: [
      'A 0 is light, a 1 is dark.',
      'Which of the two delays is longer?',
      'Slow to off: light lasts longer.',
    ],
    steps: [`On after ${delays.on} µs, off after ${delays.off} µs.`, GROWN[right]],
  };
}

const LONGEST_CHAIN_SAID = {
  'half a bit':
    'Half a bit is there only for a receiver that looks in the very middle, with clocks that agree. Take what is told.',
  'a whole bit': 'Long before a whole bit is gone the receiver reads the one beside it.',
  'rounded up': 'The last one would go over what the receiver bears. Round down.',
};

function longestChain(level: Level, chance: Chance): Drawn {
  const shift = chance.turn(level === 3 ? [0.35, 0.45, 0.9, 1.7, 2.3] : [0.5, 0.7, 0.6, 1.3, 1.1, 1.6]);
  const budget = Math.floor(STANDARD_EDGE_BUDGET.lateSeconds * MICRO * 10) / 10;
  const bit = bitSecondsOf({}) * MICRO;
  const most = (room: number): number => Math.floor(room / shift);
  return {
    ask: 'Each link of a chain shifts edges by as much as is told here. How many links may the chain have?',
    shows: inRows([
      ['shift of one link', `${shift} µs`],
      ['a receiver bears at most', `${budget} µs, both clocks at their worst`],
    ]),
    ...aNumber(most(budget), 'links', EXACT, LONGEST_CHAIN_SAID, {
      'half a bit': most(bit / 2),
      'a whole bit': most(bit),
      'rounded up': most(budget) + 1,
    }),
    hints: [
      'Shifts add up, link by link.',
      'How often does the shift of one link go into what the receiver bears?',
      'Divide, and round down.',
    ],
    steps: [
      `${budget} µs over ${shift} µs: ${plainNumber(budget / shift)}.`,
      `Rounded down: ${most(budget)} links.`,
    ],
  };
}

/** The tasks of the lesson. */
export const CHAIN_TASKS: readonly TaskKind[] = [
  { kind: 'shift-after', title: 'How far do edges shift?', draw: shiftAfter },
  { kind: 'what-grows', title: 'Which bits grow?', draw: whatGrows },
  { kind: 'lone-bit', title: 'A lone bit', draw: loneBit },
  ...THRU_TASKS,
  { kind: 'longest-chain', title: 'The longest chain', draw: longestChain },
];
