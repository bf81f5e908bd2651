/** Tasks on the length of a lead: ohms, volts, current, and what the standard allows. */
import { checkLink, sayAmperesFinely } from '../../../verdict/index.ts';
import { GAUGES, STANDARD_METRES, wireOhmsPerMetre } from '../../../wiring/index.ts';
import {
  COPPER_TASKS,
  LENGTHS,
  LONG_LENGTHS,
  THERE_AND_BACK,
  activeOf,
  drawnLength,
  linkOf,
  sayGauge,
} from './copper-tasks.ts';
import { inOrder, oneOf, plainNumber } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

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
    shows: {
      shows: 'rows',
      rows: [...new Set(chosen.map(({ gauge }) => gauge))]
        .sort((a, b) => a - b)
        .map((gauge) => [`${gauge} AWG`, `${plainNumber(wireOhmsPerMetre(gauge))} ohm a metre`] as const),
    },
    ...inOrder(
      by(ohms),
      [
        {
          slip: 'most first',
          items: by((one) => -ohms(one)),
          says: 'The other way round: the least resistance comes first.',
        },
        {
          slip: 'by length alone',
          items: by(({ metres }) => metres),
          says: 'Thin wire has more ohms a metre: take the gauge too.',
        },
        {
          slip: 'by gauge alone',
          items: by(({ gauge, metres }) => gauge * 1e3 + metres),
          says: 'A short thin lead may have less than a long thick one: take the length too.',
        },
      ],
      chance,
    ),
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
const FALL_WORDS = ['Less than 0.5 %', 'From 0.5 to 2 %', 'From 2 to 6 %', 'More than 6 %'] as const;

function currentWithLength(level: Level, chance: Chance): Drawn {
  const cases = [...LENGTHS.slice(3), ...LONG_LENGTHS, 80, 100].flatMap((metres) =>
    GAUGES.map((gauge) => ({ metres, gauge })),
  );
  const { metres, gauge } = chance.turn(level === 3 ? cases : cases.filter((one) => one.metres < 100));
  const fall = 1 - activeOf(metres, gauge) / activeOf(1, gauge);
  const right = FALLS.findLastIndex((least) => fall >= least);
  return {
    ask: `A DIN lead of 1 m is replaced by one of ${metres} m, the same wire. By how much does the current fall?`,
    shows: {
      shows: 'rows',
      rows: [
        ['conductors', sayGauge(gauge)],
        ['resistors in the loop', '3 of 220 ohm'],
      ],
    },
    ...oneOf(
      FALL_WORDS.map((text, at) =>
        at === right
          ? { text, right: true }
          : {
              text,
              slip: `says ${text.toLowerCase()}`,
              says: 'Hold the ohms of the copper, there and back, against the ohms of the resistors.',
            },
      ),
      chance,
    ),
    hints: [
      'What counts is the copper against the resistors of the loop.',
      'Work out the ohms of both conductors.',
      'Their share of all ohms is about the share by which the current falls.',
    ],
    steps: [
      `The copper has ${plainNumber(metres * wireOhmsPerMetre(gauge) * THERE_AND_BACK)} ohm there and back, the resistors 660 ohm.`,
      `Solved, the current falls from ${sayAmperesFinely(activeOf(1, gauge))} to ${sayAmperesFinely(activeOf(metres, gauge))}: ${FALL_WORDS[right] ?? ''}.`,
    ],
  };
}

const ALLOWED_WORDS = [
  'It works, and the standard allows it.',
  'It works, and is longer than the standard allows.',
  'It does not work: too much copper.',
] as const;

function worksAndAllowed(level: Level, chance: Chance): Drawn {
  const metres = chance.turn([
    ...LENGTHS,
    ...LONG_LENGTHS,
    ...(level === 3 ? [STANDARD_METRES + 1, STANDARD_METRES + 2] : []),
  ]);
  const gauge = chance.pick(GAUGES);
  const verdict = checkLink(linkOf(metres, gauge), 'notes');
  const works = verdict.outcome === 'flows';
  const right = !works ? 2 : verdict.notes.some(({ kind }) => kind === 'too-long') ? 1 : 0;
  const says = [
    'Works is one thing, allowed another. What length does the standard name?',
    'Compare the length with the one that the standard names.',
    'Hold the copper against the resistors of the loop: it is a small part of them.',
  ] as const;
  return {
    ask: `A whole DIN lead of ${metres} m, ${gauge} AWG, from a 5 V output. What is true of it?`,
    ...oneOf(
      ALLOWED_WORDS.map((text, at) =>
        at === right
          ? { text, right: true }
          : {
              text,
              slip: `says ${['allowed', 'too long', 'too much copper'][at] ?? ''}`,
              says: says[at] ?? '',
            },
      ),
      chance,
    ),
    hints: [
      'These are two questions: does it work, and is it within the standard?',
      `The standard names ${STANDARD_METRES} m (50 feet).`,
      'The copper of a lead is a small part of the loop.',
    ],
    steps: [
      `Solved: ${sayAmperesFinely(verdict.inputs[0]?.active ?? 0)} while a 0 is sent.`,
      `${metres} m against the ${STANDARD_METRES} m of the standard. ${ALLOWED_WORDS[right]}`,
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
