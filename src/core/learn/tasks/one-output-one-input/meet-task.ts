/** The task on two outputs joined by wire: which line they fight over. Every meeting is solved. */
import { makeJack, valueAt } from '../../../wiring/index.ts';
import type { CircuitKind, State } from '../../../wiring/index.ts';
import { HUNT_CAUTION } from '../cautions.ts';
import { casesAt, inRows, whichText } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { fightOf } from './splits.ts';

/** Current from one output into another that is a fight, milliamperes: far above any leak, below any fight that is asked for. */
const FIGHT = 1.5;

type Met = readonly [first: CircuitKind, state: State, second: CircuitKind];
/** Outputs that meet, the second at rest or off. Cases in which a line is neither clearly at peace nor clearly not are left out. */
const MEETINGS: readonly Met[] = [
  ['driver-5v', 'active', 'driver-5v'],
  ['driver-5v', 'idle', 'driver-5v'],
  ['driver-5v', 'active', 'driver-3v3'],
  ['driver-3v3', 'active', 'driver-3v3'],
  ['driver-5v', 'active', 'driver-off'],
  ['driver-5v', 'active', 'driver-3v3-push-pull'],
  ['driver-3v3', 'active', 'driver-3v3-push-pull'],
  ['driver-5v', 'idle', 'driver-3v3-push-pull'],
  ['driver-3v3', 'active', 'driver-off'],
  ['driver-5v', 'idle', 'driver-3v3'],
];

/** What an output does to its two live pins. */
function heldBy(circuit: CircuitKind, state: State): readonly [four: string, five: string] {
  const jack = makeJack('out', 'din5', 'din', { circuit });
  const [source, sink] = [valueAt(jack, 'sourceOhms'), valueAt(jack, 'sinkOhms')];
  if (circuit === 'driver-off') return [`0 V behind ${source + valueAt(jack, 'railOhms')} ohm`, 'open'];
  const volts = valueAt(jack, 'supplyVolts');
  const high = circuit === 'driver-3v3' ? 'open' : `${volts} V behind ${sink} ohm`;
  return [`${volts} V behind ${source} ohm`, state === 'active' ? `0 V behind ${sink} ohm` : high];
}

const FIGHTS = {
  source: 'Pin 4, the source line',
  sink: 'Pin 5, the sink line',
  both: 'Both of these lines',
  none: 'Neither of these lines',
} as const;

const SAID_TO_FIGHT = {
  source: 'Compare pin 4 of the one with pin 4 of the other: do they hold it at two voltages?',
  sink: 'Compare pin 5 of the one with pin 5 of the other: do they hold it at two voltages?',
  both: 'Take one line after the other. One of them, at least, is left in peace.',
  none: 'Quiet is not gone: an output at rest, or switched off, still holds its lines.',
} as const;

/** On which line two outputs that are joined by wire work against each other. */
export function whoFights(level: Level, chance: Chance): Drawn {
  const [first, state, second] = chance.turn(casesAt(level, MEETINGS, [5, 8]));
  const { source, sink } = fightOf({
    first: makeJack('out', 'din5', 'din', { circuit: first }),
    second: makeJack('out', 'din5', 'din', { circuit: second }),
    state,
  });
  const right = source > FIGHT ? (sink > FIGHT ? 'both' : 'source') : sink > FIGHT ? 'sink' : 'none';
  const [one, other] = [heldBy(first, state), heldBy(second, 'idle')];
  const does = second === 'driver-off' ? 'is switched off' : 'rests';
  return {
    ask: `Two outputs are joined to one input by a plain Y lead. The first ${state === 'active' ? 'sends a 0' : 'rests'}, the second ${does}. On which line do the outputs work against each other?`,
    caution: HUNT_CAUTION,
    shows: inRows([
      ['first output, pin 4', one[0]],
      ['first output, pin 5', one[1]],
      ['second output, pin 4', other[0]],
      ['second output, pin 5', other[1]],
    ]),
    ...whichText(
      FIGHTS,
      right,
      (line) => [line === 'none' ? 'joins by wire if one is quiet' : `says ${line}`, SAID_TO_FIGHT[line]],
      chance,
    ),
    hints: [
      'Two outputs work against each other where they hold one line at two voltages.',
      'Compare pin 4 with pin 4, and pin 5 with pin 5.',
      'What is open holds nothing. Equal volts do not mind each other.',
    ],
    steps: [
      `Pin 4: ${one[0]} against ${other[0]}. Pin 5: ${one[1]} against ${other[1]}.`,
      `From one output into the other flow ${source.toFixed(1)} mA on pin 4 and ${sink.toFixed(1)} mA on pin 5. ${FIGHTS[right]}.`,
    ],
  };
}
