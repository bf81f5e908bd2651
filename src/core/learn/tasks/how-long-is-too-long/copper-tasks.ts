/** Tasks on the copper of a lead: its ohms, its length, and the volts that it takes. */
import { sayAmperesFinely } from '../../../verdict/index.ts';
import { GAUGES, wireOhmsPerMetre } from '../../../wiring/index.ts';
import type { Link } from '../../../wiring/index.ts';
import { activeOf, dinLink } from '../../links.ts';
import { remembered } from '../chance.ts';
import { aNumber, inRows, plainNumber } from '../forms.ts';
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

const leadRows = (metres: number, gauge: number) =>
  inRows([
    ['length', `${metres} m`],
    ['conductors', sayGauge(gauge)],
  ]);

/** A whole DIN lead from a 5 V output. */
export const linkOf = (lengthMetres: number, gauge: number): Link => dinLink({}, {}, { lengthMetres, gauge });

/** Amperes of its LED while a 0 is sent. */
export const amperesOf = remembered((metres: number, gauge: number): number =>
  activeOf(linkOf(metres, gauge)),
);

const OHMS_OF_LEAD_SAID = {
  'one way': 'The current has to come back as well: it meets the copper twice.',
  'shield counted': 'The shield carries no current into an isolated input.',
  'length left out': 'That is one metre of it. How long is the lead?',
};

function ohmsOfLead(level: Level, chance: Chance): Drawn {
  const metres = drawnLength(level, chance);
  const gauge = chance.pick(GAUGES);
  const each = metres * wireOhmsPerMetre(gauge);
  return {
    ask: 'How many ohms does the copper of this lead put into the loop?',
    shows: leadRows(metres, gauge),
    ...aNumber(each * THERE_AND_BACK, 'ohm', ROUNDING, OHMS_OF_LEAD_SAID, {
      'one way': each,
      'shield counted': each * 3,
      'length left out': THERE_AND_BACK * wireOhmsPerMetre(gauge),
    }),
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

const METRES_FROM_OHMS_SAID = {
  halved: 'The meter went through one conductor only, so there is nothing to halve.',
  doubled: 'The meter went through one conductor only, from end to end.',
  multiplied: 'Ohms over ohms a metre gives metres: divide.',
};

function metresFromOhms(level: Level, chance: Chance): Drawn {
  const metres = drawnLength(level, chance);
  const gauge = chance.pick(GAUGES);
  const ohms = Number((metres * wireOhmsPerMetre(gauge)).toPrecision(3));
  return {
    ask: `A meter shows ${ohms} ohm from pin 4 at one end of a reel to pin 4 at the other, its own leads taken off. How long is the cable?`,
    shows: inRows([['conductors', sayGauge(gauge)]]),
    ...aNumber(metres, 'm', ROUNDING, METRES_FROM_OHMS_SAID, {
      halved: metres / THERE_AND_BACK,
      doubled: metres * THERE_AND_BACK,
      multiplied: ohms * wireOhmsPerMetre(gauge),
    }),
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

const VOLTS_IN_LEAD_SAID = {
  'one way': 'There and back: both conductors take their share.',
  volts: 'That is in volts. In millivolts it is a thousand times the number.',
  divided: 'Volts are amperes times ohms.',
};

function voltsInLead(level: Level, chance: Chance): Drawn {
  const metres = drawnLength(level, chance);
  const gauge = chance.pick(GAUGES);
  const amperes = amperesOf(metres, gauge);
  const ohms = metres * wireOhmsPerMetre(gauge) * THERE_AND_BACK;
  const millivolts = (of: number): number => of * amperes * 1e3;
  return {
    ask: `A loop carries ${sayAmperesFinely(amperes)}. How many millivolts does the copper of this lead take, there and back?`,
    shows: leadRows(metres, gauge),
    ...aNumber(millivolts(ohms), 'mV', ROUNDING, VOLTS_IN_LEAD_SAID, {
      'one way': millivolts(ohms / THERE_AND_BACK),
      volts: ohms * amperes,
      divided: (amperes * 1e6) / ohms,
    }),
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
