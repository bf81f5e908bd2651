/** What was sent and what was seen, as plain data, and how a monitor shows what it reads. */
import { decode, encode } from '../signal/index.ts';
import type { ReceivedByte } from '../signal/index.ts';

/** One byte that was seen; `bad`: the monitor marked it, as one that ended in a framing error or a break. */
export interface SeenByte {
  readonly value: number;
  readonly bad: boolean;
}

/** Bytes sent (left out where nobody knows) and bytes seen, in order. */
export interface Log {
  readonly sent?: readonly number[];
  readonly seen: readonly SeenByte[];
}

/**
 * How a monitor shows what it reads: every byte with the bad ones marked; every byte alike; bad ones left out; or only messages that
 * are whole, each with its status byte written out.
 */
export type View = 'marked' | 'plain' | 'good bytes only' | 'whole messages';

/** A byte in a list to be compared: its value, and `BAD_MARK` on top where it is marked. */
export type Code = number;

/** What marks a code as bad: one bit above the eight of a byte. */
const BAD_MARK = 0x100;

/** The code of a byte seen. */
export const codeOf = ({ value, bad }: SeenByte): Code => (bad ? value | BAD_MARK : value);

/** The byte of a code. */
export const seenOf = (code: Code): SeenByte => ({ value: code & 0xff, bad: code >= BAD_MARK });

/** The whole messages of a stream, each with its status byte; what belongs to none is left out, and so is a status without meaning. */
function wholeMessages(bytes: readonly number[]): readonly (readonly number[])[] {
  return decode(bytes).flatMap((event) => (event.kind === 'message' ? [encode([event.message])] : []));
}

/** What a monitor shows of bytes read from a line. */
export function shownAs(view: View, read: readonly ReceivedByte[]): readonly Code[] {
  switch (view) {
    case 'marked':
      return read.map(({ value, kind }) => (kind === 'byte' ? value : value | BAD_MARK));
    case 'plain':
      return read.map(({ value }) => value);
    case 'good bytes only':
      return goodBytes(read);
    case 'whole messages':
      return wholeMessages(goodBytes(read)).flat();
  }
}

const goodBytes = (read: readonly ReceivedByte[]): readonly number[] =>
  read.filter(({ kind }) => kind === 'byte').map(({ value }) => value);

/** The ways in which a log may have been shown: where a byte is marked, the monitor marks. */
export function viewsOf(seen: readonly SeenByte[]): readonly View[] {
  return seen.some(({ bad }) => bad) ? ['marked'] : ['plain', 'good bytes only', 'whole messages'];
}
