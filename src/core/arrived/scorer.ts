/** How well foretold lists explain one log, and how well it is explained by no cause at all. */
import type { ReceivedByte } from '../signal/index.ts';
import { SURE, USUAL_BYTES, likeness, mayLead, oddsOf, patienceOf } from './compare.ts';
import type { Shares } from './compare.ts';
import { codeOf, shownAs, viewsOf } from './log.ts';
import type { Code, Log, View } from './log.ts';

/** What a log may be that no cause of the list made: bytes that keep much, or little, of what was sent, and no rule (our choice). */
const ANYTHING: readonly Shares[] = [
  { changed: 0.25, lost: 0.1, extra: 0.1 },
  { changed: 0.5, lost: 0.15, extra: 0.15 },
];
/** Or nothing of it: each byte seen is a usual one, or one of those sent in any order; natural logarithm: how many is anybody's guess. */
const ANY_LENGTH = 5;
/** How likely the list lacks a cause, against any one of the list (our choice). */
const OTHER_WEIGHT = 0.015;
/** Natural logarithm: what is so much less likely than that no cause did it is not followed to its end. */
const HOPELESS = 12;

/** How far a list, or the beginning of one, may fall behind bytes at random, as logarithms: five wrong bytes of twelve end it (our choice). */
const [BEHIND, HEAD_BEHIND] = [50, 26];

/** Sum of chances that are given as logarithms. */
export function sumOfLogs(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most === -Infinity
    ? most
    : most + Math.log(logs.reduce((sum, one) => sum + Math.exp(one - most), 0));
}

/** Bytes sent as they are read where nothing is wrong. */
export const sentAsRead = (bytes: readonly number[]): readonly ReceivedByte[] =>
  bytes.map((value) => ({ value, kind: 'byte', seconds: 0 }));

/** Scores foretold lists against one log, each list once. */
export class Scorer {
  readonly seen: readonly Code[];
  readonly views: readonly View[];
  readonly marked: boolean;
  /** The belief that no cause of the list did it, as a natural logarithm. */
  readonly other: number;
  /** What every view shows of bytes that arrive as they were sent. */
  readonly #plain: readonly string[];
  /** What is so unlikely, as a natural logarithm, is not followed to its end. */
  readonly hopeless: number;
  readonly #scores = new Map<string, number>();
  readonly #heads = new Map<string, boolean>();

  constructor({ seen }: Log, sent: readonly number[]) {
    this.seen = seen.map(codeOf);
    this.views = viewsOf(seen);
    this.marked = this.views.includes('marked');
    this.#plain = this.views.map((view) => nameOf(shownAs(view, sentAsRead(sent))));
    const kept = ANYTHING.map((shares) => likeness(sent.length, this.seen, oddsOf(sent, shares)));
    const own = new Set(sent);
    const [usual, mixed] = [Math.log(USUAL_BYTES), Math.log(2 * own.size)];
    const cost = this.seen.reduce((sum, code) => sum + (own.has(code) ? Math.min(usual, mixed) : usual), 0);
    const none = -cost - ANY_LENGTH;
    this.other = sumOfLogs([...kept, none]) + Math.log(OTHER_WEIGHT / (kept.length + 1));
    this.hopeless = this.other - HOPELESS;
  }

  /** How well a list foretells what was seen. One that changes nothing explains nothing, for something did. */
  score(view: View, foretold: readonly Code[]): number {
    const name = nameOf(foretold);
    if (name === this.#plain[this.views.indexOf(view)]) return -Infinity;
    return known(this.#scores, name, () =>
      likeness(foretold.length, this.seen, oddsOf(foretold, SURE), patienceOf(this.hopeless, BEHIND)),
    );
  }

  /** Whether a line whose first bytes are read so may give what was seen, whichever way the monitor shows it. */
  mayBegin(read: readonly ReceivedByte[]): boolean {
    return this.views.some((view) => {
      const first = shownAs(view, read);
      return known(this.#heads, nameOf(first), () =>
        mayLead(first.length, this.seen, oddsOf(first, SURE), patienceOf(this.hopeless, HEAD_BEHIND)),
      );
    });
  }

  /** Whether a view shows what was seen of bytes that arrive as they were sent. */
  asSent(): boolean {
    return this.#plain.includes(nameOf(this.seen));
  }
}

const nameOf = (codes: readonly Code[]): string => String.fromCharCode(...codes);

/** What a map holds under a name, made when it is first asked for. */
function known<Value>(map: Map<string, Value>, name: string, make: () => Value): Value {
  const before = map.get(name);
  if (before !== undefined) return before;
  const made = make();
  map.set(name, made);
  return made;
}
