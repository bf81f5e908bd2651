/** Tasks on the name of a jack: what readings rule out, and what they leave. What is right is the finder's answer. */
import { sayName } from '../../../readings/index.ts';
import type { TakenReading } from '../../../readings/index.ts';
import { casesAt, eachOf, whichText } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { inFinder, sayTaken, standsOf, takeAll, type AskedName, type Hidden } from './measured.ts';

/** Names that the lesson speaks of. */
const NAMES = [
  'out type-a',
  'out type-b',
  'in type-a',
  'in type-b',
  'footswitch-double',
  'expression-ring',
  'headphone',
] as const;

/** A hidden jack and the readings taken on it. */
type Case = readonly [hidden: Hidden, names: readonly AskedName[]];

/** Cases by level: the last four are traps. */
const CROSSED: readonly Case[] = [
  ['outA', ['ring']],
  ['inA', ['ring', 'tip']],
  ['outB', ['ring', 'tip']],
  ['inA', ['diode', 'diodeBack']],
  ['switches', ['ring', 'tip']],
  ['inB', ['diode', 'diodeBack']],
  ['lowA', ['ring']],
  ['switches', ['ring', 'loaded']],
  ['headphone', ['ring', 'tip']],
  ['headphone', ['diode', 'diodeBack']],
  ['outA', ['ohms']],
  ['headphone', ['ohms']],
  ['pedal', ['ring', 'tip']],
  ['outA', ['ring', 'loaded']],
];

const SAID_TO_CROSSING = {
  'ticks what is left': 'Those are the names that are left. Tick the ones that cannot be.',
  '0 V means IN': 'No volts is not yet an answer: a headphone output rests at none, too.',
  'volts mean OUT': 'An OUT is not the only one. Inputs for switches and pedals feed their contacts, too.',
  'rules out all': 'It is one of the jacks that there are. Which of these would show just this?',
  'rules out nothing': 'Take the names one by one: what would this jack show here?',
  'rules out the outputs': 'Take the inputs one by one as well: would each of them show this?',
  'rules out the inputs of the loop': 'That is a part of it. Take the other names one by one as well.',
};

/** Names offered at most. */
const MOST_OFFERED = 5;

/** Which names some readings rule out. */
export function crossOut(level: Level, chance: Chance): Drawn {
  const [hidden, names] = chance.turn(casesAt(level, CROSSED, [6, 10]));
  const taken = takeAll(hidden, names);
  const stands = standsOf(taken);
  const standing = (wanted: 'fits' | 'ruled out'): readonly string[] =>
    chance.shuffled(NAMES.filter((name) => stands.get(name) === wanted));
  // The name that tempts most stays in: no volts are a headphone output's, too.
  const [fits, out] = [
    standing('fits').toSorted((a, b) => Number(b === 'headphone') - Number(a === 'headphone')),
    standing('ruled out'),
  ];
  const offered = [...fits.slice(0, Math.max(2, MOST_OFFERED - out.length)), ...out].slice(0, MOST_OFFERED);
  const isOut = (name: string): boolean => out.includes(name);
  const told = (some: readonly string[]): string => some.map(sayName).join('; ');
  return {
    ask: 'An unmarked phone jack on a box that works, read through a tested lead. The red probe is named first. Tick each name that these readings rule out.',
    ...inFinder(taken),
    ...eachOf(offered, chance, {
      text: sayName,
      right: isOut,
      ticks: {
        'ticks what is left': (name) => !isOut(name),
        '0 V means IN': isAllZero(taken) && ((name) => !name.startsWith('in ')),
        'volts mean OUT': showsVolts(taken) && ((name) => !name.startsWith('out ')),
        'rules out all': () => true,
        'rules out nothing': () => false,
        'rules out the outputs': (name) => name.startsWith('out ') || name === 'headphone',
        'rules out the inputs of the loop': (name) => name.startsWith('in '),
      },
      said: SAID_TO_CROSSING,
    }),
    hints: [
      'Ask of each name: could this jack show these readings?',
      'An OUT of the loop feeds both lines at rest, or its source alone. An IN shows no volts, and one way of the diode test shows its LED.',
      'Inputs for two footswitches feed tip and ring. An expression input feeds one of them. A headphone output has some ohms to the sleeve, and no volts.',
    ],
    steps: [
      sayTaken(taken),
      `Left: ${told(offered.filter((name) => !isOut(name)))}.`,
      `Ruled out: ${told(offered.filter(isOut))}.`,
    ],
  };
}

