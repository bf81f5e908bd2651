/** What a keeper has to know of the things that it keeps, and the kind that most of them are: notes that JSON can hold. */
import { sayError } from '../parts/say-error.ts';

/** What became of reading a text: a value, a problem, or a part of a value with the problem of the rest. */
interface KindReading<T> {
  readonly value?: T;
  readonly problem?: string;
}

/** A kind of thing that is kept. */
export interface Kind<T> {
  /** What the reader calls one of them: 'plan'. */
  readonly name: string;
  /** A text as one of them, why it is none, or both: what of it can be read, and why not all of it. */
  readonly read: (text: string) => KindReading<T>;
  readonly write: (value: T) => string;
  /** Why one cannot be kept, since it could not be read again; undefined where it can. */
  readonly refusal?: (value: T) => string | undefined;
  /**
   * What the state before a change is for the versions: nothing to keep, one that waits for its time, or one to be kept at once
   * since the change is large. A kind without it has no versions.
   */
  readonly change?: (before: T, after: T) => 'from nothing' | 'small' | 'large';
}

/**
 * Notes of which no earlier versions are kept. `read` hands back what of a note it can take, and `isWhole` says whether that is all
 * of it; `note` is what JSON holds of a value.
 */
export function noteKind<T>(
  name: string,
  read: (note: unknown) => T,
  note: (value: T) => unknown,
  isWhole: (value: T, note: unknown) => boolean = () => true,
): Kind<T> {
  return {
    name,
    write: (value) => JSON.stringify(note(value)),
    read: (text) => {
      try {
        const found = JSON.parse(text) as unknown;
        const value = read(found);
        return isWhole(value, found) ? { value } : { value, problem: 'some of it is not known here' };
      } catch (error) {
        return { problem: sayError(error) };
      }
    },
  };
}
