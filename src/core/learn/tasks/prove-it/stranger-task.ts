/** A lead that nobody knows: what it joins is read, and the jacks that it serves are found by solving it between them. */
import { sayPlace } from '../../../making/index.ts';
import { checkLink, linkFor, works } from '../../../verdict/index.ts';
import { makeJack, makeLead } from '../../../wiring/index.ts';
import type { Conductor, Connector, Fault, Jack, Lead, Style } from '../../../wiring/index.ts';
import { conductorsOf } from '../answers.ts';
import { TEST_CAUTION } from '../cautions.ts';
import { oneOf } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { saysWith, stillPlaces } from './leads.ts';

type Short = Extract<Fault, { readonly kind: 'short' }>;

/** A lead with its plugs, as it was made, and two contacts of it that touch, if any do. */
interface Stranger {
  readonly from: Connector;
  readonly to: Connector;
  readonly conductors: readonly Conductor[];
  readonly short?: Short;
}

const stranger = (from: Connector, to: Connector, pairs: string, short?: Short): Stranger => ({
  from,
  to,
  conductors: conductorsOf(pairs),
  ...(short ? { short } : {}),
});

const touching = (side: Short['side'], a: Short['between'][0], b: Short['between'][1]): Short => ({
  kind: 'short',
  side,
  between: [a, b],
});

/** Leads that serve one of the two pairs of jacks, in turn with those that serve neither. */
const WHOLE: readonly Stranger[] = [
  stranger('din5', 'trs-3.5', '4-ring 5-tip 2-sleeve'),
  stranger('trs-3.5', 'trs-3.5', 'tip-ring ring-tip sleeve-sleeve'),
  stranger('din5', 'trs-3.5', '4-ring 2-sleeve'),
  stranger('trs-3.5', 'din5', 'tip-4 ring-5 sleeve-2'),
  stranger('trs-3.5', 'trs-3.5', 'tip-tip ring-ring sleeve-sleeve'),
  stranger('trs-3.5', 'trs-3.5', 'tip-tip sleeve-sleeve'),
  stranger('din5', 'trs-3.5', '4-tip 5-ring 2-sleeve'),
  stranger('trs-3.5', 'din5', 'tip-5 ring-4 sleeve-2'),
  stranger('din5', 'trs-3.5', '4-ring 3-tip 2-sleeve'),
];

/** Traps: three beeps as they should be and a fourth, a shield that is left out, and spare pins that are wired. */
const TRAPS: readonly Stranger[] = [
  stranger('din5', 'trs-3.5', '4-ring 5-tip 2-sleeve', touching('to', 'tip', 'ring')),
  stranger('din5', 'trs-3.5', '4-ring 5-tip'),
  stranger('trs-3.5', 'trs-3.5', 'tip-tip ring-ring sleeve-sleeve', touching('from', 'ring', 'sleeve')),
  stranger('trs-3.5', 'din5', 'tip-4 ring-5'),
  stranger('trs-3.5', 'din5', 'tip-5 ring-4 sleeve-2', touching('to', '4', '2')),
  stranger('trs-3.5', 'trs-3.5', 'tip-ring ring-tip'),
  stranger('din5', 'trs-3.5', '4-tip 5-ring 2-sleeve', touching('from', '5', '2')),
];

/** The two pairs of jacks that a lead with these plugs may serve, and how they are called. */
function candidates({
  from,
  to,
}: Stranger): readonly { readonly text: string; readonly styles: readonly [Style, Style] }[] {
  if (from === 'din5')
    return [
      { text: 'From a DIN output to a Type A input', styles: ['din', 'type-a'] },
      { text: 'From a DIN output to a Type B input', styles: ['din', 'type-b'] },
    ];
  if (to === 'din5')
    return [
      { text: 'From a Type A output to a DIN input', styles: ['type-a', 'din'] },
      { text: 'From a Type B output to a DIN input', styles: ['type-b', 'din'] },
    ];
  return [
    { text: 'From a Type A output to a Type A input', styles: ['type-a', 'type-a'] },
    { text: 'From a Type A output to a Type B input', styles: ['type-a', 'type-b'] },
  ];
}

