/** The task on the order of bank, program and control. Its bytes are counted by the board. */
import type { PressItem } from '../../../plan/index.ts';
import { PEDALS } from '../../boards.ts';
import { inOrder } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { sayItem, timed } from './presses.ts';

const RULES = 'A bank waits for the next program change. A program change sets all knobs of its pedal back.';

const told = (item: PressItem): string => `${sayItem(item)} to '${item.device}'`;

/** What one pedal gets, in the order in which it has to come. */
function sentTo(device: string, chance: Chance, sends: readonly PressItem['send'][]): readonly PressItem[] {
  return sends.map((send): PressItem => {
    if (send === 'bank') return { device, send, bank: chance.pick([1, 2, 3]) };
    return send === 'program'
      ? { device, send, program: chance.pick([5, 12, 40]) }
      : { device, send, controller: 7, value: chance.pick([64, 90, 100]) };
  });
}

/** What the slow pedal and the quick one get, by level. */
const SENDS: readonly (readonly (readonly PressItem['send'][])[])[] = [
  [['bank', 'program', 'control']],
  [['bank', 'program', 'control']],
  [['bank', 'program'], ['program']],
  [
    ['bank', 'program', 'control'],
    ['bank', 'program'],
  ],
];

const ORDER_SAID = {
  'bank after program':
    'The bank then waits for a program change that does not come, and the program is called up in the old bank.',
  'program first':
    'The program change acts at once, in the bank that was set before. The bank has to be there already.',
  'control before program':
    'The program change sets the knobs back, and this one with them. Send it after the program.',
  'quick one first':
    'The slow pedal needs the longest to load. Let it hear first, and it loads while you send the rest.',
  'back and forth':
    'Going back and forth between two pedals loses what running status saves. Send to one, then to the other.',
};

/** What known mistakes make of the order of a press: what is for the slow pedal, and then what is for the quick one. */
function orderSlips([slow = [], quick = []]: readonly (readonly PressItem[])[]) {
  /** All messages, those of one kind to the slow pedal before or behind its others. */
  const moved = (send: PressItem['send'], where: 'first' | 'last'): readonly string[] => {
    const [these, rest] = [slow.filter((one) => one.send === send), slow.filter((one) => one.send !== send)];
    return [...(where === 'first' ? [...these, ...rest] : [...rest, ...these]), ...quick].map(told);
  };
  const woven = slow.flatMap((one, at) => [one, ...quick.slice(at, at + 1)]);
  const two = quick.length > 0;
  return {
    'bank after program': [moved('bank', 'last')],
    'program first': [moved('program', 'first')],
    'control before program': [moved('control', 'first')],
    'quick one first': two ? [[...quick, ...slow].map(told)] : [],
    'back and forth': two ? [woven.map(told)] : [],
  };
}

/** Bank, program and control of one or two pedals, put in order. */
export function orderOfPress(level: Level, chance: Chance): Drawn {
  const slow = chance.turn(PEDALS);
  const quick = chance.pick(PEDALS.filter((name) => name !== slow));
  const names = [slow, quick];
  const groups = (SENDS[level] ?? []).map((sends, at) => sentTo(names[at] ?? '', chance, sends));
  const press = groups.flat();
  const { bytes } = timed(press);
  const two = groups.length > 1;
  return {
    ask: `One footswitch press is to send all this. ${RULES}${two ? ` '${slow}' loads slowly, so it comes first; and all that is for one pedal goes out in one go.` : ''} Put the messages in order.`,
    ...inOrder(press.map(told), chance, ORDER_SAID, orderSlips(groups)),
    hints: [
      'Ask of each message what it acts on, and what undoes it.',
      'The bank has to be there when the program change comes.',
      'What a program change sets back has to come after it.',
    ],
    steps: [
      two
        ? `First all that is for '${slow}', then what is for '${quick}'.`
        : 'The bank first: it waits for the program change.',
      `In this order: ${press.map(told).join('; ')}. That makes ${bytes} bytes.`,
    ],
  };
}