/** Whether one of the readings is of volts, and some are there. */
const showsVolts = (taken: readonly TakenReading[]): boolean =>
  taken.some(
    ({ at, reading }) => at.meter === 'volts' && reading.shows === 'value' && Math.abs(reading.value) > 0.2,
  );

/** Whether all of the readings are volts, and none to speak of. */
const isAllZero = (taken: readonly TakenReading[]): boolean =>
  taken.every(({ reading }) => reading.shows === 'value' && Math.abs(reading.value) < 0.01);

/** Cases by level: the last five are traps. */
const MAY_BE: readonly Case[] = [
  ['lowA', ['ring']],
  ['inA', ['diode', 'diodeBack']],
  ['headphone', ['ohms']],
  ['inA', ['ring', 'tip']],
  ['outA', ['ring', 'tip', 'loaded']],
  ['switches', ['ring', 'tip']],
  ['headphone', ['diode', 'diodeBack']],
  ['pedal', ['ring']],
  ['outB', ['ring', 'tip', 'loaded']],
  ['inB', ['diode', 'diodeBack']],
  ['outA', ['ohms']],
  ['switches', ['ring', 'tip', 'clock', 'loaded']],
  ['headphone', ['ring', 'tip']],
  ['lowA', ['ring', 'tip', 'clock', 'loaded']],
  ['pedal', ['ring', 'tip', 'clock']],
];

const KINDS = {
  out: 'Surely an OUT',
  in: 'Surely an IN',
  other: 'Surely neither of the two',
  open: 'Not sure yet',
} as const;
type Kind = keyof typeof KINDS;

/** What all names that still fit have in common. @throws where a name that is left open would decide. */
function kindLeft(taken: readonly TakenReading[]): Kind {
  const kindOf = (name: string): Exclude<Kind, 'open'> =>
    name.startsWith('out ') ? 'out' : name.startsWith('in ') ? 'in' : 'other';
  const left = (wanted: readonly string[]): ReadonlySet<Exclude<Kind, 'open'>> =>
    new Set(
      [...standsOf(taken)].filter(([, stands]) => wanted.includes(stands)).map(([name]) => kindOf(name)),
    );
  const [sure, loose] = [left(['fits']), left(['fits', 'open'])];
  if (sure.size > 1) return 'open';
  const [only] = sure;
  if (only === undefined || loose.size > 1) throw new Error('task: needs readings that leave no name open');
  return only;
}

/** The names that still fit: those that the lesson speaks of, and how many more. */
function fitWords(taken: readonly TakenReading[]): string {
  const fits = [...standsOf(taken)].filter(([, stands]) => stands === 'fits').map(([name]) => name);
  const named = NAMES.filter((name) => fits.includes(name)).map(sayName);
  const more = fits.length - named.length;
  return `These still fit: ${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
}

/** What the sorts of jack that are left have in common. */
export function mayBe(level: Level, chance: Chance): Drawn {
  const [hidden, names] = chance.turn(casesAt(level, MAY_BE, [5, 10]));
  const taken = takeAll(hidden, names);
  const right = kindLeft(taken);
  const zero = isAllZero(taken);
  const says = {
    out: zero
      ? 'An OUT that is on feeds its lines, so it would show some volts.'
      : 'More than an OUT shows this: inputs for switches and pedals feed their contacts, too.',
    in: zero
      ? 'An IN shows no volts, but it is not alone: a headphone output rests at none, too.'
      : 'An IN of the loop has no voltage of its own, and its diode test shows an LED one way.',
    other: 'A jack of the loop could show this. Which one?',
    open: 'Take the names one by one. Does more than one sort of jack show all of these?',
  } as const;
  return {
    ask: 'An unmarked phone jack on a box that works, read through a tested lead. The red probe is named first. OUT and IN mean the jacks that carry control messages. What may it be?',
    ...inFinder(taken),
    ...whichText(KINDS, right, (kind) => [`says ${KINDS[kind].toLowerCase()}`, says[kind]], chance),
    hints: [
      'A voltage need not mean OUT, and no voltage need not mean IN.',
      'Ask of each sort of jack: could it show these readings?',
      'A pull-up gives way to 1 kohm: most of its volts go. An output hardly gives way. An LED shows one way of the diode test.',
    ],
    steps: [sayTaken(taken), fitWords(taken), `${KINDS[right]}.`],
  };
}
