/** Tasks on the length of a lead: ohms, volts, current, and what the standard allows. */
import { capital, checkLink, sayAmperesFinely } from '../../../verdict/index.ts';
import { GAUGES, STANDARD_METRES, wireOhmsPerMetre } from '../../../wiring/index.ts';
import {
  COPPER_TASKS,
  LENGTHS,
  LONG_LENGTHS,
  THERE_AND_BACK,
  amperesOf,
  drawnLength,
  linkOf,
  sayGauge,
} from './copper-tasks.ts';
import { remembered } from '../chance.ts';
import { inOrder, inRows, plainNumber, whichOf, whichText } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

const RANK_LEADS_SAID = {
  'most first': 'The other way round: the least resistance comes first.',
  'by length alone': 'Thin wire has more ohms a metre: take the gauge too.',
  'by gauge alone': 'A short thin lead may have less than a long thick one: take the length too.',
};

function rankLeads(level: Level, chance: Chance): Drawn {
  const first = { metres: drawnLength(level, chance), gauge: chance.pick(GAUGES) };
  const pool = chance.shuffled(
    [...LENGTHS, ...LONG_LENGTHS].flatMap((metres) => GAUGES.map((gauge) => ({ metres, gauge }))),
  );
  const ohms = ({ metres, gauge }: typeof first): number => metres * wireOhmsPerMetre(gauge);
  const chosen = [first];
  for (const one of pool)
    if (chosen.length < 4 && chosen.every((other) => Math.abs(ohms(one) / ohms(other) - 1) > APART))
      chosen.push(one);
  const say = ({ metres, gauge }: typeof first): string => `${metres} m of ${gauge} AWG`;
  const by = (key: (one: typeof first) => number): readonly string[] =>
    chosen.toSorted((a, b) => key(a) - key(b)).map(say);
  return {
    ask: 'Put these leads in order, the one with the least resistance first. A higher gauge number is a thinner wire.',
    shows: inRows(
      [...new Set(chosen.map(({ gauge }) => gauge))]
        .sort((a, b) => a - b)
        .map((gauge) => [`${gauge} AWG`, `${plainNumber(wireOhmsPerMetre(gauge))} ohm a metre`]),
    ),
    ...inOrder(by(ohms), chance, RANK_LEADS_SAID, {
      'most first': [by((one) => -ohms(one))],
      'by length alone': [by(({ metres }) => metres)],
      'by gauge alone': [by(({ gauge, metres }) => gauge * 1e3 + metres)],
    }),
    hints: [
      'Ohms grow with the length, and with thinner wire.',
      'Multiply metres by ohms a metre, lead by lead.',
      'Then sort the products.',
    ],
    steps: chosen
      .toSorted((a, b) => ohms(a) - ohms(b))
      .map((one) => `${say(one)}: ${plainNumber(ohms(one))} ohm a conductor.`),
  };
}

/** Leads nearer to one another than this share are too near to be put in order by hand. */
const APART = 0.15;

const FALLS = [0, 0.005, 0.02, 0.06] as const;
const FALL_WORDS = ['less than 0.5 %', 'from 0.5 to 2 %', 'from 2 to 6 %', 'more than 6 %'] as const;
const ON_COPPER = 'Hold the ohms of the copper, there and back, against the ohms of the resistors.';

function currentWithLength(level: Level, chance: Chance): Drawn {
  const cases = [...LENGTHS.slice(3), ...LONG_LENGTHS, 80, 100].flatMap((metres) =>
    GAUGES.map((gauge) => ({ metres, gauge })),
  );
  const { metres, gauge } = chance.turn(level === 3 ? cases : cases.filter((one) => one.metres < 100));
  const [short, long] = [amperesOf(1, gauge), amperesOf(metres, gauge)];
  const right = FALL_WORDS[FALLS.findLastIndex((least) => 1 - long / short >= least)] ?? FALL_WORDS[0];
  return {
    ask: `A DIN lead of 1 m is replaced by one of ${metres} m, the same wire. By how much does the current fall?`,
    shows: inRows([
      ['conductors', sayGauge(gauge)],
      ['resistors in the loop', '3 of 220 ohm'],
    ]),
    ...whichOf(FALL_WORDS, right, capital, (one) => [`says ${one}`, ON_COPPER], chance),
    hints: [
      'What counts is the copper against the resistors of the loop.',
      'Work out the ohms of both conductors.',
      'Their share of all ohms is about the share by which the current falls.',
    ],
    steps: [
      `The copper has ${plainNumber(metres * wireOhmsPerMetre(gauge) * THERE_AND_BACK)} ohm there and back, the resistors 660 ohm.`,
      `Solved, the current falls from ${sayAmperesFinely(short)} to ${sayAmperesFinely(long)}: ${capital(right)}.`,
    ],
  };
}

const ALLOWED = {
  allowed: 'It works, and the standard allows it.',
  'too long': 'It works, and is longer than the standard allows.',
  'too much copper': 'It does not work: too much copper.',
};
const ALLOWED_SAID = {
  allowed: 'Works is one thing, allowed another. What length does the standard name?',
  'too long': 'Compare the length with the one that the standard names.',
  'too much copper': 'Hold the copper against the resistors of the loop: it is a small part of them.',
};

const verdictOn = remembered((metres: number, gauge: number) => checkLink(linkOf(metres, gauge), 'notes'));

function worksAndAllowed(level: Level, chance: Chance): Drawn {
  const metres = chance.turn([
    ...LENGTHS,
    ...LONG_LENGTHS,
    ...(level === 3 ? [STANDARD_METRES + 1, STANDARD_METRES + 2] : []),
  ]);
  const gauge = chance.pick(GAUGES);
  const verdict = verdictOn(metres, gauge);
  const tooLong = verdict.notes.some(({ kind }) => kind === 'too-long');
  const right = verdict.outcome !== 'flows' ? 'too much copper' : tooLong ? 'too long' : 'allowed';
  return {
    ask: `A whole DIN lead of ${metres} m, ${gauge} AWG, from a 5 V output. What is true of it?`,
    ...whichText(ALLOWED, right, (one) => [`says ${one}`, ALLOWED_SAID[one]], chance),
    hints: [
      'These are two questions: does it work, and is it within the standard?',
      `The standard names ${STANDARD_METRES} m (50 feet).`,
      'The copper of a lead is a small part of the loop.',
    ],
    steps: [
      `Solved: ${sayAmperesFinely(verdict.inputs[0]?.active ?? 0)} while a 0 is sent.`,
      `${metres} m against the ${STANDARD_METRES} m of the standard. ${ALLOWED[right]}`,
    ],
  };
}

/** The tasks of the lesson. */
export const LENGTH_TASKS: readonly TaskKind[] = [
  ...COPPER_TASKS,
  { kind: 'rank-leads', title: 'Least resistance first', draw: rankLeads },
  { kind: 'current-with-length', title: 'A longer lead', draw: currentWithLength },
  { kind: 'works-and-allowed', title: 'Works, and allowed?', draw: worksAndAllowed },
];
