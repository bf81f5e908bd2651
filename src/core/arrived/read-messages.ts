/** A line of a log that names a message in words, such as 'note on, channel 1, 60, 64'. */
import { REAL_TIME_BYTES, encode } from '../signal/index.ts';
import type { Message, RealTimeSignal } from '../signal/index.ts';

/** What a line is: the bytes of its message, what is wrong with it, or undefined where it names no message. */
type LineRead = { readonly bytes: readonly number[] } | { readonly problem: string } | undefined;

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
    name: /\b(program(me)?([\s_-]*change)?|pc)\b/,
    needs: ['program'],
    make: (channel, [program = 0]) => ({ kind: 'program change', channel, program }),
  },
  {
    name: /\b(control(ler)?([\s_-]*change)?|cc)\b/,
    needs: ['controller', 'value'],
    make: (channel, [controller = 0, value = 0]) => ({ kind: 'control change', channel, controller, value }),
  },
  {
    name: /\b(channel[\s_-]*pressure|(?<!poly )after[\s_-]*touch)\b/,
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

const CHANNEL = /\bch(?:an(?:nel)?)?\b\.?\s*[:=#]?\s*(\d+)\b/;
const NAMED_NOTE = /\b[a-g](#|b|♯|♭)?-?\d\b/;

/**
 * Read a line that names a message. Channels count from 1 in words; every other number is taken as it stands. `where` begins what is
 * said of a line that names a message and cannot be one.
 */
export function readMessageLine(line: string, where: string): LineRead {
  const text = line.toLowerCase();
  const form = FORMS.find(({ name }) => name.test(text));
  if (!form) {
    const signal = SIGNALS.find(([name]) => name.test(text))?.[1];
    return signal && { bytes: [REAL_TIME_BYTES[signal]] };
  }
  const rest = text.replace(form.name, ' ');
  const channel = Number(CHANNEL.exec(rest)?.[1] ?? 1);
  const values = rest.replace(CHANNEL, ' ');
  const numbers = [...values.matchAll(/-?\d+/g)].map(([one]) => Number(one));
  if (form.needs[0] === 'note' && NAMED_NOTE.test(values)) {
    const [named] = NAMED_NOTE.exec(values) ?? [''];
    return {
      problem: `${where}: expected the note as a number, for octaves are counted in several ways, got '${named}'`,
    };
  }
  if (numbers.length < form.needs.length) {
    return { problem: `${where}: expected ${form.needs.join(' and ')} as numbers, got '${line.trim()}'` };
  }
  try {
    return { bytes: encode([form.make(channel - 1, numbers)]) };
  } catch (problem) {
    return { problem: `${where}: ${problem instanceof Error ? problem.message : String(problem)}` };
  }
}
