/** Tasks on one output with several inputs by plain wire: what each gets, and which parts turn on. */
import { PARTS } from '../../../wiring/index.ts';
import type { Part } from '../../../wiring/index.ts';
import {
  LED_VOLTS,
  LOOPS,
  LOW_LOOPS,
  inMilli,
  jacksOf,
  rowsOf,
  type Loop,
} from '../five-milliamp-loop/loops.ts';
import { aNumber, eachOf, inRows, plainNumber } from '../forms.ts';
import { findSplit, whichBox } from './join-tasks.ts';
import { whoFights } from './meet-task.ts';
import { workedForYears } from './years-task.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';
import { byHand, inputWith, shareOf, sharesOf } from './splits.ts';

/** Share by which a number worked out by hand may be off: the LED's voltage moves a little with its current. */
const BY_HAND = 0.06;

const NUMBERS = ['no', 'one', 'two', 'three'] as const;

/** The rows of a loop, said of several inputs. */
const splitRows = (loop: Loop): readonly (readonly [string, string])[] =>
  rowsOf(loop).map(([what, value]) => [
    what.replace('the receiver', 'each receiver').replace('the LED keeps', 'each LED keeps'),
    value,
  ]);

const NOT_EXACT =
  'Ways side by side resist less than one. So the output gives a little more than before, and each gets a little more than its part of one.';
const SHARE_SAID = {
  'exact half': NOT_EXACT,
  'exact third': NOT_EXACT,
  'as before': 'That is what one input alone gets. The resistors of the output hold the sum back.',
  'not shared': 'That is what leaves the output. The inputs share it.',
  'LED forgotten': `Each LED keeps about ${LED_VOLTS} V. What is left for the resistors?`,
  'one after the other':
    'The inputs stand side by side, not one after the other. It is the output whose resistors carry the current of all.',
};

function shareCurrent(level: Level, chance: Chance): Drawn {
  const loop = chance.turn(level === 3 ? LOW_LOOPS : LOOPS.slice(0, 5));
  const inputs = level < 2 ? 2 : chance.pick([2, 3]);
  const { volts, source, sink, series } = loop;
  const alone = shareOf(loop, 1);
  const right = shareOf(loop, inputs);
  const counted = inputs * (source + sink);
  return {
    ask: `${NUMBERS[inputs] === 'two' ? 'Two' : 'Three'} inputs alike are joined to one output by plain wire. How much current flows through the LED of each while a 0 is sent?`,
    shows: inRows(splitRows(loop)),
    ...aNumber(right, 'mA', BY_HAND, SHARE_SAID, {
      'exact half': inputs === 2 && alone / inputs,
      'exact third': inputs === 3 && alone / inputs,
      'as before': alone,
      'not shared': right * inputs,
      'LED forgotten': inMilli(volts, counted + series),
      'one after the other': inMilli(volts - LED_VOLTS, source + sink + inputs * series),
    }),
    hints: [
      "The output's resistors carry the current of all inputs, a receiver's resistor only its own.",
      'Take what an LED keeps from the supply.',
      `Count the output's resistors ${NUMBERS[inputs] ?? ''} times, the receiver's once, and divide.`,
    ],
    steps: [
      `The output has ${source + sink} ohm, and they carry the current of ${inputs} inputs. For one input they count as ${counted} ohm.`,
      `With the receiver's own ${series} ohm: ${counted + series} ohm. The resistors have ${plainNumber(volts - LED_VOLTS)} V.`,
      `${plainNumber(volts - LED_VOLTS)} V over ${counted + series} ohm: about ${plainNumber(byHand(loop, inputs))} mA for each. Solved with the LED's own curve: ${plainNumber(Number(right.toFixed(2)))} mA.`,
    ],
  };
}

/** Room that a part must have on either side, by the solved current and by hand, so that no task depends on a rounding. */
const CLEAR = 1.1;

interface Lit {
  readonly part: Part;
  readonly needs: number;
  readonly lit: boolean;
}

