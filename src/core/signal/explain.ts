import { decode } from './decode.ts';
import type { Decoded } from './decode.ts';
import { hexOf } from './hex.ts';
import { BEND_CENTRE, CHANNEL_MODES, FIRST_MODE_CONTROLLER } from './messages.ts';

/** What a byte is for. */
type ByteRole = 'status' | 'data' | 'real-time' | 'end' | 'nonsense';

/** One byte in plain words. `bits` reads from bit 7 down to bit 0; on the wire bit 0 leaves first. */
interface ByteExplanation {
  readonly index: number;
  readonly value: number;
  readonly hex: string;
  readonly bits: string;
  readonly role: ByteRole;
  readonly words: string;
}

/** A byte as eight binary digits, bit 7 first. */
function bitsOf(byte: number): string {
  return byte.toString(2).padStart(8, '0');
}

/** A channel in both counts; `channel` 0 to 15. */
function channelInWords(channel: number): string {
  return `channel ${channel + 1} counted from 1, ${channel} on the wire`;
}

/** A program in both counts; `program` 0 to 127. */
function programInWords(program: number): string {
  return `program ${program} counted from 0, ${program + 1} counted from 1`;
}

const NOTE_LETTERS = [
  'C',
  'C sharp',
  'D',
  'D sharp',
  'E',
  'F',
  'F sharp',
  'G',
  'G sharp',
  'A',
  'A sharp',
  'B',
];
/** Middle C; octave numbers differ between makers, so notes are named by letter only. Source: MIDI 1.0 4.2.1 (from memory). */
const MIDDLE_C = 60;

/** Names of the controllers that a lesson meets. Source: MIDI 1.0 4.2.1, table III (from memory). */
const CONTROLLER_NAMES = new Map([
  [0, 'bank select, high part'],
  [1, 'modulation'],
  [7, 'volume'],
  [10, 'pan'],
  [11, 'expression'],
  [32, 'bank select, low part'],
  [64, 'sustain pedal'],
]);

const CHANNEL_STATUS_NAMES = [
  'Note off',
  'Note on',
  'Key pressure',
  'Control change',
  'Program change',
  'Channel pressure',
  'Pitch bend',
];
const SYSTEM_STATUS_NAMES = new Map([
  [0xf0, 'Exclusive begins: data up to F7 is for one maker’s devices'],
  [0xf1, 'Time code quarter frame: one data byte follows'],
  [0xf2, 'Song position: two data bytes follow, low part first'],
  [0xf3, 'Song select: one data byte follows'],
  [0xf6, 'Tune request: complete in one byte'],
]);
const REAL_TIME_WORDS = {
  clock: 'Clock tick: 24 make a quarter note; may stand inside any message',
  start: 'Start from the beginning; may stand inside any message',
  continue: 'Continue from here; may stand inside any message',
  stop: 'Stop; may stand inside any message',
  'active sensing': 'Active sensing: the sender is still there',
  reset: 'Reset: go back to the state after switching on',
} as const;

function statusWords(status: number): string {
  if (status >= 0xf0) return SYSTEM_STATUS_NAMES.get(status) ?? 'No meaning in the standard: ignored';
  return `${CHANNEL_STATUS_NAMES[(status >> 4) - 8]}, ${channelInWords(status & 0x0f)}`;
}

function noteWords(note: number): string {
  return `Note ${note} (${note === MIDDLE_C ? 'middle C' : NOTE_LETTERS[note % 12]})`;
}

function controllerWords(controller: number): string {
  const mode = CHANNEL_MODES[controller - FIRST_MODE_CONTROLLER];
  if (mode) return `Channel mode ${controller}: ${mode}`;
  const name = CONTROLLER_NAMES.get(controller);
  return `Controller ${controller}${name ? ` (${name})` : ''}`;
}

function highPartWords(thing: string, low: number, high: number, rest: number | null): string {
  const total = low + 128 * high;
  const place = total === rest ? ', the centre' : '';
  return `${thing}, high seven bits ${high}: together ${total}${place}`;
}

