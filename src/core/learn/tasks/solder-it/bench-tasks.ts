/** Tasks at the bench: the order of work, which cup takes which line, and what can hurt. */
import { cableSheet } from '../../../making/index.ts';
import { contactWords, dinReadingOrder, styleEntry } from '../../../wiring/index.ts';
import type { Contact, DinView, Line } from '../../../wiring/index.ts';
import { SOLDER_CAUTION } from '../cautions.ts';
import {
  FACES,
  countedAt,
  mirroredAt,
  rowOf,
  sayFace,
  turnedAt,
} from '../contacts-and-where-to-look-from/faces.ts';
import { AS_THEY_STAND, inOrder, met, whichOf } from '../forms.ts';
import { PLANS, type Plan } from '../prove-it/leads.ts';
import type { Chance, Drawn, Level } from '../task.ts';

/** Places in the order of the sheet: three steps before the first joint, then one after the other. */
const BEFORE = [0, 1, 2] as const;
const SOLDER = 3;
const AFTER = [4, 5, 6] as const;

/** The mistake of leaving each step before the first joint for later. */
const LATE = ['shell forgotten', 'stripped late', 'drawing read late'] as const;
const ORDER_SAID = {
  'shell forgotten':
    'Shells come from behind, along the cable. With a plug at each end they do not go on any more.',
  'stripped late': 'There is nothing to solder before the ends are bare and tinned.',
  'drawing read late': 'Read the drawing before the joint. Afterwards it only tells you what to undo.',
  'tested before it is closed': 'Closing the plug moves the wires. Test the lead as it will be used.',
  'closed before the tug': 'Once the plug is closed you cannot tug at a core. Try each joint first.',
  'tugs at nothing': 'There is no joint yet that could cool.',
};

function stepsOf({ output, input, lead }: Plan): readonly string[] {
  return cableSheet(lead, { output, branches: [{ input, leads: [lead] }] }).steps;
}

/** The order of work: one of the steps that come before the first joint, and all that follow. */
export function orderSteps(level: Level, chance: Chance): Drawn {
  const cases = PLANS.flatMap((plan) => BEFORE.map((before) => ({ plan, before })));
  const { plan, before } = chance.turn(cases);
  const all = stepsOf(plan);
  const step = (at: number): string => all[at] ?? '';
  const after = level < 2 ? AFTER.filter((at) => at !== 5) : AFTER;
  const right = [before, SOLDER, ...after];
  const words = (order: readonly number[]): readonly string[] => order.map(step);
  const rest = right.slice(1);
  const later = rest.map((_, at) => words([...rest.slice(0, at + 1), before, ...rest.slice(at + 1)]));
  const lateBy = (slip: (typeof LATE)[number]) => (slip === LATE[before] ? later : []);
  /** The order with two steps exchanged, where both are asked for. */
  const exchanged = (a: number, b: number): readonly (readonly string[])[] =>
    right.includes(a) && right.includes(b)
      ? [words(right.map((at) => (at === a ? b : at === b ? a : at)))]
      : [];
  return {
    ask: 'Steps of a build sheet, out of order; the first plug of a lead is made. Which order does the sheet give?',
    ...inOrder(words(right), chance, ORDER_SAID, {
      'shell forgotten': lateBy('shell forgotten'),
      'stripped late': lateBy('stripped late'),
      'drawing read late': lateBy('drawing read late'),
      'tested before it is closed': exchanged(5, 6),
      'closed before the tug': exchanged(4, 5),
      'tugs at nothing': exchanged(SOLDER, 4),
    }),
    hints: [
      'Ask of each step what has to be there before it.',
      'What comes from behind along the cable comes first, and so does what you read and prepare.',
      'Joint, then cool and tug, then close, then test.',
    ],
    caution: SOLDER_CAUTION,
    steps: [
      `First: ${step(before)}`,
      `Then the joints, and what tries them: ${step(4)}`,
      `In order: ${words(right)
        .map((one, at) => `${at + 1}. ${one}`)
        .join(' ')}`,
    ],
  };
}

const LINES: readonly Line[] = ['source', 'shield', 'sink'];
const CUPS = ['A', 'B', 'C', 'D', 'E'] as const;

/** Pins of DIN that a phone plug of each type is wired to, told by the contact at the other end. */
const FAR_ENDS = ['type-a', 'type-b'] as const;

function sayWire(line: Line, level: Level, chance: Chance): string {
  if (level < 3) return `the ${line}`;
  const style = chance.pick(FAR_ENDS);
  const { label, lines } = styleEntry(style);
  return `the wire from the ${contactWords(lines[line] as Contact)} of a ${label} plug`;
}

/** Which cup takes which line, on the side where the soldering is done. */
export function solderCups(level: Level, chance: Chance): Drawn {
  const faces = FACES.filter(({ form, view }) => view === 'solder' && (level >= 2 || form === 'plug'));
  const cases = LINES.flatMap((line) => faces.map((face) => ({ line, face })));
  const drawn = chance.turn(cases);
  const face: DinView = turnedAt(level, drawn.face, chance);
  const pin = styleEntry('din').lines[drawn.line] as Contact;
  const order = dinReadingOrder(face);
  // Letters lie about the cups, so that no letter is right more often than another.
  const labels = chance.shuffled(CUPS);
  const letterOf = (contact: Contact): (typeof CUPS)[number] => labels[order.indexOf(contact)] ?? 'A';
  const pinOf = (letter: (typeof CUPS)[number]): Contact => order[labels.indexOf(letter)] ?? pin;
  const wire = sayWire(drawn.line, level, chance);
  return {
    ask: `You look at ${sayFace(face)}. Which cup takes ${wire}?`,
    shows: { shows: 'faces', faces: [{ ...face, labels, name: sayFace(face) }] },
    ...whichOf(
      CUPS,
      letterOf(pin),
      (letter) => `Cup ${letter}`,
      (letter) => met(SAID_TO_CUP, mistakenCup(face, pin, pinOf(letter))),
      AS_THEY_STAND,
    ),
    hints: [
      'Pin 4 is the source, pin 5 the sink, pin 2 the shield. In Type A the source is on the ring, in Type B on the tip.',
      'You are on the solder side, where left and right change places. And where is the key?',
      `Here the pins read ${rowOf(face)} from left to right.`,
    ],
    caution: SOLDER_CAUTION,
    steps: [
      `What is asked for goes to pin ${pin}.`,
      `From left to right the cups are those of the pins ${rowOf(face)}.`,
      `It is cup ${letterOf(pin)}.`,
    ],
  };
}

const SAID_TO_CUP = {
  mirrored: 'That is where it lies on the mating face. You look from behind.',
  'counted in order': 'The pins do not run 1 2 3 4 5. Read their row first.',
  'spare pin': 'That pin carries no line. Three of the five are used.',
  'another line': 'Which pin is the source, which the sink, which the shield?',
};

function mistakenCup(face: DinView, pin: Contact, said: Contact): keyof typeof SAID_TO_CUP {
  if (said === mirroredAt(face, pin)) return 'mirrored';
  if (said === countedAt(face, pin)) return 'counted in order';
  return said === '1' || said === '3' ? 'spare pin' : 'another line';
}
