/** What can hurt at a soldering bench: a list, in which each hazard is one that a caution of the build sheet warns of. */
import { cableSheet } from '../../../making/index.ts';
import { linkFor } from '../../../verdict/index.ts';
import { STRAIGHT_DIN, makeJack } from '../../../wiring/index.ts';
import type { Lead } from '../../../wiring/index.ts';
import { SOLDER_CAUTION } from '../cautions.ts';
import { remembered, someOf } from '../chance.ts';
import { eachOf } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Something at the bench: the caution that warns of it (its identifier in the reference), or none. */
interface Sight {
  readonly text: string;
  readonly caution?: string;
}

/** Hazards of a usual bench. */
const HAZARDS: readonly Sight[] = [
  { text: 'The smoke of the iron rises into the face', caution: 'fume' },
  { text: 'The hot iron lies on the bench, beside its stand', caution: 'burns' },
  { text: 'A cup of tea stands beside the leaded solder', caution: 'lead-metal' },
  { text: 'The new lead goes into a box before it meets a meter', caution: 'power-off' },
  { text: 'The windows are shut, and nothing moves the air', caution: 'fume' },
  { text: 'Wire ends are cut without eye protection', caution: 'burns' },
  { text: 'After leaded solder, hands go straight to the bread', caution: 'lead-metal' },
  { text: 'The plug is held in the fingers while it is soldered', caution: 'burns' },
  { text: 'The lead is soldered with its far end plugged in', caution: 'power-off' },
];

/** What belongs at a bench. */
const SAFE: readonly Sight[] = [
  { text: 'A fan draws the smoke away from the face' },
  { text: 'The iron is in its stand while the wire is stripped' },
  { text: 'Hands are washed before the break' },
  { text: 'The plug sits in a clamp' },
  { text: 'Eyes are protected while wire ends are cut' },
  { text: 'The lead is tested with a meter, then plugged in with the power off' },
  { text: 'The joint cools before anybody touches it' },
  { text: 'Food and drink stand on another table' },
];

/** What lead-free solder does not cure. */
const LEAD_FREE: readonly Sight[] = [
  { text: 'The solder is lead-free, and so the extractor is off', caution: 'fume' },
  { text: 'The solder is lead-free, and so nobody protects their eyes', caution: 'burns' },
];

/** Things in the list, and how many of them are hazards, by level. */
const IN_THE_LIST = [4, 5, 6, 6] as const;
const DANGEROUS = [2, 2, 3, 2] as const;

/** What each caution of the sheet says, in a sentence, by its identifier. */
const gistOf = remembered((id: string | undefined): string => {
  const link = linkFor(makeJack('out', 'din5', 'din'), makeJack('in', 'din5', 'din'), STRAIGHT_DIN);
  const { cautions } = cableSheet(link.branches[0]?.leads[0] as Lead, link);
  return cautions.find((one) => one.id === id)?.gist ?? '';
});

const SAID = {
  'lead-free is harmless':
    'The fume comes from the flux, and the iron is as hot. Lead-free solder changes neither.',
  'burns only':
    'Heat is what one feels. Think of what is breathed in and eaten, and of the box at the end of the lead too.',
  'burns forgotten': 'Hot metal and flying ends hurt too. Where are the iron, the fingers and the eyes?',
  'all of them': 'Some of these are just what they should be. Leave them out.',
};

/** Which things at a bench can hurt. */
export function benchHazards(level: Level, chance: Chance): Drawn {
  const first = chance.turn(HAZARDS);
  const others = chance.shuffled(HAZARDS.filter(({ caution }) => caution !== first.caution));
  const trap = level === 3 ? chance.pick(LEAD_FREE) : undefined;
  const hazards = [first, ...others.slice(0, DANGEROUS[level] - 1), ...(trap ? [trap] : [])];
  const safe = someOf(SAFE, IN_THE_LIST[level] - hazards.length, chance);
  return {
    ask: 'You come to a bench where somebody solders a plug. Which of these can hurt somebody, or a box?',
    ...eachOf([...hazards, ...safe], chance, {
      text: ({ text }) => text,
      right: ({ caution }) => caution !== undefined,
      ticks: {
        'lead-free is harmless': trap !== undefined && ((one) => one.caution !== undefined && one !== trap),
        'burns only': ({ caution }) => caution === 'burns',
        'burns forgotten': ({ caution }) => caution !== undefined && caution !== 'burns',
        'all of them': () => true,
      },
      said: SAID,
    }),
    hints: [
      'Four things hurt here: fume, hot metal, leaded solder in the mouth, and a lead that nobody tested.',
      'Go through the list with these four, one by one.',
      'Fume comes from flux, with any solder. Lead gets in by the mouth.',
    ],
    caution: SOLDER_CAUTION,
    steps: [
      'Fume, hot metal, lead in the mouth, and power: hold each line of the list against these four.',
      `So this one can hurt: ${first.text}. ${gistOf(first.caution)}`,
      `These can hurt: ${hazards.map(({ text, caution }) => `${text}. ${gistOf(caution)}`).join(' ')}`,
    ],
  };
}