/** Parts of which so many, all alike, are clearly on or clearly off on the output of a loop. */
function clearParts(loop: Loop, inputs: number): readonly Lit[] {
  const [output] = jacksOf(loop);
  const hand = byHand(loop, inputs);
  return PARTS.filter((part) => part !== 'unknown').flatMap((part): Lit[] => {
    const { gets, needs } = sharesOf(
      output,
      Array.from({ length: inputs }, () => inputWith(part)),
    )[0]!;
    const [low, high] = [Math.min(gets, hand), Math.max(gets, hand)];
    return low > CLEAR * needs
      ? [{ part, needs, lit: true }]
      : high * CLEAR < needs
        ? [{ part, needs, lit: false }]
        : [];
  });
}

/** The standard's two outputs, and inputs that share one. */
const SPLITS: readonly { readonly loop: Loop; readonly inputs: number }[] = [LOOPS, LOW_LOOPS].flatMap(
  ([loop]) => [2, 3].map((inputs) => ({ loop: loop as Loop, inputs })),
);

const sayLit = ({ part, needs }: Lit): string => `${part}, which needs ${needs.toFixed(1)} mA`;

const EXACT_PART = 'Each gets more than that: ways side by side resist less, so the sum grows a little.';
const SAID_TO_LIT = {
  'as before': 'You gave each input what one alone gets. They share it, so each gets less.',
  'exact half': EXACT_PART,
  'exact third': EXACT_PART,
  'a split never works':
    'Some parts need so little that a split leaves them enough. No one promises it, but it happens.',
};

function litParts(level: Level, chance: Chance): Drawn {
  const { loop, inputs } = chance.turn(level < 2 ? SPLITS.filter((one) => one.inputs === 2) : SPLITS);
  const shown = chance.shuffled(clearParts(loop, inputs)).slice(0, level === 3 ? 5 : 4);
  const alone = shareOf(loop, 1);
  const hand = byHand(loop, inputs);
  return {
    ask: `${inputs === 2 ? 'Two' : 'Three'} inputs with the same part are joined to one output by plain wire. At usual values, which parts turn on?`,
    shows: inRows([
      ['one input alone gets', `about ${alone.toFixed(1)} mA`],
      ...(level < 2
        ? [[`each of ${NUMBERS[inputs] ?? ''} gets`, `about ${hand.toFixed(1)} mA`] as const]
        : splitRows(loop)),
    ]),
    ...eachOf(shown, chance, {
      text: sayLit,
      right: ({ lit }) => lit,
      ticks: {
        'as before': ({ needs }) => needs <= alone,
        'exact half': inputs === 2 && (({ needs }) => needs <= alone / 2),
        'exact third': inputs === 3 && (({ needs }) => needs <= alone / 3),
        'a split never works': () => false,
      },
      said: SAID_TO_LIT,
    }),
    hints: [
      'Two numbers decide: what each input gets, and what its part needs.',
      level < 2 ? 'What each gets is told.' : "Count the output's resistors once for each input.",
      'Tick each part that needs less than what it gets.',
    ],
    steps: [
      `Each of the ${inputs} gets about ${hand.toFixed(1)} mA, where one alone gets ${alone.toFixed(1)} mA.`,
      `Turned on: ${
        shown
          .filter(({ lit }) => lit)
          .map(({ part }) => part)
          .join(', ') || 'none'
      }.`,
    ],
  };
}

/** The tasks of the lesson. */
export const OUTPUT_TASKS: readonly TaskKind[] = [
  { kind: 'share-current', title: 'What does each input get?', draw: shareCurrent },
  { kind: 'lit-parts', title: 'Which parts turn on?', draw: litParts },
  { kind: 'who-fights', title: 'Two outputs meet', draw: whoFights },
  { kind: 'which-box', title: 'What belongs between?', draw: whichBox },
  { kind: 'find-split', title: 'Find the split', draw: findSplit },
  { kind: 'worked-for-years', title: 'It has worked for years', draw: workedForYears },
];
