/** Tasks on what may be put on a jack, by whether its box has power. The rule is the finder's own. */
import { jackReading } from '../../jacks.ts';
import { eachOf } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { isSafe, readingRows, takeAll, type Hidden } from './measured.ts';

/** How a box stands, in words, and what that comes to for the meter. */
const BOXES = [
  { told: 'The box is on and at rest.', power: 'idle' },
  { told: 'The box is switched off, and its supply plug is out.', power: 'off' },
  { told: 'The box is switched off, but its USB cable is still in.', power: 'idle' },
  { told: 'The box runs on a battery and is switched off. The battery is out.', power: 'off' },
  { told: 'The box is switched off, but another supply still feeds it.', power: 'idle' },
] as const;

/** On which jack volts were read from ring to sleeve before, if any were. */
const BEFORE = ['nothing', 'switches', 'inA', 'outA'] as const satisfies readonly (Hidden | 'nothing')[];

const DIALS = {
  volts: 'DC volts',
  ohms: 'Resistance',
  diode: 'Diode test',
  led: 'A plain LED with its resistor',
  loaded: 'DC volts, with 1 kohm across the probes',
} as const;
type Dial = keyof typeof DIALS;

const SAID = {
  'takes it for off':
    'The box still has power: a switch alone does not take it away. Then DC volts, and nothing that pushes.',
  'takes it for on':
    'The box is dead, so there are no volts to read. Now resistance and the diode test are safe.',
  'resistance with power on':
    'Resistance and the diode test push a current. With the power on they meet the voltage of the box.',
  'LED on an unknown jack': 'The LED takes real current. Hold it only to a jack that is known as an OUT.',
  'resistor too early': 'The resistor goes on only with the power on, and where 0.2 to 6 V were read before.',
  'resistor forgotten': 'Some volts were read there, and no more than 6 V. So the resistor may go on too.',
  everything: 'Ask of each what it pushes or takes, and whether the box has power.',
  nothing: 'Something is always safe. Which of these pushes nothing into a live box?',
};

/** What may be put on a jack, by how its box stands. */
export function allowedNow(level: Level, chance: Chance): Drawn {
  const boxes = level < 2 ? BOXES.slice(0, 3) : BOXES;
  const box = chance.turn(boxes);
  const hidden = level < 2 ? 'nothing' : chance.pick(BEFORE);
  const taken = hidden === 'nothing' ? [] : takeAll(hidden, ['ring']);
  const dials = (Object.keys(DIALS) as readonly Dial[]).filter((dial) => level >= 2 || dial !== 'loaded');
  const safeWith =
    (power: 'idle' | 'off') =>
    (dial: Dial): boolean =>
      isSafe(jackReading(`${dial} ${power}`, 'ring-sleeve'), taken);
  const isRight = safeWith(box.power);
  const turned = safeWith(box.power === 'off' ? 'idle' : 'off');
  const on = box.power === 'idle';
  const withAlso =
    (...more: readonly Dial[]) =>
    (dial: Dial): boolean =>
      isRight(dial) || more.includes(dial);
  return {
    ask: `${box.told} Its jack is unmarked. Tick each thing that may go from ring to sleeve now, and that can tell something.`,
    ...(taken.length > 0 ? { shows: readingRows(taken) } : {}),
    ...eachOf(dials, chance, {
      text: (dial) => DIALS[dial],
      right: isRight,
      ticks: {
        'takes it for off': on && turned,
        'takes it for on': !on && turned,
        'resistance with power on': withAlso('ohms', 'diode'),
        'LED on an unknown jack': withAlso('led'),
        'resistor too early': withAlso('loaded'),
        'resistor forgotten': (dial) => isRight(dial) && dial !== 'loaded',
        everything: () => true,
        nothing: () => false,
      },
      said: SAID,
    }),
    hints: [
      'First ask whether the box has any power left: plug, USB, battery.',
      'With power: DC volts. Without: resistance and the diode test.',
      'The resistor needs power on, and 0.2 to 6 V read there before. The LED needs a known OUT.',
    ],
    steps: [
      `${box.told} So it ${on ? 'has power' : 'has none'}.`,
      `Safe now: ${dials
        .filter(isRight)
        .map((dial) => DIALS[dial].toLowerCase().replace('dc', 'DC'))
        .join('; ')}.`,
    ],
  };
}
