/** The task on whom to send to first. When each pedal has its message is worked out by the board. */
import type { Thru } from '../../../plan/index.ts';
import { PEDALS } from '../../boards.ts';
import { casesAt, inRows, whichText } from '../forms.ts';
import { MILLI, program, timed } from './presses.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Milliseconds that two orders must differ by to count as different; those asked for differ by 0.6 ms or more, or by less than this. */
const NO_DIFFERENCE = 0.1;

/** A board on which the order counts or does not; milliseconds that the near and the far pedal need to load. */
interface Sent {
  readonly layout: 'chain' | 'hub';
  readonly thru: Thru;
  readonly pedals: number;
  readonly near: number;
  readonly far: number;
}

const sent = (layout: Sent['layout'], thru: Thru, pedals: number, near = 0, far = 0): Sent => ({
  layout,
  thru,
  pedals,
  near,
  far,
});

const SENDING = [
  sent('chain', 'software', 3),
  sent('chain', 'hardware', 4),
  sent('chain', 'software', 4),
  sent('hub', 'hardware', 4),
  sent('chain', 'software', 3, 40, 5),
  sent('chain', 'hardware', 3, 5, 40),
  sent('hub', 'hardware', 3, 30, 10),
  sent('chain', 'software', 5),
  sent('chain', 'hardware', 5, 25, 10),
];

/** When the last of all pedals is ready, milliseconds, where they are sent to in this order. */
function readyAfter({ layout, thru, pedals, near, far }: Sent, names: readonly string[]): number {
  const press = names.map((name) => program(name, 5));
  const { arrivals } = timed(press, { layout, thru, pedals });
  const [first, last] = [PEDALS[0], PEDALS[pedals - 1]];
  return Math.max(
    ...arrivals.map(
      ({ device, seconds = 0 }) =>
        seconds * MILLI + (device === first ? near : device === last ? far : Math.min(near, far)),
    ),
  );
}

const THRUS = { software: 'software: about 1.3 ms later', hardware: 'hardware: almost no delay' };

/** What is said to each wrong order. */
const saidTo = (loads: boolean) => ({
  near: loads
    ? 'The slow one should hear first: it loads while the others are still being sent to.'
    : 'The first one hears at once anyway. The last one waits for the way, and for its turn as well.',
  far: loads
    ? 'What takes long should begin first. Add the way and the loading for both ends.'
    : 'The last one waits no longer for the way than the first: only bytes count here.',
  none: 'Work out for both orders when the last pedal is ready. One is sooner.',
});

/** Whom to send to first, so that all are ready the soonest. */
export function farOrNear(level: Level, chance: Chance): Drawn {
  const board = chance.turn(casesAt(level, SENDING, [4, 7]));
  const { layout, thru, pedals } = board;
  const names = PEDALS.slice(0, pedals);
  const [near = '', far = ''] = [names[0], names.at(-1)];
  const [nearFirst, farFirst] = [readyAfter(board, names), readyAfter(board, names.toReversed())];
  const differ = nearFirst - farFirst;
  const right = Math.abs(differ) < NO_DIFFERENCE ? 'none' : differ > 0 ? 'far' : 'near';
  const loads = board.near + board.far > 0;
  const texts = {
    near: `From '${near}' on to '${far}'`,
    far: `From '${far}' back to '${near}'`,
    none: 'Either way: it makes no difference',
  };
  const where = layout === 'hub' ? 'behind a hub' : 'in a chain';
  return {
    ask: 'One program change goes to each pedal. In which order are all of them ready the soonest?',
    shows: inRows([
      ['pedals', `${where}: ${names.join(', ')}`],
      layout === 'chain' && ['each THRU', THRUS[thru]],
      loads && [`'${near}' loads its sound in`, `${board.near} ms`],
      loads && [`'${far}' loads its sound in`, `${board.far} ms`],
    ]),
    ...whichText(
      texts,
      right,
      (one) => [loads && one !== 'none' ? 'loading left out' : `says ${one}`, saidTo(loads)[one]],
      chance,
    ),
    hints: [
      'The pedal with the longest way, or the longest loading, decides.',
      'Send first to whoever needs the longest after the bytes have left.',
      'Where all need the same, only the bytes count, and the order does not.',
    ],
    steps: [
      `From '${near}' on: all ready after ${nearFirst.toFixed(1)} ms. From '${far}' back: after ${farFirst.toFixed(1)} ms.`,
      `${texts[right]}.`,
    ],
  };
}
