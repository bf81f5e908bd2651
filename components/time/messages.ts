/** Messages in a reader's words: which fields each kind has, how each is counted, and text in hex. */
import {
  BEND_CENTRE,
  MOST_CHANNEL,
  MOST_CONTROLLER,
  MOST_FOURTEEN_BITS,
  MOST_SEVEN_BITS,
  REAL_TIME_BYTES,
} from '../../src/core/signal/index.ts';
import type { Item } from '../../src/core/signal/index.ts';

/** What a reader can put in a list. */
export type ItemKind = Item['kind'];

/** A number that a reader sets. `ones` is set where people count from 1 and the wire from 0. */
interface NumberField {
  readonly name: string;
  readonly label: string;
  readonly most: number;
  readonly ones?: boolean;
}

const CHANNEL: NumberField = { name: 'channel', label: 'channel', most: MOST_CHANNEL, ones: true };
const seven = (name: string, label: string): NumberField => ({ name, label, most: MOST_SEVEN_BITS });

/** The numbers of each kind, in the order of the wire. */
export const FIELDS: Readonly<Record<ItemKind, readonly NumberField[]>> = {
  'program change': [CHANNEL, { name: 'program', label: 'program', most: MOST_SEVEN_BITS, ones: true }],
  'bank select': [CHANNEL, { name: 'bank', label: 'bank', most: MOST_FOURTEEN_BITS }],
  'control change': [
    CHANNEL,
    { name: 'controller', label: 'controller', most: MOST_CONTROLLER },
    seven('value', 'value'),
  ],
  'note on': [CHANNEL, seven('note', 'note'), seven('velocity', 'velocity')],
  'note off': [CHANNEL, seven('note', 'note'), seven('velocity', 'velocity')],
  'pitch bend': [CHANNEL, { name: 'bend', label: `bend (${BEND_CENTRE} is rest)`, most: MOST_FOURTEEN_BITS }],
  'channel pressure': [CHANNEL, seven('pressure', 'pressure')],
  'key pressure': [CHANNEL, seven('note', 'note'), seven('pressure', 'pressure')],
  'channel mode': [CHANNEL, seven('value', 'value')],
  'real-time': [],
  'quarter frame': [seven('value', 'value')],
  'song position': [{ name: 'sixteenths', label: 'sixteenth notes', most: MOST_FOURTEEN_BITS }],
  'song select': [seven('song', 'song')],
  'tune request': [],
  exclusive: [],
  bytes: [],
};

/** What a reader can choose, in the order of the fields above. */
export const ITEM_KINDS = Object.keys(FIELDS) as readonly ItemKind[];
/** The real-time messages that a reader can choose. */
export const REAL_TIMES = Object.keys(REAL_TIME_BYTES) as readonly (keyof typeof REAL_TIME_BYTES)[];

/** A kind of item as it is called. */
export function kindWords(kind: ItemKind): string {
  return kind === 'bytes' ? 'bytes by hand' : kind;
}

/** A first example of each kind. */
const EXAMPLES: { readonly [Kind in ItemKind]: Extract<Item, { readonly kind: Kind }> } = {
  'program change': { kind: 'program change', channel: 0, program: 4 },
  'bank select': { kind: 'bank select', channel: 0, bank: 1 },
  'control change': { kind: 'control change', channel: 0, controller: 7, value: 100 },
  'note on': { kind: 'note on', channel: 0, note: 60, velocity: 64 },
  'note off': { kind: 'note off', channel: 0, note: 60, velocity: 64 },
  'pitch bend': { kind: 'pitch bend', channel: 0, bend: BEND_CENTRE },
  'channel pressure': { kind: 'channel pressure', channel: 0, pressure: 64 },
  'key pressure': { kind: 'key pressure', channel: 0, note: 60, pressure: 64 },
  'channel mode': { kind: 'channel mode', channel: 0, mode: 'all notes off', value: 0 },
  'real-time': { kind: 'real-time', signal: 'clock' },
  'quarter frame': { kind: 'quarter frame', value: 0 },
  'song position': { kind: 'song position', sixteenths: 0 },
  'song select': { kind: 'song select', song: 0 },
  'tune request': { kind: 'tune request' },
  exclusive: { kind: 'exclusive', data: [0x7d, 0x01] },
  bytes: { kind: 'bytes', bytes: [0x55] },
};

/** A first example of a kind. */
export function example(kind: ItemKind): Item {
  return EXAMPLES[kind];
}

/** Bytes from text in hex, '90 3C 27'; or what is wrong with it. `most` is the largest value of one byte. */
export function readHex(text: string, most: number): readonly number[] | string {
  const words = text.split(/[\s,]+/).filter((word) => word !== '');
  const bytes = words.map((word) =>
    /^(0x)?[0-9a-f]{1,2}$/i.test(word) ? Number.parseInt(word.replace(/^0x/i, ''), 16) : Number.NaN,
  );
  const wrong = bytes.findIndex((byte) => !(byte <= most));
  if (wrong >= 0)
    return `bytes: expected hex from 00 to ${most.toString(16).toUpperCase()}, got '${words[wrong] ?? ''}'`;
  if (bytes.length === 0) return 'bytes: expected at least one, got none';
  return bytes;
}
