/** Tasks that turn a picture of a lead into a list of conductors, and a list into a picture. */
import {
  DIN_TO_TYPE_A,
  STRAIGHT_DIN,
  contactsOf,
  dinReadingOrder,
  familyOf,
  wires,
  wiringWords,
} from '../../../wiring/index.ts';
import type { Conductor, Connector, Contact, DinView } from '../../../wiring/index.ts';
import { AS_THEY_STAND, oneOf, whichOf } from '../forms.ts';
import type { Chance, Drawn, Level, ShownFace } from '../task.ts';
import { FACES, countedAt, mirroredAt, otherSide, rowOf, sayFace, turnedAt } from './faces.ts';

/** A lead from a DIN plug: its other plug and its conductors. */
interface DrawnLead {
  readonly to: Connector;
  readonly conductors: readonly Conductor[];
}

const USUAL_LEADS: readonly DrawnLead[] = [
  { to: 'trs-3.5', conductors: DIN_TO_TYPE_A },
  { to: 'din5', conductors: STRAIGHT_DIN },
  { to: 'trs-3.5', conductors: wires('4-tip', '5-ring', '2-sleeve') },
  { to: 'din5', conductors: wires('4-5', '5-4', '2-2') },
];
/** Leads that somebody made up: pins that carry nothing, or a line on an odd contact. */
const ODD_LEADS: readonly DrawnLead[] = [
  { to: 'trs-3.5', conductors: wires('1-tip', '3-ring', '2-sleeve') },
  { to: 'trs-3.5', conductors: wires('4-sleeve', '5-tip', '2-ring') },
  { to: 'din5', conductors: wires('4-1', '5-3', '2-2') },
];

const PLUG_FACES = FACES.filter(({ form }) => form === 'plug');
const LETTERS = ['a', 'b', 'c', 'd', 'e'] as const;

/** 'pin 2 to sleeve, pin 4 to ring', by the number of the first contact. */
const sayWires = (conductors: readonly Conductor[]): string =>
  wiringWords(conductors.toSorted((one, other) => one.from.localeCompare(other.from)));

/** A plug whose contacts bear the letters of their wires. */
function lettered(
  face: DinView,
  name: string,
  at: readonly (readonly [letter: string, contact: Contact])[],
): ShownFace {
  const order = familyOf(face.connector) === 'din' ? dinReadingOrder(face) : contactsOf(face.connector);
  return { ...face, name, labels: order.map((one) => at.find(([, contact]) => contact === one)?.[0] ?? '') };
}

/** From a picture of both plugs to the list of conductors. */
export function pictureToList(level: Level, chance: Chance): Drawn {
  const { to, conductors } = chance.turn(level === 3 ? [...ODD_LEADS, ...USUAL_LEADS] : USUAL_LEADS);
  const drawFrom = (): DinView =>
    turnedAt(
      level,
      level < 2 ? (PLUG_FACES.find(({ view }) => view === 'solder') as DinView) : chance.pick(PLUG_FACES),
      chance,
    );
  const first = drawFrom();
  const din = to === 'din5';
  const second: DinView = din ? drawFrom() : { connector: to, form: 'plug', view: 'mating' };
  const letters = chance.shuffled(LETTERS.slice(0, conductors.length));
  const ends = (side: 'from' | 'to'): readonly (readonly [string, Contact])[] =>
    conductors.map((one, at) => [letters[at] ?? '', one[side]]);
  const faces = [
    lettered(first, `one end: ${sayFace(first)}`, ends('from')),
    lettered(second, din ? `other end: ${sayFace(second)}` : 'other end: a TRS plug', ends('to')),
  ];
  const right = sayWires(conductors);
  return {
    ask: 'Both plugs of one lead, each with the letters of its wires. Which list is this lead?',
    shows: { shows: 'faces', faces },
    ...oneOf(distinct(right, wrongLists(conductors, first, din ? second : undefined)), chance),
    hints: [
      'A list names the contact at one end, then the contact at the other.',
      'Name the side of each DIN plug and find its key before you read a pin.',
      `At the first end the pins read ${rowOf(first)}${din ? `, at the other end ${rowOf(second)}` : ''}, from left to right.`,
    ],
    steps: [
      `The first end is ${sayFace(first)}: ${rowOf(first)}.`,
      din
        ? `The other end is ${sayFace(second)}: ${rowOf(second)}.`
        : 'The other end has tip, ring and sleeve, from its nose.',
      `Letter by letter: ${right}.`,
    ],
  };
}

