/** Tasks on what a plug joins inside a jack. */
import { contactWords, contactsOf, lineAt, mate, words } from '../../../wiring/index.ts';
import type { Connector, Contact, Line, Style } from '../../../wiring/index.ts';
import { casesAt, whichOf, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** A plug in the jack of an output of a type. */
interface Plugged {
  readonly plug: Connector;
  readonly jack: Connector;
  readonly style: Style;
}

/** Cases by level. */
const CASES: readonly Plugged[] = [
  { plug: 'ts-3.5', jack: 'trs-3.5', style: 'type-a' },
  { plug: 'ts-6.35', jack: 'trs-6.35', style: 'type-b' },
  { plug: 'ts-6.35', jack: 'trs-6.35', style: 'type-a' },
  { plug: 'ts-3.5', jack: 'trs-3.5', style: 'type-b' },
  // Types that use two contacts: the plug joins nothing that matters, or all there is.
  { plug: 'ts-6.35', jack: 'trs-6.35', style: 'tip-signal' },
  { plug: 'ts-3.5', jack: 'trs-3.5', style: 'ring-signal' },
  // Plugs that do not go in, and plugs with a contact too many.
  { plug: 'ts-6.35', jack: 'trs-3.5', style: 'type-a' },
  { plug: 'trs-3.5', jack: 'ts-3.5', style: 'two-contact' },
  { plug: 'ts-3.5', jack: 'trs-6.35', style: 'type-b' },
  { plug: 'trs-6.35', jack: 'trs-6.35', style: 'type-a' },
];

const JOINED = {
  'source shield': 'The source line and the shield line',
  'sink shield': 'The sink line and the shield line',
  'source sink': 'The source line and the sink line',
  nothing: 'No two lines',
  'no fit': 'It does not go in',
} as const;
type Joined = keyof typeof JOINED;
const ALL_JOINED = Object.keys(JOINED) as readonly Joined[];

/** Which two lines of a jack a plug joins, by the contacts that its metal touches. */
function joinedBy({ plug, jack, style }: Plugged): Joined {
  const mating = mate(plug, jack);
  if (!mating.fits) return 'no fit';
  const linesOn = (contact: Contact): readonly Line[] =>
    mating.touches.flatMap((one) => {
      const line = one.plug === contact ? lineAt(style, one.jack) : undefined;
      return line === undefined ? [] : [line];
    });
  const together = contactsOf(plug)
    .map(linesOn)
    .find((lines) => lines.length > 1);
  const key = (['source', 'sink', 'shield'] as const).filter((line) => together?.includes(line)).join(' ');
  return ALL_JOINED.find((one) => one === key) ?? 'nothing';
}

function sayJackLines({ jack, style }: Plugged): string {
  return contactsOf(jack)
    .map((contact) => `${lineAt(style, contact) ?? 'nothing'} on the ${contactWords(contact)}`)
    .join(', ');
}

/** Which lines of a jack a plug joins. */
export function tsPlug(level: Level, chance: Chance): Drawn {
  const one = chance.turn(casesAt(level, CASES, [4, 6]));
  const right = joinedBy(one);
  const short = one.plug.startsWith('ts');
  const ring = lineAt(one.style, 'ring');
  return {
    ask: `The ${words(one.jack)} jack of an output has ${sayJackLines(one)}. A ${words(one.plug)} plug is pushed in. Which lines does its metal join?`,
    shows: {
      shows: 'faces',
      faces: [
        {
          connector: one.plug,
          form: 'plug',
          view: 'mating',
          labels: contactsOf(one.plug),
          name: `${words(one.plug)} plug`,
        },
      ],
    },
    ...whichOf(
      ALL_JOINED.filter((joined) => joined !== 'no fit' || level === 3),
      right,
      (joined) => JOINED[joined],
      (joined) => mistakenJoin(joined, right, one),
      chance,
    ),
    hints: [
      'A TS plug has no ring. Its sleeve is longer, and fills the place of the ring.',
      'Compare the sizes first. Then ask what metal presses on each spring of the jack.',
      short
        ? `On the ring spring of this jack is ${ring === undefined ? 'no line' : `the ${ring} line`}, and on the sleeve ${lineAt(one.style, 'sleeve') === undefined ? 'none' : `the ${lineAt(one.style, 'sleeve') ?? ''} line`}.`
        : 'Each contact of this plug meets one spring at most.',
    ],
    steps: [
      right === 'no fit'
        ? `A ${words(one.plug)} plug and a ${words(one.jack)} jack are of different sizes.`
        : short
          ? 'The long sleeve of the plug presses on ring and sleeve of the jack.'
          : 'Each contact of the plug presses on one spring of the jack at most.',
      `This jack has ${sayJackLines(one)}.`,
      `${JOINED[right]}.`,
    ],
  };
}

function mistakenJoin(said: Joined, right: Joined, { plug, jack, style }: Plugged): Mistake {
  if (right === 'no fit')
    return [
      'sizes not compared',
      `Compare the sizes first: the plug is ${words(plug)}, the jack ${words(jack)}.`,
    ];
  if (said === 'no fit')
    return ['says it does not go in', 'The sizes are the same, so it goes in, right or wrong.'];
  if (said === 'nothing') return ['the ring floats', 'What metal presses on the ring spring?'];
  if (right === 'nothing')
    return [
      'joins a line too many',
      plug.startsWith('ts')
        ? 'The long sleeve does join ring and sleeve. Is there a line on both of them?'
        : 'This plug has a ring of its own, or the jack has no spring for it. What does each contact touch?',
    ];
  if (said === 'source sink')
    return ['tip and ring joined', 'The tip stands apart. The long sleeve reaches the ring, not the tip.'];
  return [
    'the other line',
    `Read again which line is on the ring: it is the ${lineAt(style, 'ring') ?? 'shield'} line that meets the sleeve.`,
  ];
}
