/** Tasks on the five-milliamp loop. Every right answer is solved; the formulas here are those of the mistakes. */
import { checkLink, linkFor, sayAmperesFinely } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, makeJack } from '../../../wiring/index.ts';
import { CONDUCTOR_TASKS } from './conductor-tasks.ts';
import { remembered } from '../chance.ts';
import { aNumber, inOrder, inRows, plainNumber, whichText } from '../forms.ts';
import {
  LED_VOLTS,
  LOOPS,
  LOW_LOOPS,
  inMilli,
  jacksOf,
  milliamperes,
  rowsOf,
  total,
  type Loop,
} from './loops.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Share by which a number worked out by hand may be off: the LED's voltage moves a little with its current. */
const BY_HAND = 0.06;

const LOOP_CURRENT_SAID = {
  'LED forgotten': `The LED keeps about ${LED_VOLTS} V. What is left for the resistors?`,
  'one resistor': 'Follow the loop with a finger and count the resistors.',
  'receiver forgotten': 'There is a resistor in the receiver too. The current has to go through it.',
  'LED added': 'The LED takes its share of the supply away; it does not add to it.',
};

function loopCurrent(level: Level, chance: Chance): Drawn {
  const loop = chance.turn(level === 3 ? LOW_LOOPS : LOOPS);
  const { volts, source, sink } = loop;
  const right = milliamperes(loop);
  return {
    ask: 'How much current flows through the LED while a 0 is sent?',
    shows: inRows(rowsOf(loop)),
    ...aNumber(right, 'mA', BY_HAND, LOOP_CURRENT_SAID, {
      'LED forgotten': inMilli(volts, total(loop)),
      'one resistor': inMilli(volts - LED_VOLTS, source),
      'receiver forgotten': inMilli(volts - LED_VOLTS, source + sink),
      'LED added': inMilli(volts + LED_VOLTS, total(loop)),
    }),
    hints: [
      'The same current goes through every part of the loop.',
      'Take what the LED keeps from the supply. The resistors share the rest.',
      'Divide the volts that are left by the ohms of all the resistors together.',
    ],
    steps: [
      `All resistors, one after the other: ${total(loop)} ohm.`,
      `The LED keeps ${LED_VOLTS} V of the ${volts} V: ${plainNumber(volts - LED_VOLTS)} V are left.`,
      `${plainNumber(volts - LED_VOLTS)} V over ${total(loop)} ohm: about ${plainNumber(Number(inMilli(volts - LED_VOLTS, total(loop)).toPrecision(3)))} mA. Solved with the LED's own curve and the wire: ${sayAmperesFinely(right / 1e3)}.`,
    ],
  };
}

const MISSING_RESISTOR_SAID = {
  'others not taken off': 'That is what the whole loop needs. Two resistors are there already.',
  'LED forgotten': `The LED keeps about ${LED_VOLTS} V. Only the rest stands across the resistors.`,
  'one not taken off': 'Both lines have a resistor in the sender. Take both off.',
};

function missingResistor(level: Level, chance: Chance): Drawn {
  const loop = chance.turn(level === 3 ? LOW_LOOPS.slice(0, 3) : LOOPS.slice(1));
  const { volts, source, sink, series } = loop;
  const wanted = Number((((volts - LED_VOLTS) / total(loop)) * 1e3).toPrecision(3));
  const left = volts - LED_VOLTS;
  const all = (left / wanted) * 1e3;
  return {
    ask: `A loop is to carry ${wanted} mA while a 0 is sent. Which resistor belongs in the receiver?`,
    shows: inRows(rowsOf(loop).filter(([what]) => what !== 'resistor in the receiver')),
    ...aNumber(series, 'ohm', BY_HAND, MISSING_RESISTOR_SAID, {
      'others not taken off': all,
      'LED forgotten': (volts / wanted) * 1e3 - source - sink,
      'one not taken off': all - source,
    }),
    hints: [
      'Volts over current gives the ohms of the whole loop.',
      `Take the ${LED_VOLTS} V of the LED from the supply first.`,
      'From the ohms of the whole loop, take the two resistors that are there.',
    ],
    steps: [
      `${volts} V less ${LED_VOLTS} V for the LED: ${plainNumber(left)} V for the resistors.`,
      `${plainNumber(left)} V over ${wanted} mA: ${Math.round(all)} ohm in all.`,
      `${Math.round(all)} less ${source} and ${sink}: about ${series} ohm.`,
    ],
  };
}

const sayLoop = ({ volts, source, sink, series }: Loop): string =>
  `${volts} V through ${source} + ${sink} + ${series} ohm`;

