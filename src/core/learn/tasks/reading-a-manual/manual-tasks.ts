/** Tasks on what a manual tells: by its words, by its labels, and what it leaves open. The reader of manuals judges. */
import { casesAt, eachOf, inRows, met, whichOf, whichText, type Mistake } from '../forms.ts';
import { adapterInBox, askMaker, menuFirst } from './act-tasks.ts';
import { TOLD_TYPES, TYPE_WORDS, asText, labelsOf, otherProduct, readPhrase, type Told } from './phrases.ts';
import type { Chance, Drawn, Level, TaskKind } from '../task.ts';

/** Phrases about a jack, by turns; the later ones are for the later levels. */
const PHRASES: readonly string[] = [
  'MIDI IN: 3.5 mm TRS jack',
  'MIDI IN: TRS, Type B',
  'The MIDI jack follows RP-054',
  'Takes either polarity',
  'MIDI IN on a 6.35 mm stereo jack',
  'MIDI IN: TRS, Type A',
  'Not compatible with Type A',
  '2.5 mm TRS jack for MIDI',
  'Our MIDI jacks are wired TRS-B',
  'Type A (tip = pin 4, ring = pin 5)',
  'Type B (tip = pin 5, ring = pin 4)',
  'Accepts both types',
];

const WHAT_IT_IS = {
  'type-a': 'Type A',
  'type-b': 'Type B',
  'both-ways': 'It takes either',
  open: 'It is not told',
  contradicts: 'It goes against itself',
} as const;
type WhatItIs = keyof typeof WHAT_IT_IS;

/** What a phrase tells, as one of the answers. */
function whatItIs(phrase: string): WhatItIs {
  const { state, type } = readPhrase(phrase);
  if (state === 'contradicts') return state;
  return state === 'said' && (type === 'type-a' || type === 'type-b' || type === 'both-ways') ? type : 'open';
}

const SAID = {
  'trusts half of it': 'The name says one type, the pins say the other. Trust neither, and ask.',
  'doubts what is said':
    'A type, a standard or ‘either’ is said in these words. RP-054 is the standard: Type A.',
  'sees two in one': 'These words say one thing at most. Which word speaks of what is on the contacts?',
  'takes silence for either': 'An input that takes both types says so. Other inputs take one.',
  'type from another product':
    'That is another pedal. Makers have changed their minds, from one pedal to the next.',
  'takes a no for a yes': 'It says what the jack is not. More than one type is left.',
  "type from the plug's size": 'The size tells which plug fits. It does not tell what is on the contacts.',
  'takes one type for the other':
    'Read the letter, or the name of the standard, once more. RP-054 is Type A.',
};

/** The mistake behind a wrong answer. */
function mistaken(
  said: WhatItIs,
  right: WhatItIs,
  phrase: string,
  other: string | undefined,
): keyof typeof SAID {
  if (right === 'contradicts') return 'trusts half of it';
  if (said === 'open') return 'doubts what is said';
  if (said === 'contradicts') return 'sees two in one';
  if (said === 'both-ways') return 'takes silence for either';
  if (right === 'open' && said === other) return 'type from another product';
  if (/^Not/.test(phrase)) return 'takes a no for a yes';
  if (right === 'open') return "type from the plug's size";
  return 'takes one type for the other';
}

function manualWords(level: Level, chance: Chance): Drawn {
  const phrase = chance.turn(casesAt(level, PHRASES, [6, 9]));
  const right = whatItIs(phrase);
  const { reason } = readPhrase(phrase);
  const other = level >= 2 ? otherProduct(chance) : undefined;
  const asked = Object.keys(WHAT_IT_IS) as readonly WhatItIs[];
  return {
    ask: `A manual says of an input: ‘${phrase}’. Which type is it?`,
    ...(other && { shows: inRows([other.row]) }),
    ...whichOf(
      asked.slice(0, level === 3 ? 5 : 4),
      right,
      (one) => WHAT_IT_IS[one],
      (one): Mistake => {
        const slip = mistaken(one, right, phrase, other?.type);
        const either = slip === 'takes one type for the other' && right === 'both-ways';
        return [slip, either ? 'It does not matter here: read it again.' : SAID[slip]];
      },
      chance,
    ),
    hints: [
      'Some words speak of the plug, others of what is on its contacts.',
      'Sizes, ‘TRS’ and ‘stereo’ are words about the plug.',
      'A letter, a pin, the name of the standard, or ‘either’: is one of these there?',
    ],
    steps: [`Of these words: ${reason}.`, `${WHAT_IT_IS[right]}.`],
  };
}

/** Ways to label a drawing, by turns with the types. */
const isLoop = (type: Told): boolean => type === 'type-a' || type === 'type-b';

const SAID_TO_DRAWING = {
  'type from another product': 'That is another pedal. This drawing is of this one.',
  'source and sink swapped':
    'Pin 4, the current source and the supply are one line. Pin 5, the sink and the data are the other.',
  'tip and ring swapped': 'Which of the two contacts has a label, and which has none?',
  'a line left out': 'Both the tip and the ring are in use here: it is a loop.',
  'a line that is not there': 'One contact is not connected. A loop needs both.',
};