interface WrongList {
  readonly text: string;
  readonly slip: string;
  readonly says: string;
}

/** Lists that known mistakes read off the two plugs; `second` is the face of the other DIN plug, where it is one. */
function wrongLists(
  conductors: readonly Conductor[],
  first: DinView,
  second: DinView | undefined,
): readonly WrongList[] {
  const read = (
    from: (pin: Contact) => string,
    into: (contact: Contact) => string = (one) => one,
  ): readonly Conductor[] => wires(...conductors.map((one) => `${from(one.from)}-${into(one.to)}`));
  return [
    {
      slip: 'mirrored',
      list: read((pin) => mirroredAt(first, pin)),
      says: `That is ${sayFace(otherSide(first))}. Look which side is drawn at the first end.`,
    },
    {
      slip: 'counted in order',
      list: read((pin) => countedAt(first, pin), second && ((pin) => countedAt(second, pin))),
      says: `The numbers do not run in order. This face reads ${rowOf(first)} from left to right.`,
    },
    {
      slip: 'wires mixed up',
      list: wires(
        ...conductors.map((one, at) => `${one.from}-${conductors[(at + 1) % conductors.length]?.to ?? ''}`),
      ),
      says: 'Follow one letter at a time: the same letter at both ends is one wire.',
    },
  ].map(({ list, ...one }) => ({ ...one, text: sayWires(list) }));
}

/** The right text with those that differ from it and from one another. */
function distinct(right: string, wrong: readonly WrongList[]): Parameters<typeof oneOf>[0] {
  const others = wrong.filter(
    ({ text }, at) => text !== right && wrong.findIndex((one) => one.text === text) === at,
  );
  return [{ text: right, right: true }, ...others];
}

/** Pins that the wires of a list go to: the three lines of the loop, or all five. */
const LOOP_LISTS = ['452', '245', '524'] as const;
const ODD_LISTS = ['14253', '53124', '31254'] as const;

/** From a list of pins to the picture of a plug. */
export function listToPicture(level: Level, chance: Chance): Drawn {
  const pins = [...chance.turn(level === 3 ? [...ODD_LISTS, ...LOOP_LISTS] : LOOP_LISTS)];
  const face = turnedAt(level, level < 2 ? (PLUG_FACES[1] as DinView) : chance.pick(PLUG_FACES), chance);
  const order = dinReadingOrder(face);
  const letterAt = (pin: string): string => LETTERS[pins.indexOf(pin)] ?? '';
  const counted = order.map((pin) => letterAt(countedAt(face, pin)));
  const labels = order.map(letterAt);
  const drawn = {
    right: labels,
    mirrored: labels.toReversed(),
    'counted in order': counted,
    'counted backwards': counted.toReversed(),
  };
  const says = {
    right: '',
    mirrored: `That is ${sayFace(otherSide(face))}. The question is about ${sayFace(face)}.`,
    'counted in order': 'The numbers do not run in order from left to right.',
    'counted backwards': 'The numbers do not run in order, from neither side.',
  };
  const pictures = chance.shuffled(Object.keys(drawn) as readonly (keyof typeof drawn)[]);
  const name = (picture: keyof typeof drawn): string => `Picture ${pictures.indexOf(picture) + 1}`;
  return {
    ask: `A DIN plug gets its wires by this list: ${pins.map((pin, at) => `${LETTERS[at] ?? ''} to pin ${pin}`).join(', ')}. Which picture is it, if each one shows ${sayFace(face)}?`,
    shows: {
      shows: 'faces',
      faces: pictures.map((one) => ({ ...face, labels: drawn[one], name: name(one) })),
    },
    ...whichOf(pictures, 'right', name, (one) => [one, says[one]], AS_THEY_STAND),
    hints: [
      'A list is true from both sides. A picture is true from one side only.',
      'First write the row of pins of this side, from left to right.',
      `The row is ${rowOf(face)}. Put each letter under its number.`,
    ],
    steps: [
      `From left to right, ${sayFace(face)} reads ${rowOf(face)}.`,
      `Under the numbers: ${labels.map((one) => one || 'none').join(', ')}.`,
      `${name('right')}.`,
    ],
  };
}
