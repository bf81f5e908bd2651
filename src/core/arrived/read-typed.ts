/** Bytes as people write them: typed in hex or decimal, or pasted from a monitor, a line a message or all in one. */
import { readMessageLine } from './read-messages.ts';
import type { SeenByte } from './log.ts';

/** How numbers are written; 'either' finds out: a letter or 0x means hex, a number above 99 means decimal, and else it is hex. */
export const WRITINGS = ['either', 'hex', 'decimal'] as const;
/** One of them. */
export type Writing = (typeof WRITINGS)[number];

/** Bytes read from a text, with the writing that was found, or what is wrong with it. */
type TypedBytes =
  { readonly bytes: readonly SeenByte[]; readonly writing: 'hex' | 'decimal' } | { readonly problem: string };

/** Bytes taken from one text: more than any log needs. */
const MOST_TYPED = 2000;

/** What stands before the bytes of a line: a time of day, seconds, or a number of the line. */
const BEFORE = [
  /^\s*[[(]?\d{1,2}:\d{2}(:\d{2})?([.,:]\d+)?[\])]?\s*[-:|]?/,
  /^\s*[[(]?\+?\d+[.,]\d+\s*(ms|s|sec)?[\])]?\s*[-:|]?/,
  /^\s*#?\d+\s*[.):]\s+/,
];
/** A byte that is marked: a star, a shout, or words behind it. */
const MARKED = /\s*\(?\b(framing([\s_-]*error)?|frame error|break)\b\)?/gi;
const HEX = /^(?:0x|\$)?([0-9a-f]{2})h?([*!])?$/i;
const DECIMAL = /^(\d{1,3})([*!])?$/;
const MOST_BYTE = 255;

const tokensOf = (line: string): readonly string[] =>
  line
    .replace(MARKED, '* ')
    .replace(/\s+\*/g, '*')
    .split(/[\s,;|[\]<>{}"]+/)
    .filter((one) => one !== '');

function withoutBefore(line: string): string {
  const mark = BEFORE.find((one) => one.test(line));
  return mark ? line.replace(mark, ' ') : line;
}

/** Whether numbers are hex or decimal, from all of them together. */
function writingOf(tokens: readonly string[], asked: Writing): 'hex' | 'decimal' {
  if (asked !== 'either') return asked;
  if (tokens.some((one) => HEX.test(one) && /[a-f$x]|h$/i.test(one))) return 'hex';
  return tokens.some((one) => /^\d{3}[*!]?$/.test(one) || /^\d[*!]?$/.test(one)) ? 'decimal' : 'hex';
}

function byteOf(token: string, writing: 'hex' | 'decimal'): SeenByte | undefined {
  const [, digits, mark] = (writing === 'hex' ? HEX : DECIMAL).exec(token) ?? [];
  if (digits === undefined) return undefined;
  const value = Number.parseInt(digits, writing === 'hex' ? 16 : 10);
  return value > MOST_BYTE ? undefined : { value, bad: mark !== undefined };
}

interface Line {
  readonly number: number;
  readonly tokens: readonly string[];
  readonly message: ReturnType<typeof readMessageLine>;
}

/** Bytes of a line. Words before the first byte are a label, and so is anything in a line that has no byte at all. */
function bytesOfLine({ number, tokens }: Line, writing: 'hex' | 'decimal', labels: boolean): TypedBytes {
  const bytes: SeenByte[] = [];
  for (const token of tokens) {
    const byte = byteOf(token, writing);
    if (byte) bytes.push(byte);
    else if (!(labels && /[g-z:]/i.test(token))) {
      const want = writing === 'hex' ? 'two hex digits, as in 3C' : 'a number from 0 to 255';
      return { problem: `line ${number}: expected ${want}, got '${token}'` };
    }
  }
  return { bytes, writing };
}

/**
 * Read bytes from a text. Lines that name a message in words are read as that message; times and labels before bytes are passed
 * over; a star or 'framing error' behind a byte marks it as bad.
 */
export function readTyped(text: string, asked: Writing = 'either'): TypedBytes {
  const lines = text.split(/\r?\n/).map((whole, at): Line => {
    const line = withoutBefore(whole);
    return { number: at + 1, tokens: tokensOf(line), message: readMessageLine(line, `line ${at + 1}`) };
  });
  const several = lines.filter(({ tokens }) => tokens.length > 0).length > 1;
  const writing = writingOf(
    lines.filter(({ message }) => !message).flatMap(({ tokens }) => tokens),
    asked,
  );
  const bytes: SeenByte[] = [];
  for (const line of lines) {
    if (line.message && 'problem' in line.message) return line.message;
    if (line.message) {
      bytes.push(...line.message.bytes.map((value) => ({ value, bad: false })));
      continue;
    }
    const found = bytesOfLine(line, writing, several);
    if ('problem' in found) return found;
    bytes.push(...found.bytes);
  }
  if (bytes.length > MOST_TYPED)
    return { problem: `expected at most ${MOST_TYPED} bytes, got ${bytes.length}` };
  return { bytes, writing };
}
