/** Faces as a reader knows them by heart: rows of pins typed by hand. It shares no code with the core. */
import type { ShownFace, Task } from '../../../../src/core/learn/index.ts';

/** Pins from left to right, key down: the encyclopedia's row for a socket, its mirror image for a plug, and each turned over (c). */
export const ROWS: Readonly<Record<string, string>> = {
  'mating face of a jack': '14253',
  'solder side of a jack': '35241',
  'mating face of a plug': '35241',
  'solder side of a plug': '14253',
};
/** A row as it reads upside down, and as it reads from the other side. */
export const turned = (row: string): string => [...row].toReversed().join('');

/** The row of the side that some words name. */
export function rowIn(words: string): string {
  const side = Object.keys(ROWS).find((one) => words.includes(one)) ?? '';
  const row = ROWS[side] ?? '';
  return words.includes('key up') ? turned(row) : row;
}

/** The faces that a task shows. */
export function facesOf({ shows }: Task): readonly ShownFace[] {
  if (shows?.shows !== 'faces') throw new Error('task: needs faces');
  return shows.faces;
}

/** Letters of a shown plug with the contact that each stands on. */
export function contactsIn({ labels, name, connector }: ShownFace): ReadonlyMap<string, string> {
  const contacts =
    connector === 'din5' ? [...rowIn(name)].map((pin) => `pin ${pin}`) : ['tip', 'ring', 'sleeve'];
  return new Map(labels.flatMap((label, at) => (label === '' ? [] : [[label, contacts[at] ?? '']])));
}
