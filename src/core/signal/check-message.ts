import {
  CHANNEL_MODES,
  MOST_CHANNEL,
  MOST_FOURTEEN_BITS,
  MOST_SEVEN_BITS,
  REAL_TIME_BYTES,
} from './messages.ts';
import type { Message } from './messages.ts';

/** One field that cannot be sent: its name, what it needs, what it holds, and the whole as a sentence. */
export interface FieldProblem {
  readonly field: string;
  readonly need: string;
  readonly value: string;
  readonly words: string;
}

interface Field {
  readonly field: string;
  readonly value: number;
  readonly most: number;
  readonly note?: string;
}

const CHANNEL_NOTE = ' (channels 1 to 16)';
const PROGRAM_NOTE = ' (programs 1 to 128)';

const seven = (field: string, value: number): Field => ({ field, value, most: MOST_SEVEN_BITS });

function ownFields(message: Message): readonly Field[] {
  switch (message.kind) {
    case 'note off':
    case 'note on':
      return [seven('note', message.note), seven('velocity', message.velocity)];
    case 'key pressure':
      return [seven('note', message.note), seven('pressure', message.pressure)];
    case 'control change':
      return [
        {
          field: 'controller',
          value: message.controller,
          most: 119,
          note: ' (120 to 127 are channel modes)',
        },
        seven('value', message.value),
      ];
    case 'channel mode':
      return [seven('value', message.value)];
    case 'program change':
      return [{ ...seven('program', message.program), note: PROGRAM_NOTE }];
    case 'channel pressure':
      return [seven('pressure', message.pressure)];
    case 'pitch bend':
      return [{ field: 'bend', value: message.bend, most: MOST_FOURTEEN_BITS }];
    case 'quarter frame':
      return [seven('value', message.value)];
    case 'song position':
      return [{ field: 'sixteenths', value: message.sixteenths, most: MOST_FOURTEEN_BITS }];
    case 'song select':
      return [seven('song', message.song)];
    case 'exclusive':
      return message.data.map((value, index) => seven(`data byte ${index + 1}`, value));
    case 'tune request':
    case 'real-time':
      return [];
  }
}

function problem(thing: string, field: string, need: string, value: string): FieldProblem {
  return { field, need, value, words: `${thing}: ${field} must be ${need}, got ${value}` };
}

/**
 * Every field of a message that cannot be sent, in the order of the bytes; an empty list means that the message is good.
 * A bad field is a learner's mistake, so nothing is thrown.
 */
export function checkMessage(message: Message): readonly FieldProblem[] {
  const channel: readonly Field[] =
    'channel' in message
      ? [{ field: 'channel', value: message.channel, most: MOST_CHANNEL, note: CHANNEL_NOTE }]
      : [];
  const problems = [...channel, ...ownFields(message)]
    .filter(({ value, most }) => !Number.isInteger(value) || value < 0 || value > most)
    .map(({ field, value, most, note }) =>
      problem(message.kind, field, `a whole number from 0 to ${most}${note ?? ''}`, String(value)),
    );
  if (message.kind === 'channel mode' && !CHANNEL_MODES.includes(message.mode)) {
    problems.push(problem(message.kind, 'mode', `one of ${CHANNEL_MODES.join(', ')}`, String(message.mode)));
  }
  if (message.kind === 'real-time' && !Object.hasOwn(REAL_TIME_BYTES, message.signal)) {
    const names = Object.keys(REAL_TIME_BYTES).join(', ');
    problems.push(problem(message.kind, 'signal', `one of ${names}`, String(message.signal)));
  }
  return problems;
}