/** Words for data byte number `place` (0 or 1) after `status`. */
function dataWords(status: number, data: readonly number[], place: number): string {
  const first = data[0] ?? 0;
  const value = data[place] ?? 0;
  if (status === 0xf0)
    return `Exclusive data ${value}${place === 0 ? ': the maker’s identity begins here' : ''}`;
  if (status === 0xf1) return `Time code piece ${value >> 4}, value ${value & 0x0f}`;
  if (status === 0xf2) {
    if (place === 0) return `Song position, low seven bits ${value}`;
    return `${highPartWords('Song position', first, value, null)} sixteenth notes from the start`;
  }
  if (status === 0xf3) return `Song ${value} counted from 0, ${value + 1} counted from 1`;
  const nybble = status & 0xf0;
  if (nybble === 0xb0) return place === 0 ? controllerWords(value) : `Value ${value}`;
  if (nybble === 0xc0) return `Program change to ${programInWords(value)}`;
  if (nybble === 0xd0) return `Pressure ${value} on the whole channel`;
  if (nybble === 0xe0) {
    if (place === 0) return `Pitch bend, low seven bits ${value}`;
    return highPartWords('Pitch bend', first, value, BEND_CENTRE);
  }
  if (place === 0) return noteWords(value);
  if (nybble === 0xa0) return `Pressure ${value} on that key`;
  if (nybble === 0x90 && value === 0) return 'Velocity 0: a note on with velocity 0 counts as a note off';
  return `Velocity ${value}`;
}

type Words = readonly [ByteRole, string];

/** Words for the byte at `index`, which belongs to `event`. */
function wordsIn(event: Decoded, bytes: readonly number[], index: number): Words {
  const value = bytes[index] ?? 0;
  switch (event.kind) {
    case 'stray data':
      return ['nonsense', `Data byte ${value} without a status byte to belong to: ignored`];
    case 'undefined status':
      return ['nonsense', `Status ${hexOf(value)} has no meaning in the standard: ignored`];
    case 'stray end':
      return ['nonsense', 'End of exclusive, but none was open: ignored'];
    case 'message':
    case 'cut short': {
      if (event.kind === 'message' && event.message.kind === 'real-time') {
        return ['real-time', REAL_TIME_WORDS[event.message.signal]];
      }
      if (value === 0xf7) return ['end', 'Exclusive ends'];
      if (value >= 0x80) return ['status', statusWords(value) + cutWords(event)];
      return ['data', dataInEvent(event, bytes, index)];
    }
  }
}

function cutWords(event: Decoded): string {
  if (event.kind === 'message') {
    const early = event.endedBy !== undefined && event.endedBy !== 0xf7;
    return early ? `; ended by status ${hexOf(event.endedBy)} in place of F7` : '';
  }
  if (event.kind !== 'cut short') return '';
  return event.by === null ? '; its data never came' : `; cut short by status ${hexOf(event.by)}`;
}

function dataInEvent(event: Decoded, bytes: readonly number[], index: number): string {
  const own = event.at.map((place) => bytes[place] ?? 0);
  const running = (own[0] ?? 0) < 0x80;
  const status = running ? lastStatusBefore(bytes, event.from) : (own[0] ?? 0);
  const data = running ? own : own.slice(1);
  const place = event.at.indexOf(index) - (running ? 0 : 1);
  const words = dataWords(status, data, place);
  return running && place === 0
    ? `${words}; no status byte sent, the last one (${hexOf(status)}) still holds`
    : words;
}

function lastStatusBefore(bytes: readonly number[], index: number): number {
  return bytes.slice(0, index).findLast((byte) => byte >= 0x80 && byte < 0xf8) ?? 0;
}

/**
 * Every byte of a stream in plain words, one entry a byte, in order. Nonsense is explained as such.
 * Throws RangeError only for a number that is no byte.
 */
export function explainBytes(bytes: readonly number[]): readonly ByteExplanation[] {
  const rows: ByteExplanation[] = [];
  for (const event of decode(bytes)) {
    for (const index of event.at) {
      const value = bytes[index] ?? 0;
      const [role, words] = wordsIn(event, bytes, index);
      rows[index] = { index, value, hex: hexOf(value), bits: bitsOf(value), role, words };
    }
  }
  return rows;
}
