/** Tasks on the copper of a lead: its ohms, its length, and the volts that it takes. */
import { checkLink, sayAmperesFinely } from '../../../verdict/index.ts';
import { GAUGES, STRAIGHT_DIN, makeJack, makeLead, wireOhmsPerMetre } from '../../../wiring/index.ts';
import type { Link } from '../../../wiring/index.ts';
import { aNumber, plainNumber } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Lengths of leads, metres: on a board, across a stage, and from level 3 on across a house. */
export const LENGTHS = [1, 2, 3, 5, 6, 8, 10, 12, 15] as const;
/** Lengths across a house, metres. */
export const LONG_LENGTHS = [20, 25, 30, 40, 60] as const;
/** Conductors of one signal pair: out and back. */
export const THERE_AND_BACK = 2;
/** Share by which a product worked out by hand may be off: rounding only. */
const ROUNDING = 0.03;

/** A gauge with its ohms a metre, in words. */
export const sayGauge = (gauge: number): string =>
  `${gauge} AWG, ${plainNumber(wireOhmsPerMetre(gauge))} ohm a metre`;
/** A length by turns. */
export const drawnLength = (level: Level, chance: Chance): number =>
  chance.turn(level === 3 ? LONG_LENGTHS : LENGTHS);

/** A whole DIN lead from a 5 V output. */
export function linkOf(metres: number, gauge: number): Link {
  return {
    output: makeJack('out', 'din5', 'din'),
    branches: [
      {
        input: makeJack('in', 'din5', 'din'),
        leads: [makeLead('din5', 'din5', STRAIGHT_DIN, { lengthMetres: metres, gauge })],
      },
    ],
  };
}

/** Amperes of its LED while a 0 is sent. */
export const activeOf = (metres: number, gauge: number): number =>
  checkLink(linkOf(metres, gauge), 'outcome').inputs[0]?.active ?? 0;

function ohmsOfLead(level: Level, chance: Chance): Drawn {
  const metres = drawnLength(level, chance);
  const gauge = chance.pick(GAUGES);
  const each = metres * wireOhmsPerMetre(gauge);
  return {
    ask: 'How many ohms does the copper of this lead put into the loop?',
    shows: {
      shows: 'rows',
      rows: [
        ['length', `${metres} m`],
        ['conductors', sayGauge(gauge)],
      ],
    },
    ...aNumber(each * THERE_AND_BACK, 'ohm', ROUNDING, [
      {
        slip: 'one way',
        value: each,
        says: 'The current has to come back as well: it meets the copper twice.',
      },
      {
        slip: 'shield counted',
        value: each * 3,
        says: 'The shield carries no current into an isolated input.',
      },
      {
        slip: 'length left out',
        value: THERE_AND_BACK * wireOhmsPerMetre(gauge),
        says: 'That is one metre of it. How long is the lead?',
      },
    ]),
    hints: [
      'The current goes there and comes back.',
      'Find the ohms of one conductor first: ohms a metre times metres.',
      'Then take it twice.',
    ],
    steps: [
      `One conductor: ${metres} m of ${plainNumber(wireOhmsPerMetre(gauge))} ohm a metre make ${plainNumber(each)} ohm.`,
      `There and back: ${plainNumber(each * THERE_AND_BACK)} ohm.`,
    ],
  };
}

function metresFromOhms(level: Level, chance: Chance): Drawn {
  const metres = drawnLength(level, chance);
  const gauge = chance.pick(GAUGES);
  const ohms = Number((metres * wireOhmsPerMetre(gauge)).toPrecision(3));
  return {
    ask: `A meter shows ${ohms} ohm from pin 4 at one end of a reel to pin 4 at the other, its own leads taken off. How long is the cable?`,
    shows: { shows: 'rows', rows: [['conductors', sayGauge(gauge)]] },
    ...aNumber(metres, 'm', ROUNDING, [
      {
        slip: 'halved',
        value: metres / THERE_AND_BACK,
        says: 'The meter went through one conductor only, so there is nothing to halve.',
      },
      {
        slip: 'doubled',
        value: metres * THERE_AND_BACK,
        says: 'The meter went through one conductor only, from end to end.',
      },
      {
        slip: 'multiplied',
        value: ohms * wireOhmsPerMetre(gauge),
        says: 'Ohms over ohms a metre gives metres: divide.',
      },
    ]),
    hints: [
      'The meter went through one conductor, from end to end.',
      'How many times do the ohms of one metre go into the reading?',
      'Divide the reading by the ohms a metre.',
    ],
    steps: [
      `One metre has ${plainNumber(wireOhmsPerMetre(gauge))} ohm.`,
      `${ohms} ohm over ${plainNumber(wireOhmsPerMetre(gauge))} ohm a metre: ${metres} m.`,
    ],
  };
}

function voltsInLead(level: Level, chance: Chance): Drawn {
  const metres = drawnLength(level, chance);
  const gauge = chance.pick(GAUGES);
  const amperes = activeOf(metres, gauge);
  const ohms = metres * wireOhmsPerMetre(gauge) * THERE_AND_BACK;
  const millivolts = (of: number): number => of * amperes * 1e3;
  return {
    ask: `A loop carries ${sayAmperesFinely(amperes)}. How many millivolts does the copper of this lead take, there and back?`,
    shows: {
      shows: 'rows',
      rows: [
        ['length', `${metres} m`],
        ['conductors', sayGauge(gauge)],
      ],
    },
    ...aNumber(millivolts(ohms), 'mV', ROUNDING, [
      {
        slip: 'one way',
        value: millivolts(ohms / THERE_AND_BACK),
        says: 'There and back: both conductors take their share.',
      },
      {
        slip: 'volts',
        value: ohms * amperes,
        says: 'That is in volts. In millivolts it is a thousand times the number.',
      },
      { slip: 'divided', value: (amperes * 1e6) / ohms, says: 'Volts are amperes times ohms.' },
    ]),
    hints: [
      'Volts are amperes times ohms.',
      'Find the ohms of both conductors first.',
      'Milliamperes times ohms give millivolts.',
    ],
    steps: [
      `Both conductors: ${plainNumber(ohms)} ohm.`,
      `${sayAmperesFinely(amperes)} times ${plainNumber(ohms)} ohm: ${plainNumber(millivolts(ohms))} mV.`,
    ],
  };
}

/** The tasks on copper. */
export const COPPER_TASKS: readonly TaskKind[] = [
  { kind: 'ohms-of-lead', title: 'Ohms, there and back', draw: ohmsOfLead },
  { kind: 'volts-in-lead', title: 'Volts in the copper', draw: voltsInLead },
  { kind: 'metres-from-ohms', title: 'How long is the reel?', draw: metresFromOhms },
];
