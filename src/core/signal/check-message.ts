import {
  CHANNEL_MODES,
  MESSAGE_SHAPES,
  MOST_CHANNEL,
  MOST_SEVEN_BITS,
  REAL_TIME_BYTES,
  numberIn,
} from './messages.ts';
import type { Message, MessageField } from './messages.ts';

/** One field that cannot be sent: its name, what it needs, what it holds, and the whole as a sentence. */
interface FieldProblem {
  readonly field: string;
  readonly need: string;
  readonly value: string;
  readonly words: string;
}

const CHANNEL: MessageField = { name: 'channel', most: MOST_CHANNEL, note: ' (channels 1 to 16)' };

function numbersOf(message: Message): readonly (readonly [field: MessageField, value: number])[] {
  if (message.kind === 'real-time') return [];
  if (message.kind === 'exclusive')
    return message.data.map((value, index) => [
      { name: `data byte ${index + 1}`, most: MOST_SEVEN_BITS },
      value,
    ]);
  const fields = [...('channel' in message ? [CHANNEL] : []), ...MESSAGE_SHAPES[message.kind].fields];
  return fields.map((field) => [field, numberIn(message, field)]);
}

/**
 * Every field of a message that cannot be sent, in the order of the bytes; an empty list means that the message is good.
 * A bad field is a learner's mistake, so nothing is thrown.
 */
export function checkMessage(message: Message): readonly FieldProblem[] {
  const problem = (field: string, need: string, value: string): FieldProblem => ({
    field,
    need,
    value,
    words: `${message.kind}: ${field} must be ${need}, got ${value}`,
  });
  const problems = numbersOf(message)
    .filter(([{ most }, value]) => !Number.isInteger(value) || value < 0 || value > most)
    .map(([{ name, most, note = '' }, value]) =>
      problem(name, `a whole number from 0 to ${most}${note}`, String(value)),
    );
  if (message.kind === 'channel mode' && !CHANNEL_MODES.includes(message.mode))
    problems.push(problem('mode', `one of ${CHANNEL_MODES.join(', ')}`, String(message.mode)));
  if (message.kind === 'real-time' && !Object.hasOwn(REAL_TIME_BYTES, message.signal)) {
    const names = Object.keys(REAL_TIME_BYTES).join(', ');
    problems.push(problem('signal', `one of ${names}`, String(message.signal)));
  }
  return problems;
}
