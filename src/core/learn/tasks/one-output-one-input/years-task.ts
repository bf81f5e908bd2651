/** Tasks on a plain split that has worked for years: what that shows once something is changed. All currents are solved. */
import { makeJack } from '../../../wiring/index.ts';
import type { Part } from '../../../wiring/index.ts';
import { casesAt, inRows, whichText, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { inputWith, sharesOf } from './splits.ts';

/** Parts that may be in a box that nobody has opened. */
const MAY_BE: readonly Part[] = ['6N138', 'H11L1', 'PC900V', '6N137'];

/** What changes on a split that has worked for years: the outputs and inputs that may then be there. */
interface Change {
  readonly told: string;
  readonly volts: readonly ('driver-5v' | 'driver-3v3')[];
  readonly parts: readonly (readonly Part[])[];
  readonly metres?: number;
}

/** A change of pedals or leads; the output stays the one of 5 V. */
const with5 = (told: string, parts: Change['parts'], metres?: number): Change => ({
  told,
  volts: ['driver-5v'],
  parts,
  ...(metres === undefined ? {} : { metres }),
});

const CHANGES: readonly Change[] = [
  with5(
    'One pedal gives way to another, and nobody knows which part is in it.',
    MAY_BE.map((part) => ['6N138', part]),
  ),
  with5('One pedal is taken off the Y lead again.', [['6N138']]),
  with5('Both pedals give way to new ones with a PC900V inside.', [['PC900V', 'PC900V']]),
  with5('One pedal gives way to one with an H11L1 inside.', [['6N138', 'H11L1']]),
  with5(
    'A third pedal joins in, and nobody knows which part is in it.',
    MAY_BE.map((part) => ['6N138', '6N138', part]),
  ),
  with5('Both leads give way to ones of 3 m.', [['6N138', '6N138']], 3),
  {
    told: 'The foot controller gives way to one with a 3.3 V output.',
    volts: ['driver-3v3'],
    parts: [['6N138', '6N138']],
  },
  {
    told: 'Both pedals give way to two with a PC900V inside. The foot controller is new too, and nobody knows its output.',
    volts: ['driver-5v', 'driver-3v3'],
    parts: [['PC900V', 'PC900V']],
  },
];

const FOR_YEARS = {
  yes: 'Yes, both the old and the new have enough.',
  no: 'No, at least one input has too little current.',
  open: 'It depends on what is inside, and that is not known.',
} as const;

const SAID_FOR_YEARS: Readonly<Record<keyof typeof FOR_YEARS, Mistake>> = {
  yes: [
    'it has worked for years',
    'Years on one pair of boxes tell of these boxes only. Hold what each now gets against what it needs.',
  ],
  no: [
    'a split never works',
    'A split is outside the standard, yet some parts have enough. Hold what each gets against what it needs.',
  ],
  open: ['says nobody can tell', 'All that matters is told here: what each gets, and what its part needs.'],
};

/** Whether every input turns on, for each way in which a change may turn out; and what inputs get and need there. */
function outcomesOf({ volts, parts, metres }: Change) {
  const found = volts.flatMap((circuit) =>
    parts.map((list) => sharesOf(makeJack('out', 'din5', 'din', { circuit }), list.map(inputWith), metres)),
  );
  const lit = found.map((shares) => shares.every(({ gets, needs }) => gets >= needs));
  const all = found.flat();
  const span = (values: readonly number[]): string => {
    const [low, high] = [Math.min(...values).toFixed(1), Math.max(...values).toFixed(1)];
    if (low === high) return `${low} mA`;
    return found.length === 1 ? `${low} mA and ${high} mA` : `${low} to ${high} mA, by what is inside`;
  };
  return {
    right: lit.every(Boolean) ? 'yes' : lit.some(Boolean) ? 'open' : 'no',
    gets: span(all.map(({ gets }) => gets)),
    needs: span(all.map(({ needs }) => needs)),
  } as const;
}

/** What years of use say of a split on which something changes. */
export function workedForYears(level: Level, chance: Chance): Drawn {
  const change = chance.turn(casesAt(level, CHANGES, [5, 7]));
  const { right, gets, needs } = outcomesOf(change);
  return {
    ask: `'For years two pedals with a 6N138 have played from my 5 V output, through a plain Y lead.' ${change.told} Is it sure to work now, at usual values?`,
    shows: inRows([
      ['each input now gets', gets],
      ['its part needs', needs],
    ]),
    ...whichText(FOR_YEARS, right, (one) => SAID_FOR_YEARS[one], chance),
    hints: [
      'What worked for years was one output and two parts. What is there now?',
      'Hold what each input gets against what its part needs.',
      'Where either is a span, ask whether every case of it is enough.',
    ],
    steps: [`Each input gets ${gets}, and its part needs ${needs}.`, FOR_YEARS[right]],
  };
}
