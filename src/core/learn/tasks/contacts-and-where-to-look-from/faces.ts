/** Faces of the DIN connector in tasks: which there are, what is read off them, and how they are told. Where pins stand is asked of the floor of wiring. */
import { FORMS, dinReadingOrder } from '../../../wiring/index.ts';
import type { Contact, DinView, Form, View } from '../../../wiring/index.ts';
import type { Chance, Level } from '../task.ts';

/** Plug and jack from both sides, key down. */
export const FACES: readonly DinView[] = FORMS.flatMap((form) =>
  (['mating', 'solder'] as const).map((view): DinView => ({ connector: 'din5', form, view })),
);

/** A side in words. */
export const SIDES: Readonly<Record<View, string>> = { mating: 'mating face', solder: 'solder side' };

/** 'the solder side of a plug, key down'. */
export const sayFace = ({ form, view, turned }: DinView): string =>
  `the ${SIDES[view]} of a ${form}, key ${turned === true ? 'up' : 'down'}`;

/** The same face; at level 3 it may be turned so that its key is up. */
export function turnedAt(level: Level, face: DinView, chance: Chance): DinView {
  return level === 3 && chance.pick([true, false]) ? { ...face, turned: true } : face;
}

/** The face as it would be taken for by who looks from the wrong side. */
export const otherSide = (face: DinView): DinView => ({
  ...face,
  view: face.view === 'mating' ? 'solder' : 'mating',
});

/** Both rows that pins can stand in, left to right, as they are said. */
export const ROWS = FORMS.map((form: Form) =>
  dinReadingOrder({ connector: 'din5', form, view: 'solder' }).join(' '),
).join(' or ');

/** Pins from left to right, as a row of numbers. */
export const rowOf = (face: DinView): string => dinReadingOrder(face).join(' ');

/** What stands at the place of a pin when numbers are counted from left to right. */
export const countedAt = (face: DinView, pin: Contact): string =>
  String(dinReadingOrder(face).indexOf(pin) + 1);

/** The pin at the same place on the other side. */
export const mirroredAt = (face: DinView, pin: Contact): Contact =>
  dinReadingOrder(otherSide(face))[dinReadingOrder(face).indexOf(pin)] ?? pin;
