/** What the front page has been told, as one plain value: each field is what the reader pressed or typed last. */
import { readManual } from '../../src/core/answer/index.ts';
import type { ManualReading, Socket, ToldJack } from '../../src/core/answer/index.ts';
import type { Direction, Style } from '../../src/core/wiring/index.ts';

/** What a reader says of a manual: a type by name, nothing, or its own words. */
export type Says = Style | 'nothing' | 'words';

/** One jack as far as it is told. */
export interface JackEntry {
  readonly socket: Socket | undefined;
  readonly says: Says | undefined;
  readonly words: string;
}

/** Everything that is told. `drawer` holds names of goods. */
export interface Told {
  readonly out: JackEntry;
  readonly in: JackEntry;
  readonly drawer: readonly string[];
}

const UNTOLD: JackEntry = { socket: undefined, says: undefined, words: '' };
export const NOTHING_TOLD: Told = { out: UNTOLD, in: UNTOLD, drawer: [] };

/** What the manual's words mean; undefined where none are typed. */
export function readingOf({ says, words }: JackEntry, direction: Direction): ManualReading | undefined {
  return says === 'words' && words.trim() !== '' ? readManual(words, direction) : undefined;
}

/** The jack for the core, or undefined while something is still to be told. A DIN jack needs no manual. */
export function toldJack(entry: JackEntry, direction: Direction): ToldJack | undefined {
  const { socket, says } = entry;
  if (socket === undefined) return undefined;
  if (socket === 'din5') return { direction, socket, type: 'din' };
  if (says === undefined) return undefined;
  if (says === 'nothing') return { direction, socket, type: undefined };
  if (says !== 'words') return { direction, socket, type: says };
  const reading = readingOf(entry, direction);
  if (!reading) return undefined;
  if (reading.state === 'said' && reading.type !== undefined)
    return { direction, socket, type: reading.type };
  return { direction, socket, type: undefined, could: reading.could };
}
