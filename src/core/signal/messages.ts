/**
 * MIDI messages as plain data. Channels and programs count from 0, as on the wire; words for people show both counts.
 * Source of every number below: MIDI 1.0 Detailed Specification 4.2.1, tables I to VII.
 */

/** Names of the messages this core can write and read. */
export const MESSAGE_KINDS = [
  'note off',
  'note on',
  'key pressure',
  'control change',
  'channel mode',
  'program change',
  'channel pressure',
  'pitch bend',
  'quarter frame',
  'song position',
  'song select',
  'tune request',
  'exclusive',
  'real-time',
] as const;
export type MessageKind = (typeof MESSAGE_KINDS)[number];

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
export type ChannelMode = (typeof CHANNEL_MODES)[number];

/** Controller number of the first channel mode; below it controllers are ordinary. */
export const FIRST_MODE_CONTROLLER = 120;

/** One-byte signals that may stand between any two bytes, with the byte that carries each. */
export const REAL_TIME_BYTES = {
  clock: 0xf8,
  start: 0xfa,
  continue: 0xfb,
  stop: 0xfc,
  'active sensing': 0xfe,
  reset: 0xff,
} as const;
export type RealTimeSignal = keyof typeof REAL_TIME_BYTES;

/** Largest number that seven data bits carry. */
export const MOST_SEVEN_BITS = 127;
/** Largest number that two data bytes carry, low seven bits first. */
export const MOST_FOURTEEN_BITS = 16383;
/** Largest channel on the wire: channel 16 to a player. */
export const MOST_CHANNEL = 15;
/** Pitch bend at rest. */
export const BEND_CENTRE = 8192;

/** A key let go; `note` and `velocity` 0 to 127, `channel` 0 to 15. */
export interface NoteOff {
  readonly kind: 'note off';
  readonly channel: number;
  readonly note: number;
  readonly velocity: number;
}

/** A key struck; velocity 0 is read as a note off by every receiver, but stays a note on here. */
export interface NoteOn {
  readonly kind: 'note on';
  readonly channel: number;
  readonly note: number;
  readonly velocity: number;
}

/** Pressure on one key (poly pressure), 0 to 127. */
export interface KeyPressure {
  readonly kind: 'key pressure';
  readonly channel: number;
  readonly note: number;
  readonly pressure: number;
}

/** A controller moved; `controller` 0 to 119, since 120 to 127 are channel modes. */
export interface ControlChange {
  readonly kind: 'control change';
  readonly channel: number;
  readonly controller: number;
  readonly value: number;
}

/** A channel mode; `value` 0 to 127 (0 where the mode needs none). */
export interface ChannelModeMessage {
  readonly kind: 'channel mode';
  readonly channel: number;
  readonly mode: ChannelMode;
  readonly value: number;
}

/** Another program (a preset, a patch); `program` 0 to 127. */
export interface ProgramChange {
  readonly kind: 'program change';
  readonly channel: number;
  readonly program: number;
}

/** Pressure on the whole channel, 0 to 127. */
export interface ChannelPressure {
  readonly kind: 'channel pressure';
  readonly channel: number;
  readonly pressure: number;
}

/** Pitch wheel, 0 to 16383, at rest at `BEND_CENTRE`; sent low seven bits first. */
export interface PitchBend {
  readonly kind: 'pitch bend';
  readonly channel: number;
  readonly bend: number;
}

/** A piece of time code, F1 and one data byte. */
export interface QuarterFrame {
  readonly kind: 'quarter frame';
  readonly value: number;
}

/** Place in the song, in sixteenth notes from its start, 0 to 16383; sent low seven bits first. */
export interface SongPosition {
  readonly kind: 'song position';
  readonly sixteenths: number;
}

/** Choice of song, 0 to 127. */
export interface SongSelect {
  readonly kind: 'song select';
  readonly song: number;
}

/** Request to tune, F6 alone. */
export interface TuneRequest {
  readonly kind: 'tune request';
}

/** Everything between F0 and F7, the maker's identity first; each number 0 to 127. */
export interface Exclusive {
  readonly kind: 'exclusive';
  readonly data: readonly number[];
}

/** A one-byte signal that may interrupt any message. */
export interface RealTime {
  readonly kind: 'real-time';
  readonly signal: RealTimeSignal;
}

/** Messages that carry a channel; only these take part in running status. */
export type ChannelMessage =
  | NoteOff
  | NoteOn
  | KeyPressure
  | ControlChange
  | ChannelModeMessage
  | ProgramChange
  | ChannelPressure
  | PitchBend;

/** Any message. */
export type Message =
  ChannelMessage | QuarterFrame | SongPosition | SongSelect | TuneRequest | Exclusive | RealTime;

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
