/**
 * MIDI messages as plain data. Channels and programs count from 0, as on the wire; words for people show both counts.
 * Source of every number below: MIDI 1.0 Detailed Specification 4.2.1, tables I to VII.
 */

/** Channel mode messages in the order of their controller numbers, 120 to 127. */
export const CHANNEL_MODES = [
  'all sound off',
  'reset all controllers',
  'local control',
  'all notes off',
  'omni off',
  'omni on',
  'mono on',
  'poly on',
] as const;
type ChannelMode = (typeof CHANNEL_MODES)[number];

/** Controller number of the first channel mode; below it controllers are ordinary. */
export const FIRST_MODE_CONTROLLER = 120;

/** The last ordinary controller. */
export const MOST_CONTROLLER = FIRST_MODE_CONTROLLER - 1;

/** One-byte signals that may stand between any two bytes, with the byte that carries each. */
export const REAL_TIME_BYTES = {
  clock: 0xf8,
  start: 0xfa,
  continue: 0xfb,
  stop: 0xfc,
  'active sensing': 0xfe,
  reset: 0xff,
} as const;
/** A one-byte signal. */
export type RealTimeSignal = keyof typeof REAL_TIME_BYTES;

/** The byte that ends an exclusive. */
export const END_OF_EXCLUSIVE = 0xf7;

/** Largest number that seven data bits carry. */
export const MOST_SEVEN_BITS = 127;
/** Largest number that two data bytes carry, low seven bits first. */
export const MOST_FOURTEEN_BITS = 16383;
/** Largest channel on the wire: channel 16 to a player. */
export const MOST_CHANNEL = 15;
/** Pitch bend at rest. */
export const BEND_CENTRE = 8192;

/** A message of numbers alone. Channels 0 to 15; two data bytes leave low seven bits first. */
type Numbers<Kind extends string, Field extends string = never> = { readonly kind: Kind } & Readonly<
  Record<Field, number>
>;

/** A controller moved; `controller` 0 to 119, since 120 to 127 are channel modes. */
type ControlChange = Numbers<'control change', 'channel' | 'controller' | 'value'>;

/** A channel mode; `value` 0 to 127 (0 where the mode needs none). */
type ChannelModeMessage = Numbers<'channel mode', 'channel' | 'value'> & { readonly mode: ChannelMode };

/** Everything between F0 and F7, the maker's identity first; each number 0 to 127. */
interface Exclusive {
  readonly kind: 'exclusive';
  readonly data: readonly number[];
}

/** A one-byte signal that may interrupt any message. */
interface RealTime {
  readonly kind: 'real-time';
  readonly signal: RealTimeSignal;
}

/** Any message. Those that carry a channel, and only those, take part in running status. */
export type Message =
  | Numbers<'note off', 'channel' | 'note' | 'velocity'>
  /** Velocity 0 is read as a note off by every receiver, but stays a note on here. */
  | Numbers<'note on', 'channel' | 'note' | 'velocity'>
  /** Pressure on one key (poly pressure). */
  | Numbers<'key pressure', 'channel' | 'note' | 'pressure'>
  | ControlChange
  | ChannelModeMessage
  /** Another program (a preset, a patch). */
  | Numbers<'program change', 'channel' | 'program'>
  /** Pressure on the whole channel. */
  | Numbers<'channel pressure', 'channel' | 'pressure'>
  /** Pitch wheel, 0 to 16383, at rest at `BEND_CENTRE`. */
  | Numbers<'pitch bend', 'channel' | 'bend'>
  /** A piece of time code. */
  | Numbers<'quarter frame', 'value'>
  /** Place in the song, in sixteenth notes from its start, 0 to 16383. */
  | Numbers<'song position', 'sixteenths'>
  | Numbers<'song select', 'song'>
  | Numbers<'tune request'>
  | Exclusive
  | RealTime;
/** The kind of a message. */
export type MessageKind = Message['kind'];

/** A number of a message: its name, the largest it can be, and a note on how it is counted. */
export interface MessageField {
  readonly name: string;
  readonly most: number;
  readonly note?: string;
}

/** How a kind of message is written: its status byte without the channel, and its numbers in the order of the wire. */
interface MessageShape {
  readonly status: number;
  readonly fields: readonly MessageField[];
}

const seven = (name: string, note = ''): MessageField => ({ name, most: MOST_SEVEN_BITS, note });
const fourteen = (name: string): MessageField => ({ name, most: MOST_FOURTEEN_BITS });
const CONTROLLER: MessageField = {
  name: 'controller',
  most: MOST_CONTROLLER,
  note: ' (120 to 127 are channel modes)',
};

/** Every kind, as it is written. A channel mode puts its controller before its value; exclusive carries any number of bytes. */
export const MESSAGE_SHAPES: Readonly<Record<Exclude<MessageKind, 'real-time'>, MessageShape>> = {
  'note off': { status: 0x80, fields: [seven('note'), seven('velocity')] },
  'note on': { status: 0x90, fields: [seven('note'), seven('velocity')] },
  'key pressure': { status: 0xa0, fields: [seven('note'), seven('pressure')] },
  'control change': { status: 0xb0, fields: [CONTROLLER, seven('value')] },
  'channel mode': { status: 0xb0, fields: [seven('value')] },
  'program change': { status: 0xc0, fields: [seven('program', ' (programs 1 to 128)')] },
  'channel pressure': { status: 0xd0, fields: [seven('pressure')] },
  'pitch bend': { status: 0xe0, fields: [fourteen('bend')] },
  exclusive: { status: 0xf0, fields: [] },
  'quarter frame': { status: 0xf1, fields: [seven('value')] },
  'song position': { status: 0xf2, fields: [fourteen('sixteenths')] },
  'song select': { status: 0xf3, fields: [seven('song')] },
  'tune request': { status: 0xf6, fields: [] },
};

/** Whether a number takes two data bytes. */
export const isWide = ({ most }: MessageField): boolean => most > MOST_SEVEN_BITS;

/** A number of a message by its name. */
export function numberIn(message: Message, { name }: MessageField): number {
  return (message as unknown as Readonly<Record<string, number>>)[name] ?? NaN;
}

/**
 * The two control changes that choose a bank: controller 0 with the high seven bits, then 32 with the low seven.
 * `channel` 0 to 15, `bank` 0 to 16383. A bank takes effect at the next program change. Does not throw: an
 * impossible bank or channel shows up when the messages are checked.
 */
export function bankSelect(channel: number, bank: number): readonly [ControlChange, ControlChange] {
  return [
    { kind: 'control change', channel, controller: 0, value: Math.floor(bank / 128) },
    { kind: 'control change', channel, controller: 32, value: bank - 128 * Math.floor(bank / 128) },
  ];
}
