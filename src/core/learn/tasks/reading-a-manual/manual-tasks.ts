/** Tasks on what a manual tells: by its words, by its labels, and what it leaves open. The reader of manuals judges. */
import { eachThat, oneOf } from '../forms.ts';
import { ACT_TASKS } from './act-tasks.ts';
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

/** The name of the mistake behind a wrong answer, and what is said to it. */
function saidTo(
  said: WhatItIs,
  right: WhatItIs,
  phrase: string,
  other: string | undefined,
): readonly [string, string] {
  if (right === 'contradicts')
    return ['trusts half of it', 'The name says one type, the pins say the other. Trust neither, and ask.'];
  if (said === 'open')
    return [
      'doubts what is said',
      'A type, a standard or ‘either’ is said in these words. RP-054 is the standard: Type A.',
    ];
  if (said === 'contradicts')
    return [
      'sees two in one',
      'These words say one thing at most. Which word speaks of what is on the contacts?',
    ];
  if (said === 'both-ways')
    return ['takes silence for either', 'An input that takes both types says so. Other inputs take one.'];
  if (right === 'open' && said === other)
    return [
      'type from another product',
      'That is another pedal. Makers have changed their minds, from one pedal to the next.',
    ];
  if (/^Not/.test(phrase))
    return ['takes a no for a yes', 'It says what the jack is not. More than one type is left.'];
  if (right === 'open')
    return /mm/.test(phrase)
      ? [
          "type from the plug's size",
          'The size tells which plug fits. It does not tell what is on the contacts.',
        ]
      : [
          'TRS taken as a type',
          'TRS means that the plug has three contacts. Every one of these types has them.',
        ];
  return [
    'takes one type for the other',
    right === 'both-ways'
      ? 'It does not matter here: read it again.'
      : 'Read the letter, or the name of the standard, once more. RP-054 is Type A.',
  ];
}

function manualWords(level: Level, chance: Chance): Drawn {
  const phrase = chance.turn(level < 2 ? PHRASES.slice(0, 6) : level === 2 ? PHRASES.slice(0, 9) : PHRASES);
  const right = whatItIs(phrase);
  const { reason } = readPhrase(phrase);
  const other = level >= 2 ? otherProduct(chance) : undefined;
  const asked = (['type-a', 'type-b', 'both-ways', 'open', 'contradicts'] as const).slice(
    0,
    level === 3 ? 5 : 4,
  );
  return {
    ask: `A manual says of an input: ‘${phrase}’. Which type is it?`,
    ...(other && { shows: { shows: 'rows', rows: [other.row] } as const }),
    ...oneOf(
      asked.map((one) => {
        const text = WHAT_IT_IS[one];
        const [slip, says] = saidTo(one, right, phrase, other?.type);
        return one === right ? { text, right: true } : { text, slip, says };
      }),
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
const DRAWINGS = ([0, 1, 2] as const).flatMap((way) => TOLD_TYPES.map((type) => ({ type, way })));

function drawingStyle(level: Level, chance: Chance): Drawn {
  const { type, way } = chance.turn(level < 2 ? DRAWINGS.slice(0, 8) : DRAWINGS);
  const labels = labelsOf(type, way);
  const { type: right } = readPhrase(asText(labels));
  const other = level >= 2 ? otherProduct(chance) : undefined;
  const pair = (one: string): boolean => one === 'type-a' || one === 'type-b';
  const lines = labels.filter(([contact]) => contact !== 'sleeve');
  return {
    ask: 'A drawing in a manual labels the three contacts of an input like this. Which type is it?',
    shows: {
      shows: 'rows',
      rows: [...(level >= 2 ? chance.shuffled(labels) : labels), ...(other ? [other.row] : [])],
    },
    ...oneOf(
      TOLD_TYPES.map((one) => {
        const text = TYPE_WORDS[one];
        if (one === right) return { text, right: true };
        if (one === other?.type && !pair(type))
          return {
            text,
            slip: 'type from another product',
            says: 'That is another pedal. This drawing is of this one.',
          };
        return pair(one) === pair(type)
          ? {
              text,
              slip: pair(type) ? 'source and sink swapped' : 'tip and ring swapped',
              says: pair(type)
                ? 'Pin 4, the current source and the supply are one line. Pin 5, the sink and the data are the other.'
                : 'Which of the two contacts has a label, and which has none?',
            }
          : {
              text,
              slip: pair(type) ? 'a line left out' : 'a line that is not there',
              says: pair(type)
                ? 'Both the tip and the ring are in use here: it is a loop.'
                : 'One contact is not connected. A loop needs both.',
            };
      }),
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

function stillOpen(level: Level, chance: Chance): Drawn {
  const phrase = chance.turn(level < 2 ? HALF.slice(0, 5) : level === 2 ? HALF.slice(0, 8) : HALF);
  const { could, reason } = readPhrase(phrase);
  const isOpen = (type: Told): boolean => could.includes(type);
  const likeliest = could.find((style) => TOLD_TYPES.some((type) => type === style));
  const other = level === 3 ? otherProduct(chance) : undefined;
  const only = (type: string | undefined): ((text: string) => boolean) => {
    const word = TOLD_TYPES.find((one) => one === type);
    return (text) => word !== undefined && text === TYPE_WORDS[word];
  };
  return {
    ask: `A manual says of an input with three contacts: ‘${phrase}’, and no more. Which types can it still be?`,
    ...(other && { shows: { shows: 'rows', rows: [other.row] } as const }),
    ...eachThat(
      TOLD_TYPES.map((type) => ({ text: TYPE_WORDS[type], right: isOpen(type) })),
      [
        {
          slip: 'type from another product',
          ticks: only(other?.type ?? 'none'),
          says: 'Another pedal tells nothing of this one. Which types agree with its own words?',
        },
        {
          slip: 'the likeliest taken as sure',
          ticks: only(likeliest),
          says: 'That is the likeliest. But another type agrees with these words too.',
        },
        {
          slip: 'the loop alone thought of',
          ticks: (text) => only('type-a')(text) || only('type-b')(text),
          says: 'Take each of the four types in turn, and ask whether it agrees with every word.',
        },
        {
          slip: 'nothing is ruled out',
          ticks: () => true,
          says: 'Something is told here. Which types put another thing there?',
        },
        {
          slip: 'all is ruled out',
          ticks: () => false,
          says: 'At least one type agrees with these words. Take each in turn.',
        },
      ],
      chance,
    ),
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
  ...ACT_TASKS,
];
