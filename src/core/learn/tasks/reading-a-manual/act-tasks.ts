/** Tasks on what to do after a manual: what to ask, which adapter, what comes first. The reader of manuals judges; adapters are solved. */
import { checkLink, linkFor, works } from '../../../verdict/index.ts';
import { makeJack, wires } from '../../../wiring/index.ts';
import type { Conductor } from '../../../wiring/index.ts';
import { HUNT_CAUTION } from '../cautions.ts';
import { remembered, someOf } from '../chance.ts';
import { casesAt, inRows, met, oneOf, whichOf, whichText, type Mistake } from '../forms.ts';
import { TOLD_TYPES, asText, labelsOf, otherProduct, readPhrase, type Told } from './phrases.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Phrases after which one question settles it, by turns. */
const TO_ASK: readonly string[] = [
  'MIDI IN: 3.5 mm TRS jack',
  'tip = pin 5',
  'Switchable between Type A and Type B',
  'MIDI data on the ring',
  'MIDI IN on a 6.35 mm stereo jack',
  'Use the supplied adapter',
  'tip = data, sleeve = ground',
  '1/4" jack marked EXP / MIDI: expression pedal or MIDI',
  'Not compatible with Type A',
  'Type A (tip = pin 4, ring = pin 5)',
];

/** Questions that settle nothing. */
const IDLE_QUESTIONS = [
  {
    text: 'What is the size of the jack: 2.5 mm, 3.5 mm or 6.35 mm across?',
    slip: "type from the plug's size",
    says: 'Every type comes in every size. The answer would leave you where you are.',
  },
  {
    text: 'Which type do you build into the other pedals of this series, please?',
    slip: 'type from another product',
    says: 'Makers have changed their minds. Ask about this pedal.',
  },
  {
    text: 'Is it a TRS jack, so that I need a plug that has three contacts?',
    slip: 'TRS taken as a type',
    says: 'A yes says only that there are three contacts, and not what is on them.',
  },
  {
    text: 'Does it work with any good lead from a shop that sells instruments?',
    slip: 'asks for a promise',
    says: 'There is more than one kind of lead in the shops, so a yes tells you nothing.',
  },
] as const;

/** Which question to a maker settles it. */
export function askMaker(level: Level, chance: Chance): Drawn {
  const phrase = chance.turn(casesAt(level, TO_ASK, [5, 8]));
  const {
    questions: [question = ''],
    reason,
  } = readPhrase(phrase);
  return {
    ask: `A manual says of an input: ‘${phrase}’, and no more. Which question settles it?`,
    ...oneOf([{ text: question, right: true }, ...someOf(IDLE_QUESTIONS, level < 2 ? 2 : 3, chance)], chance),
    hints: [
      'A good question has an answer that leaves one type.',
      'What do these words leave open?',
      'Ask for contacts and pins, or for what is set, and not for sizes and names.',
    ],
    steps: [`Of these words: ${reason}.`, question],
  };
}

/** Adapters from a DIN jack to a phone plug, as one might buy them. */
const ADAPTERS = [
  wires('5-tip', '4-ring', '2-sleeve'),
  wires('4-tip', '5-ring', '2-sleeve'),
  wires('5-tip', '2-sleeve'),
  wires('5-ring', '2-sleeve'),
];

/** An adapter as it is offered, with the contact that it leaves out. */
function sayAdapter(laid: readonly Conductor[]): string {
  const left = (['tip', 'ring'] as const).find((contact) => !laid.some(({ to }) => to === contact));
  const joined = laid.map(({ from, to }) => `pin ${from} to the ${to}`);
  return [...joined, ...(left ? [`nothing to the ${left}`] : [])].join(', ');
}

/** Whether an adapter works from a DIN output into an input of a type. */
const serves = remembered((laid: readonly Conductor[], type: Told): boolean =>
  works(checkLink(linkFor(makeJack('out', 'din5', 'din'), makeJack('in', 'trs-3.5', type), laid), 'outcome')),
);

const WAYS = ([0, 1, 2] as const).flatMap((way) => TOLD_TYPES.map((type) => ({ type, way })));

const SAID_TO_ADAPTER = {
  'type from another product': 'That adapter is for the other pedal. Go by the words for this one.',
  'data on another contact': 'This input has its data on another contact. Where does pin 5 have to go?',
  'a line left out': 'This input needs both lines of the loop: pin 4 and pin 5.',
  'made for the other type': 'It fits, and swaps source and sink. Write the pin beside each contact first.',
};

