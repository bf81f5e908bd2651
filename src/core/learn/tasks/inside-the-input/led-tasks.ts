/** Tasks on what stands beside the LED of an input or in a row with it. The loop is solved; the formulas here are those of the mistakes. */
import { checkLink, linkFor, sayAmperesFinely, sayVolts } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, makeJack, wires } from '../../../wiring/index.ts';
import type { Extra, Jack } from '../../../wiring/index.ts';
import { aNumber, oneOf, plainNumber } from '../forms.ts';
import { LED_VOLTS, rowsOf, total, type Loop } from '../five-milliamp-loop/loops.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** What a red LED keeps at some milliamperes, volts (common practice, no source). */
const RED_VOLTS = 1.8;

/** A loop with something more in it. */
interface MoreLoop extends Loop {
  readonly more: Extract<Extra, 'activity-in-series' | 'second-in-series'>;
}

const series = (volts: number, source: number, sink: number, more: MoreLoop['more']): MoreLoop => ({
  volts,
  source,
  sink,
  series: 220,
  more,
});

const WITH_LAMP: readonly MoreLoop[] = [
  series(5, 220, 220, 'activity-in-series'),
  series(5, 180, 270, 'activity-in-series'),
  series(5, 150, 220, 'activity-in-series'),
  series(5, 270, 330, 'activity-in-series'),
];
const WITH_SECOND: readonly MoreLoop[] = [
  series(5, 220, 220, 'second-in-series'),
  series(5, 150, 150, 'second-in-series'),
  series(5, 180, 220, 'second-in-series'),
];

/** Share by which a current worked out by hand may be off: two LEDs that keep a little less where less flows. */
const BY_HAND = 0.08;

const lit = new Map<MoreLoop, number>();

/** Current of the loop, milliamperes, solved once. */
function milliamperes(loop: MoreLoop): number {
  const { volts, source, sink, series: ohms, more } = loop;
  const solve = (): number =>
    (checkLink(
      linkFor(
        makeJack('out', 'din5', 'din', {
          values: { supplyVolts: volts, sourceOhms: source, sinkOhms: sink },
        }),
        makeJack('in', 'din5', 'din', { values: { seriesOhms: ohms }, extras: [more] }),
        STRAIGHT_DIN,
      ),
      'outcome',
    ).inputs[0]?.active ?? 0) * 1e3;
  const known = lit.get(loop) ?? solve();
  lit.set(loop, known);
  return known;
}

