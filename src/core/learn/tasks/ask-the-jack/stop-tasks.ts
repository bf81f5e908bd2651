/** Tasks on when to stop: the name is sure, a check is missing, a reading is odd, or nothing fits. The finder says which. */
import { sayName, sayReading } from '../../../readings/index.ts';
import type { TakenReading } from '../../../readings/index.ts';
import { jackReading } from '../../jacks.ts';
import { oneOf } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';
import { ASKED, findFrom, inFinder, sayAsked, takeAll, type AskedName, type Hidden } from './measured.ts';

/** Readings to go on from or to stop at: those of a hidden jack, and some that were put in by hand. */
interface Gone {
  readonly hidden: Hidden;
  readonly names: readonly AskedName[];
  readonly odd?: readonly (readonly [name: AskedName, value: number])[];
}

const gone = (hidden: Hidden, names: readonly AskedName[], odd?: Gone['odd']): Gone => ({
  hidden,
  names,
  ...(odd ? { odd } : {}),
});

const GONE: readonly Gone[] = [
  gone('inA', ['ring', 'tip', 'diode', 'diodeBack']),
  gone('outA', ['ring', 'tip']),
  gone('inA', ['ring', 'tip', 'diode', 'diodeBack'], [['ohms', 12]]),
  gone('outA', ['ring', 'tip', 'clock', 'ohms', 'loaded']),
  gone(
    'inA',
    [],
    [
      ['ring', -4.8],
      ['tip', 11.9],
      ['ohms', 2.1],
      ['ohmsTip', 1.4],
    ],
  ),
];
const GONE_ON: readonly Gone[] = [
  gone('inB', ['ring', 'tip', 'diode', 'diodeBack']),
  gone('switches', ['ring', 'tip']),
  gone('outA', ['ring', 'tip', 'ohms'], [['ohmsTip', 2]]),
  gone(
    'inA',
    [],
    [
      ['ring', 11.6],
      ['tip', 11.6],
      ['ohms', 47],
    ],
  ),
];
const GONE_TRAPS: readonly Gone[] = [
  gone('inA', ['diode', 'diodeBack', 'ohms', 'ohmsTip']),
  gone('headphone', ['ring', 'tip', 'diode', 'diodeBack']),
  gone('inB', ['diode', 'diodeBack', 'ohms', 'ohmsTip']),
  gone('outB', ['ring', 'tip', 'clock', 'loaded', 'ohms', 'ohmsAcross']),
  gone('lowA', ['ring', 'tip']),
];

const MOVES = {
  sure: 'Stop: one name is left, checked with the power off and on',
  'go on': 'Go on: more than one name is left, or a check is missing',
  again: 'Take one reading again: it does not fit the others',
  nothing: 'Stop: no jack shows this, so ask who knows the box',
} as const;
type Move = keyof typeof MOVES;

/** The readings of a case, with those put in by hand. */
function takenIn({ hidden, names, odd = [] }: Gone): readonly TakenReading[] {
  return [
    ...takeAll(hidden, names),
    ...odd.map(([name, value]): TakenReading => {
      const at = jackReading(...ASKED[name]);
      return { at, reading: { meter: at.meter === 'ohms' ? 'ohms' : 'volts', shows: 'value', value } };
    }),
  ];
}

function moveAfter(taken: readonly TakenReading[]): Move {
  const { state, doubtful } = findFrom(taken);
  if (state === 'fits-nothing') return 'nothing';
  if (doubtful.length > 0) return 'again';
  return state === 'sure' ? 'sure' : 'go on';
}

function stopOrGo(level: Level, chance: Chance): Drawn {
  const one = chance.turn([...GONE, ...(level >= 2 ? GONE_ON : []), ...(level === 3 ? GONE_TRAPS : [])]);
  const taken = takenIn(one);
  const right = moveAfter(taken);
  const { ranked, doubtful } = findFrom(taken);
  const says = {
    sure: 'Is there but one name left? And was it asked with the power off and with the power on?',
    'go on': 'Look again: do all the readings belong to one jack, and is a check still missing?',
    again: 'Compare them: is there one reading that no jack would show beside the others?',
    nothing: 'Some jack does show most of these. Which one?',
  } as const;
  const why = {
    sure: `Only one name is left: ${sayName(ranked[0]?.name ?? '')}.`,
    'go on': `Best so far: ${sayName(ranked[0]?.name ?? '')}. That is not enough.`,
    again: `This one does not fit: ${doubtful.map((number) => sayAsked((taken[number] as TakenReading).at)).join('; ')}.`,
    nothing: 'No jack that is known shows all of these.',
  } as const;
  return {
    ask: 'An unmarked phone jack on a box that works, read through a tested lead. The red probe is named first. Stop, or go on?',
    ...inFinder(taken),
    ...oneOf(
      (['sure', 'go on', 'again', 'nothing'] as const).map((move) =>
        move === right
          ? { text: MOVES[move], right: true }
          : { text: MOVES[move], slip: `says ${move}`, says: says[move] },
      ),
      chance,
    ),
    hints: [
      'A name is sure when no other one is left, and when it was asked with the power off and on.',
      'First look for readings that no jack of a 5 V box would show.',
      'Then look for one reading that the others speak against. Then count what is left.',
    ],
    steps: [
      `Read: ${taken.map(({ reading }) => sayReading(reading)).join('; ')}.`,
      why[right],
      `${MOVES[right]}.`,
    ],
  };
}

/** The tasks on stopping. */
export const STOP_TASKS: readonly TaskKind[] = [
  { kind: 'stop-or-go', title: 'Stop or go on?', draw: stopOrGo },
];