/** What it means to take an adapter, by its number, that does not work for a type. */
function mistakenAdapter(at: number, type: Told, other: string | undefined): keyof typeof SAID_TO_ADAPTER {
  if (TOLD_TYPES[at] === other) return 'type from another product';
  if (type !== 'type-a' && type !== 'type-b') return 'data on another contact';
  return at > 1 ? 'a line left out' : 'made for the other type';
}

/** Which adapter takes the place of one that is lost. */
export function adapterInBox(level: Level, chance: Chance): Drawn {
  const loops = WAYS.filter(({ type }) => type === 'type-a' || type === 'type-b');
  const { type, way } = chance.turn(level < 2 ? loops : WAYS);
  const words = asText(labelsOf(type, way));
  const read = readPhrase(words).type as Told;
  const other = level >= 2 ? otherProduct(chance) : undefined;
  const fitting = ADAPTERS.filter((laid) => serves(laid, read));
  const right = fitting.toSorted((one, two) => one.length - two.length)[0] ?? [];
  return {
    ask: `A manual says of an input: ‘${words}’. Its adapter is lost. Which one takes its place behind a DIN lead?`,
    caution: HUNT_CAUTION,
    ...(other && { shows: inRows([other.row]) }),
    ...whichOf(
      // Another one that works too is not offered: it would be right as well.
      ADAPTERS.filter((laid) => laid === right || !fitting.includes(laid)),
      right,
      sayAdapter,
      (laid) => met(SAID_TO_ADAPTER, mistakenAdapter(ADAPTERS.indexOf(laid), read, other?.type)),
      chance,
    ),
    hints: [
      'An adapter joins each pin of the DIN jack to the contact that has its line.',
      'Which pin is the source, and which the sink? Where has this input them?',
      'Source to source, sink to sink, shield to shield.',
    ],
    steps: [
      `The words: ${words}. Pin 4 is the source, pin 5 the sink, pin 2 the shield.`,
      `So: ${sayAdapter(right)}.`,
    ],
  };
}

/** Phrases after which something comes first, by turns. */
const FIRST: readonly string[] = [
  'Switchable between Type A and Type B',
  'MIDI IN: TRS, Type B',
  'MIDI IN: 3.5 mm TRS jack',
  '1/4" jack marked EXP / MIDI: expression pedal or MIDI',
  'The MIDI jack follows RP-054',
  'Type A or B, set in the menu',
  'tip = pin 5, ring = pin 4, sleeve = pin 2',
  'Footswitch or MIDI, by the menu',
  'MIDI IN on a 6.35 mm stereo jack',
  'Type B (tip = pin 5, ring = pin 4)',
];

const STEPS = {
  menu: 'See what the menu or switch is set to, with nothing plugged in',
  lead: 'Take the lead for the type that these words name',
  ask: 'Ask the maker which pin is on the tip and which on the ring',
  try: 'Plug in a lead that fits, switch on, and see whether it answers',
} as const;

const SAID_TO_STEP: Readonly<Record<keyof typeof STEPS, Mistake>> = {
  menu: ['a menu that is not there', 'No menu or switch is named here. Look at what the words do tell.'],
  lead: ['takes any words for a type', 'Do these words name one type? A size, or two types, name none.'],
  ask: [
    'asks what is told',
    'The answer is nearer than the maker: it is in these words, or in the menu of the pedal.',
  ],
  try: [
    'tries it out',
    'A lead that fits tells nothing, and a jack with another job may put a voltage on it.',
  ],
};

/** What comes first after a phrase. */
function firstStep(phrase: string): 'menu' | 'lead' | 'ask' {
  const { state, questions } = readPhrase(phrase);
  if (state === 'said') return 'lead';
  return questions.some((one) => /menu/.test(one)) ? 'menu' : 'ask';
}

/** What comes first after a phrase. */
export function menuFirst(level: Level, chance: Chance): Drawn {
  const phrase = chance.turn(casesAt(level, FIRST, [5, 8]));
  const right = firstStep(phrase);
  const { reason } = readPhrase(phrase);
  return {
    ask: `A manual says of an input: ‘${phrase}’. What do you do first?`,
    caution: HUNT_CAUTION,
    ...whichText(STEPS, right, (one) => SAID_TO_STEP[one], chance),
    hints: [
      'First what costs nothing and can hurt nothing.',
      'Is the type in these words, in the pedal, or nowhere yet?',
      'Two jobs or two types for one jack: a menu or a switch decides.',
    ],
    steps: [`Of these words: ${reason}.`, `${STEPS[right]}.`],
  };
}
