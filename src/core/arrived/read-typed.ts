/** Bytes as people write them: typed in hex or decimal, or pasted from a monitor, a line a message or all in one. */
import { decode } from '../signal/index.ts';
import { barePart, tokensOf } from './log-line.ts';
import type { SeenByte } from './log.ts';
import { countsFromZero, readMessageLine } from './read-messages.ts';
import type { Naming } from './read-messages.ts';

/** How numbers are written; 'either' finds out: whichever leaves fewer lines unread, and then as a letter or the length tells. */
export const WRITINGS = ['either', 'hex', 'decimal'] as const;
/** One of them. */
export type Writing = (typeof WRITINGS)[number];

/** Octaves that the middle C, note 60, is counted in by different makers (common practice, no source). */
export const MIDDLE_OCTAVES = [3, 4, 5] as const;

/**
 * What was read of a text: bytes, how they were written, what was left out and why, a sentence for each line of that, and whether a
 * note was given by its name.
 */
interface TypedBytes {
  readonly bytes: readonly SeenByte[];
  readonly writing: 'hex' | 'decimal';
  readonly left: readonly string[];
  readonly named: boolean;
}

/** Bytes taken from one text: more than any log needs. */
const MOST_TYPED = 2000;

const HEX = /^(?:0x|\$)?([0-9a-f]{2})h?([*!])?$/i;
const DECIMAL = /^(\d{1,3})([*!])?$/;
const MOST_BYTE = 255;
const FIRST_STATUS = 0x80;
const FIRST_SYSTEM = 0xf0;

function byteOf(token: string, writing: 'hex' | 'decimal'): SeenByte | undefined {
  const [, digits, mark] = (writing === 'hex' ? HEX : DECIMAL).exec(token) ?? [];
  if (digits === undefined) return undefined;
  const value = Number.parseInt(digits, writing === 'hex' ? 16 : 10);
  return value > MOST_BYTE ? undefined : { value, bad: mark !== undefined };
}

const isStatus = (byte: SeenByte | undefined): boolean => (byte?.value ?? 0) >= FIRST_STATUS;
/** A word before the bytes is a label, and one behind them begins a remark. */
const isLabel = (token: string): boolean => /[g-z:]/i.test(token);
const isRemark = (token: string): boolean => /^\D{3,}$/.test(token);

interface Line {
  readonly number: number;
  readonly text: string;
  readonly tokens: readonly string[];
}
type LineRead =
  | { readonly bytes: readonly SeenByte[]; readonly named?: boolean }
  | { readonly problem: string };

/** Bytes of a line between a label and a remark. */
function bytesOfLine({ number, text, tokens }: Line, writing: 'hex' | 'decimal'): LineRead {
  const want =
    writing === 'hex'
      ? 'bytes in hex, each of two digits from 00 to FF'
      : 'bytes in decimal, each a number from 0 to 255';
  const problem = (got: string): LineRead => ({ problem: `line ${number}: expected ${want}, got '${got}'` });
  const codes = tokens.map((token) => byteOf(token, writing));
  const afterLabel = tokens.findIndex((token, at) => codes[at] !== undefined || !isLabel(token));
  if (afterLabel < 0) return problem(text.trim());
  // A number that belongs to the label, as in 'port 2', stands before the status byte.
  const labelled = afterLabel > 0 && !isStatus(codes[afterLabel]) && isStatus(codes[afterLabel + 1]);
  const bytes: SeenByte[] = [];
  for (let at = afterLabel + (labelled ? 1 : 0); at < tokens.length; at += 1) {
    const [byte, token = ''] = [codes[at], tokens[at]];
    if (byte) bytes.push(byte);
    else if (!isRemark(token) || bytes.length === 0) return problem(token);
    else {
      // A note's name before a remark looks like a status byte without its data.
      const [last = 0] = [bytes.at(-1)?.value];
      return { bytes: last >= FIRST_STATUS && last < FIRST_SYSTEM ? bytes.slice(0, -1) : bytes };
    }
  }
  return { bytes };
}

