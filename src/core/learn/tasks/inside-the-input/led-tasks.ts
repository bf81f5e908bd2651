/** Tasks on what stands beside the LED of an input or in a row with it. The loop is solved; the formulas here are those of the mistakes. */
import { checkLink, sayAmperesFinely, sayVolts } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, wires } from '../../../wiring/index.ts';
import { dinLink } from '../../links.ts';
import { remembered } from '../chance.ts';
import { aNumber, casesAt, inRows, plainNumber, whichText } from '../forms.ts';
import { LED_VOLTS, inMilli, milliamperes, rowsOf, total, type Loop } from '../five-milliamp-loop/loops.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** What a red LED keeps at some milliamperes, volts (common practice, no source). */
const RED_VOLTS = 1.8;

const series = (source: number, sink: number, more: NonNullable<Loop['more']>): Loop => ({
  volts: 5,
  source,
  sink,
  series: 220,
  more,
});

const WITH_LAMP = [
  series(220, 220, 'activity-in-series'),
  series(180, 270, 'activity-in-series'),
  series(150, 220, 'activity-in-series'),
  series(270, 330, 'activity-in-series'),
];
const WITH_SECOND = [
  series(220, 220, 'second-in-series'),
  series(150, 150, 'second-in-series'),
  series(180, 220, 'second-in-series'),
];

/** Share by which a current worked out by hand may be off: two LEDs that keep a little less where less flows. */
const BY_HAND = 0.08;

const IN_SERIES_SAID = {
  'the new LED forgotten': 'The new LED takes its volts from the same loop. What is left for the resistors?',
  'nothing changed': 'In series the same current goes through all of it, so all of it counts.',
  'half of it': 'In a row a current is not shared. The volts are.',
  'no LED counted': 'Both LEDs keep some volts. Only the rest stands across the resistors.',
};

function inSeries(level: Level, chance: Chance): Drawn {
  const loop = chance.turn(level === 3 ? [...WITH_SECOND, ...WITH_LAMP] : WITH_LAMP);
  const second = loop.more === 'second-in-series';
  const extra = second ? LED_VOLTS : RED_VOLTS;
  const ohms = total(loop) + (second ? loop.series : 0);
  const left = loop.volts - LED_VOLTS - extra;
  const right = milliamperes(loop);
  const what = second ? "a second input's LED with its resistor" : 'a red LED that shows activity';
  return {
    ask: `A builder puts ${what} into the loop, in series with the rest. How much current flows while a 0 is sent?`,
    shows: inRows([
      ...rowsOf(loop),
      second
        ? ['the second input', `another ${loop.series} ohm and about ${LED_VOLTS} V`]
        : ['the red LED keeps', `about ${RED_VOLTS} V`],
    ]),
    ...aNumber(right, 'mA', BY_HAND, IN_SERIES_SAID, {
      'the new LED forgotten': inMilli(loop.volts - LED_VOLTS, ohms),
      'nothing changed': inMilli(loop.volts - LED_VOLTS, total(loop)),
      'half of it': inMilli(loop.volts - LED_VOLTS, total(loop)) / 2,
      'no LED counted': inMilli(loop.volts, ohms),
    }),
    hints: [
      'In a row the same current goes through every part, and the volts are shared.',
      'Take from the supply what both LEDs keep.',
      second ? 'Count all four resistors.' : 'Divide what is left by all three resistors together.',
    ],
    steps: [
      `Both LEDs together keep ${plainNumber(LED_VOLTS + extra)} V of the ${loop.volts} V: ${plainNumber(left)} V are left.`,
      `All resistors, one after the other: ${ohms} ohm.`,
      `${plainNumber(left)} V over ${ohms} ohm: about ${plainNumber(Number(inMilli(left, ohms).toFixed(2)))} mA. Solved with the curves of the LEDs: ${sayAmperesFinely(right / 1e3)}.`,
    ],
  };
}

const DIODES = {
  usual: 'a small diode that points the other way than the LED',
  'turned-diode': 'a small diode that points the same way as the LED',
  'no-diode': 'no diode',
  'schottky-diode': 'a Schottky diode that points the other way than the LED',
  'rectifier-diode': 'a rectifier diode that points the other way than the LED',
};
/** A diode beside the LED of an input, and whether the lead swaps the pair. */
type Beside = readonly [diode: keyof typeof DIODES, swapped: boolean];

const BESIDE: readonly Beside[] = [
  ['usual', true],
  ['turned-diode', false],
  ['no-diode', true],
  ['usual', false],
  ['no-diode', false],
  ['turned-diode', true],
  ['schottky-diode', true],
  ['rectifier-diode', false],
  ['rectifier-diode', true],
];

const SEEN = {
  lit: 'It lights as it should',
  past: 'It stays dark: the diode takes the current past it',
  small: 'It stays dark: the diode carries the current backwards',
  whole: 'It stays dark, with nearly all of the supply across it backwards',
};
type SeenOf = keyof typeof SEEN;

/** A reverse voltage from here on is that of the supply, not of a diode beside it, volts. */
const MUCH_VOLTS = 2;

/** What becomes of the LED while a 0 is sent, and the volts across it. */
const see = remembered(([diode, swapped]: Beside): { readonly seen: SeenOf; readonly volts: number } => {
  const conductors = swapped ? wires('4-5', '5-4', '2-2') : STRAIGHT_DIN;
  const { inputs, readings } = checkLink(
    dinLink({}, diode === 'usual' ? {} : { extras: [diode] }, { conductors }),
  );
  const volts = readings.active.parts.find(({ part }) => part.role === 'led')?.volts ?? 0;
  const isLit = inputs.some(({ active, on }) => active >= on);
  return { seen: isLit ? 'lit' : volts > 0 ? 'past' : volts > -MUCH_VOLTS ? 'small' : 'whole', volts };
});

function diodeBeside(level: Level, chance: Chance): Drawn {
  const one = chance.turn(casesAt(level, BESIDE, [4, 6]));
  const [diode, swapped] = one;
  const { seen, volts } = see(one);
  const side = swapped ? 'wrong' : 'right';
  const says = {
    lit: swapped
      ? 'The pair is swapped: the current comes from the wrong side. Does an LED let it through?'
      : 'Of two ways side by side the current takes the one that needs fewer volts. Which is it here?',
    past: 'That would need a diode that points the same way as the current. Is there one?',
    small: 'That would need current from the wrong side, and a diode that lets it through.',
    whole: 'That would need current from the wrong side, and nothing beside the LED to take it.',
  };
  return {
    ask: `An input has ${DIODES[diode]} beside its LED. A 5 V sender is joined to it by a lead ${swapped ? 'whose pair is swapped' : 'that is right'}. What does the LED do while a 0 is sent?`,
    ...whichText(SEEN, seen, (said) => [`says ${said}`, says[said]], chance),
    hints: [
      'An LED lets current through one way only, and so does a diode.',
      `Here the current comes from the ${side} side. Which of the two lets it through?`,
      'A diode needs about 0.7 V, the LED about 1.4 V. Where both let current through, the diode takes it.',
    ],
    steps: [
      `The current comes from the ${side} side, and beside the LED stands ${DIODES[diode]}.`,
      `Solved, ${sayVolts(Math.abs(volts))} stand across the LED${volts < 0 ? ', backwards' : ''}.`,
      `${SEEN[seen]}.`,
    ],
  };
}

/** The tasks on what stands beside the LED. */
export const LED_TASKS: readonly TaskKind[] = [
  { kind: 'led-in-series', title: 'One LED more in the loop', draw: inSeries },
  { kind: 'diode-beside', title: 'The diode beside the LED', draw: diodeBeside },
];
