/** From what a reader typed to the question, and a log in the address of the page. */
import { hexOf } from '../../src/core/signal/index.ts';
import { readTyped } from '../../src/core/arrived/index.ts';
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

/** Read the fields. An empty field of bytes sent means that nobody knows. */
export function askedBy({ sent, seen, writing, complaints }: Typed): Asked {
  const [sentRead, seenRead] = [readTyped(sent, writing), readTyped(seen, writing)];
  if ('problem' in sentRead || 'problem' in seenRead) {
    return {
      sentProblem: 'problem' in sentRead ? sentRead.problem : '',
      seenProblem: 'problem' in seenRead ? seenRead.problem : '',
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