/** The bytes of a message that stand beside its name, where they make it whole and are of the kind that the name says. */
function bytesBesideName({ tokens }: Line, message: LineRead): readonly SeenByte[] | undefined {
  const kindOf = (status: number | undefined): number => (status ?? 0) >> 4;
  for (const writing of ['hex', 'decimal'] as const) {
    const codes = tokens.map((token) => byteOf(token, writing));
    for (let from = codes.findIndex(isStatus); from >= 0 && from < codes.length; from += 1) {
      const after = codes.findIndex((byte, at) => at > from && byte === undefined);
      const bytes = codes.slice(from, after < 0 ? undefined : after).flatMap((byte) => byte ?? []);
      const [event, ...more] = decode(bytes.map(({ value }) => value));
      if (event?.kind !== 'message' || more.length > 0) continue;
      // The name of a note, C4, with its velocity looks like a change of program.
      const fits =
        'bytes' in message ? kindOf(message.bytes[0]?.value) === kindOf(bytes[0]?.value) : bytes.length > 2;
      if (fits) return bytes;
    }
  }
  return undefined;
}

/** Lines without a first column that counts lines or milliseconds: numbers that never fall, each before a status byte. */
function withoutCounts(lines: readonly Line[], writing: 'hex' | 'decimal'): readonly Line[] {
  const counts = lines.map(({ tokens: [first = ''] }) => (/^\d+$/.test(first) ? Number(first) : NaN));
  const counted =
    (lines.length > 1 || counts[0]! > MOST_BYTE) &&
    lines.every(
      ({ tokens }, at) => isStatus(byteOf(tokens[1] ?? '', writing)) && counts[at]! >= (counts[at - 1] ?? 0),
    );
  return counted ? lines.map((line) => ({ ...line, tokens: line.tokens.slice(1) })) : lines;
}

/** Whether two digits each are hex or decimal: a letter or 0x means hex, three digits or one mean decimal, and else it is hex. */
function likelier(tokens: readonly string[]): 'hex' | 'decimal' {
  if (tokens.some((one) => HEX.test(one) && /[a-f$x]|h$/i.test(one))) return 'hex';
  return tokens.some((one) => /^(\d{3}|\d)[*!]?$/.test(one)) ? 'decimal' : 'hex';
}

/**
 * Read bytes from a text. Lines that name a message in words are read as that message; times, counts, labels and remarks are passed
 * over; a star or 'framing error' behind a byte marks it as bad. A line that cannot be read is left out, and told. `middleOctave` is
 * the octave that the text counts middle C in.
 */
export function readTyped(text: string, asked: Writing = 'either', middleOctave = 4): TypedBytes {
  const lines = text.split(/\r?\n/).flatMap((whole, at): Line[] => {
    const bare = barePart(whole);
    const tokens = tokensOf(bare);
    return tokens.length > 0 ? [{ number: at + 1, text: bare, tokens }] : [];
  });
  const naming: Naming = {
    firstChannel: lines.some(({ text: line }) => countsFromZero(line)) ? 0 : 1,
    middleOctave,
  };
  const messages = new Map<number, LineRead>();
  for (const line of lines) {
    // CC is a byte as well as a short name.
    if (line.tokens.every((token) => byteOf(token, 'hex'))) continue;
    const message = readMessageLine(line.text, `line ${line.number}`, naming);
    if (!message) continue;
    const beside = bytesBesideName(line, message);
    messages.set(line.number, beside ? { bytes: beside } : message);
  }
  const plain = lines.filter(({ number }) => !messages.has(number));
  const readBy = (writing: 'hex' | 'decimal'): ReadonlyMap<number, LineRead> =>
    new Map(withoutCounts(plain, writing).map((line) => [line.number, bytesOfLine(line, writing)]));
  const unread = (read: ReadonlyMap<number, LineRead>): number =>
    [...read.values()].filter((one) => 'problem' in one).length;
  const [hex, decimal] = [readBy('hex'), readBy('decimal')];
  const fewer = Math.sign(unread(hex) - unread(decimal));
  const found = fewer === 0 ? likelier(plain.flatMap(({ tokens }) => tokens)) : fewer < 0 ? 'hex' : 'decimal';
  const writing = asked === 'either' ? found : asked;
  const all = lines.flatMap(
    ({ number }) => messages.get(number) ?? (writing === 'hex' ? hex : decimal).get(number) ?? [],
  );
  const bytes = all.flatMap((one) => ('bytes' in one ? one.bytes : []));
  const left = all.flatMap((one) => ('problem' in one ? [one.problem] : []));
  const tooMany = bytes.length > MOST_TYPED;
  return {
    bytes: bytes.slice(0, MOST_TYPED),
    writing,
    left: tooMany
      ? [...left, `expected at most ${MOST_TYPED} bytes, got ${bytes.length}: the rest is left out`]
      : left,
    named: all.some((one) => 'named' in one && one.named === true),
  };
}
