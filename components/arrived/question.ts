/** From what a reader typed to the question, and a log in the address of the page. */
import { hexOf } from '../../src/core/signal/index.ts';
import { COMPLAINTS, readTyped } from '../../src/core/arrived/index.ts';
import type { Complaint, MIDDLE_OCTAVES, Question, SeenByte, Writing } from '../../src/core/arrived/index.ts';

/** What stands in the fields. */
export interface Typed {
  readonly sent: string;
  readonly seen: string;
  readonly writing: Writing;
  readonly middleOctave: (typeof MIDDLE_OCTAVES)[number];
  readonly complaints: readonly Complaint[];
}

/** What became of the fields: the question, left out where a field has no byte in it, and what is wrong with each of them. */
interface Asked {
  readonly question?: Question;
  readonly sentProblem: string;
  readonly seenProblem: string;
}

/** What a reader wrote in words among the bytes seen, line by line: the complaints, and what is left. */
export function complaintsIn(seen: string): {
  readonly complaints: readonly Complaint[];
  readonly rest: string;
} {
  // The same words in another order say the same: 'only works with one sender'.
  const wordsOf = (line: string): string =>
    (line.toLowerCase().match(/[\p{L}\d]+/gu) ?? [])
      .filter((word) => word !== 'it')
      .sort()
      .join(' ');
  const meant = (line: string): Complaint | undefined =>
    COMPLAINTS.find((one) => wordsOf(one) === wordsOf(line));
  const lines = seen.split('\n');
  return {
    complaints: lines.flatMap((line) => meant(line) ?? []),
    rest: lines.filter((line) => meant(line) === undefined).join('\n'),
  };
}

/** Lines left out that are told one by one. */
const MOST_TOLD = 3;

/** What is said of the lines of a field that were left out; of a field that has no byte, what to do instead. */
function sayLeft(text: string, { bytes, left }: ReturnType<typeof readTyped>, instead: string): string {
  if (left.length === 0) return '';
  if (bytes.length === 0 && !/\d/.test(text))
    return `There are no bytes in '${text.trim()}'. Enter bytes such as 90 3C 40, or ${instead}.`;
  const more = left.length - MOST_TOLD;
  const told = `${left.slice(0, MOST_TOLD).join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
  return bytes.length === 0 ? told : `Read without what is no byte. ${told}.`;
}

/** Read the fields. An empty field of bytes sent means that nobody knows. */
export function askedBy({ sent, seen, writing, middleOctave, complaints }: Typed): Asked {
  const [sentRead, seenRead] = [sent, seen].map((text) => readTyped(text, writing, middleOctave)) as [
    ReturnType<typeof readTyped>,
    ReturnType<typeof readTyped>,
  ];
  const problems = {
    sentProblem: sayLeft(sent, sentRead, 'leave this empty'),
    seenProblem: sayLeft(seen, seenRead, 'tick below what goes wrong'),
  };
  if ([sentRead, seenRead].some(({ bytes, left }) => bytes.length === 0 && left.length > 0)) return problems;
  const bytes = sentRead.bytes.map(({ value }) => value);
  return {
    question: {
      ...(bytes.length > 0 ? { sent: bytes } : {}),
      seen: seenRead.bytes,
      // A list of its own: what goes to a worker must be plain.
      complaints: [...complaints],
    },
    ...problems,
  };
}

/** Whether a text names notes, so that it matters what its middle C is called. */
export const namesNotes = (text: string): boolean => readTyped(text).named;

const written = (bytes: readonly number[]): string => bytes.map(hexOf).join(' ');

/** A log as the end of an address: '#sent=90-3C-40&seen=00-30-00'. */
export function logAddress(sent: readonly number[], seen: readonly number[]): string {
  return `#sent=${written(sent).replaceAll(' ', '-')}&seen=${written(seen).replaceAll(' ', '-')}`;
}

/** The texts of a log in an address, or undefined where it holds none. */
export function logIn(hash: string): Pick<Typed, 'sent' | 'seen'> | undefined {
  const given = new URLSearchParams(hash.replace(/^#/, ''));
  const [sent, seen] = ['sent', 'seen'].map((name) => given.get(name)?.replaceAll('-', ' '));
  return sent === undefined || seen === undefined ? undefined : { sent, seen };
}

/** Two lists of bytes beside each other: of each byte given, whether the one seen in its place is the same. */
export function besideSeen(
  gives: readonly SeenByte[],
  seen: readonly SeenByte[],
): readonly { readonly text: string; readonly same: boolean }[] {
  return gives.map(({ value, bad }, at) => ({
    text: `${hexOf(value)}${bad ? '*' : ''}`,
    same: seen[at]?.value === value,
  }));
}
