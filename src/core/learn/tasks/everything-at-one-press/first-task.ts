/** The task on whom to send to first. When each pedal has its message is worked out by the board. */
import { PEDALS } from '../../boards.ts';
import { oneOf } from '../forms.ts';
import { program, timed } from './presses.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Milliseconds in a second. */
const MILLI = 1e3;

/** Milliseconds that two orders must differ by to count as different; those asked for differ by 0.6 ms or more, or by less than this. */
const NO_DIFFERENCE = 0.1;

/** Boards on which the order counts or does not; milliseconds that the near and the far pedal need to load. */
interface Sent {
  readonly layout: 'chain' | 'hub';
  readonly thru: 'hardware' | 'software';
  readonly pedals: number;
  readonly near: number;
  readonly far: number;
}

const SENDING: readonly Sent[] = [
  { layout: 'chain', thru: 'software', pedals: 3, near: 0, far: 0 },
  { layout: 'chain', thru: 'hardware', pedals: 4, near: 0, far: 0 },
  { layout: 'chain', thru: 'software', pedals: 4, near: 0, far: 0 },
  { layout: 'hub', thru: 'hardware', pedals: 4, near: 0, far: 0 },
  { layout: 'chain', thru: 'software', pedals: 3, near: 40, far: 5 },
  { layout: 'chain', thru: 'hardware', pedals: 3, near: 5, far: 40 },
  { layout: 'hub', thru: 'hardware', pedals: 3, near: 30, far: 10 },
  { layout: 'chain', thru: 'software', pedals: 5, near: 0, far: 0 },
  { layout: 'chain', thru: 'hardware', pedals: 5, near: 25, far: 10 },
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

/** What is said to each wrong order. */
const saidTo = (loads: boolean) =>
  ({
    near: loads
      ? 'The slow one should hear first: it loads while the others are still being sent to.'
      : 'The first one hears at once anyway. The last one waits for the way, and for its turn as well.',
    far: loads
      ? 'What takes long should begin first. Add the way and the loading for both ends.'
      : 'The last one waits no longer for the way than the first: only bytes count here.',
    none: 'Work out for both orders when the last pedal is ready. One is sooner.',
  }) as const;

/** A board and its pedals as rows. */
function rowsOf(sent: Sent, names: readonly string[]): readonly (readonly [string, string])[] {
  const [near = '', far = ''] = [names[0], names.at(-1)];
  const loads = sent.near + sent.far > 0;
  return [
    [
      'pedals',
      sent.layout === 'hub' ? `behind a hub: ${names.join(', ')}` : `in a chain: ${names.join(', ')}`,
    ],
    ...(sent.layout === 'hub'
      ? []
      : ([
          [
            'each THRU',
            sent.thru === 'software' ? 'software: about 1.3 ms later' : 'hardware: almost no delay',
          ],
        ] as const)),
    ...(loads
      ? ([
          [`'${near}' loads its sound in`, `${sent.near} ms`],
          [`'${far}' loads its sound in`, `${sent.far} ms`],
        ] as const)
      : []),
  ];
}

/** Whom to send to first, so that all are ready the soonest. */
export function farOrNear(level: Level, chance: Chance): Drawn {
  const sent = chance.turn(level < 2 ? SENDING.slice(0, 4) : level === 2 ? SENDING.slice(0, 7) : SENDING);
  const names = PEDALS.slice(0, sent.pedals);
  const [near = '', far = ''] = [names[0], names.at(-1)];
  const [nearFirst, farFirst] = [readyAfter(sent, names), readyAfter(sent, names.toReversed())];
  const differ = nearFirst - farFirst;
  const right = Math.abs(differ) < NO_DIFFERENCE ? 'none' : differ > 0 ? 'far' : 'near';
  const loads = sent.near + sent.far > 0;
  const texts = {
    near: `From '${near}' on to '${far}'`,
    far: `From '${far}' back to '${near}'`,
    none: 'Either way: it makes no difference',
  } as const;
  return {
    ask: 'One program change goes to each pedal. In which order are all of them ready the soonest?',
    shows: {
      shows: 'rows',
      rows: rowsOf(sent, names),
    },
    ...oneOf(
      (['near', 'far', 'none'] as const).map((one) =>
        one === right
          ? { text: texts[one], right: true }
          : {
              text: texts[one],
              slip: loads && one !== 'none' ? 'loading left out' : `says ${one}`,
              says: saidTo(loads)[one],
            },
      ),
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
