/** Tasks on what may be put on a jack, by whether its box has power. The rule is the finder's own. */
import { jackReading } from '../../jacks.ts';
import { eachThat } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';
import { isSafe, rowsOf, takeAll, type Hidden } from './measured.ts';

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

/** What known mistakes would tick: `isRight` is what is safe, `isTurned` what would be if the box had power where it has none, or the other way round. */
function allowedSlips(
  on: boolean,
  isRight: (text: string) => boolean,
  isTurned: (text: string) => boolean,
): Parameters<typeof eachThat>[1] {
  const withAlso =
    (...more: readonly Dial[]) =>
    (text: string): boolean =>
      isRight(text) || more.some((dial) => DIALS[dial] === text);
  return [
    {
      slip: on ? 'takes it for off' : 'takes it for on',
      ticks: isTurned,
      says: on
        ? 'The box still has power: a switch alone does not take it away. Then DC volts, and nothing that pushes.'
        : 'The box is dead, so there are no volts to read. Now resistance and the diode test are safe.',
    },
    {
      slip: 'resistance with power on',
      ticks: withAlso('ohms', 'diode'),
      says: 'Resistance and the diode test push a current. With the power on they meet the voltage of the box.',
    },
    {
      slip: 'LED on an unknown jack',
      ticks: withAlso('led'),
      says: 'The LED takes real current. Hold it only to a jack that is known as an OUT.',
    },
    {
      slip: 'resistor too early',
      ticks: withAlso('loaded'),
      says: 'The resistor goes on only with the power on, and where 0.2 to 6 V were read before.',
    },
    {
      slip: 'resistor forgotten',
      ticks: (text) => isRight(text) && text !== DIALS.loaded,
      says: 'Some volts were read there, and no more than 6 V. So the resistor may go on too.',
    },
    {
      slip: 'everything',
      ticks: () => true,
      says: 'Ask of each what it pushes or takes, and whether the box has power.',
    },
    {
      slip: 'nothing',
      ticks: () => false,
      says: 'Something is always safe. Which of these pushes nothing into a live box?',
    },
  ];
}

function allowedNow(level: Level, chance: Chance): Drawn {
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
  const dialOf = (text: string): Dial => dials.find((dial) => DIALS[dial] === text) ?? 'volts';
  const on = box.power === 'idle';
  return {
    ask: `${box.told} Its jack is unmarked. Tick each thing that may go from ring to sleeve now, and that can tell something.`,
    ...(taken.length > 0 ? { shows: { shows: 'rows' as const, rows: rowsOf(taken) } } : {}),
    ...eachThat(
      dials.map((dial) => ({ text: DIALS[dial], right: isRight(dial) })),
      allowedSlips(
        on,
        (text) => isRight(dialOf(text)),
        (text) => turned(dialOf(text)),
      ),
      chance,
    ),
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

/** The tasks on power. */
export const POWER_TASKS: readonly TaskKind[] = [
  { kind: 'allowed-now', title: 'What may go on it now?', draw: allowedNow },
];
