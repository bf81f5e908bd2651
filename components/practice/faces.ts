/** Faces of a task as drawings: with the labels of the task in place of contact names, in the picture and in its words alike. */
import type { ShownFace } from '../../src/core/learn/index.ts';
import { contactsOf, dinReadingOrder, familyOf, words } from '../../src/core/wiring/index.ts';
import { drawFace } from '../../src/draw/block.ts';
import type { FaceDrawing } from '../../src/draw/face.ts';

/** What is said of a contact that bears no label, and of the one that is asked for. */
const BARE = 'no mark';
const ASKED = 'question mark';

/** A face as the task shows it. Its words name the contacts as they are labelled, and no side where the task tells none. */
export function drawShownFace(face: ShownFace): FaceDrawing {
  const din = familyOf(face.connector) === 'din';
  const drawing = drawFace(face);
  const order = din ? dinReadingOrder(face) : contactsOf(face.connector);
  const labelAt = new Map(order.map((contact, at) => [contact, face.labels[at] ?? '']));
  const said = face.labels.map((label) => (label === '' ? BARE : label === '?' ? ASKED : label)).join(', ');
  const where = face.untold
    ? `${words(face.connector)} ${face.form}, key ${face.turned ? 'up' : 'down'}`
    : undefined;
  const looks = where ?? `${words(face.connector)} ${face.form}, ${drawing.caption}`;
  return {
    ...drawing,
    // A ring round the pins is drawn on one side only: where no side is told it would tell.
    outlines: drawing.outlines.filter(({ kind }) => !face.untold || kind !== 'hairline'),
    contacts: drawing.contacts.map((contact) => ({
      ...contact,
      label: { ...contact.label, text: labelAt.get(contact.contact) ?? '' },
    })),
    textAlternative: `${looks}. ${din ? 'From left to right' : 'From the nose to the handle'}: ${said}.`,
  };
}