function asLead({ from, to, conductors, short }: Stranger): Lead {
  return makeLead(from, to, conductors, { faults: short ? [short] : [] });
}

const SERVES = new Map<string, boolean>();

/** Whether a lead works between two jacks of these types: solved once for each. */
function serves(one: Stranger, [out, into]: readonly [Style, Style]): boolean {
  const key = JSON.stringify([one, out, into]);
  const known = SERVES.get(key);
  if (known !== undefined) return known;
  const output: Jack = makeJack('out', one.from, out);
  const input: Jack = makeJack('in', one.to, into);
  const link = linkFor(output, input, one.conductors);
  const found = works(checkLink({ ...link, branches: [{ input, leads: [asLead(one)] }] }, 'outcome'));
  SERVES.set(key, found);
  return found;
}

/** Which jacks a lead serves that nobody knows. */
export function strangersLead(level: Level, chance: Chance): Drawn {
  const one = chance.turn(level === 3 ? [...TRAPS, ...WHOLE] : WHOLE);
  const lead = asLead(one);
  const says = saysWith(lead, one.short ? [one.short] : []);
  const beeping = stillPlaces(lead).filter((place) => says(place) === 'beep');
  const [first, second] = candidates(one) as [
    ReturnType<typeof candidates>[number],
    ReturnType<typeof candidates>[number],
  ];
  const [does, doesToo] = [serves(one, first.styles), serves(one, second.styles)];
  const right = does ? (doesToo ? 'either' : 'first') : doesToo ? 'second' : 'neither';
  const other =
    'Pin 4 is the source and pin 5 the sink. Type A has the source on its ring, Type B on its tip.';
  const offered = {
    first: { text: first.text, slip: 'pair swapped', says: other },
    second: { text: second.text, slip: 'pair swapped', says: other },
    either: {
      text: 'Either: a beep on each wire is enough',
      slip: 'three beeps are enough',
      says: 'The two types differ in which contact the source is on. One lead cannot suit both.',
    },
    neither: {
      text: 'Neither: leave it out of the loop now',
      slip: 'gave up',
      says: 'Source and sink each have a way through, and they do not touch. Which pair do they fit?',
    },
  } as const;
  return {
    ask: `A lead without a label, unplugged at both ends. Every two contacts were read, with the lead lying still and moved. These beep, and all others are silent. Between which jacks does it work?`,
    shows: {
      shows: 'rows',
      rows: beeping.map((place) => [sayPlace(place), 'beeps'] as const),
    },
    material: { on: 'meter', under: { kind: 'lead', lead } },
    ...oneOf(
      (['first', 'second', 'either', 'neither'] as const).map((name) => {
        const { text, slip, says: said } = offered[name];
        if (name === right) return { text, right: true as const };
        return right === 'neither' && name !== 'either'
          ? { text, slip: 'silence forgotten', says: saidToUnfit(one) }
          : { text, slip, says: said };
      }),
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
      `Solved: ${first.text.toLowerCase().replace('din', 'DIN').replaceAll('type a', 'Type A').replaceAll('type b', 'Type B')} it ${does ? 'works' : 'does not'}, to the other it ${doesToo ? 'works' : 'does not'}.`,
      `${offered[right].text}.`,
    ],
  };
}

/** What is said where a lead serves neither pair, and one was named. */
function saidToUnfit({ short, conductors }: Stranger): string {
  if (short) return 'Two contacts beep that should be silent to each other. That leads the current astray.';
  return conductors.length < 3
    ? 'One line of the pair has no way through. Follow the loop out and back.'
    : 'One wire ends on a contact that carries nothing. Follow the loop out and back.';
}
