/** What the words of a line tell of jacks, breath by breath: a plug, what it does, and how many of each. */
import type { Style } from '../wiring/index.ts';
import { meaningOf } from './device-words.ts';
import type { Meaning, Way } from './device-words.ts';

/** What a line needs: the word that stopped the reading, empty where one is missing, and what was expected. */
export interface LineProblem {
  readonly word: string;
  readonly expected: string;
}

/** Jacks that are told in one breath. `count` is of the jacks that are still to be told. */
export interface Told {
  readonly plug?: 'din5' | 'din7' | 'trs' | 'ts';
  readonly size?: '6.35' | '3.5' | '2.5';
  readonly styles?: readonly Style[];
  readonly count?: number;
  readonly ways: readonly (Way & { readonly count: number })[];
}

const NOTHING_TOLD: Told = { ways: [] };

/** Thrown inside the reader alone, to leave a line at the word that cannot be read. */
export class Stopped extends Error {
  readonly problem: LineProblem;
  constructor(word: string, expected: string) {
    super(expected);
    this.problem = { word, expected };
  }
}

/** Leave the line at this word. @throws always. */
export function stop(word: string, expected: string): never {
  throw new Stopped(word, expected);
}

/**
 * Everything that is told of jacks, breath by breath; one that names no plug means the plug before it. A type or a size alone
 * between two commas belongs to the jacks before it, or else to those after it. `typed` gives words as the reader wrote them.
 */
export function readTold(
  parts: readonly (readonly string[])[],
  typed: (words: readonly string[]) => string,
): readonly Told[] {
  const all: Told[] = [];
  const meant = parts.map((part) =>
    part.map((word): readonly [string, Meaning] => {
      const meaning = meaningOf(word);
      if (!meaning) throw new Stopped(word, HELP);
      return [word, meaning];
    }),
  );
  let now = NOTHING_TOLD;
  for (const [at, meanings] of meant.entries()) {
    const waysFirst = meanings.find(([, { says }]) => says !== 'nothing')?.[1].says === 'way';
    const end = (word: string): void => {
      if (now === NOTHING_TOLD) return;
      if (now.ways.length === 0)
        throw new Stopped(word, `in, out or thru beside '${typed(parts[at] as readonly string[])}'`);
      all.push(now.plug || now.styles || now.size ? now : { ...all.at(-1), ...now });
      now = NOTHING_TOLD;
    };
    for (const [word, meaning] of meanings) {
      if (begins(now, meaning, waysFirst)) end(word);
      now = added(now, word, meaning);
    }
    const last = all.at(-1);
    if (last && adds(last, now)) {
      all[all.length - 1] = { ...last, ...now, ways: last.ways };
      now = NOTHING_TOLD;
    } else if (now.ways.length > 0 || !goesOn(now, meant[at + 1])) end('');
  }
  return all;
}

/** Whether a type or a size without a plug tells more of the jacks before it. */
function adds(before: Told, { plug, size, styles, count, ways }: Told): boolean {
  if (plug !== undefined || count !== undefined || ways.length > 0) return false;
  if (before.plug?.startsWith('din') === true) return false;
  const more = size !== undefined || styles !== undefined;
  const again = (size && before.size) !== undefined || (styles && before.styles) !== undefined;
  return more && !again;
}

/** Whether what is told of a jack that does nothing yet goes on after the comma: 'small jack, 3.5 mm, in type A'. */
function goesOn(now: Told, next: readonly (readonly [string, Meaning])[] | undefined): boolean {
  const plugs = next?.flatMap(([, meaning]) => (meaning.says === 'plug' ? [meaning.plug] : []));
  if (!plugs || plugs.length === 0) return plugs !== undefined;
  return now.plug === undefined && now.styles === undefined && !plugs.some((one) => one.startsWith('din'));
}

const HELP =
  "a jack: DIN, or TRS with its type, then in, out or thru, such as '2 x DIN out' or 'TRS-A in'; a colon after the name keeps the two apart";

/** Whether a word begins the next jack: a plug or count after 'in' or 'out', or 'in' or 'out' after a plug where they come first. */
function begins({ plug, size, styles, ways }: Told, meaning: Meaning, waysFirst: boolean): boolean {
  if (ways.length === 0) return false;
  const din = plug?.startsWith('din') ?? false;
  switch (meaning.says) {
    case 'plug':
      return plug !== undefined || !waysFirst;
    case 'size':
      return size !== undefined || din;
    case 'type':
      return styles !== undefined || din;
    case 'count':
      return !meaning.after && plug !== undefined && waysFirst;
    case 'way':
      return waysFirst && plug !== undefined;
    case 'other':
    case 'nothing':
      return false;
  }
}

function added(now: Told, word: string, meaning: Meaning): Told {
  switch (meaning.says) {
    case 'plug':
      return now.ways.length === 0 && now.plug !== undefined && now.plug !== meaning.plug
        ? stop(word, 'one plug for a jack')
        : { ...now, plug: meaning.plug };
    case 'size':
      return { ...now, size: meaning.size };
    case 'type':
      return { ...now, styles: meaning.styles };
    case 'way':
      return withWay(now, word, meaning.way);
    case 'count': {
      if (!meaning.after) return { ...now, count: meaning.count };
      const last = now.ways.at(-1);
      return last
        ? { ...now, ways: [...now.ways.slice(0, -1), { ...last, count: meaning.count }] }
        : stop(word, 'what is there so often, before it');
    }
    case 'other':
    case 'nothing':
      return now;
  }
}

/** One more thing that the plug does; a number before a plug that does several things could be of one or of all. */
function withWay({ count, ...now }: Told, word: string, way: Way): Told {
  if (count === undefined && (now.ways.at(-1)?.count ?? 1) > 1)
    return stop(word, "a comma and a number for each, such as '2 x DIN in, DIN out'");
  return { ...now, ways: [...now.ways, { ...way, count: count ?? 1 }] };
}