const RANK_LOOPS_SAID = {
  'most first': 'The other way round: the least current comes first.',
  'by volts': 'Compare the resistors before the volts: 3.3 V with few ohms beats 5 V with many.',
  'LED forgotten': `Take the LED's ${LED_VOLTS} V from each supply first.`,
};

function rankLoops(level: Level, chance: Chance): Drawn {
  const first = chance.turn(LOOPS);
  const low = chance.pick(LOW_LOOPS);
  const pool = [...LOOPS, ...(level >= 2 ? LOW_LOOPS : [])].filter((one) => one !== first && one !== low);
  const chosen = [first, low];
  for (const loop of chance.shuffled(pool)) {
    const near = chosen.some((one) => Math.abs(milliamperes(one) / milliamperes(loop) - 1) < APART);
    if (!near && chosen.length < 4) chosen.push(loop);
  }
  const by = (key: (loop: Loop) => number): readonly string[] =>
    chosen.toSorted((a, b) => key(a) - key(b)).map(sayLoop);
  return {
    ask: 'Put these loops in order, the one with the least current first. Each has one LED.',
    ...inOrder(by(milliamperes), chance, RANK_LOOPS_SAID, {
      'most first': [by((loop) => -milliamperes(loop))],
      'by volts': [by((loop) => loop.volts * 1e4 - total(loop))],
      'LED forgotten': [by((loop) => loop.volts / total(loop))],
    }),
    hints: [
      'Current is what the supply has left, over all the resistors.',
      `Take ${LED_VOLTS} V from each supply, and add up the ohms of each loop.`,
      'Divide, loop by loop, then sort.',
    ],
    steps: chosen
      .toSorted((a, b) => milliamperes(a) - milliamperes(b))
      .map((loop) => `${sayLoop(loop)}: ${sayAmperesFinely(milliamperes(loop) / 1e3)}.`),
  };
}

/** Loops nearer to one another than this share are too near to be put in order by hand. */
const APART = 0.08;

const STATES = {
  idle: 'It rests: no current flows.',
  active: 'It sends a 0: current flows.',
  off: 'It has no supply.',
};
/** What each of them is known by. */
const KNOWN_BY = {
  idle: 'Both lines stand at one voltage: nothing drives a current between them.',
  active: 'There is a voltage between the two lines, so current flows.',
  off: 'A sender that is on holds its lines at its supply while it rests.',
};

const contactsIn = remembered((state: keyof typeof STATES, loop: Loop) => {
  const [output, input] = jacksOf(loop);
  const sender = state === 'off' ? makeJack('out', 'din5', 'din', { circuit: 'driver-off' }) : output;
  const { readings } = checkLink(linkFor(sender, input, STRAIGHT_DIN));
  return readings[state === 'idle' ? 'idle' : 'active'].contacts;
});

function idleOrActive(level: Level, chance: Chance): Drawn {
  const loop = chance.pick(level === 3 ? LOW_LOOPS : LOOPS);
  const state = chance.turn(['idle', 'active', 'off'] as const);
  const contacts = contactsIn(state, loop);
  const volts = (pin: string): string => {
    const shown = contacts.find(({ spot }) => spot.place === 'output' && spot.contact === pin)?.volts ?? 0;
    // What is nearly nothing has no sign.
    return `${shown.toFixed(2).replace('-0.00', '0.00')} V`;
  };
  return {
    ask: 'A sender is held in one state, a lead and a listener are plugged in, and two meters are on its pins. What does it do?',
    shows: inRows([
      ['pin 4 against pin 2', volts('4')],
      ['pin 5 against pin 2', volts('5')],
    ]),
    ...whichText(STATES, state, (one) => [`says ${one}`, KNOWN_BY[state]], chance),
    hints: [
      'Current flows where there is a voltage between the two lines.',
      'Take one reading from the other.',
      'Two readings alike: at rest, or no supply at all.',
    ],
    steps: [`Pin 4 shows ${volts('4')}, pin 5 ${volts('5')}.`, KNOWN_BY[state], STATES[state]],
  };
}

/** The tasks of the lesson. */
export const LOOP_TASKS: readonly TaskKind[] = [
  { kind: 'loop-current', title: 'Work out the current', draw: loopCurrent },
  ...CONDUCTOR_TASKS,
  { kind: 'rank-loops', title: 'Least current first', draw: rankLoops },
  { kind: 'idle-or-active', title: 'Two meters on a sender', draw: idleOrActive },
  { kind: 'missing-resistor', title: 'The missing resistor', draw: missingResistor },
];
