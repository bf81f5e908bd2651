/** The task on running status: the bytes that it saves in a press. Both ways of sending are timed by the board. */
import type { PressItem } from '../../../plan/index.ts';
import { PEDALS } from '../../boards.ts';
import { counted } from '../../say.ts';
import { EXACT, aNumber, casesAt, inRows } from '../forms.ts';
import { bank, channelOf, control, program, sayItem, timed } from './presses.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Lists in which running status saves something or nothing; a and b are two pedals. */
const LISTS: readonly string[] = [
  'a1 a2 a3',
  'aP bP cP',
  'a1 a2 bP',
  'a1 b1 a2 b2',
  'a1 a2 aP',
  'aP a1 a2 b1',
  'aB aP',
  'a1 a2 b1 b2',
  'aB aP bB bP',
  'aP bP a1 a2 a3',
];

const SAID = {
  'saving across channels':
    'The status byte holds the channel too. To another pedal it has to be sent again.',
  'saving across kinds':
    'The status byte says the kind too. A program change after a control change needs its own.',
  'all but the first': 'Only a status byte that is like the one before can be left out.',
  'nothing saved': 'Look for two in a row of one kind and one channel.',
  'counts what is left': 'That is how many bytes are sent. How many are saved?',
};

/** What known mistakes make of the bytes saved in a press, of which `short` are left. */
function savesSlips(press: readonly PressItem[], short: number) {
  // A bank is two control changes, so that a list of kinds tells what is like what is before it.
  const kinds = press.flatMap(({ device, send }) =>
    send === 'bank' ? [`control ${device}`, `control ${device}`] : [`${send} ${device}`],
  );
  const alike = (part: 0 | 1): number =>
    kinds.filter((kind, at) => at > 0 && kind.split(' ')[part] === kinds[at - 1]?.split(' ')[part]).length;
  return {
    'saving across channels': alike(0),
    'saving across kinds': alike(1),
    'all but the first': kinds.length - 1,
    'nothing saved': 0,
    'counts what is left': short,
  };
}

/** What running status saves in a press. */
export function runningSaves(level: Level, chance: Chance): Drawn {
  const list = chance.turn(casesAt(level, LISTS, [4, 8]));
  const names = chance.shuffled(PEDALS);
  const first = chance.pick([7, 20, 80]);
  const press = list.split(' ').map(([who = 'a', what = 'P']): PressItem => {
    const name = names['abc'.indexOf(who)] ?? '';
    if (what === 'B') return bank(name);
    return what === 'P' ? program(name, 5) : control(name, first + Number(what));
  });
  const full = timed(press).bytes;
  const short = timed(press, { runningStatus: true }).bytes;
  return {
    ask: 'How many bytes does running status save in this press?',
    shows: inRows(
      press.map((item, at) => [
        `${at + 1}. to ${item.device}, channel ${channelOf(item.device)}`,
        item.send === 'bank' ? `${sayItem(item)}, as two control changes` : sayItem(item),
      ]),
    ),
    ...aNumber(full - short, 'bytes', EXACT, SAID, savesSlips(press, short)),
    hints: [
      'A status byte says the kind of message and the channel.',
      'Go down the list: is the kind the same as just before, and the channel too?',
      'Each time both are the same, one byte is saved.',
    ],
    steps: [
      `In full: ${full} bytes. With running status: ${short}.`,
      `Saved: ${counted(full - short, 'byte')}.`,
    ],
  };
}
