/** Tasks on an input that hears one sender and not another: too little light, too much, or neither. All is solved. */
import { bitSecondsOf } from '../../../signal/index.ts';
import { sayVolts } from '../../../verdict/index.ts';
import { inRows, whichOf } from '../forms.ts';
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

/** An input and the sender that a builder says it does not hear, though it hears the 5 V one. */
const COMPLAINTS: readonly Opened[] = [
  opened('4N35', 470, 'weak'),
  opened('4N35', 1500, 'strong'),
  opened('CNY17-3', 1500, 'weak'),
  opened('4N25', 1000, 'weak'),
  opened('CNY17-3', 470, 'weak'),
  opened('PC817', 1500, 'strong'),
  opened('CNY17-1', 1500, 'weak'),
  opened('PC817', 2700, 'strong'),
  opened('4N35', 470, 'strong'),
];

const CAUSES = {
  nothing: 'Too little light: the pull-up wins',
  wrong: 'Too much light: it lets go too late',
  right: 'Neither: this input hears it, so test the lead',
  volts: 'The input compares the voltage with its own',
};
type Cause = keyof typeof CAUSES;
/** The causes that every such task offers. */
const OFTEN = ['nothing', 'wrong', 'volts'] as const;

function oneSender(level: Level, chance: Chance): Drawn {
  const one = chance.turn(level < 2 ? COMPLAINTS.filter((_, at) => at % 3 !== 2) : COMPLAINTS);
  const other: Opened = { ...one, sender: 'usual' };
  const found = findOut(one);
  const column = (each: Opened): string => {
    const { litAmperes, lowVolts, growsSeconds } = findOut(each);
    const grows = growsSeconds === undefined ? '' : `, a 0 grows by ${sayMicro(Math.max(0, growsSeconds))}`;
    return `LED ${sayMilli(litAmperes)}, down to ${sayVolts(lowVolts)}${grows}`;
  };
  const says = {
    nothing: `Look how low the output comes: below ${found.readVolts} V a 0 is read.`,
    wrong: 'Look how much a 0 grows: half a bit may be lost, no more.',
    right: 'Compare both numbers of this sender with what a 0 needs.',
    volts: 'All that the transistor gets is light. It never meets the voltage of the sender.',
  };
  return {
    ask: `A builder says that this input hears a 5 V sender and does not hear ${SENDER_WORDS[one.sender]}. It has a ${one.part} and a pull-up of ${sayPullUp(one.pullUpOhms)}. What do the numbers say?`,
    shows: inRows([
      ['with the 5 V sender', column(other)],
      [`with ${SENDER_WORDS[one.sender]}`, column(one)],
      ['a 0 is read below', sayVolts(found.readVolts)],
      ['half a bit lasts', sayMicro(bitSecondsOf({}) / 2)],
    ]),
    ...whichOf<Cause>(
      level < 2 ? OFTEN : [...OFTEN, 'right'],
      found.heard,
      (said) => CAUSES[said],
      (said) => [`says ${shortly(CAUSES[said])}`, says[said]],
      chance,
    ),
    hints: [
      'The current makes the light, and the light makes the transistor tug.',
      'Less light: the output may not come down. More light: it may let go too late.',
      `Compare the line of this sender with ${found.readVolts} V and with half a bit.`,
    ],
    steps: [
      `With ${SENDER_WORDS[one.sender]} the output comes down to ${sayVolts(found.lowVolts)}.`,
      growthWords(one),
      `${CAUSES[found.heard]}.`,
    ],
  };
}

/** The tasks on senders. */
export const SENDER_TASKS: readonly TaskKind[] = [
  { kind: 'one-sender', title: 'It hears one sender only', draw: oneSender },
];
