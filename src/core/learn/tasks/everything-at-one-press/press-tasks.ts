/** Tasks on everything at one press, and the one on its time. Presses are timed by the board. */
import type { PressItem } from '../../../plan/index.ts';
import { BITS_PER_FRAME, bitSecondsOf } from '../../../signal/index.ts';
import { PEDALS } from '../../boards.ts';
import { someOf } from '../chance.ts';
import { ROUNDING, aNumber, casesAt, inRows, plainNumber } from '../forms.ts';
import { TABLE_TASKS } from './table-tasks.ts';
import { orderOfPress } from './order-task.ts';
import { farOrNear } from './first-task.ts';
import { runningSaves } from './saves-task.ts';
import { MILLI, bank, control, program, sayItem, timed } from './presses.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Data bits of a byte. */
const DATA_BITS = 8;

/** What each pedal of a press gets, by turns: B for a bank, P for a program, C for a controller. */
const GIVEN: readonly (readonly string[])[] = [
  ['P', 'P', 'P'],
  ['P', 'BP'],
  ['P', 'P', 'P', 'P'],
  ['BP', 'PC'],
  ['BP', 'BP', 'P'],
  ['PCC', 'P'],
  ['BPC', 'P', 'P'],
];

function pressOf(given: readonly string[], names: readonly string[], chance: Chance): readonly PressItem[] {
  return given.flatMap((sends, at) =>
    [...sends].map((send, place): PressItem => {
      const name = names[at] ?? '';
      if (send === 'B') return bank(name);
      return send === 'P' ? program(name, chance.pick([2, 5, 9, 17])) : control(name, 20 + place);
    }),
  );
}

/** Milliseconds of bytes on the wire. */
const milliseconds = (bytes: number, bits: number = BITS_PER_FRAME): number =>
  bytes * bits * bitSecondsOf({}) * MILLI;

const TIME_SAID = {
  'loading time on the wire': 'Loading goes on inside the pedal. The wire does not wait for it.',
  'all at once': 'All bytes share one wire: they follow one another.',
  'a bank as one control change': 'A bank is two control changes here, of three bytes each.',
  'three bytes each': 'A program change has two bytes, not three.',
  'eight bits a byte': 'A byte has a start bit and a stop bit too: ten bits in all.',
};

function pressTime(level: Level, chance: Chance): Drawn {
  const given = chance.turn(casesAt(level, GIVEN, [4, 7]));
  const names = someOf(PEDALS, given.length, chance);
  const press = pressOf(given, names, chance);
  const { bytes, sendSeconds } = timed(press);
  const load = chance.pick([20, 35, 50]);
  const count = (kind: PressItem['send']): number => press.filter(({ send }) => send === kind).length;
  const own = names.map((name) => press.filter(({ device }) => device === name));
  const ownBytes = own.map((items) => timed(items).bytes);
  return {
    ask: 'One footswitch press sends all this, one byte right after the other, and every status byte is sent. After how many milliseconds has the last byte left the foot controller?',
    shows: inRows([
      ...names.map((name, at) => [name, own[at]!.map(sayItem).join(', ')] as const),
      count('bank') > 0 && ['a bank', 'two control changes'],
      level === 3 && ['each pedal then loads its sound in', `${load} ms`],
    ]),
    ...aNumber(sendSeconds * MILLI, 'ms', ROUNDING, TIME_SAID, {
      'loading time on the wire': level === 3 && sendSeconds * MILLI + load,
      'all at once': milliseconds(Math.max(...ownBytes)),
      'a bank as one control change': milliseconds(bytes - 3 * count('bank')),
      'three bytes each': milliseconds(bytes + count('program')),
      'eight bits a byte': milliseconds(bytes, DATA_BITS),
    }),
    hints: [
      'Count the bytes of each message, and add them up.',
      'A program change has two bytes, a control change three, a bank six.',
      `One byte takes ${plainNumber(milliseconds(1))} ms.`,
    ],
    steps: [
      `Bytes, pedal by pedal: ${names.map((name, at) => `${name} ${ownBytes[at]!}`).join(', ')}. That is ${bytes} in all.`,
      `${bytes} × ${plainNumber(milliseconds(1))} ms: ${plainNumber(sendSeconds * MILLI)} ms.`,
    ],
  };
}

/** The tasks of the lesson. */
export const PRESS_TASKS: readonly TaskKind[] = [
  { kind: 'press-time', title: 'How long does a press take?', draw: pressTime },
  { kind: 'press-order', title: 'In which order?', draw: orderOfPress },
  { kind: 'running-saves', title: 'What running status saves', draw: runningSaves },
  { kind: 'far-or-near', title: 'Whom to send to first', draw: farOrNear },
  ...TABLE_TASKS,
];
