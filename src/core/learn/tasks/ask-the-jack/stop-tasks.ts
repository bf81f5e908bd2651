/** Tasks on when to stop: the name is sure, a check is missing, a reading is odd, or nothing fits. The finder says which. */
import { sayName } from '../../../readings/index.ts';
import type { TakenReading } from '../../../readings/index.ts';
import { jackReading } from '../../jacks.ts';
import { casesAt, whichText } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import {
  ASKED,
  findFrom,
  inFinder,
  sayAsked,
  sayTaken,
  takeAll,
  type AskedName,
  type Hidden,
} from './measured.ts';

/** Readings to go on from or to stop at: those of a hidden jack, and some that were put in by hand. */
type Gone = readonly [
  hidden: Hidden,
  names: readonly AskedName[],
  odd?: Readonly<Partial<Record<AskedName, number>>>,
];

/** Cases by level: the last five are traps. */
const GONE: readonly Gone[] = [
  ['inA', ['ring', 'tip', 'diode', 'diodeBack']],
  ['outA', ['ring', 'tip']],
  ['inA', ['ring', 'tip', 'diode', 'diodeBack'], { ohms: 12 }],
  ['outA', ['ring', 'tip', 'clock', 'ohms', 'loaded']],
  ['inA', [], { ring: -4.8, tip: 11.9, ohms: 2.1, ohmsTip: 1.4 }],
  ['inB', ['ring', 'tip', 'diode', 'diodeBack']],
  ['switches', ['ring', 'tip']],
  ['outA', ['ring', 'tip', 'ohms'], { ohmsTip: 2 }],
  ['inA', [], { ring: 11.6, tip: 11.6, ohms: 47 }],
  ['inA', ['diode', 'diodeBack', 'ohms', 'ohmsTip']],
  ['headphone', ['ring', 'tip', 'diode', 'diodeBack']],
  ['inB', ['diode', 'diodeBack', 'ohms', 'ohmsTip']],
  ['outB', ['ring', 'tip', 'clock', 'loaded', 'ohms', 'ohmsAcross']],
  ['lowA', ['ring', 'tip']],
];

const MOVES = {
  sure: 'Stop: one name is left, checked with the power off and on',
  'go on': 'Go on: more than one name is left, or a check is missing',
  again: 'Take one reading again: it does not fit the others',
  nothing: 'Stop: no jack shows this, so ask who knows the box',
} as const;
type Move = keyof typeof MOVES;

const SAID: Readonly<Record<Move, string>> = {
  sure: 'Is there but one name left? And was it asked with the power off and with the power on?',
  'go on': 'Look again: do all the readings belong to one jack, and is a check still missing?',
  again: 'Compare them: is there one reading that no jack would show beside the others?',
  nothing: 'Some jack does show most of these. Which one?',
};

/** The readings of a case, with those put in by hand. */
function takenIn([hidden, names, odd = {}]: Gone): readonly TakenReading[] {
  return [
    ...takeAll(hidden, names),
    ...Object.entries(odd).map(([name, value]): TakenReading => {
      const at = jackReading(...ASKED[name as AskedName]);
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

/** Whether readings are enough to stop at. */
export function stopOrGo(level: Level, chance: Chance): Drawn {
  const one = chance.turn(casesAt(level, GONE, [5, 9]));
  const taken = takenIn(one);
  const right = moveAfter(taken);
  const { ranked, doubtful } = findFrom(taken);
  const why = {
    sure: `Only one name is left: ${sayName(ranked[0]?.name ?? '')}.`,
    'go on': `Best so far: ${sayName(ranked[0]?.name ?? '')}. That is not enough.`,
    again: `This one does not fit: ${doubtful.map((number) => sayAsked((taken[number] as TakenReading).at)).join('; ')}.`,
    nothing: 'No jack that is known shows all of these.',
  } as const;
  return {
    ask: 'An unmarked phone jack on a box that works, read through a tested lead. The red probe is named first. Stop, or go on?',
    ...inFinder(taken),
    ...whichText(MOVES, right, (move) => [`says ${move}`, SAID[move]], chance),
    hints: [
      'A name is sure when no other one is left, and when it was asked with the power off and on.',
      'First look for readings that no jack of a 5 V box would show.',
      'Then look for one reading that the others speak against. Then count what is left.',
    ],
    steps: [sayTaken(taken), why[right], `${MOVES[right]}.`],
  };
}
