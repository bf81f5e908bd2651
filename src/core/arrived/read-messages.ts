/** A line of a log that names a message in words, such as 'note on, channel 1, 60, 64'. */
import { REAL_TIME_BYTES, encode } from '../signal/index.ts';
import type { Message, RealTimeSignal } from '../signal/index.ts';
import type { SeenByte } from './log.ts';

/** What a line is: its message as bytes, and whether its note has a name; what is wrong with it; or undefined where it names no message. */
type LineRead =
  | { readonly bytes: readonly SeenByte[]; readonly named: boolean }
  | { readonly problem: string }
  | undefined;

/** How a log counts: its first channel, and the octave of middle C. */
export interface Naming {
  readonly firstChannel: 0 | 1;
  readonly middleOctave: number;
}

type Make = (channel: number, numbers: readonly number[]) => Message;

/** A kind of message: how it is named, how many numbers follow, and which message they make. */
interface Form {
  readonly name: RegExp;
  readonly needs: readonly string[];
  readonly make: Make;
}

/** Names that the standard uses for messages, and the short forms of the trade. Longer names stand before those that they hold. */
const FORMS: readonly Form[] = [
  {
    name: /\bnote[\s_-]*off\b/,
    needs: ['note', 'velocity'],
    make: (channel, [note = 0, velocity = 0]) => ({ kind: 'note off', channel, note, velocity }),
  },
  {
    name: /\bnote[\s_-]*on\b/,
    needs: ['note', 'velocity'],
    make: (channel, [note = 0, velocity = 0]) => ({ kind: 'note on', channel, note, velocity }),
  },
  {
    name: /\b(program(me)?([\s_-]*change)?|pc)(?![a-z])/,
    needs: ['program'],
    make: (channel, [program = 0]) => ({ kind: 'program change', channel, program }),
  },
  {
    name: /\b(control(ler)?([\s_-]*change)?|cc)(?![a-z])/,
    needs: ['controller', 'value'],
    make: (channel, [controller = 0, value = 0]) => ({ kind: 'control change', channel, controller, value }),
  },
  {
    name: /\b(poly(phonic)?[\s_-]*(after[\s_-]*touch|(key[\s_-]*)?pressure)|key[\s_-]*pressure)\b/,
    needs: ['note', 'pressure'],
    make: (channel, [note = 0, pressure = 0]) => ({ kind: 'key pressure', channel, note, pressure }),
  },
  {
    name: /\b(channel[\s_-]*pressure|after[\s_-]*touch)\b/,
    needs: ['pressure'],
    make: (channel, [pressure = 0]) => ({ kind: 'channel pressure', channel, pressure }),
  },
  {
    name: /\bpitch[\s_-]*(bend|wheel)?\b/,
    needs: ['bend'],
    make: (channel, [bend = 0]) => ({ kind: 'pitch bend', channel, bend }),
  },
];

const SIGNALS: readonly (readonly [RegExp, RealTimeSignal])[] = [
  [/\bactive[\s_-]*sens(e|ing)\b/, 'active sensing'],
  [/\b(timing[\s_-]*)?clock\b/, 'clock'],
  [/^\W*start\W*$/, 'start'],
  [/^\W*stop\W*$/, 'stop'],
  [/^\W*continue\W*$/, 'continue'],
];

