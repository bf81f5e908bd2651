/** The teacher's Set as it is kept, and those that stood in its place before. */
import type { WorkSet } from '../../src/core/class/index.ts';
import { isoOf, millisecondsNow } from '../keep/moments.ts';
import { fieldOf, keepNote } from '../keep/notes.ts';
import { addVersion, dropStored, stored, versions } from '../keep/shelf.ts';

/** Its name in the store. */
const SHELF = 'class-set';

/** The text that this tab has read or written last: any other that stands there is not its own. */
let own: string | undefined;

/** What became of keeping a Set: what went wrong, and whether another one that stood there went to the earlier ones. */
interface Keeping {
  readonly problem?: string;
  readonly moved: boolean;
}

/** A Set that stood here before: when, its title, and what JSON holds of it, to be checked by who opens it. */
interface EarlierSet {
  readonly at: string;
  readonly title: string;
  readonly value: unknown;
}

const standing = (): string | undefined => stored(SHELF).now?.text;

/** What JSON holds of the Set that is kept; undefined when none is, or when it is no JSON. */
export function keptSet(): unknown {
  return parsed(standing());
}

/** From now on what stands there is this tab's own: it was opened. */
export function ownSet(): void {
  own = standing();
}

/**
 * Keep a Set; one without tasks is no work yet, and nothing is kept of it. What stands there and is not this tab's own, or is
 * another Set that this one `replaces`, goes to the earlier ones first; where it cannot, nothing is written over it.
 */
export function keepSet(set: WorkSet, replaces: boolean): Keeping {
  const before = standing();
  const moved = before !== undefined && (replaces || before !== own) && before !== JSON.stringify(set);
  if (moved && !addVersion(SHELF, { at: isoOf(millisecondsNow()), text: before }))
    return {
      moved: false,
      problem:
        'This browser has no room for the Set that stood here before: it is left there, and this one is not kept. Save it to a file before you leave.',
    };
  if (set.items.length === 0) {
    dropStored(SHELF);
    own = undefined;
    return { moved };
  }
  const problem = keepNote(SHELF, set);
  if (problem !== undefined) return { moved, problem };
  own = standing();
  return { moved };
}

/** The Sets that stood here before, newest first. */
export function earlierSets(): readonly EarlierSet[] {
  return versions(SHELF).list.map(({ at, text }) => {
    const value = parsed(text);
    const title = fieldOf(value, 'title');
    return { at, title: typeof title === 'string' ? title : 'cannot be read', value };
  });
}

function parsed(text = ''): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
