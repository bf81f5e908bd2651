/** From what a reader typed to the question, and a log in the address of the page. */
import { hexOf } from '../../src/core/signal/index.ts';
import { COMPLAINTS, readTyped } from '../../src/core/arrived/index.ts';
import type { Complaint, Question, SeenByte, Writing } from '../../src/core/arrived/index.ts';

/** What stands in the fields. */
interface Typed {
  readonly sent: string;
  readonly seen: string;
  readonly writing: Writing;
  readonly complaints: readonly Complaint[];
}

/** The question of the fields, or what is wrong with each of them. */
type Asked = { readonly question: Question } | { readonly sentProblem: string; readonly seenProblem: string };

/** What a reader wrote in words among the bytes seen, line by line: the complaints, and what is left. */
export function complaintsIn(seen: string): {
  readonly complaints: readonly Complaint[];
  readonly rest: string;
} {
  const meant = (line: string): Complaint | undefined => {
    const plain = line.trim().toLowerCase().replace(/\.$/, '');
    return COMPLAINTS.find((one) => one.toLowerCase() === plain);
  };
  const lines = seen.split('\n');
  return {
    complaints: lines.flatMap((line) => meant(line) ?? []),
    rest: lines.filter((line) => meant(line) === undefined).join('\n'),
  };
}

/** What is wrong with a field: words without a digit are no bytes at all, whatever the line. */
function sayProblem(text: string, problem: string, instead: string): string {
  return /\d/.test(text)
    ? problem
    : `There are no bytes in '${text.trim()}'. Enter bytes such as 90 3C 40, or ${instead}.`;
}

/** Read the fields. An empty field of bytes sent means that nobody knows. */
export function askedBy({ sent, seen, writing, complaints }: Typed): Asked {
  const [sentRead, seenRead] = [readTyped(sent, writing), readTyped(seen, writing)];
  if ('problem' in sentRead || 'problem' in seenRead) {
    return {
      sentProblem: 'problem' in sentRead ? sayProblem(sent, sentRead.problem, 'leave this empty') : '',
      seenProblem:
        'problem' in seenRead ? sayProblem(seen, seenRead.problem, 'tick below what goes wrong') : '',
    };
  }
  const bytes = sentRead.bytes.map(({ value }) => value);
  return {
    question: {
      ...(bytes.length > 0 ? { sent: bytes } : {}),
      seen: seenRead.bytes,
      // A list of its own: what goes to a worker must be plain.
      complaints: [...complaints],
    },
  };
}

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
