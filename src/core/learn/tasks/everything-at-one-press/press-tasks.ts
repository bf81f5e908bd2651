/** Tasks on everything at one press, and the one on its time. Presses are timed by the board. */
import type { PressItem } from '../../../plan/index.ts';
import { BITS_PER_FRAME, bitSecondsOf } from '../../../signal/index.ts';
import { PEDALS } from '../../boards.ts';
import { aNumber, plainNumber } from '../forms.ts';
import { TABLE_TASKS } from './table-tasks.ts';
import { orderOfPress } from './order-task.ts';
import { farOrNear } from './first-task.ts';
import { runningSaves } from './saves-task.ts';
import { bank, control, program, sayItem, timed } from './presses.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Milliseconds in a second. */
const MILLI = 1e3;

/** Share by which a time worked out by hand may be off: rounding only. */
const BY_HAND = 0.02;

/** Data bits of a byte. */
const DATA_BITS = 8;

/** What each pedal of a press gets, by turns: numbers of banks, programs and controllers, pedal by pedal. */
const GIVEN: readonly (readonly (readonly PressItem['send'][])[])[] = [
  [['program'], ['program'], ['program']],
  [['program'], ['bank', 'program']],
  [['program'], ['program'], ['program'], ['program']],
  [
    ['bank', 'program'],
    ['program', 'control'],
  ],
  [['bank', 'program'], ['bank', 'program'], ['program']],
  [['program', 'control', 'control'], ['program']],
  [['bank', 'program', 'control'], ['program'], ['program']],
];

function pressOf(
  given: (typeof GIVEN)[number],
  names: readonly string[],
  chance: Chance,
): readonly PressItem[] {
  return given.flatMap((sends, at) =>
    sends.map((send, place): PressItem => {
      const name = names[at] ?? '';
      if (send === 'bank') return bank(name);
      return send === 'program' ? program(name, chance.pick([2, 5, 9, 17])) : control(name, 20 + place);
    }),
  );
}

/** Milliseconds of bytes on the wire. */
const milliseconds = (bytes: number, bits: number = BITS_PER_FRAME): number =>
  bytes * bits * bitSecondsOf({}) * MILLI;

/** What known mistakes make of the time of a press. `load`: milliseconds that a pedal then loads, 0 where nothing is told of it. */
function timeSlips(
  press: readonly PressItem[],
  names: readonly string[],
  load: number,
): Parameters<typeof aNumber>[3] {
  const { bytes, sendSeconds } = timed(press);
  const count = (kind: PressItem['send']): number => press.filter(({ send }) => send === kind).length;
  const [banks, programs] = [count('bank'), count('program')];
  const longest = Math.max(
    ...names.map((name) => timed(press.filter(({ device }) => device === name)).sendSeconds * MILLI),
  );
  return [
    ...(load > 0
      ? [
          {
            slip: 'loading time on the wire',
            value: sendSeconds * MILLI + load,
            says: 'Loading goes on inside the pedal. The wire does not wait for it.',
          },
        ]
      : []),
    { slip: 'all at once', value: longest, says: 'All bytes share one wire: they follow one another.' },
    {
      slip: 'a bank as one control change',
      value: milliseconds(bytes - 3 * banks),
      says: 'A bank is two control changes here, of three bytes each.',
    },
    {
      slip: 'three bytes each',
      value: milliseconds(bytes + programs),
      says: 'A program change has two bytes, not three.',
    },
    {
      slip: 'eight bits a byte',
      value: milliseconds(bytes, DATA_BITS),
      says: 'A byte has a start bit and a stop bit too: ten bits in all.',
    },
  ];
}

function pressTime(level: Level, chance: Chance): Drawn {
  const given = chance.turn(level < 2 ? GIVEN.slice(0, 4) : GIVEN);
  const names = chance.shuffled(PEDALS).slice(0, given.length);
  const press = pressOf(given, names, chance);
  const { bytes, sendSeconds } = timed(press);
  const load = chance.pick([20, 35, 50]);
  const banks = press.filter(({ send }) => send === 'bank').length;
  return {
    ask: 'One footswitch press sends all this, one byte right after the other, and every status byte is sent. After how many milliseconds has the last byte left the foot controller?',
    shows: {
      shows: 'rows',
      rows: [
        ...names.map((name): readonly [string, string] => [
          name,
          press
            .filter(({ device }) => device === name)
            .map(sayItem)
            .join(', '),
        ]),
        ...(banks > 0 ? ([['a bank', 'two control changes']] as const) : []),
        ...(level === 3 ? ([['each pedal then loads its sound in', `${load} ms`]] as const) : []),
      ],
    },
    ...aNumber(sendSeconds * MILLI, 'ms', BY_HAND, timeSlips(press, names, level === 3 ? load : 0)),
    hints: [
      'Count the bytes of each message, and add them up.',
      'A program change has two bytes, a control change three, a bank six.',
      `One byte takes ${plainNumber(milliseconds(1))} ms.`,
    ],
    steps: [
      `Bytes, pedal by pedal: ${names.map((name) => `${name} ${timed(press.filter(({ device }) => device === name)).bytes}`).join(', ')}. That is ${bytes} in all.`,
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