/** What it means to take a drawing of a type for another; `other` is the type of another pedal. */
function mistakenDrawing(said: Told, type: Told, other: string | undefined): keyof typeof SAID_TO_DRAWING {
  if (said === other && !isLoop(type)) return 'type from another product';
  if (isLoop(said) === isLoop(type)) return isLoop(type) ? 'source and sink swapped' : 'tip and ring swapped';
  return isLoop(type) ? 'a line left out' : 'a line that is not there';
}

const DRAWINGS = ([0, 1, 2] as const).flatMap((way) => TOLD_TYPES.map((type) => ({ type, way })));

function drawingStyle(level: Level, chance: Chance): Drawn {
  const { type, way } = chance.turn(level < 2 ? DRAWINGS.slice(0, 8) : DRAWINGS);
  const labels = labelsOf(type, way);
  const { type: right } = readPhrase(asText(labels));
  const other = level >= 2 ? otherProduct(chance) : undefined;
  const lines = labels.filter(([contact]) => contact !== 'sleeve');
  return {
    ask: 'A drawing in a manual labels the three contacts of an input like this. Which type is it?',
    shows: inRows([...(level >= 2 ? chance.shuffled(labels) : labels), ...(other ? [other.row] : [])]),
    ...whichText(
      TYPE_WORDS,
      right as Told,
      (one) => met(SAID_TO_DRAWING, mistakenDrawing(one, type, other?.type)),
      chance,
    ),
    hints: [
      'Write the pin beside each label: 4 is the source, 5 the sink, 2 the shield.',
      'A supply is the source. Data come on the sink.',
      'Look only at the tip and the ring.',
    ],
    steps: [
      `${lines.map(([contact, label]) => `On the ${contact}: ${label}`).join('. ')}.`,
      `${TYPE_WORDS[type]}.`,
    ],
  };
}

/** Phrases that leave something open, by turns. */
const HALF: readonly string[] = [
  'MIDI signal on the tip',
  'Switchable between Type A and Type B',
  'MIDI data on the ring',
  'MIDI IN: 3.5 mm TRS jack',
  'tip = pin 5',
  'Not compatible with Type A',
  'tip = data, sleeve = ground',
  'tip = pin 4',
  'Not Type B',
  'sleeve = pin 2',
];

const SAID_TO_OPEN = {
  'type from another product':
    'Another pedal tells nothing of this one. Which types agree with its own words?',
  'the likeliest taken as sure': 'That is the likeliest. But another type agrees with these words too.',
  'the loop alone thought of':
    'Take each of the four types in turn, and ask whether it agrees with every word.',
  'nothing is ruled out': 'Something is told here. Which types put another thing there?',
  'all is ruled out': 'At least one type agrees with these words. Take each in turn.',
};

function stillOpen(level: Level, chance: Chance): Drawn {
  const phrase = chance.turn(casesAt(level, HALF, [5, 8]));
  const { could, reason } = readPhrase(phrase);
  const isOpen = (type: Told): boolean => could.includes(type);
  const likeliest = could.find((style) => TOLD_TYPES.some((type) => type === style));
  const other = level === 3 ? otherProduct(chance) : undefined;
  return {
    ask: `A manual says of an input with three contacts: ‘${phrase}’, and no more. Which types can it still be?`,
    ...(other && { shows: inRows([other.row]) }),
    ...eachOf(TOLD_TYPES, chance, {
      text: (type) => TYPE_WORDS[type],
      right: isOpen,
      ticks: {
        'type from another product': other !== undefined && ((type) => type === other.type),
        'the likeliest taken as sure': (type) => type === likeliest,
        'the loop alone thought of': isLoop,
        'nothing is ruled out': () => true,
        'all is ruled out': () => false,
      },
      said: SAID_TO_OPEN,
    }),
    hints: [
      'A type is open as long as no word goes against it.',
      'Take the four types in turn. What does each put on the contact that is named?',
      'Tick each one that agrees with every word, likely or not.',
    ],
    steps: [
      `Of these words: ${reason}.`,
      `Open: ${TOLD_TYPES.filter(isOpen)
        .map((type) => TYPE_WORDS[type])
        .join('; ')}.`,
    ],
  };
}

/** The tasks of the lesson. */
export const MANUAL_TASKS: readonly TaskKind[] = [
  { kind: 'manual-words', title: 'What do the words tell?', draw: manualWords },
  { kind: 'drawing-style', title: 'Labels of a drawing', draw: drawingStyle },
  { kind: 'still-open', title: 'What is still open?', draw: stillOpen },
  { kind: 'ask-maker', title: 'Ask the maker', draw: askMaker },
  { kind: 'adapter-in-box', title: 'The adapter in the box', draw: adapterInBox },
  { kind: 'menu-first', title: 'What comes first?', draw: menuFirst },
];
