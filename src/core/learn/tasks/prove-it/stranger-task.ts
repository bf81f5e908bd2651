/** A lead that nobody knows: what it joins is read, and the jacks that it serves are found by solving it between them. */
import { sayPlace } from '../../../making/index.ts';
import { checkLink, works } from '../../../verdict/index.ts';
import { makeJack, styleEntry } from '../../../wiring/index.ts';
import type { Contact, Lead, Side, Style } from '../../../wiring/index.ts';
import { TEST_CAUTION } from '../cautions.ts';
import { remembered } from '../chance.ts';
import { inRows, whichText, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { leadOf, saysWith, stillPlaces } from './leads.ts';

/** Two contacts of a plug that touch. */
const touching = (side: Side, a: Contact, b: Contact): Lead['faults'] => [
  { kind: 'short', side, between: [a, b] },
];

/** Leads that serve one of the two pairs of jacks, in turn with those that serve neither. */
const WHOLE: readonly Lead[] = [
  leadOf('din5', 'trs-3.5', '4-ring 5-tip 2-sleeve'),
  leadOf('trs-3.5', 'trs-3.5', 'tip-ring ring-tip sleeve-sleeve'),
  leadOf('din5', 'trs-3.5', '4-ring 2-sleeve'),
  leadOf('trs-3.5', 'din5', 'tip-4 ring-5 sleeve-2'),
  leadOf('trs-3.5', 'trs-3.5', 'tip-tip ring-ring sleeve-sleeve'),
  leadOf('trs-3.5', 'trs-3.5', 'tip-tip sleeve-sleeve'),
  leadOf('din5', 'trs-3.5', '4-tip 5-ring 2-sleeve'),
  leadOf('trs-3.5', 'din5', 'tip-5 ring-4 sleeve-2'),
  leadOf('din5', 'trs-3.5', '4-ring 3-tip 2-sleeve'),
];

/** Traps: three beeps as they should be and a fourth, a shield that is left out, and spare pins that are wired. */
const TRAPS: readonly Lead[] = [
  leadOf('din5', 'trs-3.5', '4-ring 5-tip 2-sleeve', touching('to', 'tip', 'ring')),
  leadOf('din5', 'trs-3.5', '4-ring 5-tip'),
  leadOf('trs-3.5', 'trs-3.5', 'tip-tip ring-ring sleeve-sleeve', touching('from', 'ring', 'sleeve')),
  leadOf('trs-3.5', 'din5', 'tip-4 ring-5'),
  leadOf('trs-3.5', 'din5', 'tip-5 ring-4 sleeve-2', touching('to', '4', '2')),
  leadOf('trs-3.5', 'trs-3.5', 'tip-ring ring-tip'),
  leadOf('din5', 'trs-3.5', '4-tip 5-ring 2-sleeve', touching('from', '5', '2')),
];

/** The types of output and input in the two pairs of jacks that a lead with these plugs may serve. */
function candidates({ from, to }: Lead): readonly (readonly [out: Style, into: Style])[] {
  if (to.connector === 'din5') return (['type-a', 'type-b'] as const).map((out) => [out, 'din']);
  return (['type-a', 'type-b'] as const).map((into) => [from.connector === 'din5' ? 'din' : 'type-a', into]);
}

/** Whether a lead works between two jacks of these types: solved once for each. */
const serves = remembered((lead: Lead, [out, into]: readonly [Style, Style]): boolean => {
  const [output, input] = [
    makeJack('out', lead.from.connector, out),
    makeJack('in', lead.to.connector, into),
  ];
  return works(checkLink({ output, branches: [{ input, leads: [lead] }] }, 'outcome'));
});

const SWAPPED: Mistake = [
  'pair swapped',
  'Pin 4 is the source and pin 5 the sink. Type A has the source on its ring, Type B on its tip.',
];
const SAID_TO_STRANGER: Readonly<Record<'first' | 'second' | 'either' | 'neither', Mistake>> = {
  first: SWAPPED,
  second: SWAPPED,
  either: [
    'three beeps are enough',
    'The two types differ in which contact the source is on. One lead cannot suit both.',
  ],
  neither: [
    'gave up',
    'Source and sink each have a way through, and they do not touch. Which pair do they fit?',
  ],
};

/** Which jacks a lead serves that nobody knows. */
export function strangersLead(level: Level, chance: Chance): Drawn {
  const lead = chance.turn(level === 3 ? [...TRAPS, ...WHOLE] : WHOLE);
  const says = saysWith(
    lead,
    lead.faults.filter((one) => one.kind === 'short'),
  );
  const beeping = stillPlaces(lead).filter((place) => says(place) === 'beep');
  const [first = '', second = ''] = candidates(lead).map(
    ([out, into]) => `a ${styleEntry(out).label} output to a ${styleEntry(into).label} input`,
  );
  const [does = false, doesToo = false] = candidates(lead).map((styles) => serves(lead, styles));
  const right = does ? (doesToo ? 'either' : 'first') : doesToo ? 'second' : 'neither';
  const texts = {
    first: `From ${first}`,
    second: `From ${second}`,
    either: 'Either: a beep on each wire is enough',
    neither: 'Neither: leave it out of the loop now',
  };
  return {
    ask: `A lead without a label, unplugged at both ends. Every two contacts were read, with the lead lying still and moved. These beep, and all others are silent. Between which jacks does it work?`,
    shows: inRows(beeping.map((place) => [sayPlace(place), 'beeps'])),
    material: { on: 'meter', under: { kind: 'lead', lead } },
    ...whichText(
      texts,
      right,
      (name) =>
        right === 'neither' && name !== 'either'
          ? ['silence forgotten', saidToUnfit(lead)]
          : SAID_TO_STRANGER[name],
      chance,
    ),
    hints: [
      'Source has to meet source, and sink has to meet sink. Nothing else may touch them.',
      'Write beside each contact which line it has in each type. On DIN pin 4 is the source and pin 5 the sink.',
      'Type A: source on the ring, sink on the tip. Type B: the other way round. The shield is not part of the loop.',
    ],
    caution: TEST_CAUTION,
    steps: [
      `It joins: ${beeping.map(sayPlace).join('; ')}.`,
      `Solved: from ${first} it ${does ? 'works' : 'does not'}, to the other it ${doesToo ? 'works' : 'does not'}.`,
      `${texts[right]}.`,
    ],
  };
}

/** What is said where a lead serves neither pair, and one was named. */
function saidToUnfit({ faults, conductors }: Lead): string {
  if (faults.length > 0)
    return 'Two contacts beep that should be silent to each other. That leads the current astray.';
  return conductors.length < 3
    ? 'One line of the pair has no way through. Follow the loop out and back.'
    : 'One wire ends on a contact that carries nothing. Follow the loop out and back.';
}
