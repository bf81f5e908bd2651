/** What stands in the fields, and how it is kept in the browser. */
import { COMPLAINTS, MIDDLE_OCTAVES, WRITINGS } from '../../src/core/arrived/index.ts';
import { noteKind } from '../keep/kind.ts';
import { fieldOf, oneOf } from '../keep/notes.ts';
import type { Typed } from './question.ts';

/** What the page starts with. */
export const NOTHING_TYPED: Typed = {
  sent: '',
  seen: '',
  writing: 'either',
  middleOctave: 4,
  complaints: [],
};

/** What stands in the fields as the keeper of its shelf knows it. */
export const TYPED_KIND = noteKind<Typed>(
  'log',
  readTyped,
  (typed) => typed,
  (_, note) => ['sent', 'seen'].every((name) => typeof fieldOf(note, name) === 'string'),
);

/** What can be read of a note; a choice that is not known is as on a first visit. */
function readTyped(note: unknown): Typed {
  const textOf = (name: string): string => {
    const text = fieldOf(note, name);
    return typeof text === 'string' ? text : '';
  };
  const complaints = fieldOf(note, 'complaints');
  return {
    sent: textOf('sent'),
    seen: textOf('seen'),
    writing: oneOf(WRITINGS, fieldOf(note, 'writing'), NOTHING_TYPED.writing),
    middleOctave: oneOf(MIDDLE_OCTAVES, fieldOf(note, 'middleOctave'), NOTHING_TYPED.middleOctave),
    complaints: COMPLAINTS.filter((one) => Array.isArray(complaints) && complaints.includes(one)),
  };
}