const CHANNEL = /\bch(?:an(?:nel)?)?\.?\s*[:=#]?\s*(\d+)\b/;
const CHANNELS = 16;
/** A number by its name, in any order. */
const BY_NAME: Readonly<Record<string, RegExp>> = {
  note: /\b(?:note|key)\s*[:=#]?\s*(\d+)\b/,
  velocity: /\bvel(?:ocity)?\s*[:=]?\s*(\d+)\b/,
  program: /\b(?:program(?:me)?|number)\s*[:=#]?\s*(\d+)\b/,
  controller: /\b(?:control(?:ler)?|number|cc)\s*[:=#]?\s*(\d+)\b/,
  value: /\bval(?:ue)?\s*[:=]?\s*(\d+)\b/,
  pressure: /\b(?:pressure|val(?:ue)?)\s*[:=]?\s*(\d+)\b/,
  bend: /\b(?:pitch|bend|val(?:ue)?)\s*[:=]?\s*(\d+)\b/,
};
const NAMED_NOTE = /\b([a-g])(#|b|♯|♭)?(-?\d)\b/;
/** Half tones above C. */
const HALF_TONES: Readonly<Record<string, number>> = { c: 0, d: 2, e: 4, f: 5, g: 7, a: 9, b: 11 };
const [MIDDLE_C, OCTAVE] = [60, 12];

/** Whether a line that names a message calls its channel 0. */
export const countsFromZero = (line: string): boolean => Number(CHANNEL.exec(line.toLowerCase())?.[1]) === 0;

/** A text with the names of notes as numbers. */
function withNumbers(text: string, middleOctave: number): string {
  return text.replace(NAMED_NOTE, (_, name: string, sign: string | undefined, octave: string) => {
    const half = sign === undefined ? 0 : sign === '#' || sign === '♯' ? 1 : -1;
    return String(MIDDLE_C + OCTAVE * (Number(octave) - middleOctave) + (HALF_TONES[name] ?? 0) + half);
  });
}

/** The numbers of a message: by their names, or in order behind the message's own name. */
function numbersOf(form: Form, before: string, after: string): readonly number[] {
  const byName = form.needs.map((name) => BY_NAME[name]?.exec(`${before} ${after}`)?.[1]);
  if (byName.every((one) => one !== undefined)) return byName.map(Number);
  const inOrder = (text: string): readonly number[] => [...text.matchAll(/\d+/g)].map(([one]) => Number(one));
  const behind = inOrder(after);
  return behind.length >= form.needs.length ? behind : inOrder(`${before} ${after}`);
}

/**
 * Read a line that names a message. Every number but the channel is taken as it stands; a first number more than the message needs is
 * its channel. `where` begins what is said of a line that names a message and cannot be one.
 */
export function readMessageLine(
  line: string,
  where: string,
  { firstChannel, middleOctave }: Naming,
): LineRead {
  const text = line.toLowerCase();
  const form = FORMS.find(({ name }) => name.test(text));
  const good = (bytes: readonly number[], named: boolean): LineRead => ({
    bytes: bytes.map((value) => ({ value, bad: false })),
    named,
  });
  if (!form) {
    const signal = SIGNALS.find(([name]) => name.test(text))?.[1];
    return signal && good([REAL_TIME_BYTES[signal]], false);
  }
  const channelText = CHANNEL.exec(text)?.[1];
  const rest = text.replace(CHANNEL, ' ');
  const named = form.needs[0] === 'note' && NAMED_NOTE.test(rest);
  const [before = '', after = ''] = (named ? withNumbers(rest, middleOctave) : rest)
    .replace(form.name, '\n')
    .split('\n');
  const numbers = numbersOf(form, before, after);
  const hasChannel = channelText === undefined && numbers.length === form.needs.length + 1;
  const values = hasChannel ? numbers.slice(1) : numbers.slice(0, form.needs.length);
  const problem = (want: string, got: string): LineRead => ({
    problem: `${where}: expected ${want}, got '${got}'`,
  });
  if (values.length < form.needs.length)
    return problem(`${form.needs.join(' and ')} as numbers`, line.trim());
  const channel = Number(channelText ?? (hasChannel ? numbers[0] : firstChannel)) - firstChannel;
  if (channel < 0 || channel >= CHANNELS)
    return problem(
      `a channel from ${firstChannel} to ${firstChannel + CHANNELS - 1}`,
      `${channel + firstChannel}`,
    );
  try {
    return good(encode([form.make(channel, values)]), named);
  } catch (reason) {
    return { problem: `${where}: ${reason instanceof Error ? reason.message : String(reason)}` };
  }
}