function inSeries(level: Level, chance: Chance): Drawn {
  const loop = chance.turn(level === 3 ? [...WITH_SECOND, ...WITH_LAMP] : WITH_LAMP);
  const second = loop.more === 'second-in-series';
  const extra = second ? LED_VOLTS : RED_VOLTS;
  const ohms = total(loop) + (second ? loop.series : 0);
  const left = loop.volts - LED_VOLTS - extra;
  const right = milliamperes(loop);
  const inMilli = (over: number, through: number): number => (over / through) * 1e3;
  const what = second ? "a second input's LED with its resistor" : 'a red LED that shows activity';
  return {
    ask: `A builder puts ${what} into the loop, in series with the rest. How much current flows while a 0 is sent?`,
    shows: {
      shows: 'rows',
      rows: [
        ...rowsOf(loop),
        second
          ? ['the second input', `another ${loop.series} ohm and about ${LED_VOLTS} V`]
          : ['the red LED keeps', `about ${RED_VOLTS} V`],
      ],
    },
    ...aNumber(right, 'mA', BY_HAND, [
      {
        slip: 'the new LED forgotten',
        value: inMilli(loop.volts - LED_VOLTS, ohms),
        says: 'The new LED takes its volts from the same loop. What is left for the resistors?',
      },
      {
        slip: 'nothing changed',
        value: inMilli(loop.volts - LED_VOLTS, total(loop)),
        says: 'In series the same current goes through all of it, so all of it counts.',
      },
      {
        slip: 'the first LED forgotten',
        value: inMilli(loop.volts - extra, ohms),
        says: 'The LED of the optocoupler is still there, and keeps its own volts.',
      },
      {
        slip: 'half of it',
        value: inMilli(loop.volts - LED_VOLTS, total(loop)) / 2,
        says: 'In a row a current is not shared. The volts are.',
      },
      {
        slip: 'no LED counted',
        value: inMilli(loop.volts, ohms),
        says: 'Both LEDs keep some volts. Only the rest stands across the resistors.',
      },
    ]),
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

/** A diode beside the LED of an input, and how the lead joins the pair. */
interface Beside {
  readonly diode: 'usual' | 'turned-diode' | 'no-diode' | 'schottky-diode' | 'rectifier-diode';
  readonly swapped: boolean;
}

const beside = (diode: Beside['diode'], swapped: boolean): Beside => ({ diode, swapped });

const BESIDE: readonly Beside[] = [
  beside('usual', true),
  beside('turned-diode', false),
  beside('no-diode', true),
  beside('usual', false),
];
const MORE_BESIDE: readonly Beside[] = [beside('no-diode', false), beside('turned-diode', true)];
const OTHER_DIODES: readonly Beside[] = [
  beside('schottky-diode', true),
  beside('rectifier-diode', false),
  beside('rectifier-diode', true),
];

const DIODES: Readonly<Record<Beside['diode'], string>> = {
  usual: 'a small diode that points the other way than the LED',
  'turned-diode': 'a small diode that points the same way as the LED',
  'no-diode': 'no diode',
  'schottky-diode': 'a Schottky diode that points the other way than the LED',
  'rectifier-diode': 'a rectifier diode that points the other way than the LED',
};

const SEEN = {
  lit: 'It lights as it should',
  past: 'It stays dark: the diode takes the current past it',
  small: 'It stays dark: the diode carries the current backwards',
  whole: 'It stays dark, with nearly all of the supply across it backwards',
} as const;
type SeenOf = keyof typeof SEEN;

/** A reverse voltage from here on is that of the supply, not of a diode beside it, volts. */
const MUCH_VOLTS = 2;

const seenAt = new Map<Beside, { readonly seen: SeenOf; readonly volts: number }>();

/** What becomes of the LED while a 0 is sent, and the volts across it, solved once. */
function see(one: Beside): { readonly seen: SeenOf; readonly volts: number } {
  const known = seenAt.get(one);
  if (known) return known;
  const extras: Partial<Jack> = one.diode === 'usual' ? {} : { extras: [one.diode] };
  const { inputs, readings } = checkLink(
    linkFor(
      makeJack('out', 'din5', 'din'),
      makeJack('in', 'din5', 'din', extras),
      one.swapped ? wires('4-5', '5-4', '2-2') : STRAIGHT_DIN,
    ),
  );
  const volts = readings.active.parts.find(({ part }) => part.role === 'led')?.volts ?? 0;
  const [input] = inputs;
  const isLit = input !== undefined && input.active >= input.on;
  const seen: SeenOf = isLit ? 'lit' : volts > 0 ? 'past' : volts > -MUCH_VOLTS ? 'small' : 'whole';
  const made = { seen, volts };
  seenAt.set(one, made);
  return made;
}

function diodeBeside(level: Level, chance: Chance): Drawn {
  const one = chance.turn([
    ...BESIDE,
    ...(level >= 2 ? MORE_BESIDE : []),
    ...(level === 3 ? OTHER_DIODES : []),
  ]);
  const { seen, volts } = see(one);
  const says = {
    lit: one.swapped
      ? 'The pair is swapped: the current comes from the wrong side. Does an LED let it through?'
      : 'Of two ways side by side the current takes the one that needs fewer volts. Which is it here?',
    past: 'That would need a diode that points the same way as the current. Is there one?',
    small: 'That would need current from the wrong side, and a diode that lets it through.',
    whole: 'That would need current from the wrong side, and nothing beside the LED to take it.',
  } as const;
  return {
    ask: `An input has ${DIODES[one.diode]} beside its LED. A 5 V sender is joined to it by a lead ${one.swapped ? 'whose pair is swapped' : 'that is right'}. What does the LED do while a 0 is sent?`,
    ...oneOf(
      (['lit', 'past', 'small', 'whole'] as const).map((said) =>
        said === seen
          ? { text: SEEN[said], right: true }
          : { text: SEEN[said], slip: `says ${said}`, says: says[said] },
      ),
      chance,
    ),
    hints: [
      'An LED lets current through one way only, and so does a diode.',
      `Here the current comes from the ${one.swapped ? 'wrong' : 'right'} side. Which of the two lets it through?`,
      'A diode needs about 0.7 V, the LED about 1.4 V. Where both let current through, the diode takes it.',
    ],
    steps: [
      `The current comes from the ${one.swapped ? 'wrong' : 'right'} side, and beside the LED stands ${DIODES[one.diode]}.`,
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
