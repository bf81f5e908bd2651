/** Tasks on one drawn face: which pin is hidden, and which side is drawn. */
import { dinReadingOrder, pinsOf } from '../../../wiring/index.ts';
import type { Contact, DinView, Form, View } from '../../../wiring/index.ts';
import { whichOf, whichText, type Mistake } from '../forms.ts';
import type { Chance, Drawn, Level } from '../task.ts';
import { FACES, ROWS, SIDES, countedAt, mirroredAt, otherSide, rowOf, sayFace, turnedAt } from './faces.ts';

const PINS = pinsOf('din5');

/** Which pin of a drawn face is hidden. */
export function hiddenPin(level: Level, chance: Chance): Drawn {
  const face = turnedAt(level, chance.turn(FACES), chance);
  const pin = chance.pick(PINS);
  const labels = dinReadingOrder(face).map((one) => (one === pin ? '?' : level < 2 ? one : ''));
  return {
    ask: `This is ${sayFace(face)}, of a 5-pin DIN connector. Which pin is marked with a question mark?`,
    shows: { shows: 'faces', faces: [{ ...face, labels, name: sayFace(face) }] },
    ...whichOf(
      PINS,
      pin,
      (one) => `Pin ${one}`,
      (one) => mistakenPin(face, pin, one),
      chance,
    ),
    hints: [
      'Name the side, and find the key, before you read a number.',
      `With the key down, pins read ${ROWS} from left to right. They never run 1 2 3 4 5.`,
      `Here the row is ${rowOf(face)}.`,
    ],
    steps: [
      `The drawing shows ${sayFace(face)}.`,
      `From left to right its pins read ${rowOf(face)}.`,
      `The one with the question mark is pin ${pin}.`,
    ],
  };
}

/** What it means to take a hidden pin for another one. */
function mistakenPin(face: DinView, pin: Contact, said: Contact): Mistake {
  if (said === mirroredAt(face, pin))
    return [
      'mirrored',
      `That is the ${SIDES[otherSide(face).view]}${face.turned === true ? ', or the key down' : ''}. Which side is drawn here, and where is its key?`,
    ];
  if (said === countedAt(face, pin))
    return ['counted in order', `The numbers do not run in order. With the key down they read ${ROWS}.`];
  return ['another pin', 'Write the whole row down first, then count to the mark.'];
}

/** Rows in which the pins of no side stand: numbers that run on, and one pair alone exchanged. */
const FALSE_ROWS = ['1 2 3 4 5', '5 4 3 2 1', '1 5 2 4 3', '3 4 2 5 1'] as const;

type Seen = View | 'neither';
const SEEN_AS: Readonly<Record<Seen, string>> = {
  mating: 'Its mating face',
  solder: 'Its solder side',
  neither: 'Neither side',
};

/** Which side of a connector is drawn. */
export function whichView(level: Level, chance: Chance): Drawn {
  const [form, seen] = chance.turn<readonly [Form, Seen]>([
    ['plug', 'mating'],
    ['jack', 'solder'],
    ...(level >= 2 ? ([['plug', 'neither']] as const) : []),
    ['plug', 'solder'],
    ['jack', 'mating'],
    ...(level === 3 ? ([['jack', 'neither']] as const) : []),
  ]);
  const upright: DinView = { connector: 'din5', form, view: seen === 'neither' ? 'mating' : seen };
  const face = level >= 2 && chance.pick([true, false]) ? { ...upright, turned: true } : upright;
  const row = seen === 'neither' ? chance.pick(FALSE_ROWS) : rowOf(face);
  const key = face.turned === true ? 'up' : 'down';
  const mating = rowOf({ connector: 'din5', form, view: 'mating' });
  const name = `a ${form}, key ${key}`;
  return {
    ask: `Somebody drew a 5-pin DIN ${form} with its key ${key}, and did not say from which side. Which side is it?`,
    shows: { shows: 'faces', faces: [{ ...face, labels: row.split(' '), name, untold: true }] },
    ...whichText(SEEN_AS, seen, (one) => mistakenSide(one, seen, form, mating), chance),
    hints: [
      'The two sides of a connector are mirror images of one another.',
      `With the key down, the mating face of a ${form} reads ${mating} from left to right.`,
      'A drawing with the key up is turned half round: then its row runs backwards.',
    ],
    steps: [
      `From left to right it reads ${row}, with the key ${key}.`,
      seen === 'neither'
        ? `With the key down a face reads ${ROWS}, and with the key up the same rows turned round.`
        : `The mating face of a ${form} with the key ${key} reads ${rowOf({ ...face, view: 'mating' })}.`,
      `${SEEN_AS[seen]}.`,
    ],
  };
}

function mistakenSide(said: Seen, right: Seen, form: Form, mating: string): Mistake {
  if (said === 'neither')
    return ['says neither', 'It is a real row. Turn the drawing until the key is down, then read it again.'];
  return [
    `takes it for the ${said} side`,
    right === 'neither'
      ? `Check every number. With the key down a face reads ${ROWS}, and nothing else.`
      : `The two sides are mirror images. With the key down, the mating face of a ${form} reads ${mating}.`,
  ];
}
