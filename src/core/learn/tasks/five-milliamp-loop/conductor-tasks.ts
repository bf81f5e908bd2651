/** Tasks on the conductors of a lead: what may be cut, and which way the current goes. Both are solved. */
import { checkLink, linkFor, sayAmperesFinely } from '../../../verdict/index.ts';
import {
  STRAIGHT_TRS,
  conductorWords,
  contactWords,
  familyOf,
  makeJack,
  styleEntry,
  wires,
} from '../../../wiring/index.ts';
import type { Conductor, Connector, Jack, Style } from '../../../wiring/index.ts';
import { remembered } from '../chance.ts';
import { eachOf, whichText } from '../forms.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

type Place = readonly [connector: Connector, style: Style];
/** A lead between two jacks. */
const lead = (output: Place, input: Place, conductors: readonly Conductor[]) => ({
  output: makeJack('out', ...output),
  input: makeJack('in', ...input),
  conductors,
});
const DIN: Place = ['din5', 'din'];

/** Jacks and leads whose conductors are cut one by one. */
const CUTS = [
  lead(DIN, DIN, wires('1-1', '2-2', '3-3', '4-4', '5-5')),
  lead(DIN, ['trs-3.5', 'type-a'], wires('2-sleeve', '4-ring', '5-tip')),
  lead(['trs-3.5', 'type-b'], ['trs-3.5', 'type-b'], STRAIGHT_TRS),
  lead(['trs-6.35', 'type-a'], DIN, wires('ring-4', 'tip-5', 'sleeve-2')),
];
/** The same for level 3: an input that listens against its own ground needs the shield. */
const CUTS_WITH_TRAP = [
  lead(['trs-6.35', 'tip-signal'], ['trs-6.35', 'tip-signal'], STRAIGHT_TRS),
  lead(['trs-3.5', 'ring-signal'], ['trs-3.5', 'ring-signal'], STRAIGHT_TRS),
  ...CUTS.slice(1, 3),
];

const isShield = (one: Conductor): boolean => /2|sleeve/.test(conductorWords(one));

/** Where the sender has its lines, as a sentence: a phone plug looks the same whichever contact carries which. A DIN pin needs no telling. */
function sayLines({ connector, style }: Jack): string {
  if (familyOf(connector) === 'din') return '';
  const { source, sink, shield } = styleEntry(style).lines;
  const said = source ? { source, sink, shield } : { 'its signal': sink, ground: shield };
  const places = Object.entries(said).flatMap(([line, contact]) =>
    contact ? [`${line} on the ${contactWords(contact)}`] : [],
  );
  return `The sender has ${places.join(', ')}. `;
}

const CUT_CONDUCTORS_SAID = {
  'shield as return':
    'What does the shield meet inside the input? Only what carries the current has to stay.',
  'none may go': 'Follow the current, out and back. A conductor that it does not use may go.',
  'all may go': 'Then nothing would be left. Cut one and follow the current, out and back.',
  'shield always free': 'Does this input have a way back without the shield?',
};

const flows = remembered(
  (...lead: Parameters<typeof linkFor>) => checkLink(linkFor(...lead), 'outcome').outcome === 'flows',
);

function cutConductors(level: Level, chance: Chance): Drawn {
  const { output, input, conductors } = chance.turn(level === 3 ? CUTS_WITH_TRAP : CUTS);
  const without = (one: Conductor): readonly Conductor[] => conductors.filter((other) => other !== one);
  const free = conductors.filter((one) => flows(output, input, without(one)));
  const mayGo = (one: Conductor): boolean => free.includes(one);
  const grounded = output.style.endsWith('-signal');
  return {
    ask: `${sayLines(output)}One conductor of this lead is cut, and only one. Which may it be, so that notes still get through?`,
    shows: { shows: 'lead', output, input, conductors },
    ...eachOf(conductors, chance, {
      text: conductorWords,
      right: mayGo,
      said: CUT_CONDUCTORS_SAID,
      ticks: {
        'shield as return': (one) => mayGo(one) && !isShield(one),
        'none may go': () => false,
        'all may go': () => true,
        'shield always free': isShield,
      },
    }),
    hints: [
      'Only a whole loop carries current.',
      grounded
        ? 'This output sends against ground. Which contact is its way back?'
        : 'Find the two contacts that carry the source and the sink.',
      'Everything else may be cut.',
    ],
    steps: [
      grounded
        ? 'The signal goes out on one contact and comes back through the ground.'
        : 'The current goes out on the source line and comes back on the sink line.',
      `These may be cut: ${free.map(conductorWords).join(', ') || 'none'}.`,
    ],
  };
}

/** A conductor that carries less than this carries nothing that a reader would call current, amperes. */
const CURRENT_SEEN = 1e-6;

const WAYS = {
  out: 'From the sender to the listener.',
  back: 'From the listener to the sender.',
  none: 'Neither way: it carries no current.',
};
type Way = keyof typeof WAYS;

const amperesIn = remembered(
  (...lead: Parameters<typeof linkFor>) => checkLink(linkFor(...lead)).readings.active.conductors,
);

function loopDirection(level: Level, chance: Chance): Drawn {
  const cases = (level === 3 ? CUTS_WITH_TRAP : CUTS).flatMap(({ output, input, conductors }) =>
    conductors.map((conductor) => ({ output, input, conductors, conductor })),
  );
  const { output, input, conductors, conductor } = chance.turn(cases);
  const amperes =
    amperesIn(output, input, conductors).find(
      ({ from, to }) => from === conductor.from && to === conductor.to,
    )?.amperes ?? 0;
  const way = amperes > CURRENT_SEEN ? 'out' : amperes < -CURRENT_SEEN ? 'back' : 'none';
  return {
    ask: `${sayLines(output)}A 0 is being sent. Which way does the current go in the conductor from ${conductorWords(conductor)}?`,
    shows: { shows: 'lead', output, input, conductors },
    ...whichText(WAYS, way, (one) => [`says ${one}`, saidTo(one, way)], chance),
    hints: [
      'Current leaves the sender on the source line and comes home on the sink line.',
      'Find out which line this contact of the sender carries.',
      'A shield carries no current where the input is isolated.',
    ],
    steps: [`Solved, this conductor carries ${sayAmperesFinely(Math.abs(amperes))}.`, WAYS[way]],
  };
}

/** What is said to a way that is not the right one. */
function saidTo(said: Way, right: Way): string {
  if (right === 'none') return 'What does this contact meet inside the input? A dead end carries nothing.';
  if (said === 'none') return 'This conductor is part of the loop. Follow it out and back.';
  return right === 'out'
    ? 'Where does the loop get its current from? It leaves the supply on the source line.'
    : 'The sink line leads the current home, into the sender.';
}

/** The tasks on conductors. */
export const CONDUCTOR_TASKS: readonly TaskKind[] = [
  { kind: 'cut-conductors', title: 'What may be cut?', draw: cutConductors },
  { kind: 'loop-direction', title: 'Which way does it flow?', draw: loopDirection },
];
