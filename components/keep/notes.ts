/** Small things that a page keeps in the browser between visits, each under its own name. A browser that refuses harms nothing. */

import { dropStored, putAside, shelfKey, stored } from './shelf.ts';
import { sayError } from '../parts/say-error.ts';

const refused = (why: string): string =>
  `This browser keeps nothing for this page (${why}): what you enter is gone when you leave it.`;

/**
 * Keep a value that JSON can hold; says what went wrong when the browser refuses. What stands there and is not whole, by `isWhole`,
 * is put aside first, and where it cannot be, nothing is written over it.
 */
export function keepNote(
  name: string,
  value: unknown,
  isWhole: (note: unknown) => boolean = () => true,
): string | undefined {
  const before = stored(name).now?.text;
  if (before !== undefined && !isRead(before, isWhole) && !putAside(name, before))
    return refused('what was kept before cannot be read, and there is no room to put it aside');
  try {
    localStorage.setItem(shelfKey(name), JSON.stringify(value));
    return undefined;
  } catch (error) {
    return refused(sayError(error));
  }
}

function isRead(text: string, isWhole: (note: unknown) => boolean): boolean {
  try {
    return isWhole(JSON.parse(text));
  } catch {
    return false;
  }
}

/**
 * What was kept under a name, to be checked by who asks; undefined when nothing was, or when it cannot be read: then it is put
 * aside, so that the next note is not written over it.
 */
export function keptNote(name: string): unknown {
  const text = stored(name).now?.text;
  if (text === undefined) return undefined;
  try {
    return JSON.parse(text) as unknown;
  } catch {
    if (putAside(name, text)) dropStored(name);
    return undefined;
  }
}

/** A field of something that was kept, whatever it is. */
export function fieldOf(value: unknown, name: string): unknown {
  return typeof value === 'object' && value !== null
    ? (value as Readonly<Record<string, unknown>>)[name]
    : undefined;
}

/** A kept value if it is one of a closed set, else the usual one. */
export function oneOf<T>(set: readonly T[], value: unknown, usual: T): T {
  return set.find((one) => one === value) ?? usual;
}
