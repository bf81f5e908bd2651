/** Tasks on the next reading. Which ones are safe the finder's own rule says. */
import type { JackReading } from '../../../readings/index.ts';
import { jackReading } from '../../jacks.ts';
import { oneOf } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import {
  ASKED,
  isSafe,
  isSame,
  inFinder,
  sayAsked,
  takeAll,
  type Asked,
  type AskedName,
  type Hidden,
} from './measured.ts';

/** What was read so far. */
type SoFar = readonly [hidden: Hidden, ...names: readonly AskedName[]];
const BEGUN: readonly SoFar[] = [
  ['outA', 'ring'],
  ['inA', 'tip'],
  ['inB', 'diode'],
  ['lowA', 'ring'],
];
const FURTHER: readonly SoFar[] = [
  ['switches', 'ring'],
  ['inA', 'ring'],
  ['pedal', 'tip'],
  ['lowB', 'ring', 'tip'],
  ['outB', 'ring', 'ohms'],
];

/** Readings with the power on that only volts may be: each with what is said to it. */
const UNSAFE: readonly { readonly asked: Asked; readonly slip: string; readonly says: string }[] = [
  {
    asked: ['ohms idle', 'ring-sleeve'],
    slip: 'resistance with power on',
    says: 'Resistance pushes a current of its own. With the power on it meets the voltage of the box.',
  },
  {
    asked: ['diode idle', 'tip-ring'],
    slip: 'diode test with power on',
    says: 'The diode test pushes a current into the jack. That is for power off only.',
  },
  {
    asked: ['led idle', 'ring-sleeve'],
    slip: 'LED on an unknown jack',
    says: 'The LED takes real current. Hold it only to a jack that is an OUT by its label or manual.',
  },
  {
    asked: ['continuity idle', 'tip-sleeve'],
    slip: 'continuity with power on',
    says: 'Continuity is resistance with a beep. It needs a dead box.',
  },
];

const TAKEN_ALREADY = {
  slip: 'taken already',
  says: 'That was read already. It is safe, but tells nothing new.',
};
const TOO_EARLY = {
  slip: 'resistor too early',
  says: 'The resistor goes on only where some volts were read before, and no more than 6 V.',
};

const LOADED: Asked = ['loaded idle', 'ring-sleeve'];

/** Readings that known mistakes would take next: one taken already, the resistor where it may not go on, and what pushes into a live box. */
function wrongNext(
  level: Level,
  again: JackReading | undefined,
  load: JackReading | undefined,
  chance: Chance,
): readonly { readonly at: JackReading; readonly slip: string; readonly says: string }[] {
  return [
    ...(level >= 2 && again ? [{ at: again, ...TAKEN_ALREADY }] : []),
    ...(level === 3 && load ? [{ at: load, ...TOO_EARLY }] : []),
    ...chance.shuffled(UNSAFE).map(({ asked, ...rest }) => ({ at: jackReading(...asked), ...rest })),
  ].slice(0, 3);
}

/** Which reading may come next. */
export function nextSafe(level: Level, chance: Chance): Drawn {
  const [hidden, ...names] = chance.turn(level < 2 ? BEGUN : [...FURTHER, ...BEGUN]);
  const taken = takeAll(hidden, names);
  const isNew = (at: JackReading): boolean => !taken.some((other) => isSame(other.at, at));
  const load = jackReading(...LOADED);
  const canLoad = isSafe(load, taken);
  const fresh = (Object.values(ASKED) as readonly Asked[])
    .map((asked) => jackReading(...asked))
    .filter((at) => isNew(at) && isSafe(at, taken));
  const next = level === 3 && canLoad ? load : chance.pick(fresh);
  const wrong = wrongNext(level, taken.at(-1)?.at, canLoad ? undefined : load, chance);
  return {
    ask: 'An unmarked phone jack, reached through the free plug of a tested lead. The red probe is named first. Which reading may come next, and tells something new?',
    ...inFinder(taken),
    ...oneOf(
      [
        { text: sayAsked(next), right: true },
        ...wrong.map(({ at, slip, says }) => ({ text: sayAsked(at), slip, says })),
      ],
      chance,
    ),
    hints: [
      'With the power on, DC volts and nothing else. With the power off, resistance and the diode test.',
      'Cross out what pushes or takes current while the box is on.',
      'A resistor across the probes may come after volts were read there: some, and no more than 6 V.',
    ],
    steps: [
      'With the power on only volts are safe. With the power off, resistance and the diode test.',
      next.meter === 'loaded'
        ? 'Volts were read on these contacts, and they were between 0.2 and 6 V. So the resistor may go on.'
        : 'This one keeps to that rule, and was not taken yet.',
      `${sayAsked(next)}.`,
    ],
  };
}
