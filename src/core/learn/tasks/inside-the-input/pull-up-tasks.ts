/** Tasks on the output side of an input: where its line stops, and whether the pull-up is right. All is solved. */
import { bitSecondsOf } from '../../../signal/index.ts';
import { sayVolts } from '../../../verdict/index.ts';
import { aNumber, inRows, plainNumber, whichText } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';
import {
  SENDER_WORDS,
  findOut,
  growthWords,
  opened,
  sayMicro,
  sayMilli,
  sayPullUp,
  shortly,
  type Opened,
} from './inputs.ts';

/** Outputs that come to rest half-way, where light and pull-up balance. */
const HALF_WAY: readonly Opened[] = [
  opened('4N35', 220),
  opened('4N25', 680),
  opened('CNY17-1', 1000),
  opened('4N35', 360),
  opened('PC817', 270),
  opened('CNY17-3', 470),
  opened('6N136', 1500),
];
const HALF_WAY_WEAK: readonly Opened[] = [
  opened('4N25', 1000, 'weak'),
  opened('6N136', 3300, 'weak'),
  opened('4N25', 360, 'strong'),
  opened('4N35', 680, 'weak'),
];

/** Share by which a voltage worked out by hand may be off: the currents are told with three digits. */
const BY_HAND = 0.04;

const LINE_STOPS_SAID = {
  'volts of the pull-up':
    'That is what stands across the pull-up. The output has what is left of the supply.',
  'ratio forgotten':
    'That is the current of the LED. The transistor takes another one: the ratio says which.',
  'all the way down':
    'It comes all the way down only where the transistor can take more than the pull-up lets through.',
  'stays up': 'That is the output in the dark. With the light on, the transistor pulls.',
};

function lineStops(level: Level, chance: Chance): Drawn {
  const one = chance.turn(level === 3 ? [...HALF_WAY_WEAK, ...HALF_WAY] : HALF_WAY);
  const { litAmperes, takesAmperes, supplyVolts, lowVolts } = findOut(one);
  const ratio = takesAmperes / litAmperes;
  const byRatio = level >= 2;
  const taken = one.pullUpOhms * takesAmperes;
  return {
    ask: 'The light is on, and the transistor takes all the current that it can. Where does its output stop, in volts?',
    shows: inRows([
      ['supply of the output side', `${supplyVolts} V`],
      ['pull-up', sayPullUp(one.pullUpOhms)],
      byRatio && ['current of the LED', sayMilli(litAmperes)],
      byRatio
        ? ['transfer ratio at this current', `${(100 * ratio).toFixed(1)} %`]
        : ['the transistor can take', sayMilli(takesAmperes)],
    ]),
    ...aNumber(lowVolts, 'V', BY_HAND, LINE_STOPS_SAID, {
      'volts of the pull-up': taken,
      'ratio forgotten': supplyVolts - one.pullUpOhms * litAmperes,
      'all the way down': 0,
      'stays up': supplyVolts,
    }),
    hints: [
      'The pull-up tugs up, the transistor tugs down. The same current goes through both.',
      byRatio
        ? 'First work out the current of the transistor. The ratio says how much of the current of the LED it is.'
        : 'Volts are current times ohms: work out the volts across the pull-up.',
      'Take the volts across the pull-up from the supply.',
    ],
    steps: [
      ...(byRatio
        ? [`${(100 * ratio).toFixed(1)} % of ${sayMilli(litAmperes)} is ${sayMilli(takesAmperes)}.`]
        : []),
      `${sayMilli(takesAmperes)} through ${sayPullUp(one.pullUpOhms)} makes ${plainNumber(Number(taken.toFixed(2)))} V.`,
      `${supplyVolts} V less ${taken.toFixed(2)} V leaves ${sayVolts(lowVolts)}.`,
    ],
  };
}

/** Inputs to judge. Each is clear by hand: well below or above the level that is read, and a 0 that ends well off the middle of a bit. */
const JUDGED: readonly Opened[] = [
  opened('4N35', 680),
  opened('4N25', 470),
  opened('CNY17-3', 4700),
  opened('CNY17-1', 2200),
  opened('4N35', 4700),
  opened('6N136', 1000),
  opened('PC817', 1000),
  opened('6N138', 6800),
  opened('4N35', 220),
  opened('6N136', 4700),
  opened('CNY17-1', 680),
  opened('4N35', 2200),
];
const JUDGED_ODD: readonly Opened[] = [
  opened('4N35', 470, 'weak'),
  opened('4N35', 1500, 'strong'),
  opened('CNY17-3', 1500, 'weak'),
  opened('PC817', 360, 'weak'),
  opened('6N136', 2200, 'strong'),
  opened('CNY17-3', 2700, 'strong'),
  opened('6N138', 6800, 'weak'),
];

const HEARD = {
  nothing: 'Too small: nothing is heard',
  wrong: 'Too large: wrong bytes are heard',
  right: 'Good: every byte is heard right',
} as const;

function judgePullUp(level: Level, chance: Chance): Drawn {
  const one = chance.turn(level === 3 ? [...JUDGED_ODD, ...JUDGED] : JUDGED);
  const { heard, lowVolts, readVolts, supplyVolts, takesAmperes, growsSeconds } = findOut(one);
  const says = {
    nothing: `Does the output come down below ${readVolts} V? Then a 0 can be read.`,
    wrong: 'A 0 that grows by less than half a bit ends before the look in the middle of the next one.',
    right:
      heard === 'nothing'
        ? `The output has to come below ${readVolts} V, or no 0 is ever read.`
        : 'A 0 that grows by more than half a bit covers the look at the bit after it.',
  };
  return {
    ask: `An input with a ${one.part} is fed by ${SENDER_WORDS[one.sender]}. Is its pull-up of ${sayPullUp(one.pullUpOhms)} good, too small or too large?`,
    // How low it comes is told below level 2; from there on it is to be worked out.
    shows: inRows([
      level >= 2 && ['supply of the output side', `${supplyVolts} V`],
      level >= 2
        ? ['the transistor can take', sayMilli(takesAmperes)]
        : ['the output comes down to', sayVolts(lowVolts)],
      ['a 0 is read below', sayVolts(readVolts)],
      growsSeconds === undefined
        ? level < 2 && ['a 0 grows by', 'no 0 comes out']
        : ['a 0 grows by', growsSeconds > 0 ? sayMicro(growsSeconds) : 'nothing'],
      ['a bit lasts', sayMicro(bitSecondsOf({}))],
    ]),
    ...whichText(HEARD, heard, (said) => [`says ${shortly(HEARD[said])}`, says[said]], chance),
    hints: [
      'A small pull-up lets too much current through, so the output hangs. A large one lifts it too late.',
      `First look how low it comes. A 0 is read below ${readVolts} V.`,
      'Then look how much a 0 grows. More than half a bit is too much.',
    ],
    steps: [
      `The output comes down to ${sayVolts(lowVolts)}. A 0 is read below ${readVolts} V.`,
      growthWords(one),
      `${HEARD[heard]}.`,
    ],
  };
}

/** The tasks on the output side. */
export const PULL_UP_TASKS: readonly TaskKind[] = [
  { kind: 'judge-pull-up', title: 'Is the pull-up good?', draw: judgePullUp },
  { kind: 'line-stops', title: 'Where does the line stop?', draw: lineStops },
];
